//! The gear against time in words: how long, what happened when, why a leg stalls.

/// What times rest on.
mod basis;
/// Samples for other programs.
mod csv;
/// The table of events.
mod events;
/// Why there are none.
mod missing;
/// Sentences on a run.
mod sentence;
/// Why a leg stands.
mod stall;
/// What a text speaks of.
mod subject;

#[cfg(test)]
mod tests;

pub use basis::{case_sentence, supply_cautions, supply_simplified, times_missing};
pub use csv::{times_csv_head, times_csv_rows};
pub use events::{event_line, events_text, indication_words};
pub use missing::{down_title, run_missing, supply_error_text};
pub use sentence::{run_sentence, run_sentences};
pub use stall::stall_sentence;
pub use subject::Timed;
