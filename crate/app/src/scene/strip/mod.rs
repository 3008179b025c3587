//! The strip: one curve over the whole travel with its marks; its cursor is the scrub.

/// What is drawn on it.
mod curve;
/// The strip put on its canvas.
mod draw;
/// Where things are on it, and the marks above.
mod frame;
/// Places of the travel that are worth going to.
mod marks;

pub(crate) use curve::{followed, worst};
pub use draw::strip;
pub(crate) use draw::strip_progress;
pub(crate) use marks::{next_mark, strip_marks};
