//! Points, vectors, and what may be left out of a file.
use serde::{Deserialize, Serialize};

/// A point in airframe axes (m).
pub type Point = nalgebra::Point2<f64>;
/// From where points are told to people; a file holds them in airframe axes all the same.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[serde(rename_all = "snake_case")]
pub enum PointsFrom {
    /// The airplane's axes, as in the file.
    #[default]
    Airplane,
    /// The trunnion of their leg: inboard (front view) or aft (side view), and up.
    Trunnion,
}

impl PointsFrom {
    #[allow(
        clippy::trivially_copy_pass_by_ref,
        reason = "as the writer of files asks"
    )]
    pub(crate) fn is_default(&self) -> bool {
        *self == Self::default()
    }
}

/// A vector in airframe axes; its unit is that of the quantity it stands for.
pub type Vector = nalgebra::Vector2<f64>;

pub(crate) fn is_zero(value: &f64) -> bool {
    *value == 0.0
}
