//! The gear against time in words: how long, what happened when, why a leg stalls.

/// Samples for other programs.
mod csv;
/// The table of events.
mod events;
/// Sentences.
mod sentence;
/// What a text speaks of.
mod subject;

#[cfg(test)]
mod tests;

pub use csv::{times_csv_head, times_csv_rows};
pub use events::{event_line, events_text, indication_words};
pub use sentence::{
    down_title, run_missing, run_sentence, run_sentences, stall_sentence, supply_cautions,
    supply_error_text, supply_simplified, times_missing,
};
pub use subject::Timed;
