//! Kept states as a file and a link hold them.

/// What differs from the gear itself.
mod state_text;

pub(crate) use state_text::{KeptText, keep, told};

#[cfg(test)]
mod tests;
