//! Answers of the legs and their faults.
use gearswing_gear::field::Field;
use gearswing_gear::model::Gear;
use gearswing_solver::result::Question;

use crate::fields::{path_words, words};
use crate::finding::question_text;
use crate::name::name_words;
use crate::text::capital_first;

/// In place of a leg's name where the file has none.
pub const NO_LEG: &str = "No leg";

/// Brings the field into view that something is said of.
pub const SHOW_FIELD: &str = "Show the field";

/// Brings the place of an answer into view.
pub const SHOW_PLACE: &str = "Show the place";

/// Over answers of an earlier state.
pub const FADED: &str = "These answers are of the last model that could be worked out:";

/// Numbers of an example that are named; the rest are counted.
const NAMED: usize = 5;

/// Over answers of a leg of whose points so many stand where a working example has them, of how many, and of whose
/// numbers these are the example's.
#[must_use]
pub fn of_example((same, points): (usize, usize), numbers: &[Field]) -> String {
    let named: Vec<&str> = numbers.iter().map(|field| words(*field).name).collect();
    let more = match named.len().checked_sub(NAMED) {
        Some(more @ 1..) => format!(" and {more} more"),
        _ => String::new(),
    };
    let named = named[..named.len().min(NAMED)].join(", ");
    let numbers = match numbers.len() {
        0 => String::new(),
        1 => format!("1 of its numbers is the example's: {named}. "),
        count => format!("{count} of its numbers are the example's: {named}{more}. "),
    };
    format!(
        "Of this leg's {points} points (axle, and pins but the trunnion), {same} still stand where the example has them. {numbers}Put in your own measurements before you trust an answer."
    )
}

/// What showing a leg does.
#[must_use]
pub fn show_in_drawing(leg: &str) -> String {
    format!("Show {leg} in the drawing")
}

/// What showing the place of an answer does.
#[must_use]
pub fn show_where(leg: &str, question: Question) -> String {
    format!(
        "{}: show where {}",
        name_words(leg),
        question_text(question).to_ascii_lowercase()
    )
}

/// An entry that cannot be read, as a fault.
#[must_use]
pub fn unread_entry(path: &str, text: &str, gear: &Gear) -> String {
    format!(
        "{}: the entry \"{}\" cannot be read and is not in use.",
        capital_first(&path_words(path, gear)),
        name_words(text)
    )
}

/// Head of what is folded away under an answer; cautions stand in it where the answer is good.
#[must_use]
pub fn reasons_head(with_cautions: bool) -> &'static str {
    if with_cautions {
        "In full, with cautions, what it rests on, what to try"
    } else {
        "What it rests on, what to try"
    }
}
