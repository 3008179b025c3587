//! Rooms of the project that the checks need. A room that vanished must fail, not be skipped.

use crate::process::root;
use anyhow::{Result, bail};

/// Every room that holds checks, or what they check.
const ROOMS: &[&str] = &[
    "crate/app",
    "crate/command",
    "crate/gear",
    "crate/gearfile",
    "crate/page",
    "crate/report",
    "crate/solver",
    "crate/units",
    "crate/version",
    "crate/work",
    "crate/worker",
    "fixtures",
    "tests/browser",
    "tests/command",
    "tests/fuzz",
    "tests/properties",
    "tests/published",
    "tests/reference",
    "tests/support",
    "www",
];

/// Rooms still to be written. A room that exists must be struck from here.
const PENDING: &[&str] = &[];

/// Whether a room is there; one that is neither there nor pending is an error.
pub(crate) fn is_there(room: &str) -> Result<bool> {
    if root().join(room).is_dir() {
        return Ok(true);
    }
    if PENDING.contains(&room) {
        return Ok(false);
    }
    bail!("{room} is missing")
}

/// What is wrong with the list, one sentence each.
pub(crate) fn wrong() -> Vec<String> {
    let mut wrong = Vec::new();
    for room in ROOMS {
        if let Err(error) = is_there(room) {
            wrong.push(error.to_string());
        }
    }
    for room in PENDING {
        if !ROOMS.contains(room) {
            wrong.push(format!("{room} is pending but no room"));
        }
        if root().join(room).is_dir() {
            wrong.push(format!(
                "{room} is there: strike it from PENDING in crate/xtask/src/rooms.rs"
            ));
        }
    }
    wrong
}
