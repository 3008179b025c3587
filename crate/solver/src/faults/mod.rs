//! Everything wrong with a model, found at once.

/// The fault type.
mod fault;
/// The visitor over a whole gear.
mod visit;

pub use fault::{Fault, FaultKind, Faults};
pub use visit::{check_gear, check_leg};
