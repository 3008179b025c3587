//! The fields of a gear file: one list from which reading, checking and showing come.

/// Choices and sets.
mod choice;
/// In what two states of a gear differ.
mod difference;
/// What is known of a field.
#[macro_use]
mod info;
/// Numbers out of their ranges.
mod numbers;
/// Parts that come with their first number.
mod opened;
/// Paths: which field of which leg.
mod path;
/// Reading and changing values.
mod place;
/// What each number may be.
mod range;
/// The list.
mod table;
/// How points are told to people.
mod told;
/// What stands at a path.
mod value;
/// All points of a leg at once.
mod whole_leg;

pub use choice::first_spring;
pub use difference::{Change, Place, changes, leg_before, previous_tire, take_back};
pub use info::{Class, Empty, Group, Info, Kind};
pub use numbers::{NumberFault, not_finite, number_faults};
pub use path::{Axis, Path};
pub use place::NotStored;
pub use range::Range;
pub use table::Field;
pub use told::{Told, Toward, stored, stored_point, told, told_point};
pub use value::{Value, value_paths};
pub use whole_leg::{follow_image, image_of, mirror_leg, move_leg, scale_leg};
