//! The three answers for a leg, drawn from its numbers.

/// Does it clear?
mod clears;
/// Can it be driven?
mod driven;
/// Will it lock?
mod locks;
/// The way down without the normal power.
mod way_down;

#[cfg(test)]
mod tests;

pub(crate) use clears::clears;
pub(crate) use driven::{dead_point, driven};
pub use locks::{
    LATCH_GAP, LEAST_AFTER_PLAY, LEAST_KNEE_PUSH, LEAST_OVER_CENTRE, PRINTED_OVER_CENTER,
};
pub(crate) use locks::{LockCase, locks};
pub(crate) use way_down::{WayDownCase, way_down};
