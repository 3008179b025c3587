//! A run against time, at a time.
use gearswing_gear::model::Direction;
use gearswing_solver::result::{LegSample, Run, Sample};

/// The direction that is shown.
pub(crate) fn selected(down: bool) -> Direction {
    if down { Direction::Down } else { Direction::Up }
}

/// The samples on both sides of a time, and the share of the way between them (ratio).
fn beside(run: &Run, time_s: f64) -> Option<(&Sample, &Sample, f64)> {
    let after = run.samples.partition_point(|sample| sample.time <= time_s);
    let a = run.samples.get(after.saturating_sub(1))?;
    let b = run.samples.get(after).unwrap_or(a);
    let width = b.time - a.time;
    let share = if width > 0.0 {
        ((time_s - a.time) / width).clamp(0.0, 1.0)
    } else {
        0.0
    };
    Some((a, b, share))
}

/// Place of a leg on its path at a time (ratio).
pub(crate) fn progress_at(run: &Run, leg: usize, time_s: f64) -> Option<f64> {
    let (a, b, share) = beside(run, time_s)?;
    let (a, b) = (a.legs.get(leg)?.place, b.legs.get(leg)?.place);
    Some(a.progress + (b.progress - a.progress) * share)
}

/// What the switches of a leg say at a time: they hold until the next sample.
pub(crate) fn leg_at(run: &Run, leg: usize, time_s: f64) -> Option<&LegSample> {
    beside(run, time_s)?.0.legs.get(leg)
}

/// A number of the supply at a time, straight between samples.
pub(crate) fn value_at(
    run: &Run,
    time_s: f64,
    get: impl Fn(&Sample) -> Option<f64>,
) -> Option<f64> {
    let (a, b, share) = beside(run, time_s)?;
    let (a, b) = (get(a)?, get(b)?);
    Some(a + (b - a) * share)
}
