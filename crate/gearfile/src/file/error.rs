//! Why a text is no gear file, or a gear none that can be saved.
//!
//! These are data; `report` words them. What `Display` writes is for developers.
use thiserror::Error;

/// Why a text cannot be opened as a gear file.
#[derive(Clone, Debug, PartialEq, Eq, Error)]
#[error("{self:?}")]
pub enum OpenError {
    /// Longer than any gear file.
    TooLarge {
        /// Length (bytes).
        bytes: usize,
        /// Most that is read (bytes).
        limit: usize,
    },
    /// There is nothing in it.
    Empty,
    /// No JSON, or cut off.
    NotJson {
        /// Line, counted from 1.
        line: usize,
        /// Column, counted from 1.
        column: usize,
        /// What is wrong there.
        what: ContentFault,
    },
    /// JSON, but no gear file.
    NotGearFile,
    /// Made by a newer program.
    NewerVersion {
        /// Its version.
        version: u64,
        /// Newest version that this program reads.
        known: u64,
    },
    /// A key that a gear file does not have.
    UnknownField {
        /// Where, as `gear.legs[0].actuator.rodd_m`.
        path: String,
        /// The key, and the keys that would be understood, as the reader of JSON says it.
        what: String,
        /// Line, counted from 1.
        line: usize,
        /// Column, counted from 1.
        column: usize,
    },
    /// A value that is missing or of the wrong kind.
    Field {
        /// Where, as `gear.legs[0].actuator.rod_m`.
        path: String,
        /// What is wrong.
        what: ContentFault,
        /// Line, counted from 1.
        line: usize,
        /// Column, counted from 1.
        column: usize,
    },
}

/// What is wrong at a place of a text, or within a link.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum ContentFault {
    /// What the reader of JSON says.
    Reader(String),
    /// The text ends before its JSON does.
    EndsEarly,
    /// The version is no whole number from 1 to the newest.
    NotAVersion {
        /// Newest version that this program reads.
        newest: u64,
    },
    /// The bytes are no text.
    NotUnicode,
    /// The letters of a link are not those of base64url.
    NotBase64,
    /// The content of a link cannot be unpacked.
    NotUnpacked,
    /// A link speaks of a leg that its gear does not have.
    NoSuchLeg,
    /// A kept state speaks of a place that the gear does not have, or of a value that cannot stand there.
    NoSuchPlace,
    /// A width is not above 0.
    NotAboveZero,
}

/// Why a gear cannot be saved.
#[derive(Clone, Debug, PartialEq, Eq, Error)]
#[error("{self:?}")]
pub enum SaveError {
    /// A number is not finite: it would not come back.
    NotFinite {
        /// Where, as `gear.legs[0].actuator.rod_m`.
        path: String,
    },
    /// The text would be longer than what can be read back.
    TooLarge {
        /// Length (bytes).
        bytes: usize,
        /// Most that is read (bytes).
        limit: usize,
    },
    /// The compressor of links refused.
    NotPacked,
    /// The writer of JSON failed.
    NotWritten {
        /// Its words.
        what: String,
    },
}

impl From<serde_json::Error> for SaveError {
    fn from(error: serde_json::Error) -> Self {
        Self::NotWritten {
            what: error.to_string(),
        }
    }
}
