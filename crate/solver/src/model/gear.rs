//! The airplane's gear as a whole.
use serde::{Deserialize, Serialize};

use super::{ClearanceRule, Conditions, Fluid, Leg, Supply};

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
