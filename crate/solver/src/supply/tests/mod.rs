//! Tests of the supply: parts against published figures, runs against closed forms, whole gears.

/// Whole gears: balances, order facts, stalls.
mod gears;
/// Springs and friction of the legs, seen by the supply.
mod joints;
/// Orifice, battery, motor, time step.
mod parts;
/// Cylinders under known loads.
mod runs;
/// Accumulator and stage valves.
mod stored;
/// A gear of three legs.
pub(crate) mod support;
