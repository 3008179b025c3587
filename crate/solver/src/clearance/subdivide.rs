//! Least distance of a core in any motion, by subdivision with bounds of second order.
use crate::kinematics::Pose;
use crate::model::Point;

use super::barrier::Barrier;
use super::path_nodes::PathNodes;
use super::signed::TOUCH;
use super::sweep::{Span, Sweep, nearest_lines};
use crate::result::ClearanceError;

/// The least distance of a core's line from a barrier's over the path.
#[derive(Clone, Copy, Debug)]
pub(crate) struct Least {
    /// Least distance found (m); 0 where the lines cross.
    pub(crate) distance: f64,
    /// The true least distance is not below this (m).
    pub(crate) at_least: f64,
    /// Pose where it was found.
    pub(crate) pose: Pose,
}

/// Bound on the intervals looked at for one pair.
const MAX_INTERVALS: usize = 50_000;

/// One interval on the stack; cores are places in the arena.
struct Item {
    from: Pose,
    to: Pose,
    from_core: usize,
    to_core: usize,
    stray: f64,
}

/// The nodes of a path, of which one is nearest to a barrier.
pub(crate) struct NearNodes {
    /// Least distance of the lines at any of them (m), and where.
    pub(crate) distance: f64,
    pose: Pose,
    /// At each of them the distance is not below this (m).
    at_least: Vec<f64>,
}

/// The nearest node, to start from; `None` for a barrier without points.
///
/// # Errors
/// A core without points.
pub(crate) fn near_nodes(
    track: &PathNodes,
    sweep: &Sweep,
    barrier: &Barrier,
) -> Result<Option<NearNodes>, ClearanceError> {
    let Some(start) = nearest_lines(sweep.core(0)?, barrier, f64::INFINITY) else {
        return Ok(None);
    };
    let mut near = NearNodes {
        distance: start.distance,
        pose: track.first()?.pose,
        at_least: Vec::with_capacity(track.nodes.len()),
    };
    near.at_least.push(start.distance);
    // the node that was looked at last, and its distance or less
    let mut last = (0, start.distance);
    for (i, node) in track.nodes.iter().enumerate().skip(1) {
        let gap = sweep.box_gap(i.min(sweep.len() - 1), barrier);
        let gap = gap.max(last.1 - sweep.moved(last.0, i)?);
        if gap >= near.distance {
            near.at_least.push(gap);
            continue;
        }
        if let Some(pair) = nearest_lines(sweep.core(i)?, barrier, near.distance) {
            near.distance = pair.distance;
            near.pose = node.pose;
        }
        // this node's, or that of one before which it does not come below
        last = (i, near.distance);
        near.at_least.push(near.distance);
    }
    Ok(Some(near))
}

/// Least distance of the swept core's line from the barrier's line, to `accuracy` (m), and to half
/// of itself where that is finer, so that a near miss is told from a touch; from the nearest of the nodes.
///
/// Every interval is taken when its lower bound is not below the best distance found less the
/// accuracy, else halved. The straying falls with the square of the interval, so a few halvings
/// do. Stops at once where the lines cross.
///
/// # Errors
/// When [`MAX_INTERVALS`] do not do, or a pose cannot be assembled.
pub(crate) fn least_distance(
    track: &PathNodes,
    sweep: &Sweep,
    barrier: &Barrier,
    near: &NearNodes,
    obstacle: usize,
    accuracy: f64,
) -> Result<Least, ClearanceError> {
    let mut least = Least {
        distance: near.distance,
        at_least: f64::INFINITY,
        pose: near.pose,
    };
    let missing = ClearanceError::NothingToCheck {
        part: sweep.part.part,
    };
    let enough_for = |distance: f64| distance - accuracy.min(0.5 * distance).max(TOUCH);
    let mut lower = f64::INFINITY;
    let mut arena: Vec<Point> = Vec::new();
    let mut stack: Vec<Item> = Vec::new();
    let mut looked = 0;
    for (i, pair) in track.nodes.windows(2).enumerate() {
        if least.distance <= 0.0 {
            break;
        }
        let [a, b] = pair else { continue };
        let gap = sweep.box_gap(i, barrier);
        if gap >= enough_for(least.distance) {
            lower = lower.min(gap);
            continue;
        }
        // a point is nearest to one of its two places, from which it is by half its way at most
        let ends = near
            .at_least
            .get(i..i + 2)
            .map_or(0.0, |ends| ends.iter().sum());
        let span = sweep.span(i)?;
        if 0.5 * (ends - sweep.moved(i, i + 1)?) - span.stray >= lower.min(least.distance) {
            continue;
        }
        arena.clear();
        let count = span.from.len();
        arena.extend_from_slice(span.from);
        arena.extend_from_slice(span.to);
        stack.push(Item {
            from: a.pose,
            to: b.pose,
            from_core: 0,
            to_core: count,
            stray: span.stray,
        });
        while let Some(item) = stack.pop() {
            looked += 1;
            if looked > MAX_INTERVALS {
                return Err(ClearanceError::Unresolved {
                    part: sweep.part.part,
                    obstacle,
                    from: item.from.place.progress,
                    to: item.to.place.progress,
                });
            }
            let core = |at: usize| arena.get(at..at + count).ok_or(missing);
            let span = Span {
                from: core(item.from_core)?,
                to: core(item.to_core)?,
                stray: item.stray,
            };
            let enough = enough_for(least.distance);
            if item.stray.is_finite() {
                let bound = span.lower_bound(barrier, enough, lower.min(least.distance));
                if bound >= enough {
                    lower = lower.min(bound);
                    continue;
                }
            }
            let middle = track.pose(0.5 * (item.from.place.progress + item.to.place.progress))?;
            let middle_core = arena.len();
            if !sweep.part.place_onto(&track.rig, &middle, &mut arena) {
                return Err(ClearanceError::NotAssembled {
                    progress: middle.place.progress,
                    miss: 0.0,
                });
            }
            let core = arena.get(middle_core..).ok_or(missing)?;
            if let Some(pair) = nearest_lines(core, barrier, least.distance) {
                least.distance = pair.distance;
                least.pose = middle;
                if pair.distance <= 0.0 {
                    stack.clear();
                    break;
                }
            }
            let stray = |a, b| sweep.part.stray(&track.rig, a, b);
            stack.push(Item {
                from: middle,
                to: item.to,
                from_core: middle_core,
                to_core: item.to_core,
                stray: stray(&middle, &item.to),
            });
            stack.push(Item {
                from: item.from,
                to: middle,
                from_core: item.from_core,
                to_core: middle_core,
                stray: stray(&item.from, &middle),
            });
        }
    }
    least.at_least = lower.min(least.distance).max(0.0);
    Ok(least)
}
