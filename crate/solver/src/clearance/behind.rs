//! Whether a moving core comes behind a surface.
use std::ops::Range;

use crate::kinematics::Pose;
use crate::model::Point;

use super::barrier::{Barrier, Edge};
use super::path_nodes::PathNodes;
use super::segment::{Bounds, point_segment_squared};
use super::sweep::{Span, Sweep, core_edges};
use crate::result::ClearanceError;

/// Bound on the intervals looked at for one part and surface.
const MAX_INTERVALS: usize = 20_000;

/// Bound on the stretches of one edge looked at over one interval.
const MAX_STRETCHES: usize = 20_000;

/// Width of progress below which an interval that may hold a point behind counts as one that does
/// (ratio).
const FINEST: f64 = 1e-9;

/// Length below which a stretch of an edge that may be behind counts as behind (m).
const SHORTEST: f64 = 1e-9;

/// Two distances closer than this are not told apart (m): rounding of f64.
const TIE: f64 = 1e-12;

/// Whether no point within `stray` (m) of the convex hull of some points is behind a surface, for
/// certain.
///
/// It is so when no edge and no corner of the surface can be the nearest feature from behind. An
/// edge can't where the hull stays in front of its line, or off its ends, or nearer to another
/// edge; a corner between two edges can't where the hull stays in front of its pseudo-normal's
/// line, or beside one of the two edges, or nearer to another edge. All these are linear or
/// concave, so that the hull's points tell.
pub(crate) fn stays_in_front(barrier: &Barrier, hull: &[Point], stray: f64) -> bool {
    let most = |f: &dyn Fn(Point) -> f64| hull.iter().map(|&p| f(p)).fold(f64::MIN, f64::max);
    let least = |f: &dyn Fn(Point) -> f64| hull.iter().map(|&p| f(p)).fold(f64::MAX, f64::min);
    let mut nearest: Option<(Point, &Edge)> = None;
    // Whether one certain edge is nearer than what `flat`, a linear function of the place, says:
    // the distance from a segment is convex, so that the difference is least at one of the points.
    let mut nearer_to_another = |flat: &dyn Fn(Point, Point) -> f64| {
        let found = nearest.or_else(|| {
            let m = middle(hull);
            barrier.edges.get(barrier.nearest(m).edge).map(|e| (m, e))
        });
        nearest = found;
        found.is_some_and(|(m, other)| {
            least(&|p| flat(m, p) - point_segment_squared(p, other.a, other.b).sqrt())
                > 2.0 * stray + TIE
        })
    };
    let mut before: Option<&Edge> = None;
    for edge in &barrier.edges {
        let clear_of_edge = least(&|p| edge.side(p)) > stray
            || most(&|p| edge.place(p)) < -stray
            || least(&|p| edge.place(p)) > edge.length + stray
            // behind the edge its line is as near as it is, or nearer
            || nearer_to_another(&|_, p| -edge.side(p));
        let clear_of_corner = match before {
            None => true,
            Some(last) => {
                most(&|p| last.place(p)) < last.length - stray
                    || least(&|p| edge.place(p)) > stray
                    // the two normals add up to a vector of at most twice unit length
                    || least(&|p| last.side(p) + edge.side(p)) > 2.0 * stray
                    // a tangent plane of the distance from the corner lies below it
                    || nearer_to_another(&|m, p| {
                        // in the corner itself there is no such plane: no direction proves nothing
                        let out = (m - edge.a).try_normalize(0.0).unwrap_or_default();
                        out.dot(&(p - edge.a))
                    })
            }
        };
        if !(clear_of_edge && clear_of_corner) {
            return false;
        }
        before = Some(edge);
    }
    true
}

/// Mean of some points.
fn middle(points: &[Point]) -> Point {
    let sum: nalgebra::Vector2<f64> = points.iter().map(|p| p.coords).sum();
    Point::from(sum / points.len().max(1) as f64)
}

/// Whether the core's whole line stays in front of the surface over an interval, for certain.
///
/// Edges are cut into stretches until these are about as long as their own way; then the interval
/// is too wide to decide.
pub(crate) fn line_stays_in_front(span: &Span, barrier: &Barrier) -> bool {
    let count = span.from.len();
    let single = (count == 1).then_some((0, 0));
    let mut stack: Vec<(f64, f64)> = Vec::new();
    core_edges(count).chain(single).all(|(i, j)| {
        let (Some(&a), Some(&b), Some(&c), Some(&d)) = (
            span.from.get(i),
            span.from.get(j),
            span.to.get(i),
            span.to.get(j),
        ) else {
            return false;
        };
        stack.clear();
        stack.push((0.0, 1.0));
        for _ in 0..MAX_STRETCHES {
            let Some((low, high)) = stack.pop() else {
                return true;
            };
            let hull = [
                a + (b - a) * low,
                a + (b - a) * high,
                c + (d - c) * low,
                c + (d - c) * high,
            ];
            if stays_in_front(barrier, &hull, span.stray) {
                continue;
            }
            let along = (hull[1] - hull[0]).norm().max((hull[3] - hull[2]).norm());
            let across = (hull[2] - hull[0]).norm().max((hull[3] - hull[1]).norm());
            if along <= (across + span.stray).max(SHORTEST) {
                return false;
            }
            let middle = 0.5 * (low + high);
            stack.push((middle, high));
            stack.push((low, middle));
        }
        false
    })
}

