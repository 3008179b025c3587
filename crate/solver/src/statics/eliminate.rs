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
        for row in rows.iter_mut().skip(k + 1) {
            let factor = row[k] / top[k];
            for (value, above) in row.iter_mut().zip(&top) {
                *value -= factor * above;
            }
        }
    }
    for k in (0..4).rev() {
        let row = rows[k];
        let below = rows.iter().zip(row).skip(k + 1);
        let known: f64 = below.map(|(solved, factor)| factor * solved[4]).sum();
        rows[k][4] = (row[4] - known) / row[k];
    }
    Some(determinant)
}
