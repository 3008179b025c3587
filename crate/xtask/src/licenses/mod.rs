//! Notices of the libraries that page and command are linked with: gathered from the sources of the
//! crates, written beside the page.

/// All of it together.
mod gather;
/// The page that shows them.
mod html;
/// Which crates are linked.
mod linked;
/// License texts in a crate's source, and whether they are those that its manifest names.
mod texts;

pub(crate) use gather::{FILES, check, licenses, write};
