//! One run: time steps between events, and what is written down of them.
use super::finish::{MOST_SAMPLES, thin};
use super::leg::Moving;
use super::live::Live;
use super::next::{Next, larger};
use super::refill::Moved;
use super::state::{BUDGETS, Look, Power};
use super::stepper::Stepper;
use super::watch::Watch;
use super::{SLOWEST_PACE, SupplyOptions};
use crate::model::Supply;
use crate::result::SupplyError;
use crate::result::{Direction, Run, RunEnd, RunEvent, RunEventKind, Sample};

/// Bound on the time steps of a run, and on those more for each leg: one may go after the other.
const MAX_STEPS: usize = 100_000;
const MAX_STEPS_OF_A_LEG: usize = 2_000;

/// A gear under way.
#[derive(Clone, Debug)]
pub(super) struct Going {
    pub(super) supply: Supply,
    pub(super) power: Power,
    pub(super) direction: Direction,
    pub(super) legs: Vec<Moving>,
    pub(super) state: Vec<f64>,
    /// Legs that looks ask.
    pub(super) live: Live,
    pub(super) time: f64,
    pub(super) step: f64,
    pub(super) stepper: Stepper,
    pub(super) watch: Watch,
    pub(super) events: Vec<RunEvent>,
    pub(super) samples: Vec<Sample>,
    /// Steps since the last sample, and between two of them.
    unsampled: usize,
    stride: usize,
    pub(super) largest_current: Option<f64>,
    pub(super) end: Option<RunEnd>,
    /// The last look, once it has begun, and the steps that it may still take.
    last: Option<Look>,
    steps_left: usize,
    /// How and when the legs have come to their ends, while the pump fills the accumulator.
    pub(super) moved: Option<Moved>,
    /// Pressure at which the pump stands or runs on once all legs have stopped (Pa).
    pub(super) stopped_at: Option<f64>,
}

impl Going {
    pub(super) fn new(
        supply: &Supply,
        power: Power,
        legs: Vec<Moving>,
        direction: Direction,
        options: &SupplyOptions,
    ) -> Self {
        let mut state: Vec<f64> = legs.iter().map(|leg| leg.begins_at).collect();
        state.extend([0.0; BUDGETS]);
        let legs_in_all = legs.len();
        Self {
            live: Live::all(legs_in_all),
            watch: Watch::new(supply, &power),
            supply: *supply,
            power,
            direction,
            legs,
            state,
            time: 0.0,
            step: 1e-3,
            stepper: Stepper::new(options.tolerance),
            events: Vec::new(),
            samples: Vec::new(),
            unsampled: 0,
            stride: 1,
            largest_current: None,
            end: None,
            last: None,
            steps_left: MAX_STEPS + MAX_STEPS_OF_A_LEG * legs_in_all,
            moved: None,
            stopped_at: None,
        }
    }

    /// Runs to the end.
    #[cfg(test)]
    pub(super) fn run(mut self) -> Result<Run, SupplyError> {
        loop {
            if let Some(run) = self.advance(usize::MAX)? {
                return Ok(run);
            }
        }
    }

    /// Runs on by some steps; `None` = it has not ended yet.
    ///
    /// # Errors
    /// [`SupplyError`] when a balance is not found or the bound on steps is reached.
    pub(super) fn advance(&mut self, steps: usize) -> Result<Option<Run>, SupplyError> {
        let mut look = match self.last.take() {
            Some(look) => look,
            None => self.begin()?,
        };
        for _ in 0..steps.min(self.steps_left) {
            if let Some(end) = self.end {
                return Ok(Some(self.finish(end)));
            }
            self.steps_left -= 1;
            self.power.follow(&look);
            self.choose(&look, false);
            self.step = self.step.min(self.longest_step(&look));
            let Some((trial, growth)) = self.attempt(&look)? else {
                continue;
            };
            match self.next_in(&trial)? {
                (None, current) => {
                    self.largest_current = larger(self.largest_current, current);
                    self.stepper.is_taken();
                    self.state.clone_from(&trial.to);
                    self.time += self.step;
                    self.step *= growth;
                    look = self.look(&self.state, self.time)?;
                    self.sample_now_and_then(&look);
                }
                (Some(next), current) => look = self.take(&look, &next, current)?,
            }
        }
        if self.steps_left == 0 {
            return Err(SupplyError::TooManySteps {
                time: self.time,
                steps: MAX_STEPS + MAX_STEPS_OF_A_LEG * self.legs.len(),
            });
        }
        self.last = Some(look);
        Ok(None)
    }

