//! One explicit time step: Dormand–Prince 5(4) with its continuous output of order 4.
//!
//! Coefficients: J. R. Dormand, P. J. Prince, "A family of embedded Runge–Kutta formulae", J. Comp.
//! Appl. Math. 6 (1980) 19–26; continuous output as in E. Hairer, S. P. Nørsett, G. Wanner,
//! "Solving Ordinary Differential Equations I", 2nd ed., II.6 (code DOPRI5); from memory, held by
//! the tests of order and of known solutions.
//!
//! By hand, for want of a crate: ode_solvers 0.6 hands out accepted steps without locating an event in them and
//! brings a second nalgebra into the page; differential-equations 0.7 gives wrong event times; diffsol, which
//! locates them, costs the page a tenth of its size.
use super::step::{Dense, State, Step, add};

const STAGES: usize = 7;

/// Row s: weights of the earlier slopes for stage s; the last row makes the step itself.
const A: [[f64; 6]; STAGES] = [
    [0.0; 6],
    [1.0 / 5.0, 0.0, 0.0, 0.0, 0.0, 0.0],
    [3.0 / 40.0, 9.0 / 40.0, 0.0, 0.0, 0.0, 0.0],
    [44.0 / 45.0, -56.0 / 15.0, 32.0 / 9.0, 0.0, 0.0, 0.0],
    [
        19_372.0 / 6_561.0,
        -25_360.0 / 2_187.0,
        64_448.0 / 6_561.0,
        -212.0 / 729.0,
        0.0,
        0.0,
    ],
    [
        9_017.0 / 3_168.0,
        -355.0 / 33.0,
        46_732.0 / 5_247.0,
        49.0 / 176.0,
        -5_103.0 / 18_656.0,
        0.0,
    ],
    [
        35.0 / 384.0,
        0.0,
        500.0 / 1_113.0,
        125.0 / 192.0,
        -2_187.0 / 6_784.0,
        11.0 / 84.0,
    ],
];

/// Weights of the difference between orders 5 and 4.
const E: [f64; STAGES] = [
    71.0 / 57_600.0,
    0.0,
    -71.0 / 16_695.0,
    71.0 / 1_920.0,
    -17_253.0 / 339_200.0,
    22.0 / 525.0,
    -1.0 / 40.0,
];

/// Weights of the continuous output.
const D: [f64; STAGES] = [
    -12_715_105_075.0 / 11_282_082_432.0,
    0.0,
    87_487_479_700.0 / 32_700_410_799.0,
    -10_690_763_975.0 / 1_880_347_072.0,
    701_980_252_875.0 / 199_316_789_632.0,
    -1_453_857_185.0 / 822_651_844.0,
    69_997_945.0 / 29_380_423.0,
];

/// Tries a step of `size` from `from`, whose slope is `first`.
#[inline]
pub(crate) fn explicit<S: State, X>(
    from: &S,
    first: &S,
    size: f64,
    mut slope: impl FnMut(&S) -> Result<S, X>,
) -> Result<Step<S>, X> {
    let mut slopes = Vec::with_capacity(STAGES);
    slopes.push(first.clone());
    let mut to = from.clone();
    let mut before = from.clone();
    for row in A.iter().skip(1) {
        before = std::mem::replace(&mut to, from.clone());
        for (weight, known) in row.iter().zip(&slopes) {
            if *weight != 0.0 {
                add(&mut to, size * weight, known);
            }
        }
        slopes.push(slope(&to)?);
    }
    let weighted = |weights: &[f64; STAGES]| {
        let mut sum = from.clone();
        sum.as_mut().fill(0.0);
        for (weight, known) in weights.iter().zip(&slopes) {
            if *weight != 0.0 {
                add(&mut sum, *weight, known);
            }
        }
        sum.as_mut().iter_mut().for_each(|part| *part *= size);
        sum
    };
    let (error, last) = (weighted(&E), weighted(&D));
    // the last row of weights makes the end of the step, whose slope is the last
    let end = slopes.pop().unwrap_or_else(|| first.clone());
    Ok(Step {
        size,
        from: from.clone(),
        to,
        ends: [first.clone(), end],
        error,
        dense: Dense::BeyondCubic(last),
        beside: slopes.pop().map(|slope| (before, slope)),
    })
}
