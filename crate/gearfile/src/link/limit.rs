//! How long a link may be to go through messengers whole.

/// Longest link text that is offered (characters): messengers cut or refuse longer ones.
pub const LINK_LIMIT: usize = 2000;

/// Whether an address of this many characters goes through messengers; offer the file otherwise.
#[must_use]
pub fn fits(link: &str) -> bool {
    link.chars().count() < LINK_LIMIT
}
