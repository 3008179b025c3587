//! The path cut at every place where some angle turns back.
//!
//! Between two neighboring nodes swing, upper link and actuator direction each run one way, and
//! the shortening goes straight with the swing. That is what makes the closed forms and the bounds
//! of an interval hold.
use crate::kinematics::{Linkage, Pose};
use crate::model::{AttachTo, Shortening, Vector};
use crate::numeric::{bracketed_root, sort_by};
use crate::result::Phase;

use super::rig::Rig;
use crate::result::ClearanceError;

/// Angles of a pose from gear down, followed without jumps.
#[derive(Clone, Copy, Debug, Default)]
pub(crate) struct Angles {
    /// Upper link (rad).
    pub(crate) upper: f64,
    /// Actuator, seen from A0 (rad).
    pub(crate) mount: f64,
    /// Lower link, seen from the leg (rad).
    pub(crate) knee: f64,
}

/// A pose of the path and its angles.
#[derive(Clone, Copy, Debug)]
pub(crate) struct Node {
    pub(crate) pose: Pose,
    pub(crate) angles: Angles,
}

/// An angle by which some part turns about a fixed center.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) enum Turning {
    /// Leg about the trunnion.
    Swing,
    /// Upper link about B0.
    Upper,
    /// Actuator body about A0.
    Mount,
    /// Lower link about B1, seen from the leg.
    Knee,
}

/// The path as nodes.
#[derive(Debug)]
pub(crate) struct PathNodes<'a> {
    pub(crate) linkage: &'a Linkage,
    pub(crate) rig: Rig,
    pub(crate) nodes: Vec<Node>,
}

/// Nodes of the swing that are wanted at least.
const NODES: usize = 48;

/// Bracket on the progress of a turning point (ratio).
const TURN_TOLERANCE: f64 = 1e-12;

/// Share of a rate below which another counts as none (ratio).
const NO_RATE: f64 = 1e-12;

/// Bracket on the progress of a given angle (ratio); far inside of the accuracy of any clearance.
const ANGLE_TOLERANCE: f64 = 1e-10;

impl<'a> PathNodes<'a> {
    /// Cuts the path of `poses` (in path order; those past a jam are not to be in it).
    pub(crate) fn new(
        linkage: &'a Linkage,
        rig: Rig,
        shortening: &Shortening,
        poses: &[Pose],
    ) -> Result<Self, ClearanceError> {
        let turnings = [Turning::Swing, Turning::Upper, Turning::Mount];
        Self::cut(linkage, rig, shortening, poses, &turnings)
    }

    /// Cuts it where angles turn back that are seen from the leg.
    pub(crate) fn seen_from_leg(
        linkage: &'a Linkage,
        rig: Rig,
        shortening: &Shortening,
        poses: &[Pose],
    ) -> Result<Self, ClearanceError> {
        let turnings = [Turning::Swing, Turning::Knee];
        Self::cut(linkage, rig, shortening, poses, &turnings)
    }

    fn cut(
        linkage: &'a Linkage,
        rig: Rig,
        shortening: &Shortening,
        poses: &[Pose],
        turnings: &[Turning],
    ) -> Result<Self, ClearanceError> {
        let first = poses.first().ok_or(ClearanceError::NoPath)?;
        let stride = (poses.len() / NODES).max(1);
        let mut track = Self {
            linkage,
            rig,
            nodes: Vec::with_capacity(2 * NODES),
        };
        track.push(*first)?;
        let rows = row_places(linkage, shortening);
        let mut since = 0;
        for pair in poses.windows(2) {
            let [a, b] = pair else { continue };
            since += 1;
            let mut cuts: Vec<f64> = Vec::new();
            if a.place.phase != Phase::Shorten {
                for &turning in turnings {
                    if rate(&rig, turning, a) * rate(&rig, turning, b) < 0.0 {
                        cuts.push(track.turn(turning, a, b)?);
                    }
                }
            }
            let (from, to) = (a.place.progress, b.place.progress);
            cuts.extend(rows.iter().filter(|&&s| s > from && s < to));
            if !cuts.is_empty() {
                sort_by(&mut cuts, f64::total_cmp);
                track.push_new(*a)?;
                for s in cuts {
                    track.push_new(track.pose(s)?)?;
                }
            }
            if since >= stride
                || a.place.phase != b.place.phase
                || !rows.is_empty() && on_row(&rows, b)
            {
                since = 0;
                track.push_new(*b)?;
            }
        }
        if let Some(last) = poses.last() {
            track.push_new(*last)?;
        }
        Ok(track)
    }

