//! What somebody says about a gear, for those who open its file or link.
use gearswing_gear::field::Path;
use gearswing_gear::model::{Gear, Note};
use gearswing_solver::result::Place;
use gearswing_units::UnitChoice;

use super::drawing::point_name;
use super::names::{leg_title, travel_words};
use crate::name::{clean, isolated, name_words};

/// A note was not added: it has no text.
pub const NO_TEXT: &str = "Write the note first.";

/// A note was not added: there are as many as a gear takes.
#[must_use]
pub fn too_many(most: usize) -> String {
    format!("A gear takes {most} notes: remove one first.")
}

/// So many notes that were sent have no room beside one's own.
#[must_use]
pub fn left_out(count: usize, most: usize) -> String {
    format!(
        "A gear takes {most} notes: {count} of those that were sent are not taken over. Open the link again to read them."
    )
}

/// Goes to what a note hangs on.
pub const SHOW: &str = "Show";

/// Adds the note at the place of travel that is shown, or at the point that is selected.
#[must_use]
pub fn add_at(what: &str) -> String {
    format!("Add at {what}")
}

/// On what a note hangs, with the place of the way where it is one; empty = on the gear, or on what is there no more.
#[must_use]
pub fn hangs_on(note: &Note, gear: &Gear, place: Option<&Place>, units: UnitChoice) -> String {
    let leg_of = |path: Path| {
        let leg = gear.legs.get(path.leg)?;
        Some(leg_title(&leg.name, path.leg))
    };
    match (leg_at(note), note.on.parse::<Path>()) {
        (Some(at), _) => gear.legs.get(at).map_or_else(String::new, |leg| {
            let leg = leg_title(&leg.name, at);
            match place {
                Some(place) => format!("{leg}, {}", travel_words(place, units)),
                None => leg,
            }
        }),
        (None, Ok(path)) if path.field.is_of_leg() => leg_of(path)
            .map_or_else(String::new, |leg| {
                format!("{leg}, {}", point_name(gear, path))
            }),
        (None, Ok(path)) => point_name(gear, path),
        _ => String::new(),
    }
}

/// The leg on which a note hangs with no more than a place of its way.
#[must_use]
pub fn leg_at(note: &Note) -> Option<usize> {
    let index = note.on.strip_prefix("legs[")?.strip_suffix(']')?;
    index.parse().ok()
}

/// Most letters of a note that are shown.
const LONGEST: usize = 200;

/// What is said, safe to stand anywhere.
fn text_of(note: &Note) -> String {
    let mut text = clean(&note.text);
    if let Some((cut, _)) = text.char_indices().nth(LONGEST) {
        text.truncate(cut);
        text.push('…');
    }
    isolated(text)
}

/// A note with who says so.
#[must_use]
pub fn note_words(note: &Note) -> String {
    let text = text_of(note);
    match name_words(&note.by).as_str() {
        "" => text,
        by => format!("{text} ({by})"),
    }
}

/// In the line of a link that was opened: the note written last, and who says so.
#[must_use]
pub fn last_words(gear: &Gear) -> Option<String> {
    let note = gear.notes.last()?;
    let text = text_of(note);
    Some(match name_words(&note.by).as_str() {
        "" => format!("“{text}”"),
        by => format!("{by}: “{text}”"),
    })
}

/// Heading of a note: its number, as on its flag, and on what it hangs.
#[must_use]
pub fn head(number: usize, place: &str) -> String {
    if place.is_empty() {
        format!("Note {number}")
    } else {
        format!("Note {number}, {place}")
    }
}
