//! Why a supply could not be followed through time.
use serde::{Deserialize, Serialize};
use thiserror::Error;

use super::Faults;
use crate::model::Direction;

/// Why there is no result against time.
#[derive(Clone, Debug, PartialEq, Error, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[serde(rename_all = "snake_case")]
pub enum SupplyError {
    /// The model has faults.
    #[error(transparent)]
    Faults(Faults),
    /// The motor gets too little voltage to turn the pump even without pressure.
    #[error("the source gives no flow: {voltage} V at the motor without pressure")]
    NoFlow {
        /// Voltage at the motor without pressure (V).
        #[serde(rename = "voltage_v")]
        voltage: f64,
    },
    /// The source cannot make the pressure or force that the least loaded leg needs to start.
    #[error("nothing moves: the least load is {needed}, the source makes {available}")]
    NothingMoves {
        /// Which way the gear is selected.
        selected: Direction,
        /// Least load at the start (Pa, or N with electric actuators).
        needed: f64,
        /// Most that the source makes (Pa, or N with electric actuators).
        available: f64,
    },
    /// Legs on one drive are not followed through time.
    #[error("leg {leg} shares its drive")]
    SharedDrive {
        /// The first of them, by index.
        leg: usize,
    },
    /// No leg has any stroke to be driven over.
    #[error("no leg has any stroke")]
    NoStroke,
    /// The balance of flows or currents was not found within its bound.
    #[error("the balance at {time} s was not found in {steps} steps")]
    Unbalanced {
        /// Time (s).
        #[serde(rename = "time_s")]
        time: f64,
        /// Steps made.
        steps: usize,
    },
    /// Too many time steps or events.
    #[error("not done at {time} s after {steps} time steps")]
    TooManySteps {
        /// Time reached (s).
        #[serde(rename = "time_s")]
        time: f64,
        /// Steps made.
        steps: usize,
    },
}
