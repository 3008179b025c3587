//! Points, segments and boxes: distances in closed form.
use crate::model::{Point, Vector};

/// Two points that face each other and their distance.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(crate) struct Pair {
    /// Distance, never negative (m).
    pub(crate) distance: f64,
    /// Point of the first shape (m).
    pub(crate) first: Point,
    /// Point of the second shape (m).
    pub(crate) second: Point,
}

/// Point of the segment `a`–`b` nearest to `p`; a segment without length counts as a point.
#[inline]
pub(crate) fn nearest_on_segment(p: Point, a: Point, b: Point) -> Point {
    let line = b - a;
    let length2 = line.norm_squared();
    if length2 <= 0.0 {
        return a;
    }
    let along = ((p - a).dot(&line) / length2).clamp(0.0, 1.0);
    a + line * along
}

/// Squared distance of `p` from the segment `a`–`b` (m2).
#[inline]
pub(crate) fn point_segment_squared(p: Point, a: Point, b: Point) -> f64 {
    (p - nearest_on_segment(p, a, b)).norm_squared()
}

/// Where the segments `a`–`b` and `c`–`d` cross, if they do (touching and parallel ones do not).
#[inline]
pub(crate) fn crossing(a: Point, b: Point, c: Point, d: Point) -> Option<Point> {
    let (u, v, w) = (b - a, d - c, c - a);
    let turn = u.perp(&v);
    if turn == 0.0 {
        return None;
    }
    let (s, t) = (w.perp(&v) / turn, w.perp(&u) / turn);
    ((0.0..=1.0).contains(&s) && (0.0..=1.0).contains(&t)).then(|| a + u * s)
}

/// Nearest points of two segments; distance 0 where they cross.
///
/// In the plane two segments that do not cross are nearest at an end of one of them.
#[inline]
pub(crate) fn segment_segment(a: Point, b: Point, c: Point, d: Point) -> Pair {
    if let Some(x) = crossing(a, b, c, d) {
        return Pair {
            distance: 0.0,
            first: x,
            second: x,
        };
    }
    let candidates = [
        (a, nearest_on_segment(a, c, d)),
        (b, nearest_on_segment(b, c, d)),
        (nearest_on_segment(c, a, b), c),
        (nearest_on_segment(d, a, b), d),
    ];
    let mut best = (f64::INFINITY, candidates[0]);
    for pair in candidates {
        let squared = (pair.1 - pair.0).norm_squared();
        if squared < best.0 {
            best = (squared, pair);
        }
    }
    Pair {
        distance: best.0.sqrt(),
        first: best.1.0,
        second: best.1.1,
    }
}

/// A box along the axes.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(crate) struct Bounds {
    /// Lower left corner (m).
    pub(crate) min: Point,
    /// Upper right corner (m).
    pub(crate) max: Point,
}

impl Bounds {
    /// The box that holds nothing.
    pub(crate) const EMPTY: Self = Self {
        min: Point::new(f64::INFINITY, f64::INFINITY),
        max: Point::new(f64::NEG_INFINITY, f64::NEG_INFINITY),
    };

    /// The box that holds everything.
    pub(crate) const EVERYWHERE: Self = Self {
        min: Point::new(f64::NEG_INFINITY, f64::NEG_INFINITY),
        max: Point::new(f64::INFINITY, f64::INFINITY),
    };

    /// Whether the box has an end on every side, and holds something.
    pub(crate) fn is_finite(&self) -> bool {
        [self.min, self.max]
            .iter()
            .all(|p| p.x.is_finite() && p.y.is_finite())
    }

    /// Box around points.
    pub(crate) fn of(points: &[Point]) -> Self {
        let mut all = Self::EMPTY;
        for &p in points {
            all.add(p);
        }
        all
    }

    /// Grows to hold `p`.
    #[inline]
    pub(crate) fn add(&mut self, p: Point) {
        self.min = Point::new(self.min.x.min(p.x), self.min.y.min(p.y));
        self.max = Point::new(self.max.x.max(p.x), self.max.y.max(p.y));
    }

    /// The box around both.
    pub(crate) fn with(mut self, other: &Self) -> Self {
        self.add(other.min);
        self.add(other.max);
        self
    }

    /// The box moved out by `by` (m) on all sides.
    pub(crate) fn grown(&self, by: f64) -> Self {
        let by = Vector::new(by, by);
        Self {
            min: self.min - by,
            max: self.max + by,
        }
    }

    /// Distance of two boxes (m); 0 where they overlap.
    #[inline]
    pub(crate) fn distance(&self, other: &Self) -> f64 {
        self.gap(other).norm()
    }

    /// Squared distance of two boxes (m2).
    #[inline]
    pub(crate) fn distance_squared(&self, other: &Self) -> f64 {
        self.gap(other).norm_squared()
    }

    #[inline]
    fn gap(&self, other: &Self) -> Vector {
        Vector::new(
            (other.min.x - self.max.x)
                .max(self.min.x - other.max.x)
                .max(0.0),
            (other.min.y - self.max.y)
                .max(self.min.y - other.max.y)
                .max(0.0),
        )
    }
}
