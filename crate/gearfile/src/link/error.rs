//! Why a link text cannot be opened. Data; `report` words it, and what `Display` writes is for developers.
use thiserror::Error;

use crate::file::OpenError;

/// Why a link text cannot be opened.
#[derive(Clone, Debug, PartialEq, Eq, Error)]
#[error("{self:?}")]
pub enum LinkError {
    /// There is nothing to open.
    Empty,
    /// No link of ours.
    Foreign,
    /// Far longer than any link.
    TooLong {
        /// Characters found.
        characters: usize,
        /// Most that is read.
        limit: usize,
    },
    /// Characters are missing.
    Cut {
        /// Characters found.
        have: usize,
        /// Characters that the link says it has; absent when that is cut off too.
        of: Option<usize>,
    },
    /// The length is right, but some characters are not those that were sent.
    Altered,
    /// Made by a newer program.
    TooNew {
        /// Its version.
        version: u64,
        /// Newest version that this program reads.
        known: u64,
    },
    /// The link came whole, but what it holds is no gear that this program understands.
    Content(OpenError),
}
