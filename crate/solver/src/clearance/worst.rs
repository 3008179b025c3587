//! Deepest place of a part that goes past an obstacle.
use nalgebra::Vector2;

use crate::kinematics::Pose;

use super::barrier::Barrier;
use super::depth::{Deepest, Line, Mover, Unresolved, deepest};
use super::part::{Carrier, Part};
use super::path_nodes::{Node, PathNodes};
use super::relative::back_from_wheel;
use super::rig::Rig;
use super::sweep::Sweep;

/// Error of a depth over the path (m).
pub(crate) const DEPTH_TOLERANCE: f64 = 5e-5;

/// A part's core on its way.
struct Core<'a>(&'a PathNodes<'a>, &'a Part);

impl Mover for Core<'_> {
    fn line(&self, progress: f64) -> Option<Line> {
        let pose = self.0.pose(progress).ok()?;
        let mut points = Vec::with_capacity(self.1.core.len());
        self.1
            .place(&self.0.rig, &pose, &mut points)
            .then_some(Line {
                pose: Some(pose),
                points,
            })
    }

    fn stray(&self, from: &Line, to: &Line) -> f64 {
        match (from.pose, to.pose) {
            (Some(a), Some(b)) => self.1.stray(&self.0.rig, &a, &b),
            _ => f64::INFINITY,
        }
    }
}

/// An obstacle as seen from a part that turns with the leg.
struct Seen<'a> {
    track: &'a PathNodes<'a>,
    part: &'a Part,
    barrier: &'a Barrier,
    reach: f64,
}

impl Seen<'_> {
    fn at(&self, pose: Pose) -> Line {
        let rig = &self.track.rig;
        let slide: Vector2<f64> = self.part.slide(rig, &pose);
        Line {
            pose: Some(pose),
            points: self
                .barrier
                .points
                .iter()
                .map(|&p| {
                    let p = if self.part.from_wheel {
                        back_from_wheel(rig, &pose, p)
                    } else {
                        p
                    };
                    rig.trunnion + pose.turn_back(p - rig.trunnion) - slide
                })
                .collect(),
        }
    }
}

impl Mover for Seen<'_> {
    fn line(&self, progress: f64) -> Option<Line> {
        Some(self.at(self.track.pose(progress).ok()?))
    }

    /// The shortening only adds what goes straight with the swing: no term of its own.
    fn stray(&self, from: &Line, to: &Line) -> f64 {
        match (from.pose, to.pose) {
            // both turn with the leg, one slides straight along the other
            (Some(_), Some(_)) if self.part.from_wheel => 0.0,
            (Some(a), Some(b)) => Rig::stray_leg(&a, &b, self.reach, false),
            _ => f64::INFINITY,
        }
    }
}

/// The greatest depth of the part's core past the barrier, or of the barrier into the core, over
/// the path.
///
/// # Errors
/// When the search does not end within its bound.
pub(crate) fn greatest_depth(
    track: &PathNodes,
    sweep: &Sweep,
    barrier: &Barrier,
) -> Result<Deepest, Unresolved> {
    let part = sweep.part;
    let line = |(i, node): (usize, &Node)| {
        let points = sweep.core(i).map_err(|_| Unresolved)?.to_vec();
        Ok(Line {
            pose: Some(node.pose),
            points,
        })
    };
    let lines = track.nodes.iter().enumerate().map(line);
    let lines = lines.collect::<Result<_, Unresolved>>()?;
    let mut best = Deepest::NONE;
    let core = Core(track, part);
    deepest(&core, lines, true, barrier, DEPTH_TOLERANCE, &mut best)?;
    if part.closed() && matches!(part.carrier, Carrier::Leg | Carrier::Axle) {
        let own = Barrier::of_points(part.core.clone(), true);
        let centre = track.rig.trunnion;
        let seen = Seen {
            track,
            part,
            barrier,
            reach: barrier
                .points
                .iter()
                .map(|p| (p - centre).norm())
                .fold(0.0, f64::max),
        };
        let lines = track.nodes.iter().map(|node| seen.at(node.pose)).collect();
        deepest(
            &seen,
            lines,
            barrier.closed,
            &own,
            DEPTH_TOLERANCE,
            &mut best,
        )?;
    }
    Ok(best)
}
