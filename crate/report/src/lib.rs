//! The words for a gear and its results, in one place for page and command.
//!
//! Pure: data and unit choice in, text out. Nothing here decides a verdict; that is the solver's.

/// Every field of the gear file: label, quantity and how to measure it.
pub mod fields;

/// Names and small parts of sentences.
mod text;

#[cfg(test)]
mod sample;
