//! The airplane's gear as a whole.
use serde::{Deserialize, Serialize};

use super::{ClearanceRule, Conditions, EmergencyWay, Fluid, Leg, Supply};

/// The retractable gear of one airplane and the case it is asked about.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[serde(deny_unknown_fields)]
pub struct Gear {
    /// Name of this gear file.
    pub name: String,
    /// Free text of the owner.
    #[serde(default, skip_serializing_if = "String::is_empty")]
    pub note: String,
    /// The legs, at least one.
    pub legs: Vec<Leg>,
    /// Attitude, load factor and air.
    #[serde(default)]
    pub conditions: Conditions,
    /// Hydraulic pressure available to every actuator.
    pub supply: Supply,
    /// Hydraulic fluid.
    #[serde(default, skip_serializing_if = "Fluid::is_default")]
    pub fluid: Fluid,
    /// Required clearances where an obstacle has no figure of its own.
    #[serde(default)]
    pub clearance_rule: ClearanceRule,
    /// The way down without the normal power; absent = a hand pump where that is the source, else free
    /// fall.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub emergency_way: Option<EmergencyWay>,
    /// Largest gauge pressure of the hand pump of that way where another source moves the gear [Pa];
    /// absent = not known.
    #[serde(
        rename = "emergency_pump_pa",
        default,
        skip_serializing_if = "Option::is_none"
    )]
    pub emergency_pump: Option<f64>,
    /// How many times its friction a leg must free-fall against [1], 1 to 5; absent = 1.5.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub friction_times_required: Option<f64>,
}

impl Gear {
    /// The same with the airplane level on jacks.
    #[must_use]
    pub fn on_jacks(&self) -> Self {
        Self {
            conditions: Conditions::default(),
            ..self.clone()
        }
    }
}
