//! Gear file and link text: what leaves the program and comes back to it.
//!
//! The model types carry their own file keys; here are the envelope with its version, reading
//! with faults that name the field, the link (compressed, with length and checksum inside), and
//! the worked examples that a new file starts from.

/// CRC-32 (IEEE 802.3) of a text, as any archive program tells it.
#[must_use]
pub fn checksum(text: &str) -> u32 {
    link::CHECKSUM.checksum(text.as_bytes())
}

/// Several gear files in one.
mod archive;
/// Worked examples: the demo and one starter of each kind.
mod examples;
/// Envelope: writing and reading a gear file.
mod file;
/// Kept states as what differs.
mod kept;
/// How numbers and lines are written.
mod layout;
/// Link text.
pub mod link;
/// The path of a number that is not finite.
mod not_finite;

/// Random models for the tests.
#[cfg(test)]
mod arbitrary;

pub use archive::{ARCHIVE_LIMIT, ArchiveError, archive_text, read_archive};
pub use examples::{DEMO, Example, ExampleKind, STARTERS, find_example};
pub use file::{
    ContentFault, FORMAT, OpenError, READ_LIMIT, SaveError, VERSION, read, read_number, to_text,
};
