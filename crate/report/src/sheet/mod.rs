//! The whole report of a gear file as readable text.

/// The tire against its own leg and along its trunnion.
mod beside;
/// Load cases and joint loads.
mod cases;
/// What differs between two gear files.
mod compared;
/// Fall without pressure.
mod fall;
/// One leg.
mod leg;
/// Lines of at most 78 characters.
mod lines;
/// Tightest places, force and lock of a leg.
mod numbers;
/// From cautions to what is not modeled.
mod report;
/// What explains a stop.
mod stopped;
/// The gear against time.
mod supply;

#[cfg(test)]
mod tests;

pub use cases::{TitledTable, load_tables};
pub use compared::comparison_text;
pub use fall::lock_facts;
pub use report::{ReportOptions, WITH_PREVIOUS_TIRE, report_text};
