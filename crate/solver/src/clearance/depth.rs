//! How deep one line goes past another, at one pose or at the worst of a path.
use std::cmp::Ordering;
use std::collections::BinaryHeap;

use crate::kinematics::Pose;
use crate::model::Point;

use super::barrier::Barrier;
use super::behind::stays_in_front;
use super::segment::nearest_on_segment;
use super::sweep::line_edges;

/// The deepest point found.
#[derive(Clone, Copy, Debug)]
pub(crate) struct Deepest {
    /// Depth past the barrier's line, 0 when no point is past it (m).
    pub(crate) depth: f64,
    /// No point is deeper than this (m).
    pub(crate) at_most: f64,
    /// The deepest point and the barrier's nearest to it, as the search sees them (m).
    pub(crate) points: Option<(Point, Point)>,
    /// Progress of the pose where it was found (ratio).
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
    /// Where it is on the path; no number for a line that stands still.
    fn progress(&self) -> f64 {
        self.pose.map_or(f64::NAN, |pose| pose.place.progress)
    }
}

/// Where a moving line is, and how it strays in between.
pub(crate) trait Mover {
    /// The line at `progress`.
    fn line(&self, progress: f64) -> Option<Line>;
    /// How far its points stray from the straight way between two of its places, at most (m).
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
    corners: [Point; 4],
    /// No point of it is farther from the barrier's line (m).
    bound: f64,
}

impl PartialEq for Patch {
    fn eq(&self, other: &Self) -> bool {
        self.cmp(other).is_eq()
    }
}

impl Eq for Patch {}

impl PartialOrd for Patch {
    fn partial_cmp(&self, other: &Self) -> Option<Ordering> {
        Some(self.cmp(other))
    }
}

impl Ord for Patch {
    fn cmp(&self, other: &Self) -> Ordering {
        self.bound.total_cmp(&other.bound)
    }
}

/// The deepest point of a moving line past a barrier, to `tolerance` (m), over intervals between
/// neighboring `lines`; added to what `best` holds. `closed` tells whether the line closes.
///
/// Depth is the distance from the barrier's line of a point inside of a solid or behind a surface.
/// Over a patch (a stretch of an edge, an interval of the path) it is at most the least, over the
/// barrier's edges, of the largest distance of the patch's four corners from that edge, plus the
/// straying: the distance from a segment is convex. The patch with the greatest bound is halved on
/// its longer side, until no bound beats the best point found.
///
/// # Errors
/// When [`MAX_PATCHES`] do not do.
pub(crate) fn deepest(
    mover: &impl Mover,
    lines: Vec<Line>,
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
    let mut search = Search {
        lines,
        barrier,
        best,
        heap: BinaryHeap::new(),
    };
    let last = search.lines.len().saturating_sub(1);
    for i in 0..last.max(1) {
        search.start(mover, closed, (i, (i + 1).min(last)))?;
    }
    let mut looked = 0;
    while let Some(patch) = search.heap.pop() {
        // whatever is left is bounded by this one
        if patch.bound <= search.best.depth + tolerance {
            search.best.at_most = search.best.at_most.max(patch.bound);
            break;
        }
        looked += 1;
        if looked > MAX_PATCHES {
            return Err(Unresolved);
        }
        search.split(mover, &patch, 1e-3 * tolerance)?;
    }
    best.at_most = best.at_most.max(best.depth);
    Ok(())
}

/// State of one search.
struct Search<'a> {
    lines: Vec<Line>,
    barrier: &'a Barrier,
    best: &'a mut Deepest,
    heap: BinaryHeap<Patch>,
}

