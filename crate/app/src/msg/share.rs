//! The link.

/// Something done with a link.
#[derive(Clone, Debug, PartialEq)]
pub enum Share {
    /// Makes the link and puts it on the clipboard.
    CopyLink,
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
