//! Root of a rising function whose slope is known.

/// Bound on the steps: each halves the bracket or is a Newton step inside it.
pub(crate) const MOST_NEWTON_STEPS: usize = 120;

/// Root of a rising function by Newton's method, held inside a bracket by bisection (any text on
/// numerical methods); `None` when the bound on steps is reached or a value is not a number.
pub(crate) fn rising_root(
    f: impl Fn(f64) -> f64,
    slope: impl Fn(f64) -> f64,
    low: f64,
    high: f64,
    tolerance: f64,
) -> Option<f64> {
    let (mut low, mut high) = (low, high);
    let mut x = 0.5 * (low + high);
    let mut last = high - low;
    for _ in 0..MOST_NEWTON_STEPS {
        let value = f(x);
        if value.is_nan() {
            return None;
        }
        if value == 0.0 {
            return Some(x);
        }
        if value < 0.0 {
            low = x;
        } else {
            high = x;
        }
        let newton = x - value / slope(x);
        // A Newton step that does not halve the last one gives way to bisection.
        let step = (newton - x).abs();
        let next = if newton > low && newton < high && step <= 0.5 * last {
            newton
        } else {
            0.5 * (low + high)
        };
        last = (next - x).abs();
        if last <= tolerance || high - low <= tolerance || next == low || next == high {
            return Some(next);
        }
        x = next;
    }
    None
}
