//! Worked examples from outside of this project: each file names its Source: on top, with how sure it
//! is. *Found*: read in a public page or file. *From memory*: not confirmed. *Computed*: worked out
//! elsewhere from the published inputs.
//!
//! A textbook's mechanism is laid on a gear leg and solved by the solver's public functions.
#![allow(
    clippy::unwrap_used,
    clippy::expect_used,
    reason = "a check that cannot run must fail"
)]

/// Three loops to 16 digits, one pose at dead center.
mod andrews;
/// Axis and angle of a turn in three dimensions.
mod canted;
/// Dynamic pressure and drag of exposed gear.
mod drag;
/// Both branches of a crank and rocker.
mod four_bar;
/// Actuator on a lever: length, arm, thrust, pressure, areas.
mod lever;
/// Knee past the straight line.
mod over_center;
/// Cylinders of a shovel.
mod shovel;
/// Crank, rod and slider.
mod slider_crank;
/// Links that carry force along themselves only.
mod suspension;
/// Tire sizes, growth in service.
mod tires;
/// Force near the straight line of two links.
mod toggle;
