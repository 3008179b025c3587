//! The three answers for a leg in words.

/// One answer in words.
mod answer;
/// What an answer rests on.
mod assumption;
/// What there is to drive a leg.
mod available;
/// The tire's own clearance, its own leg, what lies out of the plane.
mod beside;
/// Does it clear?
mod clears;
/// Can it be driven?
mod driven;
/// The fall without pressure.
mod fall;
/// The number of an answer as a table shows it.
mod figure;
/// The leg stops before up.
mod jam;
/// Will it lock?
mod locks;
/// What nothing drives.
mod not_driven;
/// The number of an answer in a few words.
mod short;
/// What is not square to the drawn plane.
mod skew;
/// What a fall has to spare.
pub(crate) mod spare;
/// How the numbers that decide stand.
mod stand;
/// The way down without the normal power.
mod way_down;

#[cfg(test)]
mod tests;

pub use answer::{FindingText, finding_text, question_text, verdict_text};
pub use assumption::{Governing, Mark, governing};
pub(crate) use available::BEYOND;
pub(crate) use beside::side_words;
pub use figure::{finding_figure, question_head};
pub use jam::jam_text;
pub use short::{finding_line, finding_short};
pub use stand::{Stand, stand_lines};