impl Search<'_> {
    /// Puts all edges over the interval between two lines on the heap.
    fn start(
        &mut self,
        mover: &impl Mover,
        closed: bool,
        lines: (usize, usize),
    ) -> Result<(), Unresolved> {
        let (a, b) = self.between(lines)?;
        let stray = mover.stray(a, b);
        let count = a.points.len();
        let single = (count == 1).then_some((0, 0));
        for edge in line_edges(count, closed).chain(single) {
            self.add(edge, (0.0, 1.0), lines, stray)?;
        }
        Ok(())
    }

    /// Both lines of an interval: without one nothing is known of it.
    fn between(&self, (from, to): (usize, usize)) -> Result<(&Line, &Line), Unresolved> {
        let lines = self.lines.get(from).zip(self.lines.get(to));
        lines.ok_or(Unresolved)
    }

    /// Looks at a patch and keeps it unless it is free for certain.
    fn add(
        &mut self,
        edge: (usize, usize),
        share: (f64, f64),
        lines: (usize, usize),
        stray: f64,
    ) -> Result<(), Unresolved> {
        let (a, b) = self.between(lines)?;
        let corners = corners(a, b, edge, share).ok_or(Unresolved)?;
        let (from, to) = (a.progress(), b.progress());
        for (corner, progress) in corners.iter().zip([from, from, to, to]) {
            self.best.offer(self.barrier, *corner, progress);
        }
        let bound = at_most(self.barrier, &corners, stray);
        if bound > self.best.depth && !stays_out(self.barrier, &corners, stray) {
            self.heap.push(Patch {
                edge,
                share,
                lines,
                stray,
                corners,
                bound,
            });
        }
        Ok(())
    }

    /// Halves a patch on its longer side; one of less than `least` size (m) stands as it is.
    fn split(&mut self, mover: &impl Mover, patch: &Patch, least: f64) -> Result<(), Unresolved> {
        let [p, q, r, s] = patch.corners;
        let along = (q - p).norm().max((s - r).norm());
        let across = (r - p).norm().max((s - q).norm()).max(patch.stray);
        if along.max(across) < least {
            // what is left is a jump at the end of a surface
            self.best.at_most = self.best.at_most.max(patch.bound);
            return Ok(());
        }
        if across <= along {
            let (low, high) = patch.share;
            let middle = 0.5 * (low + high);
            self.add(patch.edge, (low, middle), patch.lines, patch.stray)?;
            return self.add(patch.edge, (middle, high), patch.lines, patch.stray);
        }
        let (from, to) = patch.lines;
        let (a, b) = self.between(patch.lines)?;
        let line = mover
            .line(0.5 * (a.progress() + b.progress()))
            .ok_or(Unresolved)?;
        let strays = (mover.stray(a, &line), mover.stray(&line, b));
        let middle = self.lines.len();
        self.lines.push(line);
        self.add(patch.edge, patch.share, (from, middle), strays.0)?;
        self.add(patch.edge, patch.share, (middle, to), strays.1)
    }
}

/// Places of a patch's ends: both shares at its first line, then at its last.
fn corners(a: &Line, b: &Line, edge: (usize, usize), share: (f64, f64)) -> Option<[Point; 4]> {
    let at = |line: &Line, share: f64| {
        let (p, q) = (line.points.get(edge.0)?, line.points.get(edge.1)?);
        Some(p + (q - p) * share)
    };
    Some([
        at(a, share.0)?,
        at(a, share.1)?,
        at(b, share.0)?,
        at(b, share.1)?,
    ])
}

/// No point of the patch is farther from the barrier's line than this (m).
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
    if !barrier.closed {
        return stays_in_front(barrier, corners, stray);
    }
    let centre = nalgebra::center(
        &nalgebra::center(&corners[0], &corners[1]),
        &nalgebra::center(&corners[2], &corners[3]),
    );
    let reach = corners
        .iter()
        .map(|p| (p - centre).norm())
        .fold(0.0, f64::max)
        + stray;
    let near = barrier.nearest(centre);
    near.distance > reach && !barrier.contains(centre)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::model::{Obstacle, Shape};

    /// Of places that are equally deep the first on the way is told.
    #[test]
    fn the_first_of_equal_depths_stays() {
        let square = [(0.0, 0.0), (1.0, 0.0), (1.0, 1.0), (0.0, 1.0)];
        let points = square.map(|(x, y)| Point::new(x, y)).to_vec();
        let barrier = Barrier::new(&Obstacle {
            name: String::new(),
            shape: Shape::Solid { points },
            required_clearance: None,
            ignores: Vec::new(),
        });
        let mut deepest = Deepest::NONE;
        for (x, progress, told) in [
            (0.25, 0.1, (0.25, 0.1)),
            (0.75, 0.2, (0.25, 0.1)),
            (0.5, 0.3, (0.5, 0.3)),
            (0.25, 0.4, (0.5, 0.3)),
        ] {
            deepest.offer(&barrier, Point::new(x, 0.5), progress);
            assert_eq!((deepest.depth, deepest.progress), told);
        }
    }
}
