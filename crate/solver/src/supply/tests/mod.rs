//! Tests of the supply: parts against published figures, runs against closed forms, whole gears.

/// Whole gears: balances, order facts, stalls.
mod gears;
/// Orifice, battery, motor, time step.
mod parts;
/// Cylinders under known loads.
mod runs;
/// A gear of three legs.
mod support;
