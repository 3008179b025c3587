//! Where a device of its own, that unlocks an over-centre knee, leaves the leg to the actuator.
use crate::model::{Brace, Folds, Leg, Point, UnlockedBy};
use crate::numeric::bracketed_root;

use super::linkage::BraceLinkage;
use super::{Linkage, Pose};

/// Least fold of the knee to which such a device carries it [rad], 1°: our own figure. At the straight
/// line itself an actuator on the leg has no say over the knee, so that what it takes to lift the
/// links and their springs from there grows beyond all bounds.
const LEAST_FOLD: f64 = std::f64::consts::PI / 180.0;

/// First progress that is looked at, and the width to which the place is bracketed [1].
const FIRST: f64 = 1e-3;
const TOLERANCE: f64 = 1e-13;

/// Progress from which the actuator carries the leg, where a device of its own unlocks the knee: it
/// takes the knee as far beyond the straight line as it locks before it, and by [`LEAST_FOLD`] at least
/// (an assumption, which the answer names). `None` for all other legs, and where the knee never folds
/// so far.
pub(super) fn hand_over(leg: &Leg, linkage: &Linkage) -> Option<f64> {
    let Brace::Folding(brace) = &leg.brace else {
        return None;
    };
    if brace.folds != Folds::ThroughCentre || brace.unlocked_by != UnlockedBy::Separate {
        return None;
    }
    let bent = |progress: f64| linkage.bent(&linkage.pose(progress).ok()?);
    let locked = linkage.bent(&linkage.pose(linkage.path().start()).ok()?)?;
    let wanted = locked.max(LEAST_FOLD);
    let short = |progress: f64| bent(progress).map_or(f64::NAN, |fold| fold - wanted);
    let mut beyond = FIRST;
    while short(beyond) < 0.0 {
        if beyond >= 1.0 {
            return None;
        }
        beyond = (2.0 * beyond).min(1.0);
    }
    let root = bracketed_root(short, 0.0, beyond, TOLERANCE).ok()?;
    Some(root.x)
}

impl Linkage {
    /// Angle by which the links of a folding brace are out of line, on either side [rad].
    pub(crate) fn bent(&self, pose: &Pose) -> Option<f64> {
        self.turn_at_knee(pose).map(f64::abs)
    }

    /// Turn from the upper to the lower link of a folding brace, counter-clockwise [rad].
    pub(crate) fn turn_at_knee(&self, pose: &Pose) -> Option<f64> {
        let (knee, attach) = pose.knee.zip(pose.brace_attach)?;
        let (upper, lower) = (knee - self.brace_pivot()?, attach - knee);
        Some(upper.perp(&lower).atan2(upper.dot(&lower)))
    }

    /// Pivot B0 of a brace [m].
    pub(crate) fn brace_pivot(&self) -> Option<Point> {
        match &self.brace {
            BraceLinkage::None => None,
            BraceLinkage::Sliding(b) => Some(b.pivot),
            BraceLinkage::Folding(b) => Some(b.pivot),
        }
    }

    /// Progress from which the actuator carries the leg.
    pub(crate) fn loaded_from(&self) -> f64 {
        self.hand_over.unwrap_or(f64::NEG_INFINITY)
    }
}
