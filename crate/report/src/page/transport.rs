//! Play and scrub.
use gearswing_gear::model::MovingPart;
use gearswing_solver::result::{Question, TireState};

use super::names::part_words;
use crate::finding::question_text;
use crate::subject::obstacle_words;

/// On the press that plays, while nothing runs.
pub const PLAY: &str = "Play";

/// On the same press while it runs.
pub const STOP: &str = "Stop";

/// A slow swing.
pub const SLOW: &str = "Slow";

/// A swing of normal speed.
pub const NORMAL: &str = "Normal";

/// A fast swing.
pub const FAST: &str = "Fast";

/// The swing is not played, since the person's system asks for less motion.
pub const LESS_MOTION: &str = "Your system is set to less motion: the swing is shown in steps.";

/// Where a leg is, for sight and screen reader.
#[must_use]
pub fn leg_at(leg: &str, place: &str) -> String {
    format!("{leg}: {place}")
}

/// A mark at the scrub.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum ScrubMark<'a> {
    /// The place that an answer speaks of.
    Governing(Question),
    /// First contact of a part with a piece of structure: its name as typed, and its index.
    Contact(MovingPart, Option<TireState>, &'a str, usize),
    /// First contact of the tire with its own leg.
    OwnContact(TireState, MovingPart),
    /// The pressure is not enough.
    Stalls,
    /// The leg stops.
    Stops,
}

/// What is at a mark of the scrub.
#[must_use]
pub fn mark_words(mark: ScrubMark) -> String {
    match mark {
        ScrubMark::Governing(question) => {
            format!("{}: the governing place", question_text(question))
        }
        ScrubMark::Contact(part, tire, name, index) => format!(
            "First contact: {} on {}",
            part_words(part, tire),
            obstacle_words(name, index)
        ),
        ScrubMark::OwnContact(tire, part) => format!(
            "First contact: {} on its own {}",
            part_words(MovingPart::Wheel, Some(tire)),
            part_words(part, None)
        ),
        ScrubMark::Stalls => "From here the pressure is not enough".to_owned(),
        ScrubMark::Stops => "The leg stops here".to_owned(),
    }
}
