//! Follows a state over time, step by step, until something happens or the time is over.
use std::convert::Infallible;

use super::explicit::explicit;
use super::rosenbrock::rosenbrock;
use super::step::Step;

/// Most steps, those that are not accepted among them.
const MOST_STEPS: usize = 20_000;

/// Shortest step (s).
const SHORTEST_STEP: f64 = 1e-12;

/// Least and most by which a step is longer than the one before (ratio).
const GROWTH: (f64, f64) = (0.2, 6.0);

/// How steps are made.
#[derive(Clone, Copy, Debug)]
pub(crate) enum Method {
    Explicit,
    /// For what dies out fast, of slopes that depend on the first two parts of the state only.
    Stiff,
}

/// Accuracy and bounds.
#[derive(Clone, Copy, Debug)]
pub(crate) struct Bounds {
    /// Error allowed in a step, relative, and absolute in the state's own units.
    pub(crate) tolerance: f64,
    /// Longest step (s).
    pub(crate) longest_step: f64,
    /// Time at which to stop (s).
    pub(crate) end: f64,
}

/// A moment of the way.
#[derive(Clone, Copy, Debug)]
pub(crate) struct Moment<S> {
    /// When (s).
    pub(crate) time: f64,
    pub(crate) state: S,
    /// Slope of the state over time.
    pub(crate) slope: S,
}

/// Follows `slope` from `start` at time 0. `watch` gets every accepted step with the time at which it
/// begins, and stops by returning at which share of it. Returns where it has stopped: a step of that length
/// is made anew, so that the state there is as accurate as at the end of any step.
///
/// # Errors
/// The last moment, where it cannot be carried on: too many steps, or steps that become too short.
pub(crate) fn follow<const N: usize>(
    method: Method,
    slope: impl Fn(&[f64; N]) -> [f64; N],
    start: [f64; N],
    bounds: Bounds,
    mut watch: impl FnMut(f64, &Step<[f64; N]>) -> Option<f64>,
) -> Result<Moment<[f64; N]>, Moment<[f64; N]>> {
    let of = |now: &Moment<[f64; N]>, size: f64| match method {
        Method::Explicit => {
            let Ok(step) = explicit(&now.state, &now.slope, size, |at| {
                Ok::<_, Infallible>(slope(at))
            });
            step
        }
        Method::Stiff => rosenbrock(&now.state, &now.slope, size, &slope),
    };
    // with the first step (s)
    let (order, mut size): (f64, f64) = match method {
        Method::Explicit => (5.0, 1e-3),
        Method::Stiff => (4.0, 1e-5),
    };
    let mut now = Moment {
        time: 0.0,
        slope: slope(&start),
        state: start,
    };
    for _ in 0..MOST_STEPS {
        let left = bounds.end - now.time;
        if left <= SHORTEST_STEP {
            return Ok(now);
        }
        size = size.min(bounds.longest_step).min(left);
        if size < SHORTEST_STEP {
            break;
        }
        let step = of(&now, size);
        let error = step.mean_error(bounds.tolerance);
        let growth = (0.9 * error.max(1e-12).powf(-1.0 / order)).clamp(GROWTH.0, GROWTH.1);
        if error <= 1.0 {
            let stop = watch(now.time, &step);
            if let Some(share) = stop
                && share < 1.0
            {
                let part = of(&now, share * size);
                return Ok(part.moment(now.time));
            }
            now = step.moment(now.time);
            if stop.is_some() {
                return Ok(now);
            }
            size *= growth;
        } else {
            // an error that is not a number is too large
            size *= if error.is_finite() {
                growth.min(0.9)
            } else {
                GROWTH.0
            };
        }
    }
    Err(now)
}

impl<S> Step<S> {
    /// Its end, from the time at which it begins.
    fn moment(self, begins: f64) -> Moment<S> {
        let [_, slope] = self.ends;
        Moment {
            time: begins + self.size,
            state: self.to,
            slope,
        }
    }
}
