//! Small numeric tools: every loop bounded, every failure told.

/// Angles: wrapping and directions.
mod angle;
/// Halving a bracket.
mod bisection;
/// Root in a bracket.
mod bracketed_root;
/// Events within a time step.
mod event;
/// An explicit time step.
mod explicit;
/// Step after step.
mod follow;
/// An implicit time step.
mod implicit;
/// Order of lists.
mod order;
/// Root of a rising function.
mod rising_root;
/// A linearly implicit time step.
mod rosenbrock;
/// What a time step has come to.
mod step;

pub use angle::{direction, wrap};
pub(crate) use bisection::bisected;
pub use bracketed_root::{Root, RootError, bracketed_root};
pub(crate) use event::{event_between, first_end};
pub(crate) use explicit::explicit;
pub(crate) use follow::{Bounds, Method, Moment, follow};
pub(crate) use implicit::{Implicit, MOVED, SMALL};
pub use order::sort_by;
pub(crate) use rising_root::{MOST_NEWTON_STEPS, rising_root};
pub(crate) use step::Step;

#[cfg(test)]
mod tests;
