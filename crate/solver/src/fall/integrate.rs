//! The published integrator behind one function.
//!
//! Dormand and Prince's explicit method of order 5 with step control; it has no event search, so
//! every accepted step is handed out with its end slopes.
use ode_solvers::dop_shared::OutputType;
use ode_solvers::{Dopri5, SVector, System};
use std::cell::RefCell;

/// Most steps of one integration.
const MOST_STEPS: u32 = 20_000;

/// Place and speed along the way, energy taken by the orifice and by what the motion adds to the
/// friction of the pins (J); or the slopes of these over time.
pub(super) type State = [f64; 4];

/// A moment of the way.
#[derive(Clone, Copy, Debug)]
pub(super) struct Moment {
    pub(super) time: f64,
    pub(super) state: State,
    pub(super) slope: State,
}

/// Accuracy and bounds of an integration.
#[derive(Clone, Copy, Debug)]
pub(super) struct Bounds {
    /// Error allowed in a step, relative, and absolute in the state's own units.
    pub(super) tolerance: f64,
    /// Longest step (s).
    pub(super) longest_step: f64,
    /// Time at which to stop (s).
    pub(super) end: f64,
}

/// Follows `slope` from `start` at time 0. `watch` gets the ends of every accepted step and stops the
/// integration by returning true.
///
/// # Errors
/// The last moment handed out, where the integration cannot be carried on: too many steps, or steps
/// that become too short.
pub(super) fn integrate(
    slope: impl Fn(&State) -> State,
    start: State,
    bounds: Bounds,
    watch: impl FnMut(&Moment, &Moment) -> bool,
) -> Result<Moment, Moment> {
    let first = Moment {
        time: 0.0,
        state: start,
        slope: slope(&start),
    };
    let shared = RefCell::new((first, watch));
    let mut solver = Dopri5::from_param(
        Watched {
            slope,
            shared: &shared,
        },
        0.0,
        bounds.end,
        bounds.longest_step,
        SVector::from(start),
        bounds.tolerance,
        bounds.tolerance,
        0.9,
        0.04,
        0.2,
        10.0,
        bounds.longest_step,
        0.0,
        MOST_STEPS,
        u32::MAX,
        OutputType::Sparse,
    );
    let outcome = solver.integrate();
    drop(solver);
    let last = shared.into_inner().0;
    outcome.map(|_| last).map_err(|_| last)
}

struct Watched<'a, F, W> {
    slope: F,
    shared: &'a RefCell<(Moment, W)>,
}

impl<F: Fn(&State) -> State, W: FnMut(&Moment, &Moment) -> bool> System<f64, SVector<f64, 4>>
    for Watched<'_, F, W>
{
    fn system(&self, _time: f64, state: &SVector<f64, 4>, slope: &mut SVector<f64, 4>) {
        *slope = SVector::from((self.slope)(&(*state).into()));
    }

    fn solout(&mut self, time: f64, state: &SVector<f64, 4>, slope: &SVector<f64, 4>) -> bool {
        let now = Moment {
            time,
            state: (*state).into(),
            slope: (*slope).into(),
        };
        let mut shared = self.shared.borrow_mut();
        let (before, watch) = &mut *shared;
        let stop = watch(before, &now);
        *before = now;
        stop
    }
}
