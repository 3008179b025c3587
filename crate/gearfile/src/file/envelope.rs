//! Mark, versions and longest text of a gear file.

use gearswing_gear::field::Field;
use gearswing_gear::model::{DEFAULT_MARGIN_WANTED, Gear, MovingPart};

/// Value of the key `format`.
pub const FORMAT: &str = "gearswing-gear";

/// The newest version that can be read. What is written is the lowest version that holds it.
pub const VERSION: u64 = 5;

/// The version that has kept states first.
const SINCE_KEPT: u64 = 4;

/// The version that has notes, and marks by which states of a gear find each other, first.
const SINCE_NOTES: u64 = 5;

/// Longest text that is read (bytes).
pub const READ_LIMIT: usize = 4 << 20;

/// The last key of a field that is not as old as the file, with the version that has it first.
pub(crate) fn newer_keys() -> impl Iterator<Item = (&'static str, u64)> {
    let fields = Field::ALL.iter().map(|field| field.info());
    fields.filter(|info| info.since > 1).filter_map(|info| {
        Some((
            info.key.trim_end_matches(['[', ']']).rsplit('.').next()?,
            info.since,
        ))
    })
}

/// The lowest version that holds a gear, by its JSON and that of its kept states without blanks: older programs open what they can.
pub(crate) fn lowest_version(gear: &Gear, json: &str) -> u64 {
    // within a text value the quotes before a key would be escaped
    // a kept state tells what differs by the paths of the fields
    let has =
        |key: &str| json.contains(&format!("\"{key}\":")) || json.contains(&format!(".{key}\""));
    let margin_typed = gear.supply.margin_wanted == Some(DEFAULT_MARGIN_WANTED);
    let arm_named = gear.legs.iter().flat_map(|leg| &leg.well).any(|obstacle| {
        // a part that version 1 does not know
        obstacle.ignores.contains(&MovingPart::LinkArm)
    });
    let noted = !gear.notes.is_empty() || gear.id.is_some();
    let mut version = if margin_typed || arm_named { 2 } else { 1 };
    if !gear.kept.is_empty() {
        version = SINCE_KEPT;
    }
    if noted {
        version = SINCE_NOTES;
    }
    for (key, since) in newer_keys() {
        if since > version && has(key) {
            version = since;
        }
    }
    version
}

/// The step from a version to the present model. Version 1 always wrote the margin, whether somebody
/// had typed it or not: there its default says nothing.
pub(crate) fn upgrade(gear: &mut Gear, version: u64) {
    let margin = &mut gear.supply.margin_wanted;
    if version == 1 && *margin == Some(DEFAULT_MARGIN_WANTED) {
        *margin = None;
    }
}
