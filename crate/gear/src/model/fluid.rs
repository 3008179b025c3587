//! Hydraulic fluid of the whole gear.
use serde::{Deserialize, Serialize};

/// Hydraulic fluid.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[serde(deny_unknown_fields, default)]
pub struct Fluid {
    /// Density (kg/m3).
    #[serde(rename = "density_kg_m3")]
    pub density: f64,
}

/// Density of red mineral fluid to MIL-PRF-5606 at 20 °C (kg/m3) (public fluid-property fit).
pub const MINERAL_FLUID_DENSITY: f64 = 860.0;

impl Default for Fluid {
    fn default() -> Self {
        Self {
            density: MINERAL_FLUID_DENSITY,
        }
    }
}

impl Fluid {
    pub(crate) fn is_default(&self) -> bool {
        *self == Self::default()
    }
}
