//! By how much each part has turned since gear down, whole turns included.
use super::linkage::{BraceLinkage, Linkage};
use super::pose::Pose;
use crate::model::{SpringJoint, Vector};
use crate::numeric::{direction, wrap};
use crate::result::Phase;

/// Places of the path, beside its start, at which turns are followed: between two of them nothing
/// turns by half a turn.
const MARKS: usize = 96;

/// Turn of upper link or telescopic brace, and of the lower link, since gear down (rad).
pub(super) type Turns = [f64; 2];

impl Linkage {
    /// Turn of the part that a joint names first against the other since gear down (rad), followed along the
    /// path: it does not jump at half a turn. `bent` is [`Self::turn_at_knee`] where it is known.
    pub(crate) fn turn_at(&self, joint: SpringJoint, pose: &Pose, bent: Option<f64>) -> f64 {
        if let (SpringJoint::Knee, BraceLinkage::Folding(brace)) = (joint, &self.brace) {
            let bent = bent.or_else(|| self.turn_at_knee(pose)).unwrap_or(0.0);
            // it comes to half a turn nowhere but where the links end their reach, and swings on one side
            let sided = match pose.place.phase {
                Phase::Swing => -brace.fold_side.sign() * bent.abs(),
                Phase::Unlock | Phase::Shorten => bent,
            };
            return sided - brace.bent_down;
        }
        let swing = pose.place.swing;
        let Some(([upper_down, lower_down], [upper, lower])) = self.links(pose) else {
            return swing;
        };
        let near = || self.near(pose.place.progress);
        match (joint, &self.brace) {
            (SpringJoint::Trunnion, _) => swing,
            (SpringJoint::BracePivot, _) => between(upper_down, upper, near()[0]),
            // both links of a brace that has no knee are the same
            (SpringJoint::Knee, _) => 0.0,
            (SpringJoint::LegAttach, BraceLinkage::Folding(_)) => {
                between(lower_down, lower, near()[1]) - swing
            }
            (SpringJoint::LegAttach, _) => between(upper_down, upper, near()[0]) - swing,
        }
    }

    /// Upper and lower link at gear down and at a pose (m), that of a telescopic brace twice; `None` without a
    /// brace.
    fn links(&self, pose: &Pose) -> Option<([Vector; 2], [Vector; 2])> {
        match (&self.brace, pose.knee, pose.brace_attach) {
            (BraceLinkage::Folding(brace), Some(knee), Some(attach)) => {
                let (pivot, down) = (brace.pivot, brace.knee_down);
                let attach_down = self.trunnion + brace.attach;
                Some((
                    [down - pivot, attach_down - down],
                    [knee - pivot, attach - knee],
                ))
            }
            (BraceLinkage::Sliding(brace), _, Some(attach)) => {
                let down = self.trunnion + brace.attach - brace.pivot;
                Some(([down; 2], [attach - brace.pivot; 2]))
            }
            _ => None,
        }
    }

    /// Turns at the mark next to a place.
    fn near(&self, progress: f64) -> Turns {
        let marks = self.marks.get_or_init(|| self.follow_turns());
        let (start, end) = (self.path.start(), self.path.end());
        let share = (progress - start) / (end - start);
        let near = (share * MARKS as f64 + 0.5) as usize;
        let last = marks.len().saturating_sub(1);
        // where nothing can be followed all parts stand as at gear down
        marks.get(near.min(last)).copied().unwrap_or_default()
    }

    /// Follows the turns as far along the path as it can be assembled.
    fn follow_turns(&self) -> Vec<Turns> {
        let (start, end) = (self.path.start(), self.path.end());
        let mut turns = Turns::default();
        let at = |mark: usize| start + (end - start) * (mark as f64 / MARKS as f64);
        let poses = (0..=MARKS).map_while(|mark| self.pose(at(mark)).ok());
        let links = poses.map_while(|pose| self.links(&pose));
        let turned = links.map(|(down, now)| {
            for (turn, (down, now)) in turns.iter_mut().zip(down.into_iter().zip(now)) {
                *turn = between(down, now, *turn);
            }
            turns
        });
        turned.collect()
    }
}

/// Angle from one direction to another (rad), the next one to one that is near.
fn between(from: Vector, to: Vector, near: f64) -> f64 {
    near + wrap(direction(from.dot(&to), from.perp(&to)) - near)
}

#[cfg(test)]
mod tests {
    use std::f64::consts::PI;

    use super::*;
    use crate::model::{Brace, Point, SlidingBrace};
    use gearswing_samples::leg as sample;

    /// A pivot between the arc of B1 and its chord sees B1 turn by more than half a turn (inscribed
    /// angles, Euclid III.20): the turn goes on steadily.
    #[test]
    fn turns_do_not_jump_at_half_a_turn() {
        for sign in [1.0, -1.0] {
            let mut leg = sample::leg();
            leg.swing_up *= sign;
            let middle = 0.5 * leg.swing_up;
            let inside = 0.33 / 0.4;
            leg.brace = Brace::Sliding(SlidingBrace {
                airframe_pivot: Point::new(0.4 * middle.sin(), -0.4 * middle.cos()) * inside,
                leg_attach: Point::new(0.0, -0.4),
                shortest: 0.01,
                longest: 0.9,
                thickness: 0.03,
                mass: 1.3,
            });
            let linkage = Linkage::new(&leg);
            let mut last = 0.0;
            for station in 0..=2000 {
                let pose = linkage.pose(f64::from(station) / 2000.0).unwrap();
                let upper = linkage.turn_at(SpringJoint::BracePivot, &pose, None);
                assert!((upper - last).abs() < 0.01, "{station}");
                let swing = linkage.turn_at(SpringJoint::Trunnion, &pose, None);
                assert_eq!(swing, pose.place.swing);
                last = upper;
            }
            assert!(sign * last > PI + 0.1, "{last}");
        }
    }
}
