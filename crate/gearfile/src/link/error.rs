//! Why a link text cannot be opened.
use thiserror::Error;

use crate::file::OpenError;

/// Why a link text cannot be opened.
#[derive(Clone, Debug, PartialEq, Eq, Error)]
pub enum LinkError {
    /// There is nothing to open.
    #[error("there is no link text")]
    Empty,
    /// No link of ours.
    #[error("this is no gear link")]
    Foreign,
    /// Far longer than any link.
    #[error("{characters} characters are too many for a link (at most {limit})")]
    TooLong {
        /// Characters found.
        characters: usize,
        /// Most that is read.
        limit: usize,
    },
    /// Characters are missing.
    #[error(
        "the link was cut: {have} characters of {}",
        .of.map_or_else(|| "an unknown number".to_owned(), |of| of.to_string())
    )]
    Cut {
        /// Characters found.
        have: usize,
        /// Characters that the link says it has; absent when that is cut off too.
        of: Option<usize>,
    },
    /// The length is right, but some characters are not those that were sent.
    #[error("the link was altered on its way")]
    Altered,
    /// Made by a newer program.
    #[error(
        "this link was made by a newer version ({version}); this page is version {known}: reload \
         it, or open the link at the address it came with"
    )]
    TooNew {
        /// Its version.
        version: u64,
        /// Newest version that this program reads.
        known: u64,
    },
    /// The link came whole, but what it holds is no gear that this program understands.
    #[error("the link came whole, but its content cannot be used: {0}")]
    Content(OpenError),
}
