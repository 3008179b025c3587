//! What explains a stop.

/// Brings the place of a stop into view.
pub const SHOW_STOP: &str = "Show it in the drawing";

/// A caution among sentences.
#[must_use]
pub fn caution_sentence(caution: &str) -> String {
    format!("Caution: {caution}")
}

/// It is not worked out yet.
pub const COMING: &str = "What explains the stop is being worked out.";

/// It was given up.
pub const GIVEN_UP: &str = "Working out what explains the stop was given up.";
