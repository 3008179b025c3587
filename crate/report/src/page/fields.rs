//! Rows of fields, and what can be done to them.
use gearswing_solver::tires::{SizeRow, Trust};

/// What an empty field stands for, where that has no room in it.
#[must_use]
pub fn empty_means(means: &str) -> String {
    format!("Empty: {means}.")
}

/// Why a typed number is not in use; `fault` is what is wrong with the number before it.
#[must_use]
pub fn not_in_use(error: &str, fault: Option<&str>) -> String {
    match fault {
        None => format!("{error}. The last good number stays in use."),
        Some(fault) => format!("{error}. The number before it is not right either: {fault}"),
    }
}

/// A typed number was not taken, spoken.
#[must_use]
pub fn not_taken(error: &str) -> String {
    format!("Not taken: {error}.")
}

/// A line that was pasted is no point, by its number from 1.
#[must_use]
pub fn not_a_point(number: usize, line: &str) -> String {
    let short: String = line.chars().take(40).collect();
    format!(
        "Nothing was pasted: line {number}, “{short}”, is no pair of lengths, as 12 3/8, 4 1/2."
    )
}

/// So many points were pasted, spoken.
#[must_use]
pub fn points_taken(count: usize) -> String {
    format!("Points put in: {count}.")
}

/// A range that holds for both signs.
#[must_use]
pub fn either_way(range: &str) -> String {
    format!("{range}, either way")
}

/// Adds an entry of a list behind this one.
pub const ADD_BEHIND: &str = "+";

/// The same in full.
#[must_use]
pub fn add_behind(name: &str) -> String {
    format!("Add one behind {name}")
}

/// Takes an entry out of its list.
pub const REMOVE: &str = "×";

/// The same in full.
#[must_use]
pub fn remove(name: &str) -> String {
    format!("Remove {name}")
}

/// Something was added, spoken.
#[must_use]
pub fn added(name: &str) -> String {
    format!("Added: {name}.")
}

/// Something was removed, spoken.
#[must_use]
pub fn removed(name: &str) -> String {
    format!("Removed: {name}. Undo brings it back.")
}

/// A trunnion was typed beyond the center line.
#[must_use]
pub fn other_side(leg: &str) -> String {
    format!(
        "{leg} stands on the other side of the center line now: out and inboard of its points are told from there."
    )
}

/// A measure was typed that the parts cannot have: the one that stood there stands again.
pub const CANNOT_BE: &str = "Not taken: with this measure the links of the brace could not close. What stood there stands again.";

/// Label of a tire's circumference, which stands for its diameter.
pub const CIRCUMFERENCE: &str = "Circumference";

/// How to measure it.
pub const CIRCUMFERENCE_HELP: &str = "A tape wrapped round the tread at full pressure, wheel off the ground. Typing it here sets the overall diameter.";

/// Label of the choice of a tire from the table of sizes.
pub const SIZE_TABLE: &str = "Take a standard size";

/// What it does.
pub const SIZE_TABLE_HELP: &str = "Puts in the largest new size of the table. A tire measured at full pressure, or the maker's figure, is better.";

/// A size of the table, for all plies that come to the same tire.
#[must_use]
pub fn size_words(row: &SizeRow, plies: &[String]) -> String {
    let ply = match plies {
        [] => String::new(),
        all => format!(", {} ply", all.join(" or ")),
    };
    let sure = match row.trust {
        Trust::SecondHand => "data book, second hand",
        Trust::Memory(_) => "from memory",
    };
    format!("{}{ply} ({sure})", row.size)
}
