//! Effects: what the page has to do after an update, in the order given.
use crate::state::Theme;

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
    /// Forget the stored gear file `id`; only ever asked for after the person did.
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
