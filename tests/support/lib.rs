//! What the checks share: plain legs to put a textbook mechanism on, random legs of every kind, and
//! changes of a gear after which its answers are known.
#![allow(
    clippy::unwrap_used,
    clippy::expect_used,
    reason = "only tests use it: what is missing must fail loudly"
)]

/// Legs one after the other; a failure names its leg.
pub mod cases;
/// Mirrored, moved, turned, scaled and reversed gears.
pub mod changes;
/// Every kind of leg, and random legs of each.
pub mod kinds;
/// Every number of a gear.
pub mod numbers;
/// Outlines of the moving parts, drawn apart from the solver.
pub mod outlines;
/// A plain leg without weight, brace or well.
pub mod plain;
/// Two results that should be the same.
pub mod same;
/// Wheels turned in three dimensions.
pub mod spatial;
/// Random springs and rubbing pins.
pub mod springs;
/// Random sources, lines and switches.
pub mod supplies;

pub use cases::{Case, cases, sprung_cases};
pub use gearswing_samples::Draw;
pub use kinds::{BraceKind, Kind, ShorteningKind, random_gear, with_well};
pub use plain::{bare_gear, bare_leg, near, solve};
pub use springs::with_springs_and_pins;
pub use supplies::supplied_gear;
