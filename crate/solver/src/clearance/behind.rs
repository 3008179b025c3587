//! Whether a moving corner comes behind a surface.
use crate::kinematics::Pose;
use crate::model::Point;

use super::barrier::Barrier;
use super::error::ClearanceError;
use super::sweep::Sweep;
use super::track::Track;

/// Bound on the intervals looked at for one part and surface.
const MAX_INTERVALS: usize = 20_000;

/// Width of progress below which an interval that may hold a point behind counts as one that does
/// [1].
const FINEST: f64 = 1e-9;

/// Whether a corner that runs from `a` to `b`, straying from the straight line by at most `stray`
/// [m], keeps clear of the back of a surface for certain.
///
/// It does when for every edge it stays in front of the edge's line, or past a free end of the
/// polyline, or farther from the edge than from the nearest one.
pub(crate) fn stays_in_front(barrier: &Barrier, a: Point, b: Point, stray: f64) -> bool {
    let last = barrier.edges.len().saturating_sub(1);
    let mut middle: Option<(Point, f64)> = None;
    barrier.edges.iter().enumerate().all(|(i, edge)| {
        if edge.side(a).min(edge.side(b)) > stray {
            return true;
        }
        let (from, to) = (edge.place(a), edge.place(b));
        if i == 0 && from.max(to) < -stray || i == last && from.min(to) > edge.length + stray {
            return true;
        }
        let reach = 0.5 * (b - a).norm() + stray;
        let (m, nearest) = *middle.get_or_insert_with(|| {
            let m = nalgebra::center(&a, &b);
            (m, barrier.nearest(m).distance)
        });
        super::segment::point_segment_squared(m, edge.a, edge.b).sqrt() - nearest > 2.0 * reach
    })
}

/// Whether some corner of the core lies behind the surface or on it.
pub(crate) fn is_behind(barrier: &Barrier, core: &[Point]) -> bool {
    core.iter().any(|&p| barrier.signed(p).0 <= 0.0)
}

/// A pose with a corner of the core behind an open barrier, if the path may have one.
///
/// An interval too short to decide counts as behind: the answer errs to that side only.
pub(crate) fn first_behind(
    track: &Track,
    sweep: &Sweep,
    barrier: &Barrier,
    obstacle: usize,
) -> Result<Option<Pose>, ClearanceError> {
    if barrier.closed {
        return Ok(None);
    }
    let first = track.first()?;
    if is_behind(barrier, sweep.core(0)) {
        return Ok(Some(first.pose));
    }
    let mut looked = 0;
    let mut stack: Vec<(Pose, Point, Pose, Point)> = Vec::new();
    for (i, pair) in track.nodes.windows(2).enumerate() {
        let [from, to] = pair else { continue };
        let span = sweep.span(i);
        for (corner, (&a, &b)) in span.from.iter().zip(span.to).enumerate() {
            if stays_in_front(barrier, a, b, span.stray) {
                continue;
            }
            stack.clear();
            stack.push((from.pose, a, to.pose, b));
            while let Some((from, a, to, b)) = stack.pop() {
                looked += 1;
                if looked > MAX_INTERVALS {
                    return Err(ClearanceError::Unresolved {
                        part: sweep.part.part,
                        obstacle,
                        from: from.place.progress,
                        to: to.place.progress,
                    });
                }
                if barrier.signed(b).0 <= 0.0 {
                    return Ok(Some(to));
                }
                if stays_in_front(barrier, a, b, sweep.part.stray(&track.rig, &from, &to)) {
                    continue;
                }
                if to.place.progress - from.place.progress < FINEST {
                    return Ok(Some(to));
                }
                let middle = track.pose(0.5 * (from.place.progress + to.place.progress))?;
                let Some(m) = sweep.part.corner(&track.rig, &middle, corner) else {
                    return Err(ClearanceError::NotAssembled {
                        progress: middle.place.progress,
                        miss: 0.0,
                    });
                };
                stack.push((middle, m, to, b));
                stack.push((from, a, middle, m));
            }
        }
    }
    Ok(None)
}
