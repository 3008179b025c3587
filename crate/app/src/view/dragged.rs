//! What is said of a point that is moved.
use gearswing_report::page::drawing::{moved_words, stops_at};
use gearswing_report::page::stroke::left_words;
use gearswing_report::{Stand, stand_lines};

use crate::scene;
use crate::state::State;

/// How the leg stands against when the point was taken, and what is left of the actuator's stroke.
fn stands(state: &State) -> Vec<String> {
    let units = state.session.units;
    let leg = state.derived.leg(state.session.leg);
    let good = leg.and_then(|leg| leg.current());
    let mut said = match (good, &state.session.stood) {
        (Some(good), Some(stood)) => stand_lines(&Stand::of(&good.result), stood, units),
        _ => Vec::new(),
    };
    // what stops the leg before anything else is asked
    if let Some(jam) = good.and_then(|good| good.result.jams.first()) {
        said.insert(0, stops_at(&jam.place, units));
    }
    if let Some(stroke) = scene::stroke(state) {
        let left = stroke.left();
        said.push(left_words(
            left.extended,
            left.retracted,
            stroke.pitch,
            units,
        ));
    }
    said
}

/// All of it in one text; empty where no point is moved.
pub(super) fn drag_text(state: &State) -> String {
    match state.session.drag_text.as_str() {
        "" => String::new(),
        text => moved_words(text, &stands(state).join("; ")),
    }
}

/// All of it in lines, the point's name first.
pub(crate) fn drag_lines(state: &State) -> Vec<String> {
    let text = state.session.drag_text.as_str();
    if text.is_empty() {
        return Vec::new();
    }
    let mut lines = Vec::with_capacity(8);
    let place = match text.split_once(": ") {
        // a sentence is no name
        Some((name, place)) if !name.contains(". ") => {
            lines.push(name.to_owned());
            place
        }
        _ => text,
    };
    let caught = state.session.snapped.as_ref().map(|caught| &caught.text);
    let alone = caught.and_then(|caught| place.strip_suffix(caught.as_str())?.strip_suffix(", "));
    lines.push(alone.unwrap_or(place).to_owned());
    lines.extend(alone.and(caught).cloned());
    lines.extend(stands(state));
    lines
}
