//! States kept to compare with, and what differs from them.
use crate::name::name_words;

/// The press that keeps the present state.
pub const KEEP: &str = "Keep to compare";

/// What it does.
pub const KEEP_HINT: &str =
    "Keeps the gear as it is now under a name, to compare with it what you change next";

/// Name of a state that is kept as the so manieth.
#[must_use]
pub fn state_name(number: usize) -> String {
    format!("Before {number}")
}

/// A state was kept.
#[must_use]
pub fn kept(name: &str) -> String {
    format!(
        "Kept as {}. What you change from here on is compared with it.",
        name_words(name)
    )
}

/// The first line: how many numbers differ from the state compared with.
#[must_use]
pub fn changes_line(count: usize, name: &str) -> String {
    let name = name_words(name);
    match count {
        0 => format!("Nothing differs from {name}."),
        1 => format!("1 change from {name}."),
        count => format!("{count} changes from {name}."),
    }
}

/// The first line where no state is compared with.
pub const NONE_CHOSEN: &str = "No kept state is compared with.";

/// From what to what a value has changed.
#[must_use]
pub fn from_to(before: &str, now: &str) -> String {
    format!("{before} → {now}")
}

/// Takes a change back.
pub const TAKE_BACK: &str = "Take back";

/// The same, of a change at a place.
#[must_use]
pub fn take_back_hint(place: &str, before: &str) -> String {
    format!("{place}: {before} again")
}

/// Takes all changes back.
pub const TAKE_ALL_BACK: &str = "Take all back";

/// Compares with a kept state.
pub const COMPARE: &str = "Compare with it";

/// Compares with none.
pub const COMPARE_NO_MORE: &str = "Compare no more";

/// Removes a kept state.
pub const REMOVE: &str = "Remove";

/// Beside the state that is compared with.
pub const COMPARED: &str = "compared with";

/// A number of an answer as it was in the state compared with.
#[must_use]
pub fn was(figure: &str) -> String {
    format!("was {figure}")
}

/// Beside the outline of the state compared with.
#[must_use]
pub fn outline_of(name: &str) -> String {
    format!("thin gray: {}", name_words(name))
}
