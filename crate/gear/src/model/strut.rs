//! Shock strut: the axle, the direction in which it slides, and when.
use serde::{Deserialize, Serialize};

use super::Point;

/// Shock strut of a leg, fully extended at gear down.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[serde(deny_unknown_fields)]
pub struct Strut {
    /// Axle W: the center of the wheel with the strut extended (m).
    #[serde(rename = "axle_m")]
    #[cfg_attr(feature = "schema", schemars(with = "[f64; 2]"))]
    pub axle: Point,
    /// Lower point on the strut's center line (m).
    #[serde(rename = "axis_bottom_m")]
    #[cfg_attr(feature = "schema", schemars(with = "[f64; 2]"))]
    pub axis_bottom: Point,
    /// Upper point on the strut's center line; shortening slides the axle this way (m).
    #[serde(rename = "axis_top_m")]
    #[cfg_attr(feature = "schema", schemars(with = "[f64; 2]"))]
    pub axis_top: Point,
    /// Outline of what slides with the axle (lower tube, fork), closed polygon, extended (m).
    #[serde(
        rename = "sliding_outline_m",
        default,
        skip_serializing_if = "Vec::is_empty"
    )]
    #[cfg_attr(feature = "schema", schemars(with = "Vec<[f64; 2]>"))]
    pub sliding_outline: Vec<Point>,
    /// How the strut shortens on the way up.
    #[serde(default, skip_serializing_if = "Shortening::is_none")]
    pub shortening: Shortening,
}

/// Shortening c of the strut (0 = extended) on the way up.
#[derive(Clone, Debug, Default, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[serde(rename_all = "snake_case")]
pub enum Shortening {
    /// The strut stays extended.
    #[default]
    None,
    /// The strut is shortened first and only then swings.
    BeforeSwing {
        /// Shortening before the swing starts (m).
        #[serde(rename = "amount_m")]
        amount: f64,
    },
    /// The strut is shortened by the swing itself.
    WithTravel {
        /// Rows of rising travel; straight lines between them, ends held.
        table: Vec<ShorteningRow>,
    },
}

impl Shortening {
    fn is_none(&self) -> bool {
        matches!(self, Self::None)
    }
}

/// One row of a shortening table.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[serde(deny_unknown_fields)]
pub struct ShorteningRow {
    /// Travel, 0 down … 1 up (ratio).
    pub travel: f64,
    /// Shortening there (m).
    #[serde(rename = "amount_m")]
    pub amount: f64,
}
