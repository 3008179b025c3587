//! Where every joint is at any place of the path, and how fast it moves: closed forms.

/// Circle–circle and circle–line dyads.
mod dyad;
/// A leg made ready for solving.
mod linkage;
/// Phases of the path and how progress maps to swing.
mod path;
/// One pose and its rates.
mod pose;

pub use dyad::{Side, circle_circle, circle_line};
pub use linkage::{Linkage, Miss};
pub use path::Path;
pub use pose::{Pose, Rates};
