//! Four linear equations.

/// Four linear equations after Gauss elimination with row pivots, ready for any right side.
#[derive(Clone, Copy, Debug, Default)]
pub(super) struct Eliminated {
    /// Left of the diagonal the multipliers, on it one over the pivots, right of it what is left.
    rows: [[f64; 4]; 4],
    /// Which equation each row is.
    order: [usize; 4],
    /// 0 where nothing was eliminated.
    pub(super) determinant: f64,
}

impl Eliminated {
    /// `None` where the determinant vanishes.
    pub(super) fn new(mut rows: [[f64; 4]; 4]) -> Option<Self> {
        let mut order = [0, 1, 2, 3];
        let mut determinant = 1.0;
        for k in 0..4 {
            // where nothing binds, the diagonal is near 1 and the rows stay as they are
            if rows[k][k].abs() < 0.5 {
                let pivot =
                    (k..4).max_by(|a, b| rows[*a][k].abs().total_cmp(&rows[*b][k].abs()))?;
                if pivot != k {
                    rows.swap(pivot, k);
                    order.swap(pivot, k);
                    determinant = -determinant;
                }
            }
            let pivot = rows[k][k];
            if pivot == 0.0 || !pivot.is_finite() {
                return None;
            }
            determinant *= pivot;
            rows[k][k] = 1.0 / pivot;
            let top = rows[k];
            for row in &mut rows[k + 1..] {
                row[k] *= top[k];
                for at in k + 1..4 {
                    row[at] -= row[k] * top[at];
                }
            }
        }
        Some(Self {
            rows,
            order,
            determinant,
        })
    }

    /// The solution for a right side.
    pub(super) fn solve(&self, right: &[f64; 4]) -> [f64; 4] {
        let mut found = self.order.map(|equation| right[equation]);
        for k in 1..4 {
            for at in 0..k {
                found[k] -= self.rows[k][at] * found[at];
            }
        }
        for k in (0..4).rev() {
            for at in k + 1..4 {
                found[k] -= self.rows[k][at] * found[at];
            }
            found[k] *= self.rows[k][k];
        }
        found
    }
}
