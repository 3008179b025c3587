//! Names of every field of the gear file, what it measures, and how to measure it on the airplane.

/// Retract actuator.
mod actuator;
/// Drag or side brace.
mod brace;
/// Orifices, switches and what else drives a leg.
mod drive;
/// Free fall and margin of the lock.
mod fall;
/// Attitude, air, fluid and required clearances.
mod gear;
/// Leg, its body and drag areas.
mod leg;
/// Paths in words.
mod lookup;
/// The words of every field.
mod of_field;
/// What was seen on the jacks.
mod seen;
/// Springs and pins.
mod springs;
/// Shock strut.
mod strut;
/// Pressure, pump, battery.
mod supply;
/// Structure around the leg.
mod well;
/// Wheel and tire.
mod wheel;
/// The types of a row.
mod words;

#[cfg(test)]
mod tests;

pub use lookup::{label, name, path_words};
pub use of_field::words;
pub use words::{ChoiceWords, FieldWords, group_title};
