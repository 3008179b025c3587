//! The size of a whole leg: its trunnion to its axle. The number stands for every length of the leg.
use gearswing_gear::field::{NotStored, scale_leg};
use gearswing_gear::model::Gear;

use super::path::{Seg::At, Seg::Key, steps};

/// So many times larger or smaller a leg is made at most (ratio).
const MOST: f64 = 1000.0;

const KEY: &str = "trunnion_to_axle_m";

/// Path of it.
pub(crate) fn size_path(leg: usize) -> String {
    format!("legs[{leg}].{KEY}")
}

/// The leg whose size a path names.
pub(super) fn size_of(path: &str) -> Option<usize> {
    match steps(path)?.as_slice() {
        [Key("legs"), At(leg), Key(key)] if *key == KEY => Some(*leg),
        _ => None,
    }
}

/// Trunnion to axle of a leg, strut extended (m).
pub(super) fn size(gear: &Gear, leg: usize) -> Option<f64> {
    let leg = gear.legs.get(leg)?;
    Some((leg.strut.axle - leg.trunnion).norm())
}

/// Makes the whole leg so large that its axle is so far from its trunnion (m).
///
/// # Errors
/// No finite number above zero, one that is a thousand times that of now, no leg, or one whose axle is on its trunnion.
pub(super) fn set_size(gear: &mut Gear, leg: usize, value: f64) -> Result<(), NotStored> {
    if !value.is_finite() {
        return Err(NotStored::NotFinite);
    }
    let old = size(gear, leg).filter(|old| *old > 0.0 && value > 0.0);
    let times = value / old.ok_or(NotStored::NoValue)?;
    if !(1.0 / MOST..=MOST).contains(&times) {
        return Err(NotStored::NotFinite);
    }
    scale_leg(gear, leg, times);
    Ok(())
}
