//! Functions of one variable as cubic splines over common knots.

/// Several functions of one variable.
#[derive(Clone, Debug)]
pub(super) struct Table<const N: usize> {
    knots: Vec<f64>,
    values: Vec<[f64; N]>,
    /// Each piece by the powers of the distance from its knot, and the straight line beyond the last knot.
    cubics: Vec<[[f64; N]; 4]>,
    corner: Option<usize>,
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
        table.bend()?;
        Some(table)
    }

    /// Changes the values at all knots. `None` where they are then not finite.
    pub(super) fn set(&mut self, change: impl Fn(usize, &mut [f64; N])) -> Option<()> {
        let rows = self.values.iter_mut().enumerate();
        rows.for_each(|(knot, row)| change(knot, row));
        self.bend()
    }

    /// Lays the splines through the values.
    fn bend(&mut self) -> Option<()> {
        if !self.values.iter().flatten().all(|y| y.is_finite()) {
            return None;
        }
        let last = self.knots.len().checked_sub(1)?;
        let middle = self.corner.unwrap_or(0);
        for part in [0..=middle, middle..=last] {
            if part.start() == part.end() {
                continue;
            }
            let x = self.knots.get(part.clone())?;
            let y = self.values.get(part.clone())?;
            let slopes = slopes(x, y)?;
            let cubics = self.cubics.get_mut(part)?;
            let ends = x.windows(2).zip(y.windows(2)).zip(slopes.windows(2));
            for (cubic, ((x, y), slope)) in cubics.iter_mut().zip(ends) {
                let ([x0, x1], [y0, y1], [from, to]) = (x, y, slope) else {
                    continue;
                };
                let per = 1.0 / (x1 - x0);
                let [before, after]: [[f64; N]; 2] = [from, to]
                    .map(|slope| std::array::from_fn(|c| slope[c] - (y1[c] - y0[c]) * per));
                let square = std::array::from_fn(|c| -(2.0 * before[c] + after[c]) * per);
                let cube = std::array::from_fn(|c| (before[c] + after[c]) * per * per);
                *cubic = [*y0, *from, square, cube];
            }
            if let (Some(line), Some(y), Some(slope)) = (cubics.last_mut(), y.last(), slopes.last())
            {
                *line = [*y, *slope, [0.0; N], [0.0; N]];
            }
        }
        Some(())
    }

    /// Index of the knot at which the splines may have a corner.
    pub(super) fn corner(&self) -> Option<usize> {
        self.corner
    }

    /// Where each piece starts, and the factors of the powers of the distance from there; the last is the
    /// straight line beyond the end.
    pub(super) fn pieces(&self) -> impl Iterator<Item = (f64, &[[f64; N]; 4])> {
        self.knots.iter().copied().zip(&self.cubics)
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

    /// Values at `x` in this piece; straight lines beyond the ends.
    #[inline]
    pub(super) fn within(&self, piece: usize, x: f64) -> [f64; N] {
        let (Some(from), Some([a, b, c, d])) = (self.knots.get(piece), self.cubics.get(piece))
        else {
            return [f64::NAN; N];
        };
        let beyond = x - from;
        let inside = beyond.max(0.0);
        std::array::from_fn(|i| a[i] + beyond * (b[i] + inside * (c[i] + inside * d[i])))
    }

    /// Slopes at `x`.
    #[cfg(test)]
    pub(super) fn slopes_at(&self, x: f64) -> [f64; N] {
        let piece = self.piece(x, 0);
        let ([_, b, c, d], x) = (self.cubics[piece], x - self.knots[piece]);
        std::array::from_fn(|i| b[i] + x * (2.0 * c[i] + x * 3.0 * d[i]))
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
    let four = |from: [usize; 4]| -> [f64; N] {
        std::array::from_fn(|c| end_slope(from.map(|at| x[at]), from.map(|at| y[at][c])))
    };
    // forward elimination: above the diagonal, and right sides
    let mut above = 0.0;
    let mut right = Vec::with_capacity(count);
    let mut row = four([0, 1, 2, 3]);
    right.push((above, row));
    for (x, y) in x.windows(3).zip(y.windows(3)) {
        let ([x0, x1, x2], [y0, y1, y2]) = (x, y) else {
            continue;
        };
        let (h0, h1) = (x1 - x0, x2 - x1);
        let per = 1.0 / (2.0 * (h0 + h1) - h1 * above);
        above = h0 * per;
        let (before, after) = (3.0 * h1 / h0 * per, 3.0 * h0 / h1 * per);
        for c in 0..N {
            row[c] = before * (y1[c] - y0[c]) + after * (y2[c] - y1[c]) - h1 * per * row[c];
        }
        right.push((above, row));
    }
    let mut next = four([count - 1, count - 2, count - 3, count - 4]);
    let mut slopes = vec![next; count];
    for (slope, (above, row)) in slopes.iter_mut().zip(&right).rev() {
        for c in 0..N {
            next[c] = row[c] - above * next[c];
        }
        *slope = next;
    }
    Some(slopes)
}
