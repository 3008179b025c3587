//! The link.

/// Something done with a link.
#[derive(Clone, Debug, PartialEq)]
pub enum Share {
    /// Makes the link, or its code where a link would lead nowhere, and puts it on the clipboard.
    CopyLink,
    /// Gives the page and this gear out as one HTML file.
    SaveOneFile,
    /// That file could not be made.
    OneFileFailed {
        /// The browser's words.
        reason: String,
    },
    /// The address at which others have the page, as it was typed; empty = this page's own.
    Home {
        /// As typed.
        text: String,
    },
    /// A newer version of the page has been fetched and waits.
    NewerWaits,
    /// Goes over to the newer version.
    TakeNewer,
    /// The clipboard has it.
    Copied,
    /// The clipboard refused.
    CopyFailed {
        /// The browser's words.
        reason: String,
    },
    /// A link, a fragment or a bare code was opened or pasted.
    OpenLink {
        /// As it came.
        text: String,
    },
}
