//! States kept to compare with, and what differs from them.
use crate::name::name_words;

/// Name of a state by how many are kept with it.
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

/// The first line: how many numbers differ from the state compared with, or would with somebody else's.
#[must_use]
pub fn changes_line(count: usize, name: &str, sent: bool) -> String {
    let name = name_words(name);
    match (count, sent) {
        (0, _) => format!("Nothing differs from {name}."),
        (1, false) => format!("1 change from {name}."),
        (count, false) => format!("{count} changes from {name}."),
        (1, true) => format!("{name}: 1 change to your gear, not taken over."),
        (count, true) => format!("{name}: {count} changes to your gear, not taken over."),
    }
}

/// The first line where no state is compared with.
pub const NONE_CHOSEN: &str = "Not compared with any kept state.";

/// From what to what a value has changed, or would with what somebody else has there.
#[must_use]
pub fn from_to(from: &str, to: &str) -> String {
    format!("{from} → {to}")
}

/// Takes a change back, or one of somebody else's over.
#[must_use]
pub fn take(sent: bool) -> &'static str {
    if sent { "Take over" } else { "Take back" }
}

/// The same, of a change at a place: what stands there then.
#[must_use]
pub fn take_hint(place: &str, then: &str) -> String {
    format!("{place}: {then}")
}

/// The same of all changes.
#[must_use]
pub fn take_all(sent: bool) -> &'static str {
    if sent {
        "Take all over"
    } else {
        "Take all back"
    }
}

/// Name of the state in which a link came.
pub const AS_RECEIVED: &str = "As received";

/// Name of somebody else's state.
pub const SENT: &str = "Sent to me";

/// The own file that was to be compared with is not there any more.
pub const OWN_IS_GONE: &str =
    "Your own file of this gear is not there any more: nothing was put into any other.";

/// Compares what a link brought with the own file, in that.
pub const WITH_OWN: &str = "Compare with my own file";

/// Compares with a kept state.
pub const COMPARE: &str = "Compare with it";

/// Compares with none.
pub const COMPARE_NO_MORE: &str = "Stop comparing";

/// Removes a kept state.
pub const REMOVE: &str = "Remove";

/// Beside the state that is compared with.
const COMPARED: &str = "compared with";

/// The gear itself, beside the kept states.
pub const NOW: &str = "As it is now";

/// Numbers of the answers of a leg of a state.
#[must_use]
pub fn leg_numbers(leg: &str, numbers: &str) -> String {
    format!("{leg}: {numbers}")
}

/// Beside a kept state: whether it is compared with, and the numbers of its answers.
#[must_use]
pub fn kept_text(compared: bool, numbers: &str) -> String {
    match (compared, numbers.is_empty()) {
        (true, true) => COMPARED.to_owned(),
        (true, false) => format!("{numbers}; {COMPARED}"),
        (false, _) => numbers.to_owned(),
    }
}

/// A number of an answer as it was in the state compared with, or as it would be with somebody else's.
#[must_use]
pub fn was(figure: &str, sent: bool) -> String {
    if sent {
        format!("sent: {figure}")
    } else {
        format!("was {figure}")
    }
}

/// No more states are kept.
#[must_use]
pub fn too_many(most: usize) -> String {
    format!("{most} states are kept, which is all that a file holds: remove one first.")
}

/// A leg's tire is the previous one now.
#[must_use]
pub fn tire_kept(leg: &str) -> String {
    format!(
        "{leg}: this tire is kept as the previous one, and what you fit next is compared with it."
    )
}

/// The state is kept already.
#[must_use]
pub fn kept_already(name: &str) -> String {
    format!(
        "Nothing has changed since {} was kept: it is compared with that.",
        name_words(name)
    )
}

/// What is done to a kept state of this name.
#[must_use]
pub fn act_on(act: &str, name: &str) -> String {
    format!("{act}: {}", name_words(name))
}
