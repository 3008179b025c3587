//! Why a text is no gear file, or a gear none that can be saved.
use thiserror::Error;

/// Why a text cannot be opened as a gear file.
#[derive(Clone, Debug, PartialEq, Eq, Error)]
pub enum OpenError {
    /// Longer than any gear file.
    #[error("{bytes} bytes are too many for a gear file (at most {limit})")]
    TooLarge {
        /// Length (bytes).
        bytes: usize,
        /// Most that is read (bytes).
        limit: usize,
    },
    /// There is nothing in it.
    #[error("the file is empty")]
    Empty,
    /// No JSON, or cut off.
    #[error("not JSON: {what} at line {line}, column {column}")]
    NotJson {
        /// Line, counted from 1.
        line: usize,
        /// Column, counted from 1.
        column: usize,
        /// What is wrong there.
        what: String,
    },
    /// JSON, but no gear file.
    #[error("JSON, but no gear file: its \"format\" is not \"gearswing-gear\"")]
    NotGearFile,
    /// Made by a newer program.
    #[error(
        "this file was made by a newer version ({version}); this program is version {known}: \
         reload the page, or ask whoever made the file where the newer one is"
    )]
    NewerVersion {
        /// Its version.
        version: u64,
        /// Newest version that this program reads.
        known: u64,
    },
    /// A key that a gear file does not have.
    #[error("{path}: {what} (line {line}, column {column})")]
    UnknownField {
        /// Where, as `gear.legs[0].actuator.rodd_m`.
        path: String,
        /// The key, and the keys that would be understood.
        what: String,
        /// Line, counted from 1.
        line: usize,
        /// Column, counted from 1.
        column: usize,
    },
    /// A value that is missing or of the wrong kind.
    #[error("{path}: {what} (line {line}, column {column})")]
    Field {
        /// Where, as `gear.legs[0].actuator.rod_m`.
        path: String,
        /// What is wrong.
        what: String,
        /// Line, counted from 1.
        line: usize,
        /// Column, counted from 1.
        column: usize,
    },
}

/// Why a gear cannot be saved.
#[derive(Clone, Debug, PartialEq, Eq, Error)]
pub enum SaveError {
    /// A number is not finite: it would not come back.
    #[error("{path} is not a finite number")]
    NotFinite {
        /// Where, as `gear.legs[0].actuator.rod_m`.
        path: String,
    },
    /// The text would be longer than what can be read back.
    #[error("{bytes} bytes are too many (at most {limit})")]
    TooLarge {
        /// Length (bytes).
        bytes: usize,
        /// Most that is read (bytes).
        limit: usize,
    },
    /// The writer of JSON failed.
    #[error("cannot be written: {what}")]
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
