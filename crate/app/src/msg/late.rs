//! What comes after the answers.
use gearswing_work::Found;

/// Word from where the gear against time and the stops are worked out.
#[derive(Clone, Debug, PartialEq)]
pub enum Late {
    /// A result.
    Found {
        /// The question that it answers, as in [`crate::Effect::WorkOut`].
        of: u64,
        /// The result.
        found: Box<Found>,
    },
    /// All results of a question have come.
    Over {
        /// The question.
        of: u64,
    },
    /// They will not come.
    Failed {
        /// The question.
        of: u64,
        /// Why, as the browser says it.
        reason: String,
    },
}
