//! Functions of one variable as cubic splines over common knots.

/// Several functions of one variable.
#[derive(Clone, Debug)]
pub(super) struct Table<const N: usize> {
    knots: Vec<f64>,
    end: f64,
    values: Vec<[f64; N]>,
    /// Slopes at the start and the end of each piece.
    slopes: Vec<[[f64; N]; 2]>,
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
            && knots.iter().all(|x| x.is_finite())
            && values.iter().flatten().all(|y| y.is_finite());
        if !sound {
            return None;
        }
        let end = *knots.last()?;
        let middle = corner.unwrap_or(0);
        let mut all = Vec::with_capacity(knots.len());
        for part in [0..=middle, middle..=knots.len().checked_sub(1)?] {
            if part.start() < part.end() {
                let at_knots = slopes(knots.get(part.clone())?, values.get(part)?)?;
                all.extend(at_knots.windows(2).map(|pair| [pair[0], pair[1]]));
            }
        }
        Some(Self {
            knots,
            end,
            values,
            slopes: all,
            corner,
        })
    }

    /// Index of the knot at which the splines may have a corner.
    pub(super) fn corner(&self) -> Option<usize> {
        self.corner
    }

    /// Last knot.
    pub(super) fn end(&self) -> f64 {
        self.end
    }

    pub(super) fn knots(&self) -> &[f64] {
        &self.knots
    }

    pub(super) fn values(&self) -> &[[f64; N]] {
        &self.values
    }

    /// Index of the piece that holds `x`; the first or last one beyond the ends.
    pub(super) fn piece(&self, x: f64) -> usize {
        let after = self.knots.partition_point(|&knot| knot <= x);
        after.clamp(1, self.knots.len() - 1) - 1
    }

    /// Values at `x` and the first one's slope; straight lines beyond the ends.
    pub(super) fn at(&self, x: f64) -> At<N> {
        let i = self.piece(x);
        let (Some(&[x0, x1]), Some([y0, y1]), Some([m0, m1])) = (
            self.knots.get(i..).and_then(<[f64]>::first_chunk),
            self.values.get(i..).and_then(<[[f64; N]]>::first_chunk),
            self.slopes.get(i),
        ) else {
            return At {
                value: [f64::NAN; N],
                slope: f64::NAN,
            };
        };
        if x < x0 {
            return line(y0, m0, x - x0);
        }
        if x > x1 {
            return line(y1, m1, x - x1);
        }
        let h = x1 - x0;
        let t = (x - x0) / h;
        let u = 1.0 - t;
        let (a, b) = (u * u * (1.0 + 2.0 * t), u * u * t * h);
        let (c, d) = (t * t * (3.0 - 2.0 * t), -t * t * u * h);
        let value = std::array::from_fn(|i| a * y0[i] + b * m0[i] + c * y1[i] + d * m1[i]);
        let slope = 6.0 * t * u * (y1[0] - y0[0]) / h
            + u * (1.0 - 3.0 * t) * m0[0]
            + t * (3.0 * t - 2.0) * m1[0];
        At { value, slope }
    }
}

fn line<const N: usize>(value: &[f64; N], slope: &[f64; N], beyond: f64) -> At<N> {
    At {
        value: std::array::from_fn(|i| value[i] + slope[i] * beyond),
        slope: slope[0],
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

/// Slopes at all knots: one tridiagonal solution for all columns.
fn slopes<const N: usize>(x: &[f64], y: &[[f64; N]]) -> Option<Vec<[f64; N]>> {
    let count = x.len();
    if count < 4 {
        return None;
    }
    let four = |from: [usize; 4]| -> Option<[f64; N]> {
        let mut slope = [0.0; N];
        for (column, slope) in slope.iter_mut().enumerate() {
            let mut points = ([0.0; 4], [0.0; 4]);
            for (k, &at) in from.iter().enumerate() {
                points.0[k] = *x.get(at)?;
                points.1[k] = *y.get(at)?.get(column)?;
            }
            *slope = end_slope(points.0, points.1);
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
        for c in 0..N {
            let (d0, d1) = ((y[i][c] - y[i - 1][c]) / h0, (y[i + 1][c] - y[i][c]) / h1);
            right[i][c] = (3.0 * (h1 * d0 + h0 * d1) - h1 * right[i - 1][c]) / pivot;
        }
    }
    right[count - 1] = last;
    for i in (1..count - 1).rev() {
        let (below, from) = right.split_at_mut(i + 1);
        for (value, next) in below[i].iter_mut().zip(&from[0]) {
            *value -= above[i] * next;
        }
    }
    Some(right)
}
