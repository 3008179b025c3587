//! What the checks share: plain legs to put a textbook mechanism on, and random legs of every kind.
#![allow(
    clippy::unwrap_used,
    clippy::expect_used,
    reason = "only tests use it: what is missing must fail loudly"
)]

/// A plain leg without weight, brace or well.
pub mod plain;

pub use plain::{bare_gear, bare_leg, near, solve};
