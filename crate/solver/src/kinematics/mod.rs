//! Where every joint is at any place of the path, and how fast it moves: closed forms.

/// Circle–circle and circle–line dyads.
mod dyad;
/// Places of the stations.
mod grid;
/// Where an unlocking device leaves the leg to the actuator.
mod hand_over;
/// A leg made ready for solving.
mod linkage;
/// Phases of the path and how progress maps to swing.
mod path;
/// Points fixed to the bodies.
mod placed;
/// One pose and its rates.
mod pose;
/// What turns and slides, and how that changes.
mod spins;
/// The whole path: poses, ends, dead points.
mod sweep;
/// By how much each part has turned since gear down.
mod turns;

pub use dyad::{Side, circle_circle, circle_line};
pub use linkage::{Linkage, Miss};
pub use path::Path;
pub use placed::placed;
pub(crate) use pose::quarter;
pub use pose::{Pose, Rates};
pub(crate) use spins::Spins;
pub use sweep::{END_TOLERANCE, Sweep};

#[cfg(test)]
mod tests;
