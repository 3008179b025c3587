//! Mark, versions and longest text of a gear file.

use gearswing_gear::model::{DEFAULT_MARGIN_WANTED, Gear, MovingPart};

/// Value of the key `format`.
pub const FORMAT: &str = "gearswing-gear";

/// The newest version that can be read. What is written is the lowest version that holds it.
pub const VERSION: u64 = 2;

/// Longest text that is read [bytes].
pub const READ_LIMIT: usize = 4 << 20;

/// Keys that version 1 does not have: a gear with none of them is written as version 1, so that
/// older programs open it.
pub(crate) const NEW_IN_2: &[&str] = &[
    "available_down_pa",
    "couple_n_m",
    "drive_ratio",
    "emergency_pump_pa",
    "emergency_way",
    "friction_times_required",
    "pin_break_out",
    "out_of_plane",
    "pressure_switch_down_pa",
    "relief_down_pa",
    "seal_break_out_n",
    "shared_drive",
];

/// The lowest version that holds a gear, by its JSON without blanks.
pub(crate) fn lowest_version(gear: &Gear, json: &str) -> u64 {
    // within a text value the quotes before a key would be escaped
    let has = |key: &&str| json.contains(&format!("\"{key}\":"));
    let margin_typed = gear.supply.margin_wanted == Some(DEFAULT_MARGIN_WANTED);
    let arm_named = gear.legs.iter().flat_map(|leg| &leg.well).any(|obstacle| {
        // a part that version 1 does not know
        obstacle.ignores.contains(&MovingPart::LinkArm)
    });
    if margin_typed || arm_named || NEW_IN_2.iter().any(has) {
        2
    } else {
        1
    }
}

/// The step from a version to the present model. Version 1 always wrote the margin, whether somebody
/// had typed it or not: there its default says nothing.
pub(crate) fn upgrade(gear: &mut Gear, version: u64) {
    let margin = &mut gear.supply.margin_wanted;
    if version == 1 && *margin == Some(DEFAULT_MARGIN_WANTED) {
        *margin = None;
    }
}
