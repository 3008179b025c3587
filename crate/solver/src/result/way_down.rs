//! The way down without the normal power.
use serde::Serialize;

use super::{LoadCase, Place, Verdict};
use crate::model::EmergencyWay;

/// Whether the way down without the normal power brings the leg to its lock.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct WayDown {
    /// Which way.
    pub way: EmergencyWay,
    /// Whether it does, with the margin that is required.
    pub verdict: Verdict,
    /// What a hand pump works against; absent where the way is none or its pressure is not known.
    pub hand_pump: Option<HandPumpDown>,
}

/// What a hand pump works against while it extends the leg.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct HandPumpDown {
    /// Load case that is hardest.
    pub case: LoadCase,
    /// Gauge pressure needed at the hardest place of it (Pa).
    #[serde(rename = "needed_pa")]
    pub needed: f64,
    /// Largest gauge pressure of the pump (Pa).
    #[serde(rename = "available_pa")]
    pub available: f64,
    /// (available − needed)/available (ratio).
    pub margin: f64,
    /// Whether no pressure brings the leg down: its pins bind, its actuator has no arm, or another leg on
    /// its drive stands.
    pub stopped: bool,
    /// That place.
    pub place: Place,
}
