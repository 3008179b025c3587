//! Solving, timed for the browser's own timeline and for the benchmark.

use crate::dom::window;
use crate::error::Result;
use gearswing_app::{Effect, State, has_changed, settle};

/// Name of the measure.
const NAME: &str = "solving";

/// Name of the mark where it begins.
const BEGIN: &str = "solving begins";

/// Works out the results of what has changed. One measure is kept at a time: the browser would
/// gather them without end.
pub(super) fn solve(state: &mut State) -> Result<Vec<Effect>> {
    let clock = window()?.performance().filter(|_| has_changed(state));
    let Some(clock) = clock else {
        return Ok(settle(state));
    };
    clock.clear_marks_with_mark_name(BEGIN);
    clock.clear_measures_with_measure_name(NAME);
    clock.mark(BEGIN)?;
    let effects = settle(state);
    clock.measure_with_start_mark(NAME, BEGIN)?;
    Ok(effects)
}
