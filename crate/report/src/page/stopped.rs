//! What explains a stop.

/// Brings the place of a stop into view.
pub const SHOW_STOP: &str = "Show it in the drawing";

/// A caution among sentences.
#[must_use]
pub fn caution_sentence(caution: &str) -> String {
    format!("Caution: {caution}")
}
