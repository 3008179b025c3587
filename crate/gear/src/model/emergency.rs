//! The way down without the normal power.
use serde::{Deserialize, Serialize};

use super::{Gear, Source};

/// How the gear is let down when its normal power fails.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[serde(rename_all = "snake_case")]
pub enum EmergencyWay {
    /// Each leg falls by itself.
    FreeFall,
    /// A pump worked by hand.
    HandPump,
    /// A bottle of gas that blows the legs down.
    StoredGas,
    /// A crank or lever.
    HandCrank,
    /// None is given.
    NoneGiven,
}

/// Default of [`Gear::friction_times_required`] (ratio): our own figure.
pub const FRICTION_TIMES_REQUIRED: f64 = 1.5;

impl Gear {
    /// The way down without the normal power: as given, else a hand pump where that is the source, else
    /// free fall.
    #[must_use]
    pub fn way_down(&self) -> EmergencyWay {
        self.emergency_way.unwrap_or(match self.supply.source {
            Source::HandPump(_) => EmergencyWay::HandPump,
            Source::ConstantPressure | Source::MotorPump(_) | Source::ElectricActuators => {
                EmergencyWay::FreeFall
            }
        })
    }

    /// Largest gauge pressure of the hand pump of the way down (Pa); `None` where it is no hand pump or
    /// that is not known.
    #[must_use]
    pub fn hand_pump_pressure(&self) -> Option<f64> {
        match (self.way_down(), &self.supply.source) {
            (EmergencyWay::HandPump, Source::HandPump(pump)) => Some(pump.largest_pressure),
            (EmergencyWay::HandPump, _) => self.emergency_pump,
            _ => None,
        }
    }

    /// How many times its friction a leg must free-fall against (ratio).
    #[must_use]
    pub fn friction_times(&self) -> f64 {
        self.friction_times_required
            .unwrap_or(FRICTION_TIMES_REQUIRED)
    }
}
