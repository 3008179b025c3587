//! Invented gears and results for this crate's tests.

/// Gears.
mod gear;
/// Results put together by hand.
mod result;

pub(crate) use gear::{full_gear, full_gears};
pub(crate) use result::{finding, pair, place, result, subject};
