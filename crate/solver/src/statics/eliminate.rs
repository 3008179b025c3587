//! Four linear equations.

/// Gauss elimination with row pivots of four equations, the right side in the last column, which
/// then holds the solution. The determinant, `None` where it vanishes.
pub(super) fn eliminate(rows: &mut [[f64; 5]; 4]) -> Option<f64> {
    let mut determinant = 1.0;
    for k in 0..4 {
        // where nothing binds, the diagonal is near 1 and the rows stay as they are
        if rows[k][k].abs() < 0.5 {
            let pivot = (k..4).max_by(|a, b| rows[*a][k].abs().total_cmp(&rows[*b][k].abs()))?;
            if pivot != k {
                rows.swap(pivot, k);
                determinant = -determinant;
            }
        }
        let top = rows[k];
        if top[k] == 0.0 || !top[k].is_finite() {
            return None;
        }
        determinant *= top[k];
        for row in &mut rows[k + 1..] {
            let factor = row[k] / top[k];
            for at in 0..5 {
                row[at] -= factor * top[at];
            }
        }
    }
    for k in (0..4).rev() {
        let row = rows[k];
        let mut known = 0.0;
        for at in k + 1..4 {
            known += row[at] * rows[at][4];
        }
        rows[k][4] = (row[4] - known) / row[k];
    }
    Some(determinant)
}
