//! Linear hydraulic actuator.
use serde::{Deserialize, Serialize};

use super::{Point, is_zero};

/// Linear actuator between the airframe and a moving part.
#[derive(Clone, Debug, Default, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[serde(deny_unknown_fields)]
pub struct Actuator {
    /// Airframe mount A0 (m).
    #[serde(rename = "mount_m")]
    #[cfg_attr(feature = "schema", schemars(with = "[f64; 2]"))]
    pub mount: Point,
    /// Attach point A1 on the moving part, at gear down (m).
    #[serde(rename = "attach_m")]
    #[cfg_attr(feature = "schema", schemars(with = "[f64; 2]"))]
    pub attach: Point,
    /// The part that carries A1.
    pub attach_to: AttachTo,
    /// Bore diameter (m).
    #[serde(rename = "bore_m")]
    pub bore: f64,
    /// Rod diameter (m).
    #[serde(rename = "rod_m")]
    pub rod: f64,
    /// Retracted length, pin to pin (m).
    #[serde(rename = "shortest_m")]
    pub shortest: f64,
    /// Extended length, pin to pin (m).
    #[serde(rename = "longest_m")]
    pub longest: f64,
    /// Outside diameter of the barrel (m).
    #[serde(rename = "body_diameter_m")]
    pub body_diameter: f64,
    /// Length of the barrel from its own pin to the gland (m).
    #[serde(rename = "body_length_m")]
    pub body_length: f64,
    /// The end that carries the barrel.
    #[serde(default, skip_serializing_if = "BodyEnd::is_airframe")]
    pub body_at: BodyEnd,
    /// Mass, half at each pin (kg).
    #[serde(rename = "mass_kg", default, skip_serializing_if = "is_zero")]
    pub mass: f64,
    /// Running friction of the seals, against the motion (N); absent = not known, counted as none.
    #[serde(
        rename = "seal_friction_n",
        default,
        skip_serializing_if = "Option::is_none"
    )]
    pub seal_friction: Option<f64>,
    /// Friction of seals that have stood, to be overcome at the first movement (N); absent = twice the
    /// running friction.
    #[serde(
        rename = "seal_break_out_n",
        default,
        skip_serializing_if = "Option::is_none"
    )]
    pub seal_break_out: Option<f64>,
    /// Pitch of the thread of the rod end: how much longer one turn makes the actuator, pin to pin (m).
    #[serde(
        rename = "rod_end_pitch_m",
        default,
        skip_serializing_if = "Option::is_none"
    )]
    pub rod_end_pitch: Option<f64>,
}

/// Friction of seals that have stood over that which they run with, where none is given (ratio): from
/// memory; the printed limit of a cylinder's maker is 3.
pub const SEAL_BREAK_OUT: f64 = 2.0;

impl Actuator {
    /// Running friction of the seals, none where none is given (N).
    #[must_use]
    pub fn seals(&self) -> f64 {
        self.seal_friction.unwrap_or(0.0)
    }

    /// Friction of seals that have stood (N): never less than what they run with.
    #[must_use]
    pub fn seals_stood(&self) -> f64 {
        let runs = self.seals();
        let starts = self.seal_break_out.unwrap_or(SEAL_BREAK_OUT * runs);
        starts.max(runs)
    }
}

/// The moving part that an actuator drives.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[serde(rename_all = "snake_case")]
pub enum AttachTo {
    /// The leg.
    #[default]
    Leg,
    /// The upper link of a folding brace.
    UpperLink,
    /// The lower link of a folding brace.
    LowerLink,
}

/// The end of the actuator that carries its barrel.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[serde(rename_all = "snake_case")]
pub enum BodyEnd {
    /// Barrel on the airframe mount A0, rod on the moving part.
    #[default]
    Airframe,
    /// Barrel on the moving part, rod on the airframe mount.
    Moving,
}

impl BodyEnd {
    fn is_airframe(&self) -> bool {
        matches!(self, Self::Airframe)
    }
}
