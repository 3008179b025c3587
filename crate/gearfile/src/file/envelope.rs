//! Mark, version and longest text of a gear file.

/// Value of the key `format`.
pub const FORMAT: &str = "gearswing-gear";

/// Version that is written, and the newest that can be read.
pub const VERSION: u64 = 1;

/// Longest text that is read [bytes].
pub const READ_LIMIT: usize = 4 << 20;
