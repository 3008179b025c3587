//! A fault of a model in words.

/// Its sentence.
mod sentence;

#[cfg(test)]
mod tests;

pub use sentence::fault_text;
