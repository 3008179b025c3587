//! Least distance of a point that runs along a circular arc from a segment that stands still.
use crate::model::{Point, Vector};

use super::segment::nearest_on_segment;

/// A segment seen from the center of rotation, which is the origin.
#[derive(Clone, Copy, Debug)]
pub(crate) struct RadialSegment {
    a: Vector,
    b: Vector,
    /// Unit vector a→b; zero for a segment without length.
    along: Vector,
    length: f64,
    /// Where the normal from the center meets the line, from `a` (m).
    foot: f64,
    /// Distance of the center from the line (m).
    line: f64,
    radius_a: f64,
    radius_b: f64,
    /// Least and largest distance from the center (m).
    nearest: f64,
    farthest: f64,
}

impl RadialSegment {
    /// The segment `a`–`b` seen from `centre` (m).
    pub(crate) fn new(centre: Point, a: Point, b: Point) -> Self {
        let (a, b) = (a - centre, b - centre);
        let length = (b - a).norm();
        let along = if length > 0.0 {
            (b - a) / length
        } else {
            Vector::zeros()
        };
        let foot = -a.dot(&along);
        let line = along.perp(&a).abs();
        let (radius_a, radius_b) = (a.norm(), b.norm());
        let nearest = if foot > 0.0 && foot < length {
            line
        } else {
            radius_a.min(radius_b)
        };
        Self {
            a,
            b,
            along,
            length,
            foot,
            line,
            radius_a,
            radius_b,
            nearest,
            farthest: radius_a.max(radius_b),
        }
    }

    /// What a point at `radius` (m) keeps away at least, wherever it stands on its circle (m).
    #[inline]
    pub(crate) fn radial_gap(&self, radius: f64) -> f64 {
        (radius - self.farthest).max(self.nearest - radius).max(0.0)
    }

    #[inline]
    fn distance(&self, p: Vector) -> f64 {
        let near = nearest_on_segment(p.into(), self.a.into(), self.b.into());
        (p - near.coords).norm()
    }
}

/// An arc about the origin, run counter-clockwise.
#[derive(Clone, Copy, Debug)]
pub(crate) struct Arc {
    /// Radius (m).
    pub(crate) radius: f64,
    start: Vector,
    end: Vector,
    kind: Width,
}

#[derive(Clone, Copy, Debug, PartialEq)]
enum Width {
    Thin,
    UpToHalf,
    OverHalf,
    Full,
}

/// Turn below which an arc is thin (rad).
const THIN: f64 = 0.5;

/// Turn that counts as all around (rad).
const FULL_TURN: f64 = std::f64::consts::TAU - 1e-9;

impl Arc {
    /// The arc of the tip of `from` when it turns from `low` to `high` (rad), given as the cosine
    /// and sine of both and their difference.
    #[inline]
    pub(crate) fn new(from: Vector, low: (f64, f64), high: (f64, f64), span: f64) -> Self {
        let turn =
            |(c, s): (f64, f64)| Vector::new(c * from.x - s * from.y, s * from.x + c * from.y);
        Self {
            radius: from.norm(),
            start: turn(low),
            end: turn(high),
            kind: if span >= FULL_TURN {
                Width::Full
            } else if span > std::f64::consts::PI {
                Width::OverHalf
            } else if span > THIN {
                Width::UpToHalf
            } else {
                Width::Thin
            },
        }
    }

    /// Whether the arc holds a point in the direction of `d`.
    #[inline]
    fn holds(&self, d: Vector) -> bool {
        match self.kind {
            // the dot product keeps the far side out, where both cross products vanish too
            Width::Thin => {
                self.start.perp(&d) >= 0.0 && d.perp(&self.end) >= 0.0 && d.dot(&self.start) > 0.0
            }
            Width::UpToHalf => self.start.perp(&d) >= 0.0 && d.perp(&self.end) >= 0.0,
            Width::OverHalf => !(self.end.perp(&d) > 0.0 && d.perp(&self.start) > 0.0),
            Width::Full => true,
        }
    }

    /// Angle from the start of the arc to direction `d`, 0 … 2π (rad).
    pub(crate) fn angle_to(&self, d: Vector) -> f64 {
        let angle = self.start.perp(&d).atan2(self.start.dot(&d));
        if angle < 0.0 {
            angle + std::f64::consts::TAU
        } else {
            angle
        }
    }

    /// Least distance of the arc from a segment (m) and the direction in which the arc's point
    /// stands there, when it is below `cutoff` (m). 0 where they meet.
    ///
    /// Exact: a least distance lies at an end of the arc, on the ray through an end of the segment,
    /// on the normal from the center to the segment, or at a crossing.
    #[inline]
    pub(crate) fn nearest(&self, segment: &RadialSegment, cutoff: f64) -> Option<(f64, Vector)> {
        if segment.radial_gap(self.radius) >= cutoff {
            return None;
        }
        let mut best = (cutoff, Vector::zeros());
        let mut offer = |distance: f64, d: Vector| {
            if distance < best.0 {
                best = (distance, d);
            }
        };
        offer(segment.distance(self.start), self.start);
        offer(segment.distance(self.end), self.end);
        let gap_a = (segment.radius_a - self.radius).abs();
        if gap_a < cutoff && self.holds(segment.a) {
            offer(gap_a, segment.a);
        }
        let gap_b = (segment.radius_b - self.radius).abs();
        if gap_b < cutoff && self.holds(segment.b) {
            offer(gap_b, segment.b);
        }
        if segment.line >= self.radius {
            if segment.foot > 0.0 && segment.foot < segment.length {
                let foot = segment.a + segment.along * segment.foot;
                if self.holds(foot) {
                    offer(segment.line - self.radius, foot);
                }
            }
        } else {
            let half = ((self.radius - segment.line) * (self.radius + segment.line)).sqrt();
            for along in [segment.foot - half, segment.foot + half] {
                if along >= 0.0 && along <= segment.length {
                    let at = segment.a + segment.along * along;
                    if self.holds(at) {
                        offer(0.0, at);
                    }
                }
            }
        }
        (best.0 < cutoff).then_some(best)
    }
}
