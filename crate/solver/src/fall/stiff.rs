//! A stiff integrator for falls that an orifice damps.
//!
//! Method: RODAS, a Rosenbrock method of order 4 with an embedded one of order 3 and six stages,
//! L-stable and stiffly accurate (E. Hairer, G. Wanner, Solving Ordinary Differential Equations II,
//! 2nd ed. 1996, section IV.7; coefficients from memory, held to their order by a test). An explicit
//! method takes steps as short as the damping dies down, tens of thousands through a small orifice;
//! the implicit crates that locate events cost the page more than a tenth of its size.
use super::integrate::{Bounds, Moment, State};

/// Most steps of one integration, those that are not accepted among them.
const MOST_STEPS: usize = 20_000;

/// Shortest step (s).
const SHORTEST_STEP: f64 = 1e-12;

/// First step (s).
const FIRST_STEP: f64 = 1e-5;

const GAMMA: f64 = 0.25;

/// Weights of the earlier stages in the state of a stage.
const A: [&[f64]; 5] = [
    &[],
    &[1.544],
    &[0.946_678_528_081_582_6, 0.255_701_169_898_328_4],
    &[
        3.314_825_187_068_521,
        2.896_124_015_972_201,
        0.998_641_913_997_781_7,
    ],
    &[
        1.221_224_509_226_641,
        6.019_134_481_288_629,
        12.537_083_329_320_87,
        -0.687_886_036_105_895,
    ],
];

/// Weights of the earlier stages in the right-hand side of a stage, over the step.
const C: [&[f64]; 6] = [
    &[],
    &[-5.6688],
    &[-2.430_093_356_833_875, -0.206_359_915_709_191_5],
    &[
        -0.107_352_905_815_137_5,
        -9.594_562_251_023_355,
        -20.470_286_148_096_16,
    ],
    &[
        7.496_443_313_967_647,
        -10.246_804_314_643_52,
        -33.999_903_528_199_05,
        11.708_908_932_061_6,
    ],
    &[
        8.083_246_795_921_522,
        -7.981_132_988_064_893,
        -31.521_594_328_743_71,
        16.319_305_431_231_36,
        -6.058_818_238_834_054,
    ],
];

/// Follows `slope` from `start` at time 0, as [`super::integrate::integrate`] does.
///
/// # Errors
/// The last moment handed out, where steps become too short or too many.
pub(super) fn integrate_stiff(
    slope: impl Fn(&State) -> State,
    start: State,
    bounds: Bounds,
    mut watch: impl FnMut(&Moment, &Moment) -> bool,
) -> Result<Moment, Moment> {
    let mut now = Moment {
        time: 0.0,
        state: start,
        slope: slope(&start),
    };
    let mut step = FIRST_STEP.min(bounds.longest_step);
    for _ in 0..MOST_STEPS {
        let left = bounds.end - now.time;
        if left <= SHORTEST_STEP {
            return Ok(now);
        }
        step = step.min(bounds.longest_step).min(left);
        if step < SHORTEST_STEP {
            return Err(now);
        }
        let (state, error) = rodas(&slope, &now, step);
        let size = size(&error, &now.state, &state, bounds.tolerance);
        // a size that is not a number is too large
        let grows = (0.9 * size.max(1e-12).powf(-0.25)).clamp(0.2, 6.0);
        if size <= 1.0 {
            let next = Moment {
                time: now.time + step,
                state,
                slope: slope(&state),
            };
            let stop = watch(&now, &next);
            now = next;
            if stop {
                return Ok(now);
            }
            step *= grows;
        } else {
            step *= if size.is_finite() {
                grows.min(0.9)
            } else {
                0.2
            };
        }
    }
    Err(now)
}

/// Error over what is allowed, root mean square of the parts.
fn size(error: &State, a: &State, b: &State, tolerance: f64) -> f64 {
    let parts = error.iter().zip(a.iter().zip(b));
    let sum: f64 = parts
        .map(|(e, (a, b))| (e / (tolerance * (1.0 + a.abs().max(b.abs())))).powi(2))
        .sum();
    (sum / error.len() as f64).sqrt()
}

/// One step: the state behind it, and its error.
fn rodas(slope: &impl Fn(&State) -> State, from: &Moment, step: f64) -> (State, State) {
    let matrix = Matrix::new(slope, from, step);
    let mut stages = [[0.0; 4]; 6];
    let mut before = from.state;
    for at in 0..6 {
        let here = match A.get(at) {
            Some(weights) => plus(from.state, weights, &stages, 1.0),
            // the last stage stands where the one before it has come to
            None => plus(before, &[1.0], &stages[4..], 1.0),
        };
        let f = if at == 0 { from.slope } else { slope(&here) };
        let right = plus(f, C[at], &stages, 1.0 / step);
        stages[at] = matrix.solve(&right);
        before = here;
    }
    let error = stages[5];
    (std::array::from_fn(|i| before[i] + error[i]), error)
}