/// Whether some point of the core's line lies behind the surface or on it.
pub(crate) fn is_behind(barrier: &Barrier, core: &[Point]) -> bool {
    if core.iter().any(|&p| barrier.signed(p).0 <= 0.0) {
        return true;
    }
    let mut stack: Vec<(Point, Point)> = Vec::new();
    for (i, j) in core_edges(core.len()) {
        stack.extend(core.get(i).copied().zip(core.get(j).copied()));
        for _ in 0..MAX_STRETCHES {
            let Some((a, b)) = stack.pop() else { break };
            if stays_in_front(barrier, &[a, b], 0.0) {
                continue;
            }
            let m = nalgebra::center(&a, &b);
            if barrier.signed(m).0 <= 0.0 || (b - a).norm() <= SHORTEST {
                return true;
            }
            stack.push((m, b));
            stack.push((a, m));
        }
        if !stack.is_empty() {
            return true;
        }
    }
    false
}

/// A pose with a point of the core behind an open barrier, if the path may have one.
///
/// Boxes around long stretches of the path settle most of it. An interval too short to decide
/// counts as behind: the answer errs to that side only.
pub(crate) fn first_behind(
    track: &PathNodes,
    sweep: &Sweep,
    barrier: &Barrier,
    obstacle: usize,
) -> Result<Option<Pose>, ClearanceError> {
    if barrier.closed {
        return Ok(None);
    }
    let mut ranges: Vec<Range<usize>> = Vec::with_capacity(16);
    ranges.push(0..sweep.len());
    while let Some(range) = ranges.pop() {
        // a box without an end settles nothing
        let bounds = sweep.range_bounds(range.clone());
        if bounds.is_finite() && stays_in_front(barrier, &corners(&bounds), 0.0) {
            continue;
        }
        if range.len() > 1 {
            let middle = range.start + range.len() / 2;
            ranges.push(middle..range.end);
            ranges.push(range.start..middle);
        } else if let Some(pose) = behind_in(track, sweep, barrier, range.start, obstacle)? {
            return Ok(Some(pose));
        }
    }
    Ok(None)
}

fn corners(bounds: &Bounds) -> [Point; 4] {
    let (a, b) = (bounds.min, bounds.max);
    [a, Point::new(b.x, a.y), b, Point::new(a.x, b.y)]
}

/// As [`first_behind`], within the interval that starts at node `i`.
fn behind_in(
    track: &PathNodes,
    sweep: &Sweep,
    barrier: &Barrier,
    i: usize,
    obstacle: usize,
) -> Result<Option<Pose>, ClearanceError> {
    let span = sweep.span(i)?;
    if line_stays_in_front(&span, barrier) {
        return Ok(None);
    }
    let (Some(from), Some(to)) = (
        track.nodes.get(i),
        track.nodes.get(i + 1).or(track.nodes.last()),
    ) else {
        return Err(ClearanceError::NoPath);
    };
    for (core, pose) in [(span.from, from.pose), (span.to, to.pose)] {
        if is_behind(barrier, core) {
            return Ok(Some(pose));
        }
    }
    let mut stack = vec![(from.pose, span.from.to_vec(), to.pose, span.to.to_vec())];
    let mut looked = 0;
    while let Some((from, from_core, to, to_core)) = stack.pop() {
        looked += 1;
        if looked > MAX_INTERVALS {
            return Err(ClearanceError::Unresolved {
                part: sweep.part.part,
                obstacle,
                from: from.place.progress,
                to: to.place.progress,
            });
        }
        let span = Span {
            from: &from_core,
            to: &to_core,
            stray: sweep.part.stray(&track.rig, &from, &to),
        };
        if line_stays_in_front(&span, barrier) {
            continue;
        }
        if to.place.progress - from.place.progress < FINEST {
            return Ok(Some(to));
        }
        let middle = track.pose(0.5 * (from.place.progress + to.place.progress))?;
        let mut core = Vec::with_capacity(from_core.len());
        if !sweep.part.place(&track.rig, &middle, &mut core) {
            return Err(ClearanceError::NotAssembled {
                progress: middle.place.progress,
                miss: 0.0,
            });
        }
        if is_behind(barrier, &core) {
            return Ok(Some(middle));
        }
        stack.push((middle, core.clone(), to, to_core));
        stack.push((from, from_core, middle, core));
    }
    Ok(None)
}
