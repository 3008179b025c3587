//! Closed-form least distance of a part that turns about a fixed center, or slides straight.
use crate::model::{Point, Vector};

use super::arc::{Arc, RadialSegment};
use super::barrier::Barrier;
use super::segment::segment_segment;
use super::sweep::core_edges;

/// A barrier seen from a center of rotation.
#[derive(Debug, Default)]
pub(crate) struct RadialBarrier {
    centre: Option<Point>,
    edges: Vec<RadialSegment>,
    points: Vec<Vector>,
}

impl RadialBarrier {
    /// Looks at `barrier` from `centre`.
    pub(crate) fn new(barrier: &Barrier, centre: Point) -> Self {
        Self {
            centre: Some(centre),
            edges: barrier
                .edges
                .iter()
                .map(|e| RadialSegment::new(centre, e.a, e.b))
                .collect(),
            points: barrier.points.iter().map(|p| p - centre).collect(),
        }
    }

    /// Whether it is seen from `centre`.
    pub(crate) fn is_from(&self, centre: Point) -> bool {
        self.centre == Some(centre)
    }
}

/// A core that turns about a fixed center through an interval of angles.
#[derive(Debug)]
pub(crate) struct TurningCore {
    pub(crate) centre: Point,
    low: f64,
    high: f64,
    back_low: (f64, f64),
    back_high: (f64, f64),
    corners: Vec<Arc>,
    edges: Vec<RadialSegment>,
}

impl TurningCore {
    /// A core given at angle 0, turned from `low` to `high` (rad).
    pub(crate) fn new(core: &[Point], centre: Point, low: f64, high: f64) -> Self {
        let turn = |angle: f64| {
            let (sin, cos) = angle.sin_cos();
            (cos, sin)
        };
        let (from, to) = (turn(low), turn(high));
        Self {
            centre,
            low,
            high,
            back_low: turn(-high),
            back_high: turn(-low),
            corners: core
                .iter()
                .map(|p| Arc::new(p - centre, from, to, high - low))
                .collect(),
            edges: core_edges(core.len())
                .filter_map(|(i, j)| Some(RadialSegment::new(centre, *core.get(i)?, *core.get(j)?)))
                .collect(),
        }
    }

    /// Least distance of the core's line from the barrier's over all angles (m), 0 where they
    /// meet, and the angle where it is reached (rad); `None` for an empty barrier.
    ///
    /// Two lines come nearest at a corner of one of them. A corner of the core runs on an arc; a
    /// corner of the barrier, seen from the core, runs on an arc the other way round.
    pub(crate) fn nearest(&self, barrier: &RadialBarrier) -> Option<(f64, f64)> {
        let mut least = f64::INFINITY;
        let mut at: Option<(f64, f64)> = None;
        let mut found: Option<(Arc, Vector, bool)> = None;
        for arc in &self.corners {
            for edge in &barrier.edges {
                if let Some((distance, direction)) = arc.nearest(edge, least) {
                    least = distance;
                    found = Some((*arc, direction, false));
                }
            }
        }
        if !self.edges.is_empty() {
            for &point in &barrier.points {
                let radius = point.norm();
                if self
                    .edges
                    .iter()
                    .all(|edge| edge.radial_gap(radius) >= least)
                {
                    continue;
                }
                let arc = Arc::new(point, self.back_low, self.back_high, self.high - self.low);
                for edge in &self.edges {
                    if let Some((distance, direction)) = arc.nearest(edge, least) {
                        least = distance;
                        found = Some((arc, direction, true));
                    }
                }
            }
        }
        if let Some((arc, direction, back)) = found {
            let turned = arc.angle_to(direction);
            let angle = if back {
                self.high - turned
            } else {
                self.low + turned
            };
            // rounding at the start of an arc may come out as a full turn
            let angle = if angle > self.high + 0.5 * (std::f64::consts::TAU - self.high + self.low)
            {
                self.low
            } else if angle < self.low - 0.5 * (std::f64::consts::TAU - self.high + self.low) {
                self.high
            } else {
                angle
            };
            at = Some((least, angle.clamp(self.low, self.high)));
        }
        at
    }
}

/// Least distance of a core's line that slides straight by `way` from the barrier's line (m), and
/// the fraction of the way where it is reached (ratio).
pub(crate) fn sliding_nearest(
    core: &[Point],
    way: Vector,
    barrier: &Barrier,
) -> Option<(f64, f64)> {
    let length2 = way.norm_squared();
    let fraction = |moved: Vector| {
        if length2 > 0.0 {
            (moved.dot(&way) / length2).clamp(0.0, 1.0)
        } else {
            0.0
        }
    };
    let mut best: Option<(f64, f64)> = None;
    let mut offer = |distance: f64, at: f64| {
        if best.is_none_or(|(least, _)| distance < least) {
            best = Some((distance, at));
        }
    };
    for &corner in core {
        for edge in &barrier.edges {
            let pair = segment_segment(corner, corner + way, edge.a, edge.b);
            offer(pair.distance, fraction(pair.first - corner));
        }
    }
    for (i, j) in core_edges(core.len()) {
        let (Some(&a), Some(&b)) = (core.get(i), core.get(j)) else {
            break;
        };
        for &corner in &barrier.points {
            let pair = segment_segment(corner, corner - way, a, b);
            offer(pair.distance, fraction(corner - pair.first));
        }
    }
    best
}
