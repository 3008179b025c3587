//! Tables: stations as CSV and as aligned text.

/// Columns that line up.
mod aligned;
/// Stations for other programs, SI.
mod csv;
/// Stations to be read.
mod stations;

#[cfg(test)]
mod tests;

pub(crate) use aligned::aligned;
pub use aligned::{Align, Column};
pub(crate) use csv::phase_key;
pub use csv::{stations_csv, stations_csv_head, stations_csv_rows};
pub use stations::stations_text;
