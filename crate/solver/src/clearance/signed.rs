//! Signed clearance of one placed outline to one obstacle.
use crate::model::Point;

use super::barrier::{Barrier, polygon_contains};
use super::behind::is_behind;
use super::depth::{Deepest, Line, Still, Unresolved, deepest};
use super::segment::Pair;
use super::sweep::nearest_lines;

/// Signed clearance and its two points.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(crate) struct Signed {
    /// Positive free, negative the depth of contact (m).
    pub(crate) clearance: f64,
    /// Point of the outline (m).
    pub(crate) on_part: Point,
    /// Point of the obstacle (m).
    pub(crate) on_obstacle: Point,
}

/// Distance of two lines below which they count as touching (m): a line through a corner may miss
/// both of its edges by rounding.
pub(crate) const TOUCH: f64 = 1e-12;

/// Error of a depth at one pose (m).
pub(crate) const DEPTH_TOLERANCE: f64 = 2e-5;

/// Whether the core is past the barrier somewhere: inside of a solid, around it, behind a surface,
/// or across its line (`distance` of the two lines is none).
pub(crate) fn is_past(core: &[Point], barrier: &Barrier, distance: f64) -> bool {
    let inside = || {
        if barrier.closed {
            core.first().is_some_and(|&p| barrier.contains(p))
        } else {
            is_behind(barrier, core)
        }
    };
    let around = || {
        core.len() > 2
            && barrier
                .points
                .first()
                .is_some_and(|&p| polygon_contains(core, p))
    };
    distance <= TOUCH || inside() || around()
}

/// Signed clearance of a core grown by `radius` (m); `None` for an empty shape.
///
/// # Errors
/// When the depth of a contact is not found within its bound.
pub(crate) fn signed_clearance(
    core: &[Point],
    radius: f64,
    barrier: &Barrier,
) -> Result<Option<Signed>, Unresolved> {
    if let [centre] = core {
        let (signed, near) = barrier.signed(*centre);
        return Ok(signed
            .is_finite()
            .then(|| outline_pair(*centre, near, signed, radius)));
    }
    let Some(lines) = nearest_lines(core, barrier, f64::INFINITY) else {
        return Ok(None);
    };
    if !is_past(core, barrier, lines.distance) {
        return Ok(Some(outline_pair(
            lines.first,
            lines.second,
            lines.distance,
            radius,
        )));
    }
    let deep = depth_at(core, barrier, &lines)?;
    Ok(Some(outline_pair(
        deep.first,
        deep.second,
        -deep.distance,
        radius,
    )))
}

/// Depth of a core at one pose, as a pair whose distance is the depth; `lines` is the pair to fall
/// back on when the lines only touch.
fn depth_at(core: &[Point], barrier: &Barrier, lines: &Pair) -> Result<Pair, Unresolved> {
    let still = |points: &[Point]| {
        vec![Line {
            pose: None,
            points: points.to_vec(),
        }]
    };
    let mut best = Deepest::NONE;
    deepest(
        &Still,
        still(core),
        true,
        barrier,
        DEPTH_TOLERANCE,
        &mut best,
    )?;
    let mut pair = match best.points {
        Some((first, second)) => Pair {
            distance: best.depth,
            first,
            second,
        },
        None => Pair {
            distance: 0.0,
            ..*lines
        },
    };
    if core.len() > 2 {
        let own = Barrier::of_points(core.to_vec(), true);
        let line = still(&barrier.points);
        let mut other = Deepest::NONE;
        deepest(
            &Still,
            line,
            barrier.closed,
            &own,
            DEPTH_TOLERANCE,
            &mut other,
        )?;
        if let Some((second, first)) = other.points
            && other.depth > pair.distance
        {
            pair = Pair {
                distance: other.depth,
                first,
                second,
            };
        }
    }
    Ok(pair)
}

/// Clearance and points of the outlines, from those of the core: `signed` is the core's signed
/// distance (m).
pub(crate) fn outline_pair(on_core: Point, on_obstacle: Point, signed: f64, radius: f64) -> Signed {
    let way = on_obstacle - on_core;
    // a core on the line itself has no direction; the outline's point is then left at the core
    let way = way.try_normalize(0.0).unwrap_or_default() * signed.signum();
    Signed {
        clearance: signed - radius,
        on_part: on_core + way * radius,
        on_obstacle,
    }
}
