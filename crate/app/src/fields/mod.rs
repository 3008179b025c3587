//! Numbers, texts and choices of the gear as fields addressed by their path in the gear file.

/// Numbers, texts and points.
mod access;
/// Choices and sets.
mod choice;
/// The knee as it is measured.
mod knee;
/// Entries of lists.
mod list;
/// Paths.
mod path;
/// What was seen on the jacks.
mod seen;
/// Numbers as shown.
mod shown;
/// The size of a whole leg.
mod size;

pub use access::{number, point, points, set_point, set_text, text};
pub(crate) use access::{path, points_mut};
pub use choice::{choose, chosen, ignored, switch};
pub(crate) use knee::{MEASURES, Measure, is_measured, measure_path};
pub use list::{Room, add, add_mirror_image, len, remove};
pub(crate) use list::{free_name, keep_notes};
pub use path::leg_of;
pub(crate) use path::{entry, point_of};
pub(crate) use shown::{circumference_of, stands_for};
pub use shown::{quantity, set_shown, shown, when_empty};
pub(crate) use size::size_path;
