//! Small parts of sentences: legs by their names, first letters.
use crate::name::{after_isolate, isolated, short_name};

/// First words of a leg's name that are trade words, not names of their own: such a name gets an
/// article and a small letter in a sentence.
const TRADE_WORDS: &[&str] = &[
    "aft",
    "center",
    "centre",
    "forward",
    "front",
    "left",
    "main",
    "nose",
    "port",
    "rear",
    "right",
    "starboard",
    "tail",
];

/// A leg's name within a sentence without article: "right main", "LH gear", "leg 2" when unnamed.
pub(crate) fn leg_name(name: &str, index: usize) -> String {
    let name = short_name(name);
    if name.is_empty() {
        format!("leg {}", index.saturating_add(1))
    } else if is_trade_name(&name) {
        isolated(small_first(&name))
    } else {
        isolated(name)
    }
}

/// Leg within a sentence: "the right main", "the nose leg", "leg “LH gear”", "leg 2".
pub(crate) fn the_leg(name: &str, index: usize) -> String {
    let words = leg_name(name, index);
    let bare = short_name(name);
    match words.as_str() {
        "nose" | "tail" => format!("the {words} leg"),
        _ if is_trade_name(&bare) => format!("the {words}"),
        _ if bare.is_empty() => words,
        _ => format!("leg “{words}”"),
    }
}

/// A thing of a leg, to begin a sentence: "the right main's actuator", "on leg “LH gear”: the
/// actuator".
pub(crate) fn own(name: &str, index: usize, thing: &str) -> String {
    let leg = the_leg(name, index);
    if is_trade_name(&short_name(name)) {
        format!("{leg}'s {thing}")
    } else {
        format!("on {leg}: the {thing}")
    }
}

/// Whether a name begins with a trade word, as "Right main".
pub(crate) fn is_trade_name(name: &str) -> bool {
    let first = name.split([' ', '-']).next().unwrap_or_default();
    TRADE_WORDS.contains(&first.to_ascii_lowercase().as_str())
}

/// With a small first letter; a name that begins with a letter beyond English keeps it.
pub(crate) fn small_first(text: &str) -> String {
    let mut text = text.to_owned();
    if let Some(first) = text.get_mut(..1) {
        first.make_ascii_lowercase();
    }
    text
}

/// With a capital first letter; a name that begins with a letter beyond English keeps it.
#[must_use]
pub fn capital_first(text: &str) -> String {
    let mut text = text.to_owned();
    let at = after_isolate(&text);
    if let Some(first) = text.get_mut(at..at + 1) {
        first.make_ascii_uppercase();
    }
    text
}
