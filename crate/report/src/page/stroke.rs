//! How far the actuator reaches, while an end of it is in hand.
use gearswing_units::{Quantity, UnitChoice, format};

/// An end of the actuator's stroke, at an end of the leg's way.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Bound {
    /// Extended; otherwise retracted.
    pub is_extended: bool,
    /// With the leg up; otherwise down.
    pub is_up: bool,
}

/// At an arc of the drawing: the actuator is just so long there.
#[must_use]
pub fn bound_words(bound: Bound) -> &'static str {
    match (bound.is_extended, bound.is_up) {
        (true, false) => "extended, leg down",
        (true, true) => "extended, leg up",
        (false, false) => "retracted, leg down",
        (false, true) => "retracted, leg up",
    }
}

/// What a dragged end has caught on.
#[must_use]
pub fn caught_words(bound: Bound) -> String {
    format!("just {}", bound_words(bound))
}

/// An end that slides along its arc.
pub const SLIDES: &str = "as long with the leg down";

/// What is left of the stroke at both ends (m), in turns of the rod end too where its pitch is known (m).
#[must_use]
pub fn left_words(extended: f64, retracted: f64, pitch: Option<f64>, units: UnitChoice) -> String {
    let say = |left: f64, end: &str, lacks: &str| {
        let length = format(Quantity::Length, units, left.abs());
        let turns = pitch
            .filter(|pitch| *pitch > 0.0)
            .map(|pitch| format!(" ({:.1} turns)", left.abs() / pitch));
        let word = if left < 0.0 { lacks } else { "left" };
        format!("{length}{} {word} {end}", turns.unwrap_or_default())
    };
    format!(
        "{}, {}",
        say(extended, "extended", "too short"),
        say(retracted, "retracted", "too long")
    )
}
