//! How deep one line goes past another, at one pose or at the worst of a path.
use crate::kinematics::Pose;
use crate::model::Point;

use super::barrier::Barrier;
use super::behind::stays_in_front;
use super::segment::nearest_on_segment;
use super::sweep::line_edges;

/// The deepest point found.
#[derive(Clone, Copy, Debug)]
pub(crate) struct Deepest {
    /// Depth past the barrier's line, 0 when no point is past it [m].
    pub(crate) depth: f64,
    /// No point is deeper than this [m].
    pub(crate) at_most: f64,
    /// The deepest point and the barrier's nearest to it, as the search sees them [m].
    pub(crate) points: Option<(Point, Point)>,
    /// Progress of the pose where it was found [1].
    pub(crate) progress: f64,
}

impl Deepest {
    /// Nothing found yet.
    pub(crate) const NONE: Self = Self {
        depth: 0.0,
        at_most: 0.0,
        points: None,
        progress: f64::NAN,
    };

    fn offer(&mut self, barrier: &Barrier, p: Point, progress: f64) {
        let (signed, near) = barrier.signed(p);
        if -signed > self.depth || self.points.is_none() && signed <= 0.0 {
            self.depth = (-signed).max(0.0);
            self.points = Some((p, near));
            self.progress = progress;
        }
    }
}

/// The search did not end within its bound on patches.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) struct Unresolved;

/// Bound on the patches looked at in one search.
const MAX_PATCHES: usize = 400_000;

/// A line at one place of the path.
#[derive(Clone, Debug)]
pub(crate) struct Line {
    /// Pose it belongs to; absent for a line that stands still.
    pub(crate) pose: Option<Pose>,
    pub(crate) points: Vec<Point>,
}

impl Line {
    fn progress(&self) -> f64 {
        self.pose.map_or(0.0, |pose| pose.place.progress)
    }
}

/// Where a moving line is, and how it strays in between.
pub(crate) trait Mover {
    /// The line at `progress`.
    fn line(&self, progress: f64) -> Option<Line>;
    /// How far its points stray from the straight way between two of its places, at most [m].
    fn stray(&self, from: &Line, to: &Line) -> f64;
}

/// A line that stands still.
pub(crate) struct Still;

impl Mover for Still {
    fn line(&self, _: f64) -> Option<Line> {
        None
    }
    fn stray(&self, _: &Line, _: &Line) -> f64 {
        0.0
    }
}

/// A stretch of one edge over one interval of the path.
#[derive(Clone, Copy)]
struct Patch {
    edge: (usize, usize),
    share: (f64, f64),
    lines: (usize, usize),
    stray: f64,
}