    /// The pose at `progress`.
    pub(crate) fn pose(&self, progress: f64) -> Result<Pose, ClearanceError> {
        self.linkage
            .pose(progress)
            .map_err(|miss| ClearanceError::NotAssembled {
                progress,
                miss: miss.0,
            })
    }

    /// First node; there always is one.
    pub(crate) fn first(&self) -> Result<&Node, ClearanceError> {
        self.nodes.first().ok_or(ClearanceError::NoPath)
    }

    /// Last node.
    pub(crate) fn last(&self) -> Result<&Node, ClearanceError> {
        self.nodes.last().ok_or(ClearanceError::NoPath)
    }

    /// Least and largest angle on the path, among nodes that `counts` (rad).
    pub(crate) fn range(
        &self,
        turning: Turning,
        counts: impl Fn(&Node) -> bool,
    ) -> Option<(f64, f64)> {
        self.nodes
            .iter()
            .filter(|node| counts(node))
            .map(|node| node.angle(turning))
            .fold(None, |range, angle| match range {
                None => Some((angle, angle)),
                Some((low, high)) => Some((low.min(angle), high.max(angle))),
            })
    }

    /// The first pose of the path, after the shortening, where an angle has the value `wanted`.
    pub(crate) fn pose_at(&self, turning: Turning, wanted: f64) -> Result<Pose, ClearanceError> {
        // closer than this a node stands for the angle itself
        const SAME: f64 = 1e-12;
        let mut before: Option<&Node> = None;
        for node in &self.nodes {
            let here = node.angle(turning) - wanted;
            if node.pose.place.phase == Phase::Shorten {
                before = Some(node);
                continue;
            }
            if here.abs() <= SAME {
                return Ok(node.pose);
            }
            if let Some(start) = before
                && (start.angle(turning) - wanted) * here < 0.0
            {
                return self.between(turning, wanted, start, node);
            }
            before = Some(node);
        }
        // a path that ends before the leg swings
        match self.nodes.last() {
            Some(last) if (last.angle(turning) - wanted).abs() <= SAME => Ok(last.pose),
            _ => Err(self.not_followed()),
        }
    }

    fn between(
        &self,
        turning: Turning,
        wanted: f64,
        start: &Node,
        end: &Node,
    ) -> Result<Pose, ClearanceError> {
        let (from, to) = (start.pose.place.progress, end.pose.place.progress);
        if turning == Turning::Swing && from >= 0.0 {
            let travel = wanted / self.linkage.swing_up();
            let pose = self.pose(self.linkage.progress_at_travel(travel))?;
            if (pose.place.swing - wanted).abs() <= ANGLE_TOLERANCE {
                return Ok(pose);
            }
        }
        let root = bracketed_root(
            |s| match self.linkage.pose(s) {
                Ok(pose) => {
                    start.angle(turning) + self.turned(turning, &start.pose, &pose) - wanted
                }
                Err(_) => f64::NAN,
            },
            from,
            to,
            ANGLE_TOLERANCE,
        )
        .map_err(|_| ClearanceError::NotFollowed { from, to })?;
        self.pose(root.x)
    }

    fn not_followed(&self) -> ClearanceError {
        let at = |node: Option<&Node>| node.map_or(f64::NAN, |n| n.pose.place.progress);
        ClearanceError::NotFollowed {
            from: at(self.nodes.first()),
            to: at(self.nodes.last()),
        }
    }

    /// Progress of the turning point of an angle between two poses.
    fn turn(&self, turning: Turning, a: &Pose, b: &Pose) -> Result<f64, ClearanceError> {
        let (from, to) = (a.place.progress, b.place.progress);
        let (low, high) = (
            rate(&self.rig, turning, a).abs(),
            rate(&self.rig, turning, b).abs(),
        );
        // at a dead point that ends the path the rate is none but for rounding
        if high < NO_RATE * low {
            return Ok(to);
        }
        if low < NO_RATE * high {
            return Ok(from);
        }
        bracketed_root(
            |s| match self.linkage.pose(s) {
                Ok(pose) => rate(&self.rig, turning, &pose),
                Err(_) => f64::NAN,
            },
            from,
            to,
            TURN_TOLERANCE,
        )
        .map(|root| root.x)
        .map_err(|_| ClearanceError::NotFollowed { from, to })
    }

