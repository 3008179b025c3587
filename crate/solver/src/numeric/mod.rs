//! Small numeric tools: every loop bounded, every failure told.

/// Angles: wrapping and differences.
mod angle;
/// Root in a bracket.
mod bracketed_root;
/// Order of lists.
mod order;

pub use angle::wrap;
pub use bracketed_root::{Root, RootError, bracketed_root};
pub use order::{ranked, sort_short};
