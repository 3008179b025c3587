//! Two-link assemblies in closed form.
use crate::model::{Point, Vector};

/// Side of the apex of a dyad, seen from the first center to the second.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Side {
    /// Left of the line of centers.
    Left,
    /// Right of it.
    Right,
}

impl Side {
    /// Side on which `point` lies of the line from `from` to `to`; on the line counts as left.
    #[must_use]
    pub fn of(point: Point, from: Point, to: Point) -> Self {
        if (to - from).perp(&(point - from)) < 0.0 {
            Self::Right
        } else {
            Self::Left
        }
    }

    /// +1 for left, −1 for right (ratio).
    #[must_use]
    pub fn sign(self) -> f64 {
        match self {
            Self::Left => 1.0,
            Self::Right => -1.0,
        }
    }

    /// The other side.
    #[must_use]
    pub fn other(self) -> Self {
        match self {
            Self::Left => Self::Right,
            Self::Right => Self::Left,
        }
    }
}

/// Apex of the dyad with centers `a`, `b` and radii `ra`, `rb` (m), on the given side of a→b.
///
/// `None` when the circles do not meet or are concentric. A miss below 1e-10 of the radii counts
/// as touching: the apex then lies on the line of centers.
/// Source: intersection of two circles, any textbook of plane geometry.
#[must_use]
pub fn circle_circle(a: Point, ra: f64, b: Point, rb: f64, side: Side) -> Option<Point> {
    let line = b - a;
    let d2 = line.norm_squared();
    if d2 <= 0.0 {
        return None;
    }
    let along = 0.5 * (1.0 + (ra - rb) * (ra + rb) / d2);
    let mut h2 = ra * ra / d2 - along * along;
    if h2 < 0.0 {
        let d = d2.sqrt();
        let miss = (d - ra - rb).max((ra - rb).abs() - d);
        if miss > 1e-10 * (ra + rb) {
            return None;
        }
        h2 = 0.0;
    }
    let normal = Vector::new(-line.y, line.x);
    Some(a + line * along + normal * (side.sign() * h2.sqrt()))
}

/// Points where the circle about `centre` with `radius` (m) meets the line through `start` along
/// the unit vector `direction`, as distances from `start` (m), smaller first.
#[must_use]
pub fn circle_line(
    centre: Point,
    radius: f64,
    start: Point,
    direction: Vector,
) -> Option<(f64, f64)> {
    let to_centre = centre - start;
    let along = to_centre.dot(&direction);
    let off = direction.perp(&to_centre);
    let h2 = (radius - off) * (radius + off);
    if h2 < 0.0 {
        return None;
    }
    let h = h2.sqrt();
    Some((along - h, along + h))
}
