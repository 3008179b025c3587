//! Why what was seen cannot be explained.
use serde::{Deserialize, Serialize};
use thiserror::Error;

use crate::clearance::ClearanceError;
use crate::faults::Faults;
use crate::supply::SupplyError;

/// Why there are no explanations.
#[derive(Clone, Debug, PartialEq, Error, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[serde(rename_all = "snake_case")]
pub enum StopError {
    /// The model has faults.
    #[error(transparent)]
    Faults(Faults),
    /// The file holds no stop of this leg.
    #[error("no stop was entered")]
    NothingSeen,
    /// The leg shares its drive with another: what either needs stops both, which is not weighed.
    #[error("the leg shares its drive")]
    SharedDrive,
    /// How far the leg came is not entered yet.
    #[error("how far the leg came was not entered")]
    HowFarNotEntered,
    /// The leg has no such distance anywhere on its way.
    #[error("no place of the way has {seen} m; the nearest is {nearest} m at travel {travel}")]
    NotOnTheWay {
        /// Distance seen (m).
        #[serde(rename = "seen_m")]
        seen: f64,
        /// Nearest that the way has (m).
        #[serde(rename = "nearest_m")]
        nearest: f64,
        /// Travel there (ratio).
        travel: f64,
    },
    /// The leg does not swing so far.
    #[error("an angle of {seen} rad is beyond the swing of {swing} rad")]
    BeyondSwing {
        /// Angle seen (rad).
        #[serde(rename = "seen_rad")]
        seen: f64,
        /// The whole swing (rad).
        #[serde(rename = "swing_rad")]
        swing: f64,
    },
    /// The distance is about the same over much of the way.
    #[error("{seen} m says nothing of the place")]
    SaysNothing {
        /// Distance seen (m).
        #[serde(rename = "seen_m")]
        seen: f64,
    },
    /// The distance occurs at more than one place.
    #[error("{seen} m occurs at travel {first} and at {second}")]
    Ambiguous {
        /// Distance seen (m).
        #[serde(rename = "seen_m")]
        seen: f64,
        /// Travel of the first place (ratio).
        #[serde(rename = "first_travel")]
        first: f64,
        /// Travel of the second (ratio).
        #[serde(rename = "second_travel")]
        second: f64,
    },
    /// The actuator drives the leg nowhere.
    #[error("the actuator drives the leg nowhere")]
    NotDriven,
    /// The source moves nothing.
    #[error(transparent)]
    Source(SupplyError),
    /// The clearance at a place cannot be resolved.
    #[error("clearance: {error}")]
    Clearance {
        /// What failed, of which part and where.
        error: ClearanceError,
    },
}
