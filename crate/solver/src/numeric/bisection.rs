//! Where something that holds ceases to, by halving the bracket (textbook).

/// Bound on the halvings: of a gap below 1 nothing is left but rounding.
const MOST_HALVINGS: usize = 60;

/// The bracket between `good`, where something holds, and `bad`, where it does not, halved until it is no wider
/// than `share` of its bad end (ratio; 0 = until no number lies between). Returns both of its ends, good one
/// first.
pub(crate) fn bisected(
    (mut good, mut bad): (f64, f64),
    share: f64,
    mut holds: impl FnMut(f64) -> bool,
) -> (f64, f64) {
    for _ in 0..MOST_HALVINGS {
        let middle = 0.5 * (good + bad);
        if (bad - good).abs() <= share * bad.abs() || middle == good || middle == bad {
            break;
        }
        if holds(middle) {
            good = middle;
        } else {
            bad = middle;
        }
    }
    (good, bad)
}

#[cfg(test)]
mod tests {
    use super::bisected;

    /// Against the standard library's square root.
    #[test]
    fn ends_hold_a_root_whichever_is_larger() {
        let root = 2.0_f64.sqrt();
        let (good, bad) = bisected((1.0, 2.0), 0.0, |x| x * x < 2.0);
        assert!(good <= root && root <= bad && bad - good <= 2.0 * f64::EPSILON);
        let (good, bad) = bisected((2.0, 1.0), 1e-3, |x| x * x > 2.0);
        assert!(bad <= root && root <= good && good - bad <= 1e-3 * bad);
    }
}
