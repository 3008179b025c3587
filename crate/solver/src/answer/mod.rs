//! The three answers for a leg, drawn from its numbers.

/// Does it clear?
mod clears;
/// Can it be driven?
mod driven;
/// Will it lock?
mod locks;

#[cfg(test)]
mod tests_clears;

pub(crate) use clears::clears;
pub(crate) use driven::driven;
pub use locks::{LEAST_AFTER_PLAY, LEAST_KNEE_PUSH, LEAST_OVER_CENTRE, PRINTED_OVER_CENTER};
pub(crate) use locks::{LockCase, locks};