/// A sum with weighted stages.
fn plus(mut sum: State, weights: &[f64], stages: &[State], factor: f64) -> State {
    for (weight, stage) in weights.iter().zip(stages) {
        for (part, of) in sum.iter_mut().zip(stage) {
            *part += factor * weight * of;
        }
    }
    sum
}

/// The matrix of the stages, 1/(h·γ) less the derivatives: nothing depends on the energies taken, so it
/// is one of two rows and two sums.
struct Matrix {
    diagonal: f64,
    by_place: State,
    by_speed: State,
}

impl Matrix {
    fn new(slope: &impl Fn(&State) -> State, at: &Moment, step: f64) -> Self {
        let by = |i: usize| {
            let mut beside = at.state;
            let shift = f64::EPSILON.sqrt() * beside[i].abs().max(1e-3);
            beside[i] += shift;
            let shift = beside[i] - at.state[i];
            let there = slope(&beside);
            std::array::from_fn(|k| (there[k] - at.slope[k]) / shift)
        };
        Self {
            diagonal: 1.0 / (GAMMA * step),
            by_place: by(0),
            by_speed: by(1),
        }
    }

    fn solve(&self, right: &State) -> State {
        let (g, p, s) = (self.diagonal, &self.by_place, &self.by_speed);
        let ([a, b], [c, d]) = ([g - p[0], -s[0]], [-p[1], g - s[1]]);
        let whole = a * d - b * c;
        let x = (right[0] * d - b * right[1]) / whole;
        let v = (a * right[1] - c * right[0]) / whole;
        let taken = |k: usize| (right[k] + p[k] * x + s[k] * v) / g;
        [x, v, taken(2), taken(3)]
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    /// A weight on a dashpot: x'' = 1 − x'/τ from rest, x' = τ(1 − e^(−t/τ)) (textbook); the energies are
    /// ∫x'²/τ dt and ∫x'² dt.
    fn dashpot(tau: f64) -> impl Fn(&State) -> State {
        move |&[_, v, ..]| [v, 1.0 - v / tau, v * v / tau, v * v]
    }

    fn exact(tau: f64, t: f64) -> State {
        let e = (-t / tau).exp();
        let v2 = tau * tau * (t - 2.0 * tau * (1.0 - e) + 0.5 * tau * (1.0 - e * e));
        [tau * (t - tau * (1.0 - e)), tau * (1.0 - e), v2 / tau, v2]
    }

    fn end(
        slope: impl Fn(&State) -> State,
        start: State,
        tolerance: f64,
        end: f64,
    ) -> (State, usize) {
        let mut steps = 0;
        let bounds = Bounds {
            tolerance,
            longest_step: 0.05,
            end,
        };
        let last = integrate_stiff(slope, start, bounds, |_, _| {
            steps += 1;
            false
        });
        (last.unwrap().state, steps)
    }

    #[test]
    fn a_stiff_dashpot_takes_few_steps() {
        for tau in [1.0, 1e-2, 1e-4, 1e-6] {
            let (found, steps) = end(dashpot(tau), [0.0; 4], 1e-9, 2.0);
            for (a, b) in found.iter().zip(exact(tau, 2.0)) {
                assert!((a - b).abs() < 1e-8, "{tau} {found:?}");
            }
            assert!(steps < 400, "{tau} {steps}");
        }
    }

    /// A pendulum, not linear: with half the step the error falls to a sixteenth (order 4).
    #[test]
    fn order_is_four() {
        let slope = |&[x, v, ..]: &State| [v, -x.sin() - 0.3 * v * v, 0.3 * v * v * v, v];
        let after = |count: usize| {
            let step = 2.0 / count as f64;
            let mut now = Moment {
                time: 0.0,
                state: [1.0, 0.0, 0.0, 0.0],
                slope: slope(&[1.0, 0.0, 0.0, 0.0]),
            };
            for _ in 0..count {
                let (state, _) = rodas(&slope, &now, step);
                now = Moment {
                    time: now.time + step,
                    state,
                    slope: slope(&state),
                };
            }
            now.state
        };
        let fine = after(2_000);
        let error = |count: usize| -> f64 {
            let found = after(count);
            found.iter().zip(fine).map(|(a, b)| (a - b).abs()).sum()
        };
        let order = (error(20) / error(40)).log2();
        assert!((order - 4.0).abs() < 0.4, "{order}");
    }

    #[test]
    fn what_cannot_be_followed_is_an_error() {
        let blows_up = |&[x, ..]: &State| [x * x, 0.0, 0.0, 0.0];
        let bounds = Bounds {
            tolerance: 1e-9,
            longest_step: 0.05,
            end: 10.0,
        };
        let last = integrate_stiff(blows_up, [1.0, 0.0, 0.0, 0.0], bounds, |_, _| false);
        assert!(last.unwrap_err().time < 1.0 + 1e-6);
    }
}
