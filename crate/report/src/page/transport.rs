//! Play and scrub.
use gearswing_gear::model::MovingPart;
use gearswing_solver::result::{DrivenBy, TireState};
use gearswing_units::{Quantity, UnitChoice, format};

use super::names::part_words;
use crate::subject::{drive_quantity, negative_told, obstacle_words};
use crate::text::capital_first;

/// On the press that plays, while nothing runs.
pub const PLAY: &str = "Play";

/// On the same press while it runs.
pub const STOP: &str = "Stop";

/// The way from down to up is in hand.
pub const WAY_UP: &str = "on the way up";

/// That from up to down is.
pub const WAY_DOWN: &str = "on the way down";

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
    /// First contact of a part with a piece of structure: its name as typed, and its index.
    Touches(MovingPart, Option<TireState>, &'a str, usize),
    /// First contact of the tire with its own leg.
    TouchesOwn(TireState, MovingPart),
    /// The place of the governing clearance (m).
    Tightest(f64),
    /// The same where it is one of the tire to its own leg, which the curve of the well does not have (m).
    TightestOwn(f64),
    /// What touched is free again.
    Free,
    /// The most that is needed to retract, as pressure (Pa) or force (N).
    MostNeeded(DrivenBy, f64),
    /// The least moment that brings the leg down without pressure.
    LeastMoment,
    /// Dead point of the actuator.
    DeadPoint,
    /// The pressure is not enough.
    Stalls,
    /// The leg stops.
    Stops,
    /// Where it was seen to stop on the jacks.
    Seen,
    /// On which a note of this number hangs.
    Note(usize),
}

/// A mark in a few words, for the strip.
#[must_use]
pub fn mark_short(mark: ScrubMark, units: UnitChoice) -> String {
    match mark {
        ScrubMark::Touches(..) => "touches".to_owned(),
        ScrubMark::TouchesOwn(..) => "touches its own leg".to_owned(),
        ScrubMark::TightestOwn(clearance) => {
            let value = negative_told(Quantity::Length, units, clearance);
            format!("to its own leg, {value}")
        }
        ScrubMark::Tightest(clearance) => {
            let value = negative_told(Quantity::Length, units, clearance);
            if clearance <= 0.0 {
                format!("deepest, {value}")
            } else {
                format!("tightest, {value}")
            }
        }
        ScrubMark::Free => "free".to_owned(),
        ScrubMark::MostNeeded(driven_by, value) => {
            let value = format(drive_quantity(driven_by), units, value);
            match driven_by {
                DrivenBy::Fluid => format!("most pressure {value}"),
                DrivenBy::Electricity => format!("most force {value}"),
            }
        }
        ScrubMark::LeastMoment => "least fall moment".to_owned(),
        ScrubMark::DeadPoint => "dead point".to_owned(),
        ScrubMark::Stalls => "not enough pressure".to_owned(),
        ScrubMark::Stops => "stops".to_owned(),
        ScrubMark::Seen => "stood here".to_owned(),
        ScrubMark::Note(number) => format!("note {number}"),
    }
}

/// What is at a mark, in a sentence without its stop.
#[must_use]
pub fn mark_words(mark: ScrubMark, units: UnitChoice) -> String {
    match mark {
        ScrubMark::Touches(part, tire, name, index) => format!(
            "First contact: {} on {}",
            part_words(part, tire),
            obstacle_words(name, index)
        ),
        ScrubMark::TouchesOwn(tire, part) => format!(
            "First contact: {} on its own {}",
            part_words(MovingPart::Wheel, Some(tire)),
            part_words(part, None)
        ),
        ScrubMark::Free => "Free again".to_owned(),
        ScrubMark::LeastMoment => {
            "The least moment that brings the leg down without pressure".to_owned()
        }
        ScrubMark::DeadPoint => "Dead point of the actuator".to_owned(),
        ScrubMark::Stalls => "From here the pressure is not enough".to_owned(),
        ScrubMark::Stops => "The leg stops here".to_owned(),
        ScrubMark::Seen => "Here the leg stood on the jacks".to_owned(),
        ScrubMark::Note(number) => format!("Note {number} hangs here"),
        ScrubMark::Tightest(_) | ScrubMark::TightestOwn(_) | ScrubMark::MostNeeded(..) => {
            capital_first(&mark_short(mark, units))
        }
    }
}
