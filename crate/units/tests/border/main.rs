//! What goes over the border: typed text in, shown text out, held to published factors.

/// Texts that are taken, and what they mean.
mod accepted;
/// Rounding for reading.
mod display;
/// Conversion factors against published tables.
mod published;
/// Texts that are refused, and what is said.
mod refused;
/// What is written is read back, bit for bit.
mod round_trip;
/// Arrow keys.
mod steps;
