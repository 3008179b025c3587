//! Down lock: over-center offset and what loads do to it.

/// What holds a leg down, each kind with its figures.
mod down_lock;
/// Over-center knee, telescopic brace or no brace at gear down.
mod over_centre;

pub use down_lock::{Centre, DownLock, LoadedKnee};
pub use over_centre::lock_of;
