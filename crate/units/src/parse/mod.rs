//! From typed text to SI. The rules for what may be typed are on the crate's front page.

/// Points and commas.
mod decimal;
/// What was understood, as text.
mod echo;
/// One number: decimal, fraction or mixed.
mod number;
/// Sign, number, unit, and series such as feet and inches.
mod quantity;
/// Typing variants made one; a place in the text.
mod tokens;
/// Which unit a text names, or what is wrong with it.
mod units;

pub use quantity::{MAX_TEXT_LENGTH, Parsed, parse};
