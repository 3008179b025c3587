//! Gear files.
use crate::state::StoredStep;

/// Something done to a gear file.
#[derive(Clone, Debug, PartialEq)]
pub enum File {
    /// A new file from a working example.
    New {
        /// Key of the example.
        starter: String,
    },
    /// Opens a stored file.
    Open {
        /// Key of the file.
        id: String,
    },
    /// Opens the demo as a new file.
    OpenDemo,
    /// Another name for the open file.
    Rename {
        /// The name.
        name: String,
    },
    /// A copy of what is shown, as a file of its own.
    Duplicate,
    /// Saves the open gear as that of another airplane.
    AnotherAirplane,
    /// Bytes of chance, for the next gear that needs a mark.
    Chance {
        /// The bytes.
        bytes: [u8; 8],
    },
    /// Takes a file away; it can be brought back until the page is left.
    Delete {
        /// Key of the file.
        id: String,
    },
    /// Brings back what was taken away last.
    BringBack,
    /// Offers the file for download.
    Export,
    /// Offers the drawing of the leg in hand for download.
    SavePicture,
    /// Offers all files for download, as one.
    ExportAll,
    /// Offers what is stored under this key for download, readable or not.
    ExportStored {
        /// Key of the file.
        id: String,
    },
    /// A file was read in: it opens as a new one.
    ImportText {
        /// Name of the file on disk.
        name: String,
        /// Its content.
        text: String,
    },
    /// A file could not be read at all.
    ImportFailed {
        /// Name of the file on disk.
        name: String,
        /// The browser's words.
        reason: String,
    },
    /// Keeps what a link brought as a file of its own.
    KeepShared,
    /// Back from what a link brought to the own file.
    LeaveShared,
    /// The browser could not store a file. It goes on trying.
    NotStored {
        /// The browser's words.
        reason: String,
    },
    /// Everything up to this `Effect::TellKept` is on the disk.
    Kept {
        /// Of the effect.
        ticket: u64,
    },
    /// The stored history of a file.
    Steps {
        /// Key of the file.
        id: String,
        /// In the order of their numbers.
        steps: Vec<StoredStep>,
    },
    /// The browser does not promise to keep what it stores.
    MayBeCleared,
    /// What was to be stored under a key is not, for another window has stored there; what it has stored
    /// follows as `StoredElsewhere`.
    NotWritten {
        /// Key of the file.
        id: String,
        /// What was to be stored.
        text: String,
    },
    /// The same file was stored by another window.
    StoredElsewhere {
        /// Key of the file.
        id: String,
        /// What was stored.
        text: String,
    },
}