    /// What happens before the first step.
    fn begin(&mut self) -> Result<Look, SupplyError> {
        self.tell(None, RunEventKind::Selected, None);
        let look = self.look(&self.state, self.time)?;
        self.sample(&self.stopped_at_switch(&look));
        self.arrive(&look);
        let look = self.look(&self.state, self.time)?;
        self.check(&look);
        Ok(look)
    }

    /// Steps to an event, before which the largest current is known, and lets it happen.
    fn take(
        &mut self,
        look: &Look,
        next: &Next,
        current: Option<f64>,
    ) -> Result<Look, SupplyError> {
        let size = self.step * next.share;
        // The place is known exactly; the time step comes as near as its tolerance.
        let legs = self.legs.len();
        let exact = next.leg.or_else(|| self.power.exactly_at(next.seen?, legs));
        if size > 0.0 {
            let Some((to, size)) = self.up_to(look, exact, size)? else {
                self.falls_short(size);
                return Ok(look.clone());
            };
            self.state = to;
            self.time += size;
            self.stepper.is_taken();
        }
        self.largest_current = larger(self.largest_current, current);
        if let Some((at, fluid)) = exact
            && let Some(place) = self.state.get_mut(at)
        {
            *place = fluid;
        }
        self.begins_anew();
        let there = self.look(&self.state, self.time)?;
        self.sample(&there);
        match next.seen {
            Some(kind) => {
                self.see(kind, &there);
                let after = self.look(&self.state, self.time)?;
                if after.gas != there.gas {
                    self.sample(&after);
                    self.check(&after);
                }
                Ok(after)
            }
            None => {
                self.arrive(&there);
                self.choose(&there, true);
                if self.end.is_some() {
                    // Nothing is driven any more: the last look holds, with the switches as they are now.
                    let last = self.at_end(&there)?;
                    self.sample(&last);
                    return Ok(last);
                }
                let after = self.look(&self.state, self.time)?;
                self.sample(&self.stopped_at_switch(&after));
                self.check(&after);
                self.step = self.step.min(1e-2);
                Ok(after)
            }
        }
    }

    pub(super) fn tell(&mut self, leg: Option<usize>, kind: RunEventKind, pressure: Option<f64>) {
        self.events.push(RunEvent {
            time: self.time,
            leg,
            kind,
            place: None,
            pressure,
        });
    }

    /// Counts a current, and tells where it first passes the breaker's rating.
    pub(super) fn draw(&mut self, current: Option<f64>, pressure: Option<f64>) {
        self.largest_current = larger(self.largest_current, current);
        if self.watch.passes_breaker(current) {
            self.watch.note(RunEventKind::BreakerPassed);
            self.tell(None, RunEventKind::BreakerPassed, pressure);
        }
    }

    /// Every so manieth step is a sample, fewer where there would be too many.
    fn sample_now_and_then(&mut self, look: &Look) {
        self.unsampled += 1;
        if self.unsampled < self.stride {
            let pressure = look.manifold.map(|manifold| manifold.pressure);
            self.draw(look.current, pressure);
            return;
        }
        self.sample(look);
        if self.samples.len() > 2 * MOST_SAMPLES {
            thin(&mut self.samples);
            self.stride *= 2;
        }
    }

    fn sample(&mut self, look: &Look) {
        self.unsampled = 0;
        let manifold = look.manifold;
        self.draw(look.current, manifold.map(|manifold| manifold.pressure));
        self.samples.push(Sample {
            time: self.time,
            pressure: manifold.map(|manifold| manifold.pressure),
            flow: manifold.map(|manifold| manifold.pumped),
            current: look.current,
            bus_voltage: look.bus_voltage,
            legs: self
                .legs
                .iter()
                .zip(&self.state)
                .map(|(leg, fluid)| leg.sample(*fluid))
                .collect(),
        });
    }
}

/// Whether nothing that could still move moves.
pub(super) fn stands(look: &Look) -> f64 {
    look.pace - SLOWEST_PACE
}
