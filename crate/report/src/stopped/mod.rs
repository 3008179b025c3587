//! A leg that stopped on the jacks: what explains it, in words.

/// Sentences on causes.
mod cause;
/// Readings, lead and next check.
mod sentence;
/// What a text speaks of.
mod subject;

#[cfg(test)]
mod tests;

pub use cause::cause_sentence;
pub use sentence::{
    check_sentence, fit_words, readings_words, stop_cautions, stop_error_text, stop_lead,
    stop_notes,
};
pub use subject::Stopped;
