//! By how much each part has turned since gear down, whole turns included.
use super::linkage::{BraceLinkage, Linkage};
use super::pose::Pose;
use crate::model::Vector;
use crate::numeric::wrap;

/// Places of the path, beside its start, at which turns are followed: between two of them nothing
/// turns by half a turn.
const MARKS: usize = 96;

/// Turn of each part since gear down (rad).
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub(crate) struct Turns {
    pub(crate) leg: f64,
    /// Of the upper link, or of a telescopic brace.
    pub(crate) upper: f64,
    pub(crate) lower: f64,
}

impl Linkage {
    /// Turns at a pose, followed along the path: they do not jump at half a turn.
    pub(crate) fn turns(&self, pose: &Pose) -> Turns {
        let (start, end) = (self.path.start(), self.path.end());
        let share = (pose.place.progress - start) / (end - start);
        let near = (share * MARKS as f64).round() as usize;
        let last = self.marks.len().saturating_sub(1);
        // before anything is followed all parts stand as at gear down
        let mark = self.marks.get(near.min(last)).copied().unwrap_or_default();
        self.turns_near(pose, &mark)
    }

    /// Turns at a pose, each the next one to that given.
    fn turns_near(&self, pose: &Pose, near: &Turns) -> Turns {
        let between = |down: Vector, now: Vector, near: f64| {
            near + wrap(down.perp(&now).atan2(down.dot(&now)) - near)
        };
        let mut turns = Turns {
            leg: pose.place.swing,
            ..Turns::default()
        };
        match (&self.brace, pose.knee, pose.brace_attach) {
            (BraceLinkage::Folding(brace), Some(knee), Some(attach)) => {
                let (pivot, down) = (brace.pivot, brace.knee_down);
                turns.upper = between(down - pivot, knee - pivot, near.upper);
                let attach_down = self.trunnion + brace.attach;
                turns.lower = between(attach_down - down, attach - knee, near.lower);
            }
            (BraceLinkage::Sliding(brace), _, Some(attach)) => {
                let down = self.trunnion + brace.attach - brace.pivot;
                turns.upper = between(down, attach - brace.pivot, near.upper);
            }
            _ => {}
        }
        turns
    }

    /// Follows the turns as far along the path as it can be assembled.
    pub(super) fn follow_turns(&mut self) {
        let (start, end) = (self.path.start(), self.path.end());
        let mut near = Turns::default();
        for mark in 0..=MARKS {
            let progress = start + (end - start) * (mark as f64 / MARKS as f64);
            let Ok(pose) = self.pose(progress) else {
                break;
            };
            near = self.turns_near(&pose, &near);
            self.marks.push(near);
        }
    }
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
                let turns = linkage.turns(&pose);
                assert!((turns.upper - last).abs() < 0.01, "{station}");
                assert_eq!(turns.leg, pose.place.swing);
                last = turns.upper;
            }
            assert!(sign * last > PI + 0.1, "{last}");
        }
    }
}
