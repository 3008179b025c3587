//! Tests of the supply: parts against published figures, runs against closed forms, whole gears.

/// An accumulator above its pump.
mod above;
/// Balance of the manifold at one instant.
mod balances;
/// More points where a load bends.
mod bends;
/// Runs by hand.
mod by_hand;
/// What a leg can count on.
mod counts_on;
/// Legs that creep as the pump fills an accumulator.
mod creep;
/// Whole gears: balances, order facts, stalls.
mod gears;
/// Springs and friction of the legs, seen by the supply.
mod joints;
/// Out of the lock: light and contact.
mod locked;
/// Legs on one flow.
mod one_flow;
/// Orifice, battery, motor.
mod parts;
/// A run by the line of its pump.
mod pump_line;
/// The accumulator after the swing.
mod refilled;
/// Cylinders under known loads.
mod runs;
/// Legs on one drive, and up and down apart.
mod shared;
/// Followed in parts.
mod slices;
/// Accumulator and stage valves.
mod stored;
/// Switches, samples and lights.
mod switches;
/// A tired battery.
mod tired;
/// Contact.
mod touch;
/// What makes an answer.
mod verdicts;
