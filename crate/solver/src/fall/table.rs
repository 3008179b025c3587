//! Functions of one variable as cubic splines over common knots.
use std::ops::Range;

/// Several functions of one variable.
#[derive(Clone, Debug)]
pub(super) struct Table<const N: usize> {
    knots: Vec<f64>,
    values: Vec<[f64; N]>,
    /// Each piece by the powers of the distance from its knot, and the straight line beyond the last knot.
    cubics: Vec<[[f64; N]; 4]>,
    corner: Option<usize>,
}

/// Values of all functions at one place, and the slope of the first.
#[derive(Clone, Copy, Debug)]
pub(super) struct At<const N: usize> {
    pub(super) value: [f64; N],
    pub(super) slope: f64,
}

impl<const N: usize> Table<N> {
    /// The splines with continuous second derivative through `values` at rising `knots`; the end
    /// slopes are those of the cubics through the last four points. At the knot of this index they may
    /// have a corner. `None` for fewer than four knots in all or on a side of the corner, knots that do
    /// not rise, and values that are not finite.
    ///
    /// Source: cubic spline in terms of slopes, any text on numerical analysis.
    pub(super) fn new(
        knots: Vec<f64>,
        values: Vec<[f64; N]>,
        corner: Option<usize>,
    ) -> Option<Self> {
        let sound = knots.len() == values.len()
            && knots.windows(2).all(|pair| pair[0] < pair[1])
            && knots.iter().all(|x| x.is_finite());
        let mut table = Self {
            cubics: vec![[[0.0; N]; 4]; knots.len()],
            knots,
            values,
            corner,
        };
        sound.then_some(())?;
        table.bend(0..N)?;
        Some(table)
    }

    /// Sets some of the functions at all knots. `None` for values that are not finite.
    pub(super) fn set(
        &mut self,
        columns: Range<usize>,
        value: impl Fn(usize, usize) -> Option<f64>,
    ) -> Option<()> {
        for (knot, row) in self.values.iter_mut().enumerate() {
            for column in columns.clone() {
                *row.get_mut(column)? = value(knot, column)?;
            }
        }
        self.bend(columns)
    }

    /// Lays the splines of some of the functions through their values.
    fn bend(&mut self, columns: Range<usize>) -> Option<()> {
        let rows = self.values.iter();
        let mut known = rows.flat_map(|row| row.get(columns.clone()).unwrap_or_default());
        if !known.all(|y| y.is_finite()) {
            return None;
        }
        let last = self.knots.len().checked_sub(1)?;
        let middle = self.corner.unwrap_or(0);
        for part in [0..=middle, middle..=last] {
            if part.start() == part.end() {
                continue;
            }
            let (x, y) = (
                self.knots.get(part.clone())?,
                self.values.get(part.clone())?,
            );
            let slopes = slopes(x, y, columns.clone())?;
            let cubics = self.cubics.get_mut(part)?;
            for i in 0..x.len() - 1 {
                let h = x[i + 1] - x[i];
                for c in columns.clone() {
                    let (rise, from, to) =
                        ((y[i + 1][c] - y[i][c]) / h, slopes[i][c], slopes[i + 1][c]);
                    cubics[i][0][c] = y[i][c];
                    cubics[i][1][c] = from;
                    cubics[i][2][c] = (3.0 * rise - 2.0 * from - to) / h;
                    cubics[i][3][c] = (from + to - 2.0 * rise) / (h * h);
                }
            }
            for c in columns.clone() {
                cubics[x.len() - 1][0][c] = y[x.len() - 1][c];
                cubics[x.len() - 1][1][c] = slopes[x.len() - 1][c];
            }
        }
        Some(())
    }

    /// Index of the knot at which the splines may have a corner.
    pub(super) fn corner(&self) -> Option<usize> {
        self.corner
    }

    pub(super) fn knots(&self) -> &[f64] {
        &self.knots
    }

    pub(super) fn values(&self) -> &[[f64; N]] {
        &self.values
    }

    /// Index of the knot at or before `x`, the first one before all of them. It is looked for from one
    /// that is `near` it.
    #[inline]
    pub(super) fn piece(&self, x: f64, near: usize) -> usize {
        let mut piece = near;
        while self.knots.get(piece + 1).is_some_and(|knot| *knot <= x) {
            piece += 1;
        }
        while piece > 0 && self.knots.get(piece).is_none_or(|knot| *knot > x) {
            piece -= 1;
        }
        piece
    }

    /// Values at `x` in this piece and the first one's slope; straight lines beyond the ends.
    #[inline]
    pub(super) fn within(&self, piece: usize, x: f64) -> At<N> {
        let (Some(from), Some([a, b, c, d])) = (self.knots.get(piece), self.cubics.get(piece))
        else {
            return At {
                value: [f64::NAN; N],
                slope: f64::NAN,
            };
        };
        let beyond = x - from;
        let inside = beyond.max(0.0);
        At {
            value: std::array::from_fn(|i| {
                a[i] + beyond * (b[i] + inside * (c[i] + inside * d[i]))
            }),
            slope: b[0] + inside * (2.0 * c[0] + inside * 3.0 * d[0]),
        }
    }
}

/// Slope at `x[0]` of the cubic through four points, by divided differences.
fn end_slope(x: [f64; 4], y: [f64; 4]) -> f64 {
    let first = |i: usize| (y[i + 1] - y[i]) / (x[i + 1] - x[i]);
    let (d0, d1, d2) = (first(0), first(1), first(2));
    let (e0, e1) = ((d1 - d0) / (x[2] - x[0]), (d2 - d1) / (x[3] - x[1]));
    let third = (e1 - e0) / (x[3] - x[0]);
    d0 + (x[0] - x[1]) * (e0 + (x[0] - x[2]) * third)
}

/// Slopes of some columns at all knots: one tridiagonal solution for all of them.
fn slopes<const N: usize>(
    x: &[f64],
    y: &[[f64; N]],
    columns: Range<usize>,
) -> Option<Vec<[f64; N]>> {
    let count = x.len();
    if count < 4 {
        return None;
    }
    let four = |from: [usize; 4]| -> Option<[f64; N]> {
        let mut slope = [0.0; N];
        for column in columns.clone() {
            let mut points = ([0.0; 4], [0.0; 4]);
            for (k, &at) in from.iter().enumerate() {
                points.0[k] = *x.get(at)?;
                points.1[k] = *y.get(at)?.get(column)?;
            }
            slope[column] = end_slope(points.0, points.1);
        }
        Some(slope)
    };
    let first = four([0, 1, 2, 3])?;
    let last = four([count - 1, count - 2, count - 3, count - 4])?;
    // forward elimination: above the diagonal, and right sides
    let mut above = vec![0.0; count];
    let mut right = vec![first; count];
    for i in 1..count - 1 {
        let (h0, h1) = (x[i] - x[i - 1], x[i + 1] - x[i]);
        let pivot = 2.0 * (h0 + h1) - h1 * above[i - 1];
        above[i] = h0 / pivot;
        for c in columns.clone() {
            let (d0, d1) = ((y[i][c] - y[i - 1][c]) / h0, (y[i + 1][c] - y[i][c]) / h1);
            right[i][c] = (3.0 * (h1 * d0 + h0 * d1) - h1 * right[i - 1][c]) / pivot;
        }
    }
    right[count - 1] = last;
    for i in (1..count - 1).rev() {
        let (below, from) = right.split_at_mut(i + 1);
        for c in columns.clone() {
            below[i][c] -= above[i] * from[0][c];
        }
    }
    Some(right)
}
