//! Everything wrong with a model, found at once.

/// Brace.
mod brace;
/// One leg.
mod leg;
/// Outlines.
mod outline;
/// Springs and pins.
mod springs;
/// Supply, and what drives each leg.
mod supply;
/// Tire.
mod tire;
/// The visitor over a whole gear.
mod visit;

pub use crate::result::{Fault, FaultKind, Faults};
pub use visit::{LEAST_JOINT_DISTANCE, MOST_ITEMS, check_gear, check_leg, check_stop};
