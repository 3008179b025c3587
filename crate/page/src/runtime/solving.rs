//! Solving, timed for the browser's own timeline and for the benchmark.

use crate::dom::window;
use crate::error::Result;
use gearswing_app::{Effect, State, has_changed, settle_part};
use web_sys::Performance;

/// Name of the measure.
const NAME: &str = "solving";

/// Name of the mark where it begins.
const BEGIN: &str = "solving begins";

/// Longest slice of work in a turn (ms): what takes longer is told and goes on with the next frames.
const FIRST_SLICE_MS: f64 = 100.0;

/// Longest slice of what goes on: presses and keys come between two of them (ms).
const NEXT_SLICE_MS: f64 = 40.0;

/// Time that a turn has for working out.
pub(super) struct Slice {
    clock: Option<Performance>,
    /// When it ends (ms).
    end_ms: f64,
}

impl Slice {
    /// For what has just happened, or (`goes_on`) for what is under way.
    pub(super) fn begin(goes_on: bool) -> Result<Self> {
        let clock = window()?.performance();
        let now_ms = clock.as_ref().map_or(0.0, Performance::now);
        let length_ms = if goes_on {
            NEXT_SLICE_MS
        } else {
            FIRST_SLICE_MS
        };
        Ok(Self {
            clock,
            end_ms: now_ms + length_ms,
        })
    }

    /// Works out the results of what has changed, part by part until the slice is over. One measure is
    /// kept at a time: the browser would gather them without end.
    pub(super) fn solve(&self, state: &mut State) -> Result<Vec<Effect>> {
        self.solve_while(state, |_| true)
    }

    /// Works out the answers only, what else there is with the next frames: they are what a person who
    /// opens the page waits for.
    pub(super) fn answer(&self, state: &mut State) -> Result<Vec<Effect>> {
        self.solve_while(state, has_changed)
    }

    fn solve_while(
        &self,
        state: &mut State,
        goes_on: impl Fn(&State) -> bool,
    ) -> Result<Vec<Effect>> {
        let mut effects = Vec::new();
        let measured = self.clock.as_ref().filter(|_| has_changed(state));
        if let Some(clock) = measured {
            clock.clear_marks_with_mark_name(BEGIN);
            clock.clear_measures_with_measure_name(NAME);
            clock.mark(BEGIN)?;
        }
        // without a clock there are no slices
        while settle_part(state, &mut effects) && !self.is_over() && goes_on(state) {}
        if let Some(clock) = measured {
            clock.measure_with_start_mark(NAME, BEGIN)?;
        }
        Ok(effects)
    }

    fn is_over(&self) -> bool {
        let clock = self.clock.as_ref();
        clock.is_some_and(|clock| clock.now() >= self.end_ms)
    }
}
