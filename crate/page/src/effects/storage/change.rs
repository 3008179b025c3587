//! What the state asks to be written.

use gearswing_app::StoredStep;

/// What is to be written.
pub(crate) enum Change {
    /// The text of a gear file.
    File {
        /// Its key.
        id: String,
        /// The text.
        text: String,
    },
    /// Steps of a file's history.
    Steps {
        /// The file's key.
        id: String,
        /// Steps stored before are of another file.
        fresh: bool,
        /// To be written.
        put: Vec<StoredStep>,
        /// To be taken out.
        gone: Vec<u64>,
    },
    /// A gear file is to be taken out.
    Delete {
        /// Its key.
        id: String,
    },
    /// The index of files.
    Index {
        /// The index.
        text: String,
    },
    /// What to answer with when all before is on the disk.
    Ticket(u64),
}
