//! Gear file: `{"format": "gearswing-gear", "version": 1, "gear": {…}}`.
//!
//! The file is a promise: files of every version open for ever. Version 2 adds keys, each of which
//! may be left out; the step from version 1 to it is `envelope::upgrade`. A version that changes what
//! was there gets an arm in `read` that turns the older text into the present model.

/// Any JSON, looked through.
mod any;
/// Mark, version and longest text.
mod envelope;
/// Why a text is no gear file, or a gear none that can be saved.
mod error;
/// Structs come from objects only.
mod objects;
/// Reading.
mod read;
/// Writing.
mod write;

pub use envelope::{FORMAT, READ_LIMIT, VERSION};
pub use error::{ContentFault, OpenError, SaveError};
pub use read::{read, read_number};
pub use write::to_text;

pub(crate) use envelope::{lowest_version, upgrade};
pub(crate) use read::parse;

/// Reading, writing, round trips.
#[cfg(test)]
mod tests;
#[cfg(test)]
mod tests_versions;