/// The deepest point of a moving line past a barrier, to `tolerance` [m], over intervals between
/// neighbouring `lines`; added to what `best` holds. `closed` tells whether the line closes.
///
/// Depth is the distance from the barrier's line of a point inside of a solid or behind a surface.
/// Over a patch (a stretch of an edge, an interval of the path) it is at most the least, over the
/// barrier's edges, of the largest distance of the patch's four corners from that edge, plus the
/// straying: the distance from a segment is convex. Patches that can't beat the best are left out,
/// the others are halved on their longer side.
///
/// # Errors
/// When [`MAX_PATCHES`] do not do.
pub(crate) fn deepest(
    mover: &impl Mover,
    mut lines: Vec<Line>,
    closed: bool,
    barrier: &Barrier,
    tolerance: f64,
    best: &mut Deepest,
) -> Result<(), Unresolved> {
    for line in &lines {
        for &p in &line.points {
            best.offer(barrier, p, line.progress());
        }
    }
    let mut upper = best.depth;
    let mut looked = 0;
    let intervals = lines.len().max(2) - 1;
    let mut stack: Vec<Patch> = Vec::new();
    for i in 0..intervals {
        let j = (i + 1).min(lines.len().saturating_sub(1));
        let (Some(a), Some(b)) = (lines.get(i), lines.get(j)) else {
            break;
        };
        let stray = mover.stray(a, b);
        let count = a.points.len();
        let single = (count == 1).then_some((0, 0));
        for edge in line_edges(count, closed).chain(single) {
            stack.push(Patch {
                edge,
                share: (0.0, 1.0),
                lines: (i, j),
                stray,
            });
        }
        while let Some(patch) = stack.pop() {
            looked += 1;
            if looked > MAX_PATCHES {
                return Err(Unresolved);
            }
            let (Some(a), Some(b)) = (lines.get(patch.lines.0), lines.get(patch.lines.1)) else {
                continue;
            };
            let Some(corners) = corners(a, b, &patch) else {
                continue;
            };
            let (from, to) = (a.progress(), b.progress());
            for (corner, progress) in corners.iter().zip([from, from, to, to]) {
                best.offer(barrier, *corner, progress);
            }
            let bound = at_most(barrier, &corners, patch.stray);
            if bound <= best.depth + tolerance {
                upper = upper.max(bound);
                continue;
            }
            if stays_out(barrier, &corners, patch.stray) {
                continue;
            }
            let along = (corners[1] - corners[0])
                .norm()
                .max((corners[3] - corners[2]).norm());
            let across = (corners[2] - corners[0])
                .norm()
                .max((corners[3] - corners[1]).norm());
            if along.max(across).max(patch.stray) < 1e-3 * tolerance {
                // smaller than its bound: what is left is a jump at the end of a surface
                upper = upper.max(bound);
                continue;
            }
            if across.max(patch.stray) > along {
                let Some(line) = mover.line(0.5 * (from + to)) else {
                    return Err(Unresolved);
                };
                let strays = (mover.stray(a, &line), mover.stray(&line, b));
                lines.push(line);
                let m = lines.len() - 1;
                stack.push(Patch {
                    lines: (m, patch.lines.1),
                    stray: strays.1,
                    ..patch
                });
                stack.push(Patch {
                    lines: (patch.lines.0, m),
                    stray: strays.0,
                    ..patch
                });
            } else {
                let middle = 0.5 * (patch.share.0 + patch.share.1);
                stack.push(Patch {
                    share: (middle, patch.share.1),
                    ..patch
                });
                stack.push(Patch {
                    share: (patch.share.0, middle),
                    ..patch
                });
            }
        }
    }
    best.at_most = best.at_most.max(upper).max(best.depth);
    Ok(())
}

/// Places of a patch's ends: both shares at its first line, then at its last.
fn corners(a: &Line, b: &Line, patch: &Patch) -> Option<[Point; 4]> {
    let at = |line: &Line, share: f64| {
        let (p, q) = (
            line.points.get(patch.edge.0)?,
            line.points.get(patch.edge.1)?,
        );
        Some(p + (q - p) * share)
    };
    Some([
        at(a, patch.share.0)?,
        at(a, patch.share.1)?,
        at(b, patch.share.0)?,
        at(b, patch.share.1)?,
    ])
}

/// No point of the patch is farther from the barrier's line than this [m].
fn at_most(barrier: &Barrier, corners: &[Point; 4], stray: f64) -> f64 {
    barrier
        .edges
        .iter()
        .map(|edge| {
            corners
                .iter()
                .map(|&p| (p - nearest_on_segment(p, edge.a, edge.b)).norm_squared())
                .fold(0.0, f64::max)
        })
        .fold(f64::INFINITY, f64::min)
        .sqrt()
        + stray
}

/// Whether no point of the patch is past the barrier, for certain.
fn stays_out(barrier: &Barrier, corners: &[Point; 4], stray: f64) -> bool {
    let centre = nalgebra::center(
        &nalgebra::center(&corners[0], &corners[1]),
        &nalgebra::center(&corners[2], &corners[3]),
    );
    let reach = corners
        .iter()
        .map(|p| (p - centre).norm())
        .fold(0.0, f64::max)
        + stray;
    if barrier.closed {
        let near = barrier.nearest(centre);
        near.distance > reach && !barrier.contains(centre)
    } else {
        // every point of the patch is within `reach` of its centre
        stays_in_front(barrier, centre, centre, reach)
    }
}
