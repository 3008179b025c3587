//! Link text: a gear with leg, place and view, small enough for an address.
//!
//! ```text
//! gs V LLL c CCCCCC body… Z
//! │  │ │   │ │      │     └ end mark, so that a link never ends in - or _
//! │  │ │   │ │      └ compact JSON, deflated against a fixed text, base64url
//! │  │ │   │ └ CRC-32 of every other character
//! │  │ │   └ check character of version and length
//! │  │ └ number of characters of the whole link text
//! │  └ version of the gear in it, one of 1–9 a–z
//! └ mark
//! ```
//! Only A–Z a–z 0–9 - _ occur. Since the length is inside, a cut link says that it was cut; since
//! it is checked apart, a changed one says so; neither ever opens as something else.

/// Mark, version, length, checksum: wrapping a body and taking it out.
mod code;
/// Why a link text cannot be opened.
mod error;
/// What goes through messengers.
mod limit;
/// Deflate against a fixed text.
mod pack;
/// What a link holds.
mod shared;
/// Finding the link text in what was pasted.
mod strip;

pub(crate) use code::CHECKSUM;
pub use error::LinkError;
pub use limit::{LINK_LIMIT, fits};
pub use shared::{Shared, ViewState, content, decode, encode, open_content};

/// Cut, altered, foreign and wrapped links.
#[cfg(test)]
mod tests;
