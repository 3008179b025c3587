//! Why clearances cannot be certified.
use serde::{Deserialize, Serialize};
use thiserror::Error;

use crate::model::MovingPart;

/// Why clearances cannot be certified. None of these is ever read as "clear".
#[derive(Clone, Copy, Debug, PartialEq, Error, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[serde(rename_all = "snake_case")]
pub enum ClearanceError {
    /// There is no pose to check.
    #[error("the path has no pose")]
    NoPath,
    /// The accuracy asked for is not a positive number, or the stride is zero.
    #[error(
        "accuracy {accuracy} m must be positive and the curve stride {curve_stride} at least 1"
    )]
    Options {
        /// Accuracy asked for (m).
        #[serde(rename = "accuracy_m")]
        accuracy: f64,
        /// Stride asked for (ratio).
        curve_stride: usize,
    },
    /// A pose between two good ones cannot be assembled.
    #[error("the leg cannot be assembled at progress {progress}: it misses by {miss} m")]
    NotAssembled {
        /// Place on the path (ratio).
        progress: f64,
        /// By how much it misses (m).
        #[serde(rename = "miss_m")]
        miss: f64,
    },
    /// A turning point, or the place of an angle, was not found.
    #[error("the motion between progress {from} and {to} cannot be followed")]
    NotFollowed {
        /// Start of the interval (ratio).
        from: f64,
        /// End of the interval (ratio).
        to: f64,
    },
    /// A part or what it is held against has no points.
    #[error("there is nothing to check {part:?} by or against")]
    NothingToCheck {
        /// Moving part.
        part: MovingPart,
    },
    /// A part of the path of the tire against its own leg was not resolved within the bound on
    /// evaluations.
    #[error(
        "the clearance of the tire to its own {part:?} is not resolved between progress {from} and {to}"
    )]
    OwnUnresolved {
        /// Part of the leg.
        part: MovingPart,
        /// Start of the interval (ratio).
        from: f64,
        /// End of the interval (ratio).
        to: f64,
    },
    /// A part of the path was not resolved within the bound on evaluations.
    #[error(
        "the clearance of {part:?} to obstacle {obstacle} is not resolved between progress {from} and {to}"
    )]
    Unresolved {
        /// Moving part.
        part: MovingPart,
        /// Obstacle, as index into the well.
        obstacle: usize,
        /// Start of the interval (ratio).
        from: f64,
        /// End of the interval (ratio).
        to: f64,
    },
}
