//! Wheel and tire, as fitted new and as grown in service.
use serde::{Deserialize, Serialize};

use super::is_zero;

/// Wheel of one leg; it is centered on the axle.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[serde(deny_unknown_fields)]
pub struct Wheel {
    /// The tire now fitted.
    pub tire: Tire,
    /// In a file only: the tire fitted before. Read, it stands in a kept state of its own, named "previous tire"; a
    /// leg in hand has none.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub former: Option<Tire>,
    /// Mass of wheel, tire, brake and all that slides with the axle, taken at the axle (kg).
    #[serde(rename = "mass_kg")]
    pub mass: f64,
    /// Front view: lean of the wheel's plane from vertical at gear down, counter-clockwise (rad).
    #[serde(rename = "lean_rad", default, skip_serializing_if = "is_zero")]
    pub lean: f64,
}

/// A tire: its size as fitted new, where that comes from, and how it grows.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[serde(deny_unknown_fields)]
pub struct Tire {
    /// Size as molded on the tire, as "6.00-6"; free text.
    #[serde(default, skip_serializing_if = "String::is_empty")]
    pub size: String,
    /// Overall diameter D as fitted new (m).
    #[serde(rename = "diameter_m")]
    pub diameter: f64,
    /// Section width w as fitted new (m).
    #[serde(rename = "width_m")]
    pub width: f64,
    /// Radius of the shoulder between tread and side, in section (m).
    #[serde(rename = "shoulder_radius_m")]
    pub shoulder_radius: f64,
    /// Rim (bead seat) diameter, for the growth rule (m).
    #[serde(rename = "rim_diameter_m")]
    pub rim_diameter: f64,
    /// Where diameter and width come from.
    #[serde(default)]
    pub basis: Basis,
    /// The largest size the tire gets in service.
    #[serde(default, skip_serializing_if = "Grown::is_by_rule")]
    pub grown: Grown,
}

/// Where a tire's figure comes from.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[serde(rename_all = "snake_case")]
pub enum Basis {
    /// Measured on the fitted tire at full pressure.
    Measured,
    /// The tire maker's data.
    Maker,
    /// The size table that comes with the solver; its rows say how sure they are.
    Table,
    /// Typed in, origin not said.
    #[default]
    Unstated,
}

/// The largest size a tire gets in service.
#[derive(Clone, Copy, Debug, Default, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[serde(rename_all = "snake_case")]
pub enum Grown {
    /// By the growth rule (formula from memory; what it reproduces: see `tires::growth`).
    #[default]
    ByRule,
    /// The user's or the maker's own figure; it always wins over the rule.
    Given {
        /// Overall diameter in service (m).
        #[serde(rename = "diameter_m")]
        diameter: f64,
        /// Section width in service (m).
        #[serde(rename = "width_m")]
        width: f64,
        /// Where these two come from.
        #[serde(default)]
        basis: Basis,
    },
}

impl Grown {
    fn is_by_rule(&self) -> bool {
        matches!(self, Self::ByRule)
    }
}
