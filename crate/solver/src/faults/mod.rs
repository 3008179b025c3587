//! Everything wrong with a model, found at once.

/// Brace.
mod brace;
/// The fault type.
mod fault;
/// One leg.
mod leg;
/// Outlines.
mod outline;
/// What each number may be.
mod ranges;
/// What was seen on the jacks.
mod seen;
/// Springs and pins.
mod springs;
/// Supply, and what drives each leg.
mod supply;
/// Tire.
mod tire;
/// The visitor over a whole gear.
mod visit;

pub use fault::{Fault, FaultKind, Faults};
pub use ranges::{Range, range_of};
pub use visit::{LEAST_JOINT_DISTANCE, MOST_ITEMS, check_gear, check_leg, check_stop};
