//! Choices and sets of options.

/// Keys of options.
#[macro_use]
mod keys;
/// Braces.
mod brace;
/// What was seen on the jacks.
mod seen;
/// Springs.
mod spring;
/// Sources.
mod supply;
/// Which option is taken, and taking another one.
mod taken;

pub use spring::first_spring;
