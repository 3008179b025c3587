//! Gear file: `{"format": "gearswing-gear", "version": 1, "gear": {…}}`.
//!
//! The file is a promise: files of every version open for ever. A new version gets an arm in
//! `read` that turns the older text into the present model by an explicit step.

/// Why a text is no gear file, or a gear none that can be saved.
mod error;
/// Reading.
mod read;
/// Writing.
mod write;

pub use error::{OpenError, SaveError};
pub use read::read;
pub use write::to_text;

pub(crate) use read::field_error;

/// Value of the key `format`.
pub const FORMAT: &str = "gearswing-gear";

/// Version that is written, and the newest that can be read.
pub const VERSION: u64 = 1;

/// Longest text that is read [bytes].
pub const READ_LIMIT: usize = 4 << 20;

/// Reading, writing, round trips.
#[cfg(test)]
mod tests;
