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

pub(super) use seen::{pump, selected};
pub use spring::first_spring;
pub(super) use spring::{acts, body, joint};
pub(super) use supply::{battery_kind, battery_size};
pub(super) use taken::{
    attach, basis, body_end, folds, knee_given, own_leg, part, points_from, unlocked, view,
    way_down,
};
