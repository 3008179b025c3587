//! Moving parts, pieces and places by their names.
use gearswing_gear::model::{MovingPart, View};
use gearswing_solver::result::{Phase, Place, TireState};
use gearswing_units::{Quantity, UnitChoice, format};

use crate::name::name_words;
use crate::subject::part_name;

pub use crate::subject::obstacle_words;

/// Sides in the names of legs, as each stands for the other in a mirror.
pub const SIDES: [(&str, &str); 2] = [("Left", "Right"), ("left", "right")];

/// A leg as a heading: its name, or "Leg 2".
#[must_use]
pub fn leg_title(name: &str, index: usize) -> String {
    named(name, || format!("Leg {}", index.saturating_add(1)))
}

/// A spring as a heading: its name, or "Spring 2".
#[must_use]
pub fn spring_title(name: &str, index: usize) -> String {
    named(name, || format!("Spring {}", index.saturating_add(1)))
}

/// A piece of structure as a heading: its name, or "Piece 2 of the well".
#[must_use]
pub fn piece_title(name: &str, index: usize) -> String {
    named(name, || {
        format!("Piece {} of the well", index.saturating_add(1))
    })
}

fn named(name: &str, unnamed: impl FnOnce() -> String) -> String {
    let name = name_words(name);
    if name.is_empty() { unnamed() } else { name }
}

/// From where a leg is seen.
pub(crate) fn seen_words(view: View) -> &'static str {
    match view {
        View::Side => "seen from the side",
        View::Front => "seen from ahead",
    }
}

/// Short names of the joints, as the drawing and its loads have them.
pub mod short {
    /// Trunnion.
    pub const TRUNNION: &str = "P";
    /// Brace pivot on the airframe.
    pub const BRACE_PIVOT: &str = "B0";
    /// Knee.
    pub const KNEE: &str = "K";
    /// Brace attach on the leg.
    pub const BRACE_ATTACH: &str = "B1";
    /// Actuator mount.
    pub const ACTUATOR_MOUNT: &str = "A0";
    /// Actuator attach.
    pub const ACTUATOR_ATTACH: &str = "A1";
    /// Axle.
    pub const AXLE: &str = "W";
}

/// Name of a new piece of structure.
pub const NEW_PIECE: &str = "Structure";

/// Name of a new spring.
pub const NEW_SPRING: &str = "Spring";

/// A moving part within a sentence; the tire by its state.
#[must_use]
pub fn part_words(part: MovingPart, tire: Option<TireState>) -> &'static str {
    match (part, tire) {
        (MovingPart::Wheel, Some(TireState::Grown)) => "grown tire",
        (MovingPart::Wheel, Some(TireState::New) | None) => "new tire",
        (part, _) => part_name(part),
    }
}

/// Where on the path a place is: "78.0 % of travel, swung 66.3°".
#[must_use]
pub fn place_words(place: &Place, units: UnitChoice) -> String {
    match place.phase {
        Phase::Shorten => "down, the strut is shortening".to_owned(),
        Phase::Unlock => "before the swing, the knee between its lock and the line".to_owned(),
        Phase::Swing => format!(
            "{} of travel, swung {}",
            format(Quantity::Travel, units, place.travel),
            format(Quantity::Angle, units, place.swing.abs())
        ),
    }
}

/// Where on the path a place is, in a word: "78.0 %".
#[must_use]
pub fn travel_short(place: &Place, units: UnitChoice) -> String {
    match place.phase {
        Phase::Shorten | Phase::Unlock => "down".to_owned(),
        Phase::Swing => format(Quantity::Travel, units, place.travel),
    }
}

/// Where on the path a place is, where there is little room: "78.0 % of travel".
#[must_use]
pub fn travel_words(place: &Place, units: UnitChoice) -> String {
    match place.phase {
        Phase::Shorten => "down, shortening".to_owned(),
        Phase::Unlock => "down, unlocking".to_owned(),
        Phase::Swing => format!(
            "{} of travel",
            format(Quantity::Travel, units, place.travel)
        ),
    }
}

/// A clearance: "0.31 in", or "0.14 in of interference".
#[must_use]
pub fn clearance_words(clearance: f64, units: UnitChoice) -> String {
    let length = format(Quantity::Length, units, clearance.abs());
    if clearance < 0.0 {
        format!("{length} of interference")
    } else {
        length
    }
}
