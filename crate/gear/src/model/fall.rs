//! What only the fall without pressure and the margin of the lock ask for.
use serde::{Deserialize, Serialize};

use super::PIN_BREAK_OUT;

/// Inputs of the free fall and of the lock; all may be left out.
#[derive(Clone, Copy, Debug, Default, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[serde(deny_unknown_fields, default)]
pub struct FallData {
    /// Moment of inertia of the upper leg about its center of mass (kg·m2); absent = a uniform
    /// plate of its outline, or a uniform rod where it has none.
    #[serde(rename = "body_inertia_kg_m2", skip_serializing_if = "Option::is_none")]
    pub body_inertia: Option<f64>,
    /// Diameter of the restrictor through which the actuator's fluid returns as the leg comes
    /// down without pressure (m); absent = the orifice down of its line, or it returns freely.
    #[serde(rename = "return_orifice_m", skip_serializing_if = "Option::is_none")]
    pub return_orifice: Option<f64>,
    /// Discharge coefficient of that restrictor (ratio); absent = a sharp edge.
    #[serde(
        rename = "discharge_coefficient",
        skip_serializing_if = "Option::is_none"
    )]
    pub discharge: Option<f64>,
    /// How far the locked knee can be moved square to the brace by the play of its pins (m).
    #[serde(rename = "knee_play_m", skip_serializing_if = "Option::is_none")]
    pub knee_play: Option<f64>,
    /// Friction of pins that have stood over that which they run with (ratio); absent = 1.5 times, from
    /// memory.
    #[serde(rename = "pin_break_out", skip_serializing_if = "Option::is_none")]
    pub pin_break_out: Option<f64>,
}

impl FallData {
    pub(crate) fn is_empty(&self) -> bool {
        *self == Self::default()
    }

    /// Friction of pins that have stood over that which they run with (ratio), at least 1.
    #[must_use]
    pub fn pins_stood(&self) -> f64 {
        self.pin_break_out.unwrap_or(PIN_BREAK_OUT).max(1.0)
    }

    /// Discharge coefficient of the return orifice (ratio).
    #[must_use]
    pub fn discharge(&self) -> f64 {
        self.discharge.unwrap_or(SHARP_EDGE)
    }
}

/// Discharge coefficient of a sharp-edged orifice, where none is given (ratio): 0.61 to 0.65, commonly 0.62
/// (ajdesigner.com/orifice-flow; handbooks give the same).
pub const SHARP_EDGE: f64 = 0.62;
