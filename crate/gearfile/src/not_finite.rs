//! The path of a number that is not finite: JSON has no word for it.
use gearswing_gear::field;
use gearswing_gear::model::Gear;

use crate::file::SaveError;

/// Refuses a gear with such a number; `root` stands before its path.
///
/// # Errors
/// The path of the first number that is not finite, as "gear.legs[0].actuator.rod_m".
pub(crate) fn refuse_not_finite(gear: &Gear, root: &str) -> Result<(), SaveError> {
    if let Some(path) = field::not_finite(gear) {
        return Err(SaveError::NotFinite {
            path: format!("{root}.{path}"),
        });
    }
    gear.kept
        .iter()
        .enumerate()
        .try_for_each(|(at, kept)| refuse_not_finite(&kept.gear, &format!("kept[{at}]")))
}
