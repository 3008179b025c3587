//! Root of a function of one variable inside a bracket.
use thiserror::Error;

/// A root and the bracket that holds it.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Root {
    /// Middle of the bracket.
    pub x: f64,
    /// End of the bracket where the function has the sign it has at the first end given.
    pub first: f64,
    /// Other end of the bracket.
    pub last: f64,
}

/// Why no root was found; holds the last bracket.
#[derive(Clone, Copy, Debug, PartialEq, Error)]
pub enum RootError {
    /// Both ends have the same sign, or a value is not a number.
    #[error("no sign change between {a} ({fa}) and {b} ({fb})")]
    NoSignChange {
        /// First end.
        a: f64,
        /// Value there.
        fa: f64,
        /// Second end.
        b: f64,
        /// Value there.
        fb: f64,
    },
    /// The bracket did not shrink enough within the bound on iterations.
    #[error("bracket {a} … {b} not closed after {iterations} steps")]
    TooManySteps {
        /// First end.
        a: f64,
        /// Second end.
        b: f64,
        /// Steps made.
        iterations: usize,
    },
}

/// Bound on the steps: bisection halves the bracket at least every second step.
const MAX_STEPS: usize = 200;

/// Root of `f` between `a` and `b`, whose signs there differ, to a bracket not wider than
/// `tolerance` (or than the spacing of f64 there).
///
/// Alternates the Illinois form of false position with bisection, so that the bracket at least
/// halves every two steps. An end where `f` is zero is a root. Source: M. Dowell, P. Jarratt, "A
/// modified regula falsi method", BIT 11 (1971) 168–174, from memory.
///
/// ```
/// use gearswing_solver::numeric::bracketed_root;
///
/// // the root of x² = 2 is √2
/// let root = bracketed_root(|x| x * x - 2.0, 1.0, 2.0, 1e-12)?;
/// assert!((root.x - std::f64::consts::SQRT_2).abs() <= 1e-12);
/// assert!(root.first <= root.x && root.x <= root.last);
/// // where the signs do not differ nothing is guessed
/// assert!(bracketed_root(|x| x * x + 2.0, 1.0, 2.0, 1e-12).is_err());
/// # Ok::<(), gearswing_solver::numeric::RootError>(())
/// ```
///
/// # Errors
/// [`RootError`] when the signs do not differ or a value is not a number.
pub fn bracketed_root(
    mut f: impl FnMut(f64) -> f64,
    a: f64,
    b: f64,
    tolerance: f64,
) -> Result<Root, RootError> {
    bracketed(&mut f, a, b, tolerance)
}

/// [`bracketed_root`], compiled once for all functions.
fn bracketed(
    f: &mut dyn FnMut(f64) -> f64,
    a: f64,
    b: f64,
    tolerance: f64,
) -> Result<Root, RootError> {
    let (mut lo, mut hi) = (a, b);
    let (mut f_lo, mut f_hi) = (f(lo), f(hi));
    if f_lo == 0.0 {
        return Ok(Root {
            x: lo,
            first: lo,
            last: lo,
        });
    }
    if f_hi == 0.0 {
        return Ok(Root {
            x: hi,
            first: hi,
            last: hi,
        });
    }
    if !(f_lo * f_hi).is_finite() || f_lo.signum() == f_hi.signum() {
        return Err(RootError::NoSignChange {
            a,
            fa: f_lo,
            b,
            fb: f_hi,
        });
    }
    // weights of the Illinois form; the true values are not needed again
    for step in 0..MAX_STEPS {
        let width = (hi - lo).abs();
        let middle = 0.5 * (lo + hi);
        if width <= tolerance || middle == lo || middle == hi {
            return Ok(Root {
                x: middle,
                first: lo,
                last: hi,
            });
        }
        let x = if step % 2 == 0 {
            let secant = lo + (hi - lo) * (f_lo / (f_lo - f_hi));
            if (secant - lo).abs() < width && (hi - secant).abs() < width {
                secant
            } else {
                middle
            }
        } else {
            middle
        };
        let fx = f(x);
        if fx == 0.0 {
            return Ok(Root {
                x,
                first: x,
                last: x,
            });
        }
        if !fx.is_finite() {
            return Err(RootError::NoSignChange {
                a: lo,
                fa: f_lo,
                b: x,
                fb: fx,
            });
        }
        if fx.signum() == f_lo.signum() {
            lo = x;
            f_lo = fx;
            f_hi *= 0.5;
        } else {
            hi = x;
            f_hi = fx;
            f_lo *= 0.5;
        }
    }
    Err(RootError::TooManySteps {
        a: lo,
        b: hi,
        iterations: MAX_STEPS,
    })
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn finds_cosine_root_at_every_tolerance() {
        for exponent in 1..=15 {
            let tolerance = 10f64.powi(-exponent);
            let root = bracketed_root(f64::cos, 0.0, 3.0, tolerance).unwrap();
            assert!((root.x - std::f64::consts::FRAC_PI_2).abs() <= tolerance.max(1e-15));
        }
    }

    #[test]
    fn keeps_sides_of_the_bracket() {
        let root = bracketed_root(|x| 1.0 - x * x * x, 0.0, 5.0, 1e-9).unwrap();
        assert!(1.0 - root.first.powi(3) >= 0.0 && 1.0 - root.last.powi(3) <= 0.0);
    }

    #[test]
    fn refuses_equal_signs_and_nan() {
        assert!(bracketed_root(|x| x * x + 1.0, -1.0, 1.0, 1e-9).is_err());
        assert!(bracketed_root(|_| f64::NAN, -1.0, 1.0, 1e-9).is_err());
    }
}
