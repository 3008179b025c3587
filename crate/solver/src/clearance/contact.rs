//! First contact of a pair on the way up, bracketed.
use crate::kinematics::Pose;
use crate::model::Point;
use crate::result::Contact;

use super::barrier::Barrier;
use super::behind::line_stays_in_front;
use super::path_nodes::PathNodes;
use super::signed::{Signed, signed_clearance};
use super::sweep::{Span, Sweep};
use crate::result::ClearanceError;

/// Widest bracket of a first contact: swing (rad) and progress (ratio).
const BRACKET: (f64, f64) = (9e-7, 9e-7);

/// Width of progress at which an interval that may touch counts as one that does (ratio).
const FINEST: f64 = 1e-9;

/// Bound on the intervals looked at for one pair.
const MAX_INTERVALS: usize = 50_000;

/// A lower bound within this of the radius does not count as free (m): rounding of f64.
const ROUNDING: f64 = 1e-12;

/// Where a part first touches an obstacle, `None` when it is free all the way.
///
/// Goes through the path in order; an interval is free when its lower bound says so, else it is
/// halved until it is no wider than the bracket asked for and touches at its end. Which side of a
/// surface a part is on can turn at once past its ends; an interval too short to tell touches, so
/// that the error there is to the early side.
pub(crate) fn first_contact(
    track: &PathNodes,
    sweep: &Sweep,
    barrier: &Barrier,
    obstacle: usize,
) -> Result<Option<Contact>, ClearanceError> {
    let radius = sweep.part.radius;
    let unresolved = |from: &Pose, to: &Pose| ClearanceError::Unresolved {
        part: sweep.part.part,
        obstacle,
        from: from.place.progress,
        to: to.place.progress,
    };
    let first = track.first()?;
    let at = |core: &[Point], pose: &Pose| -> Result<Option<Signed>, ClearanceError> {
        signed_clearance(core, radius, barrier).map_err(|_| unresolved(pose, pose))
    };
    let start = at(sweep.core(0)?, &first.pose)?.ok_or(ClearanceError::NothingToCheck {
        part: sweep.part.part,
    })?;
    if start.clearance <= 0.0 {
        return Ok(Some(Contact {
            place: first.pose.place,
            bracket: 0.0,
            point: start.on_obstacle,
        }));
    }
    let mut looked = 0;
    let mut stack: Vec<(Pose, Vec<Point>, Pose, Vec<Point>)> = Vec::new();
    for (i, pair) in track.nodes.windows(2).enumerate() {
        let [a, b] = pair else { continue };
        let span = sweep.span(i)?;
        if barrier.closed && sweep.box_gap(i, barrier) > radius + ROUNDING
            || is_free(&span, radius, barrier)
        {
            continue;
        }
        stack.clear();
        stack.push((a.pose, span.from.to_vec(), b.pose, span.to.to_vec()));
        while let Some((from, from_core, to, to_core)) = stack.pop() {
            looked += 1;
            if looked > MAX_INTERVALS {
                return Err(unresolved(&from, &to));
            }
            let span = Span {
                from: &from_core,
                to: &to_core,
                stray: sweep.part.stray(&track.rig, &from, &to),
            };
            if is_free(&span, radius, barrier) {
                continue;
            }
            let bracket = (to.place.swing - from.place.swing).abs();
            if bracket <= BRACKET.0 && to.place.progress - from.place.progress <= BRACKET.1 {
                let touch = at(&to_core, &to)?;
                let touches = touch.as_ref().is_some_and(|t| t.clearance <= ROUNDING);
                if touches || to.place.progress - from.place.progress <= FINEST {
                    return Ok(touch.map(|touch| Contact {
                        place: from.place,
                        bracket,
                        point: touch.on_obstacle,
                    }));
                }
            }
            let middle = track.pose(0.5 * (from.place.progress + to.place.progress))?;
            let mut core = Vec::with_capacity(from_core.len());
            if !sweep.part.place(&track.rig, &middle, &mut core) {
                return Err(unresolved(&from, &to));
            }
            stack.push((middle, core.clone(), to, to_core));
            stack.push((from, from_core, middle, core));
        }
    }
    Ok(None)
}

/// Whether a core grown by `radius`, free at the start of an interval, is free all over it.
fn is_free(span: &Span, radius: f64, barrier: &Barrier) -> bool {
    let enough = radius + ROUNDING;
    span.stray.is_finite()
        && span.lower_bound(barrier, enough, f64::INFINITY) > enough
        && (barrier.closed || line_stays_in_front(span, barrier))
}
