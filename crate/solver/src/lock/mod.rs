//! Down lock: over-centre offset and what loads do to it.

/// Over-centre knee, telescopic brace or no brace at gear down.
mod over_centre;

pub use over_centre::lock_of;
