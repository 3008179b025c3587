//! Effects: what the page has to do after an update, in the order given.
use crate::state::{StoredStep, Theme};

/// One thing to be done outside of the state.
#[derive(Clone, Debug, PartialEq)]
pub enum Effect {
    /// Keep this text as the gear file `id` in the browser's storage.
    SaveFile {
        /// Key of the file.
        id: String,
        /// Everything of the file, typed drafts included.
        text: String,
    },
    /// Keep these steps of the history of the gear file `id`, in one with its text: both or none.
    SaveSteps {
        /// Key of the file.
        id: String,
        /// Steps stored under this key before are of another file: forget them.
        fresh: bool,
        /// Steps to keep.
        put: Vec<StoredStep>,
        /// Numbers of the steps to forget.
        gone: Vec<u64>,
    },
    /// Read the stored history of the gear file `id`; answer with `File::Steps`.
    LoadSteps {
        /// Key of the file.
        id: String,
    },
    /// Answer with `File::Kept` when everything asked for so far is on the disk, not before.
    TellKept {
        /// What to answer with.
        ticket: u64,
    },
    /// Draw eight bytes of chance; answer with `File::Chance`.
    DrawChance,
    /// Ask the browser not to clear what it keeps; answer with `File::MayBeCleared` if it refuses.
    AskToStay,
    /// Forget the stored gear file `id`, unless another window has changed it; only ever asked for
    /// after the person did. Its history stays while the page is open: the file may be brought back.
    DeleteFile {
        /// Key of the file.
        id: String,
    },
    /// Keep this text as the index of stored files.
    SaveIndex {
        /// The index.
        text: String,
    },
    /// Put this text on the clipboard; answer with `Share::Copied` or `Share::CopyFailed`.
    CopyText {
        /// The text.
        text: String,
    },
    /// Offer the page itself with a gear in it for download, as one HTML file; answer with `Share::OneFileFailed`
    /// if that does not work.
    SaveOneFile {
        /// File name.
        name: String,
        /// The code of the gear.
        code: String,
    },
    /// Work out what comes after the answers, and leave what was under way; answer with `Late`.
    WorkOut {
        /// The question, which comes back with its answers.
        of: u64,
        /// The gear file's text.
        text: String,
    },
    /// Leave what is under way of it.
    LeaveWork,
    /// Load the newer version of the page that waits.
    TakeNewer,
    /// Look for a newer version of the page, and load it at once if there is one.
    LookForNewer,
    /// Offer a file for download.
    Download {
        /// File name.
        name: String,
        /// Media type.
        mime: String,
        /// Content.
        text: String,
    },
    /// Set the fragment of the address without adding to the browser's history.
    SetFragment {
        /// Fragment without `#`.
        text: String,
    },
    /// Take the fragment off the address.
    ClearFragment,
    /// A `Msg::Frame` is wanted at the next animation frame.
    AskFrame,
    /// Speak this to a screen reader, politely.
    Announce {
        /// The sentence.
        text: String,
    },
    /// Put the keyboard focus on a field.
    FocusField {
        /// Path of the field.
        path: String,
    },
    /// The document's text, to be offered by the notice if the program ends; comes before a solve.
    RecoveryText {
        /// The gear file's text.
        text: String,
    },
    /// Show in this theme.
    SetTheme(Theme),
    /// Set the title of the browser's tab.
    SetTitle {
        /// The title.
        text: String,
    },
}

impl Effect {
    /// Whether it changes what is stored.
    pub(crate) fn stores(&self) -> bool {
        matches!(
            self,
            Self::SaveFile { .. }
                | Self::SaveSteps { .. }
                | Self::DeleteFile { .. }
                | Self::SaveIndex { .. }
        )
    }
}