    fn push_new(&mut self, pose: Pose) -> Result<(), ClearanceError> {
        let last = self.nodes.last().map(|n| n.pose.place.progress);
        if last.is_some_and(|s| s >= pose.place.progress) {
            return Ok(());
        }
        self.push(pose)
    }

    fn push(&mut self, pose: Pose) -> Result<(), ClearanceError> {
        let angles = match self.nodes.last() {
            None => {
                let from_down = |turning, down: Vector| {
                    let now = arm(&self.rig, turning, &pose);
                    down.perp(&now).atan2(down.dot(&now))
                };
                Angles {
                    upper: from_down(Turning::Upper, self.rig.knee - self.rig.pivot),
                    mount: from_down(Turning::Mount, self.rig.attach - self.rig.mount),
                    knee: from_down(Turning::Knee, self.rig.knee - self.rig.brace_attach),
                }
            }
            Some(last) => Angles {
                upper: last.angles.upper + self.turned(Turning::Upper, &last.pose, &pose),
                mount: last.angles.mount + self.turned(Turning::Mount, &last.pose, &pose),
                knee: last.angles.knee + self.turned(Turning::Knee, &last.pose, &pose),
            },
        };
        self.nodes.push(Node { pose, angles });
        Ok(())
    }

    /// Turn from one pose to the next, less than half a turn (rad).
    fn turned(&self, turning: Turning, a: &Pose, b: &Pose) -> f64 {
        if turning == Turning::Swing {
            return b.place.swing - a.place.swing;
        }
        let (u, v) = (arm(&self.rig, turning, a), arm(&self.rig, turning, b));
        u.perp(&v).atan2(u.dot(&v))
    }
}

impl Node {
    /// An angle of this node, from gear down (rad).
    pub(crate) fn angle(&self, turning: Turning) -> f64 {
        match turning {
            Turning::Swing => self.pose.place.swing,
            Turning::Upper => self.angles.upper,
            Turning::Mount => self.angles.mount,
            Turning::Knee => self.angles.knee,
        }
    }
}

/// From the center of a turning part to a point that it carries.
fn arm(rig: &Rig, turning: Turning, pose: &Pose) -> Vector {
    match turning {
        Turning::Swing => pose.turn(Vector::x()),
        Turning::Upper => pose.knee.map_or(rig.knee - rig.pivot, |k| k - rig.pivot),
        Turning::Mount => pose.actuator_attach - rig.mount,
        Turning::Knee => match pose.knee.zip(pose.brace_attach) {
            Some((knee, attach)) => pose.turn_back(knee - attach),
            None => rig.knee - rig.brace_attach,
        },
    }
}

/// Rate of an angle, in sign only.
fn rate(rig: &Rig, turning: Turning, pose: &Pose) -> f64 {
    match turning {
        Turning::Swing => pose.rates.swing,
        Turning::Upper => pose.rates.upper,
        Turning::Knee => pose.rates.lower - pose.rates.swing,
        Turning::Mount => {
            let a1 = pose.actuator_attach;
            let about = |centre, rate: f64| quarter(a1 - centre) * rate;
            let speed = match (rig.attach_to, pose.knee) {
                (AttachTo::UpperLink, Some(_)) => about(rig.pivot, pose.rates.upper),
                (AttachTo::LowerLink, Some(knee)) => {
                    quarter(knee - rig.pivot) * pose.rates.upper + about(knee, pose.rates.lower)
                }
                _ => about(rig.trunnion, pose.rates.swing),
            };
            (a1 - rig.mount).perp(&speed)
        }
    }
}

fn quarter(v: Vector) -> Vector {
    Vector::new(-v.y, v.x)
}

/// Progress of the rows of a shortening table, where its slope breaks.
fn row_places(linkage: &Linkage, shortening: &Shortening) -> Vec<f64> {
    match shortening {
        Shortening::WithTravel { table } => table
            .iter()
            .map(|row| linkage.progress_at_travel(row.travel))
            .collect(),
        _ => Vec::new(),
    }
}

/// Whether `pose` stands on a row.
fn on_row(rows: &[f64], pose: &Pose) -> bool {
    rows.contains(&pose.place.progress)
}
