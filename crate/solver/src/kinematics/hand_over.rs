//! Where a device of its own, that unlocks an over-center knee, leaves the leg to the actuator.
use crate::model::{Brace, Folds, Leg, Point, UnlockedBy};
use crate::numeric::{bracketed_root, direction};

use super::linkage::BraceLinkage;
use super::{Linkage, Pose};

/// Least fold of the knee to which such a device carries it (rad), 1°: our own figure. At the straight
/// line itself an actuator on the leg has no say over the knee, so that what it takes to lift the
/// links and their springs from there grows beyond all bounds.
const LEAST_FOLD: f64 = std::f64::consts::PI / 180.0;

/// First progress that is looked at, and the width to which the place is bracketed (ratio).
const FIRST: f64 = 1e-3;
const TOLERANCE: f64 = 1e-13;
/// As far out of line as it was locked, the knee lets the leg stand where it was at down, where a table
/// of shortening begins and the load jumps: the place is so far behind that (ratio).
const BEHIND: f64 = 2e-9;

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
    Some(root.x + BEHIND)
}

impl Linkage {
    /// Angle by which the links of a folding brace are out of line, on either side (rad).
    pub(crate) fn bent(&self, pose: &Pose) -> Option<f64> {
        self.turn_at_knee(pose).map(f64::abs)
    }

    /// Turn from the upper to the lower link of a folding brace, counter-clockwise (rad).
    pub(crate) fn turn_at_knee(&self, pose: &Pose) -> Option<f64> {
        let (knee, attach) = pose.knee.zip(pose.brace_attach)?;
        let (upper, lower) = (knee - self.brace_pivot()?, attach - knee);
        Some(direction(upper.dot(&lower), upper.perp(&lower)))
    }

    /// Pivot B0 of a brace (m).
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

#[cfg(test)]
mod tests {
    use super::*;
    use crate::model::{AttachTo, Link};
    use crate::{Options, solve_leg};

    /// The actuator carries the leg from where the device lets go, whatever the number of stations.
    #[test]
    fn the_device_lets_go_at_the_same_place_on_any_table() {
        let mut gear = gearswing_samples::pack::gear();
        gear.legs = vec![gearswing_samples::leg::leg()];
        let leg = &mut gear.legs[0];
        leg.actuator.attach_to = AttachTo::Leg;
        leg.actuator.shortest = 0.1;
        leg.actuator.longest = 2.0;
        let Brace::Folding(brace) = &mut leg.brace else {
            panic!("no knee");
        };
        brace.folds = Folds::ThroughCentre;
        brace.unlocked_by = UnlockedBy::Separate;
        let heavy = |link: &Link| Link { mass: 1.0, ..*link };
        brace.upper = heavy(&brace.upper);
        brace.lower = heavy(&brace.lower);
        let linkage = Linkage::new(&gear.legs[0]);
        let at = linkage.hand_over.unwrap();
        let bent = |progress: f64| linkage.bent(&linkage.pose(progress).unwrap()).unwrap();
        let locked = bent(linkage.path().start()).max(LEAST_FOLD);
        assert!((bent(at) / locked - 1.0).abs() < 1e-5);
        let needed = |stations: usize| {
            let options = Options {
                stations,
                ..Options::default()
            };
            let found = solve_leg(&gear, 0, &options).unwrap();
            let mut loaded = found
                .stations
                .iter()
                .filter_map(|s| Some((s.progress, s.force?)));
            let (progress, force) = loaded.next().unwrap();
            (progress, force.retract_pressure.unwrap())
        };
        let (place, pressure) = needed(721);
        assert!((place - at).abs() < 1e-9, "{place} {at}");
        let (_, finer) = needed(4001);
        assert!((pressure / finer - 1.0).abs() < 1e-9, "{pressure} {finer}");
    }
}
