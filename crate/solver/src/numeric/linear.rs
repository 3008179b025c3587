//! Linear equations, a few at a time: elimination with the largest pivot of each column (textbook).

/// A matrix taken apart.
pub(crate) struct Lu {
    rows: Vec<Vec<f64>>,
    /// Row that was taken as pivot of each column.
    order: Vec<usize>,
}

impl Lu {
    /// Takes a square matrix apart, given row after row; `None` where it is singular or not a number.
    pub(crate) fn new(entries: Vec<f64>, count: usize) -> Option<Self> {
        let mut rows: Vec<Vec<f64>> = entries.chunks(count.max(1)).map(<[f64]>::to_vec).collect();
        let mut order: Vec<usize> = (0..rows.len()).collect();
        for column in 0..rows.len() {
            let size = |row: &[f64]| row.get(column).map_or(f64::NAN, |x| x.abs());
            let (pivot, largest) = rows
                .iter()
                .enumerate()
                .skip(column)
                .map(|(at, row)| (at, size(row)))
                .max_by(|a, b| a.1.total_cmp(&b.1))?;
            if !(largest > 0.0 && largest.is_finite()) {
                return None;
            }
            rows.swap(column, pivot);
            order.swap(column, pivot);
            let (above, below) = rows.split_at_mut(column + 1);
            let top = above.last()?;
            let (_, right) = top.split_at(column);
            for row in below {
                let (head, rest) = row.get_mut(column..)?.split_first_mut()?;
                // its place keeps the factor
                *head /= right.first()?;
                for (value, of) in rest.iter_mut().zip(right.iter().skip(1)) {
                    *value -= *head * of;
                }
            }
        }
        Some(Self { rows, order })
    }

    /// Solves for one right hand side, in its place.
    pub(crate) fn solve(&self, side: &mut [f64]) {
        let mut found: Vec<f64> = Vec::with_capacity(side.len());
        for (row, &from) in self.rows.iter().zip(&self.order) {
            let known: f64 = row.iter().zip(&found).map(|(a, x)| a * x).sum();
            found.push(side.get(from).copied().unwrap_or(0.0) - known);
        }
        for (at, row) in self.rows.iter().enumerate().rev() {
            let (_, right) = row.split_at(at);
            let known: f64 = right
                .iter()
                .zip(found.iter().skip(at))
                .skip(1)
                .map(|(a, x)| a * x)
                .sum();
            if let (Some(value), Some(pivot)) = (found.get_mut(at), right.first()) {
                *value = (*value - known) / pivot;
            }
        }
        for (value, found) in side.iter_mut().zip(found) {
            *value = found;
        }
    }
}
