//! What a retractable landing gear is given as: its parts ([`model`]), and the list of its fields
//! ([`field`]) with what each number measures, may be and counts as when it is left empty.
//!
//! Pure: no IO, no unit other than SI, no sentence.

pub mod field;
pub mod model;
