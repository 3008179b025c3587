//! Results for this crate's tests.

/// Results put together by hand.
mod result;

pub(crate) use gearswing_samples::full::{full_gear, full_gears};
pub(crate) use result::{finding, pair, place, result, subject};
