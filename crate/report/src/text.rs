//! Small parts of sentences: names as typed, made safe to print and fit for a sentence.

/// Longest name printed [characters]; a longer one is cut.
const LONGEST_NAME: usize = 80;

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

/// A person's text as one line that is safe to print: control and direction-changing characters
/// become spaces, and runs of space one.
#[must_use]
pub fn clean(text: &str) -> String {
    let clean: String = text
        .chars()
        .map(|c| if is_unprintable(c) { ' ' } else { c })
        .collect();
    clean.split_whitespace().collect::<Vec<_>>().join(" ")
}

/// As [`clean`], and a long one is cut.
pub(crate) fn plain(text: &str) -> String {
    let mut line = clean(text);
    if let Some((cut, _)) = line.char_indices().nth(LONGEST_NAME) {
        line.truncate(cut);
        line.push('…');
    }
    line
}

fn is_unprintable(c: char) -> bool {
    // Bidirectional controls, zero-width characters and line separators besides the C0/C1 controls.
    c.is_control()
        || matches!(c, '\u{200b}'..='\u{200f}' | '\u{2028}'..='\u{202e}' | '\u{2060}'..='\u{206f}' | '\u{feff}')
}

/// A leg's name within a sentence without article: "right main", "LH gear", "leg 2" when unnamed.
pub(crate) fn leg_name(name: &str, index: usize) -> String {
    let name = plain(name);
    if name.is_empty() {
        return format!("leg {}", index.saturating_add(1));
    }
    if is_trade_name(&name) {
        small_first(&name)
    } else {
        name
    }
}

/// Leg within a sentence: "the right main", "the nose leg", "leg “LH gear”", "leg 2".
pub(crate) fn the_leg(name: &str, index: usize) -> String {
    let words = leg_name(name, index);
    match words.as_str() {
        "nose" | "tail" => format!("the {words} leg"),
        _ if is_trade_name(&words) => format!("the {words}"),
        _ if plain(name).is_empty() => words,
        _ => format!("leg “{words}”"),
    }
}

/// A thing of a leg, to begin a sentence: "the right main's actuator", "on leg “LH gear”: the
/// actuator".
pub(crate) fn own(name: &str, index: usize, thing: &str) -> String {
    let leg = the_leg(name, index);
    if is_trade_name(&leg_name(name, index)) {
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
    if let Some(first) = text.get_mut(..1) {
        first.make_ascii_uppercase();
    }
    text
}
