//! Any text is read or refused with a sentence; what was read is written and read again unchanged.
use gearswing_gearfile::{READ_LIMIT, read, to_text};
use gearswing_report::{fault_text, open_error_text};
use gearswing_solver::faults::check_gear;
use gearswing_units::UnitChoice;

/// Most legs whose faults are put into words: the rest is the same again.
const MOST_LEGS: usize = 50;

/// Bytes as a gear file.
pub fn gear_file(data: &[u8]) {
    let Ok(text) = std::str::from_utf8(data) else {
        return;
    };
    let gear = match read(text) {
        Ok(gear) => gear,
        Err(error) => {
            assert!(!open_error_text(&error).is_empty());
            return;
        }
    };
    // written out with every blank it may be longer than what is read
    if text.len() < READ_LIMIT / 16 {
        let written = to_text(&gear).expect("what was read can be written");
        let again = read(&written).expect("what was written can be read");
        assert!(again == gear, "changed by writing:\n{written}");
        assert_eq!(to_text(&again).expect("writes again"), written);
    }
    if gear.legs.len() <= MOST_LEGS
        && let Err(faults) = check_gear(&gear)
    {
        for fault in &faults.0 {
            for units in [UnitChoice::INCH, UnitChoice::METRIC] {
                assert!(!fault_text(fault, &gear, units).is_empty());
            }
        }
    }
}
