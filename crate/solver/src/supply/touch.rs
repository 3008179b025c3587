//! Where a leg first touches its well on the way up, by the drawing.
use super::error::SupplyError;
use crate::clearance::{ClearanceCase, ClearanceOptions, clearances};
use crate::kinematics::{Linkage, Sweep};
use crate::model::{Gear, Leg, MovingPart};
use crate::result::TireState;
use crate::solve::unresolved;
use crate::tires::TireSizes;

/// Stations of the swing between which contact is looked for; each stretch is certified.
const STATIONS: usize = 181;

/// A first contact.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(crate) struct Touch {
    /// Last place known to be free [1].
    pub progress: f64,
    /// What touches.
    pub part: MovingPart,
    /// What is touched, as index into the leg's well.
    pub obstacle: usize,
}

/// First contact of a leg with its tire as fitted new; `None` when it clears. What touches already
/// where the leg starts stops nothing: it stood there before.
///
/// # Errors
/// [`SupplyError::Faults`] when the clearance of a stretch of the way cannot be certified.
pub(super) fn first_touch(
    gear: &Gear,
    index: usize,
    leg: &Leg,
) -> Result<Option<Touch>, SupplyError> {
    if leg.well.is_empty() {
        return Ok(None);
    }
    let linkage = Linkage::new(leg);
    let sweep = Sweep::new(leg, &linkage, STATIONS);
    let case = ClearanceCase {
        leg,
        sizes: &TireSizes::of(&leg.wheel.tire),
        rule: &gear.clearance_rule,
        linkage: &linkage,
        poses: &sweep.poses,
    };
    let options = ClearanceOptions {
        curve_stride: STATIONS,
        ..ClearanceOptions::default()
    };
    let found = clearances(&case, &options)
        .map_err(|error| SupplyError::Faults(unresolved(index, &error)))?;
    let start = linkage.path().start();
    let begins_at = leg.drive.start_travel.unwrap_or(0.0);
    let touches = found.pairs.iter().filter_map(|pair| {
        let place = pair.first_contact.as_ref()?.place;
        let is_ahead = place.progress > start && place.travel >= begins_at;
        (is_ahead && pair.tire != Some(TireState::Grown)).then_some(Touch {
            progress: place.progress,
            part: pair.part,
            obstacle: pair.obstacle,
        })
    });
    Ok(touches.min_by(|a, b| a.progress.total_cmp(&b.progress)))
}
