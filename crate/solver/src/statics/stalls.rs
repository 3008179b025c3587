//! Where the pressure ceases to suffice, between two stations.
use super::PoseLoads;
use super::cases::Comparison;
use crate::kinematics::{Linkage, Pose};
use crate::numeric::bracketed_root;
use crate::result::Motion;

/// Width of progress to which the place is bracketed (ratio).
const TOLERANCE: f64 = 1e-10;

impl Comparison<'_> {
    /// Moves the places where the pressure does not suffice from the first station beyond to where it
    /// begins; `poses` are those of the stations.
    pub(crate) fn find_stalls(&mut self, linkage: &Linkage, poses: &[Pose]) {
        let (ready, available, partners) = (self.ready, self.available, self.partners);
        for tally in self.cases.iter_mut().flatten() {
            let (loads, case) = (tally.loads, tally.case);
            let Some((index, place)) = &mut tally.stalls_at else {
                continue;
            };
            let Some(before) = index.checked_sub(1).and_then(|at| poses.get(at)) else {
                continue;
            };
            if before.place.progress < linkage.loaded_from() {
                continue;
            }
            let over = |progress: f64| -> f64 {
                let Ok(pose) = linkage.pose(progress) else {
                    return f64::NAN;
                };
                let short = PoseLoads::new(ready, &pose, true).and_then(|stance| {
                    let mut at = stance.at(loads, None);
                    partners.map(|partners| partners.join(&mut at, case, pose.place));
                    let moved = at.motion(Motion::Retract).as_ref().ok()?;
                    Some(moved.pressure - available.at(Motion::Retract, case, pose.place))
                });
                short.unwrap_or(f64::NAN)
            };
            let found = bracketed_root(over, before.place.progress, place.progress, TOLERANCE);
            if let Ok(pose) = found
                .map_err(|_| ())
                .and_then(|root| linkage.pose(root.x).map_err(|_| ()))
            {
                *place = pose.place;
            }
        }
    }
}
