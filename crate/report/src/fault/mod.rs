//! A fault of a model in words.

/// Its sentence.
mod sentence;
/// Why a clearance could not be certified.
mod unresolved;

#[cfg(test)]
mod tests;

pub use sentence::fault_text;
