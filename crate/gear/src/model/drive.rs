//! What drives one leg besides its actuator: orifices, strut jack, electric motor, switches.
use serde::{Deserialize, Serialize};

use super::{SHARP_EDGE, is_zero};

/// Lines and switches of one leg; all may be left out.
#[derive(Clone, Copy, Debug, Default, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[serde(deny_unknown_fields, default)]
pub struct Drive {
    /// Orifice through which the fluid enters while the leg goes up; absent = open line.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub orifice_up: Option<LineOrifice>,
    /// Orifice through which the same side empties while the leg comes down; absent = the
    /// return orifice of the fall, or an open line.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub orifice_down: Option<LineOrifice>,
    /// Cylinder that shortens the strut before the swing and lets it out after it; absent = the strut
    /// takes no fluid and no time.
    #[serde(rename = "jack", skip_serializing_if = "Option::is_none")]
    pub strut_jack: Option<StrutJack>,
    /// Gauge pressure at the manifold at which the valve before the leg's second stage opens (Pa):
    /// it holds the swing back until the strut has shortened, and the strut until the leg is down;
    /// absent = the stages follow without one.
    #[serde(rename = "stage_valve_pa", skip_serializing_if = "Option::is_none")]
    pub stage_valve: Option<f64>,
    /// Electric linear actuator in place of the hydraulic one.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub electric: Option<ElectricActuator>,
    /// Where the limit switches close.
    #[serde(skip_serializing_if = "Switches::is_default")]
    pub switches: Switches,
    /// Travel at which the leg stands when the gear is selected up (ratio); absent = down and locked.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub start_travel: Option<f64>,
}

impl Drive {
    pub(crate) fn is_plain(&self) -> bool {
        *self == Self::default()
    }
}

/// A sharp or drilled restriction: Q = Cd·A·√(2Δp/ρ); near nothing the flow turns laminar, and q of
/// q⁴·(q⁴ + δ²) = Δp⁴ with δ = 100 Pa takes the place of √Δp.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[serde(deny_unknown_fields)]
pub struct LineOrifice {
    /// Diameter of the hole (m).
    #[serde(rename = "hole_m")]
    pub hole: f64,
    /// Discharge coefficient Cd (ratio).
    #[serde(
        default = "default_discharge",
        skip_serializing_if = "is_default_discharge"
    )]
    pub discharge: f64,
}

fn is_default_discharge(value: &f64) -> bool {
    *value == SHARP_EDGE
}

fn default_discharge() -> f64 {
    SHARP_EDGE
}

/// Strut-shortening cylinder, with the same area both ways.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[serde(deny_unknown_fields)]
pub struct StrutJack {
    /// Working area (m2).
    #[serde(rename = "area_m2")]
    pub area: f64,
    /// Gauge pressure that shortens the strut, against its gas and weight (Pa).
    #[serde(rename = "shorten_pa")]
    pub shorten_pressure: f64,
    /// Gauge pressure that lets the strut out again (Pa).
    #[serde(rename = "lengthen_pa", default, skip_serializing_if = "is_zero")]
    pub lengthen_pressure: f64,
}

/// Electric linear actuator: speed falls and current rises in a straight line with the force.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[serde(deny_unknown_fields)]
pub struct ElectricActuator {
    /// Speed without force at its rated voltage (m/s).
    #[serde(rename = "free_speed_m_s")]
    pub free_speed: f64,
    /// Force that stops it at its rated voltage (N).
    #[serde(rename = "stall_force_n")]
    pub stall_force: f64,
    /// Voltage for which both hold (V).
    #[serde(rename = "motor_v")]
    pub rated_voltage: f64,
    /// Current without force (A).
    #[serde(rename = "idle_a")]
    pub idle_current: f64,
    /// Current at the stall force (A).
    #[serde(rename = "locked_a")]
    pub locked_current: f64,
    /// Force at its rod that drives it back without power (N); absent = not known, as of a screw that
    /// holds.
    #[serde(
        rename = "back_drive_n",
        skip_serializing_if = "Option::is_none",
        default
    )]
    pub back_drive: Option<f64>,
}

/// Where the limit switches of a leg close.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[serde(deny_unknown_fields, default)]
pub struct Switches {
    /// Strut-shortened switch: share of the shortening at which it closes (ratio).
    #[serde(rename = "shortened_at")]
    pub shortened: f64,
    /// Up-limit switch: travel at which it closes (ratio).
    #[serde(rename = "up_at_travel")]
    pub up: f64,
    /// Down-lock switch: travel at which it closes (ratio); 0 = only when the lock is engaged.
    #[serde(rename = "down_at_travel")]
    pub down: f64,
}

impl Default for Switches {
    /// Each at the very end.
    fn default() -> Self {
        Self {
            shortened: 1.0,
            up: 1.0,
            down: 0.0,
        }
    }
}

impl Switches {
    fn is_default(&self) -> bool {
        *self == Self::default()
    }
}
