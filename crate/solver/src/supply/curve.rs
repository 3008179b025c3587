//! A smooth curve through points that does not swing over between them.
//!
//! Piecewise cubic with the slopes of F. N. Fritsch, J. Butland, "A method for constructing local
//! monotone piecewise cubic interpolants", SIAM J. Sci. Stat. Comput. 5 (1984) 300–304, from
//! memory: between two points it stays between their values. At an end the slope is that of the
//! parabola through three points, held to what F. N. Fritsch, R. E. Carlson, "Monotone piecewise cubic
//! interpolation", SIAM J. Numer. Anal. 17 (1980) 238–246, allow (from memory).

use crate::numeric::bracketed_root;

/// Points of rising place with value and slope.
#[derive(Clone, Debug, Default, PartialEq)]
pub(crate) struct Curve {
    points: Vec<[f64; 3]>,
}

impl Curve {
    /// Through `(place, value)` points; a point that does not lie beyond the one before it is left
    /// out.
    pub(super) fn new(given: impl IntoIterator<Item = (f64, f64)>) -> Self {
        let mut points: Vec<[f64; 3]> = Vec::new();
        for (place, value) in given {
            if points.last().is_none_or(|last| place > last[0]) {
                points.push([place, value, 0.0]);
            }
        }
        let secants: Vec<[f64; 2]> = points
            .windows(2)
            .filter_map(|pair| match pair {
                [[x0, y0, _], [x1, y1, _]] => Some([x1 - x0, (y1 - y0) / (x1 - x0)]),
                _ => None,
            })
            .collect();
        for (at, point) in points.iter_mut().enumerate() {
            let before = at.checked_sub(1).and_then(|at| secants.get(at));
            point[2] = match (before, secants.get(at)) {
                (Some([h0, d0]), Some([h1, d1])) if d0 * d1 > 0.0 => {
                    let (w0, w1) = (2.0 * h1 + h0, h1 + 2.0 * h0);
                    (w0 + w1) / (w0 / d0 + w1 / d1)
                }
                (None, Some(near)) => end_slope(*near, secants.get(at + 1).copied()),
                (Some(near), None) => {
                    let next = at.checked_sub(2).and_then(|at| secants.get(at));
                    end_slope(*near, next.copied())
                }
                // at a peak, in a dip, and of a point by itself
                _ => 0.0,
            };
        }
        Self { points }
    }

    /// The same with no value below `floor`.
    pub(super) fn at_least(&self, floor: f64) -> Self {
        Self::new(self.points.iter().map(|[x, y, _]| (*x, y.max(floor))))
    }

    /// Value at a place; outside of the points that of the nearer end.
    pub(crate) fn value(&self, place: f64) -> f64 {
        let after = self.points.partition_point(|point| point[0] <= place);
        let before = after.checked_sub(1).and_then(|at| self.points.get(at));
        match (before, self.points.get(after)) {
            (Some([x0, y0, m0]), Some([x1, y1, m1])) => {
                let h = x1 - x0;
                let s = (place - x0) / h;
                let r = 1.0 - s;
                r * r * (1.0 + 2.0 * s) * y0
                    + s * s * (3.0 - 2.0 * s) * y1
                    + h * s * r * (r * m0 - s * m1)
            }
            (Some(point), None) | (None, Some(point)) => point[1],
            // a load of which nothing is known is moved by nothing
            (None, None) => f64::INFINITY,
        }
    }

    /// First place with a value below a level; `None` where there is none.
    pub(super) fn first_below(&self, level: f64) -> Option<f64> {
        let at = self.points.iter().position(|point| point[1] < level)?;
        let there = self.points.get(at)?[0];
        let Some(before) = at.checked_sub(1).and_then(|at| self.points.get(at)) else {
            return Some(there);
        };
        // between two points it runs one way
        let below = |place: f64| self.value(place) - level;
        let root = bracketed_root(below, before[0], there, f64::EPSILON * there.abs());
        Some(root.map_or(there, |root| root.x))
    }

    /// Largest value from `place` on, and where.
    pub(super) fn peak_from(&self, place: f64) -> (f64, f64) {
        // Between two points the curve stays between their values.
        let ahead = self.points.iter().filter(|point| point[0] > place);
        let mut peak = (place, self.value(place));
        for [x, y, _] in ahead {
            if *y > peak.1 {
                peak = (*x, *y);
            }
        }
        peak
    }

    /// Integral over all points, exact for the cubic pieces.
    #[cfg(test)]
    pub(super) fn integral(&self) -> f64 {
        self.points
            .windows(2)
            .map(|pair| {
                let ([x0, y0, m0], [x1, y1, m1]) = (pair[0], pair[1]);
                let h = x1 - x0;
                0.5 * h * (y0 + y1) + h * h * (m0 - m1) / 12.0
            })
            .sum()
    }
}

/// Slope at an end, by the two pieces next to it as width and slope.
fn end_slope([h0, d0]: [f64; 2], next: Option<[f64; 2]>) -> f64 {
    let Some([h1, d1]) = next else {
        return d0;
    };
    let slope = ((2.0 * h0 + h1) * d0 - h0 * d1) / (h0 + h1);
    // of one sign with its piece, and no more than three times as steep
    if slope * d0 <= 0.0 {
        0.0
    } else {
        slope.signum() * slope.abs().min(3.0 * d0.abs())
    }
}
