//! Invented legs and gears, random numbers and fixtures for the tests and benchmarks of all crates. It knows
//! the model and no more, so that the unit tests of every crate above it can use it.
#![allow(
    clippy::unwrap_used,
    clippy::expect_used,
    reason = "only tests use it: what is missing must fail loudly"
)]

/// Random numbers.
pub mod draw;
/// Gear files of the fixtures.
pub mod fixtures;
/// A gear with every field that a gear file can have.
pub mod full;
/// A leg with a well of many edges, for benchmarks.
pub mod heavy;
/// A plain leg in front view.
pub mod leg;
/// Three legs on a power pack.
pub mod pack;

pub use draw::Draw;
