//! One run: time steps between events, and what is written down of them.
use super::error::SupplyError;
use super::leg::Moving;
use super::next::{Next, larger};
use super::state::{BUDGETS, Look, Power};
use super::step::Step;
use super::watch::Watch;
use super::{LARGEST_SHARE, LARGEST_STEP, SLOWEST_PACE, SupplyOptions};
use crate::model::Supply;
use crate::result::{Direction, Run, RunEnd, RunEvent, RunEventKind, Sample};

/// Bound on the time steps of a run.
const MAX_STEPS: usize = 100_000;

/// How near to a place, as a share of its stage, a step must end [1], and most corrections of its size.
const EXACT: f64 = 1e-10;
const MOST_CORRECTIONS: usize = 4;

/// The same of the fluid in an accumulator [m3].
const NEAR_FLUID: f64 = 1e-14;

/// A gear under way.
#[derive(Clone, Debug)]
pub(super) struct Going {
    pub(super) supply: Supply,
    pub(super) power: Power,
    pub(super) direction: Direction,
    pub(super) legs: Vec<Moving>,
    pub(super) state: Vec<f64>,
    pub(super) time: f64,
    pub(super) step: f64,
    tolerance: f64,
    pub(super) watch: Watch,
    pub(super) events: Vec<RunEvent>,
    pub(super) samples: Vec<Sample>,
    pub(super) largest_current: Option<f64>,
    end: Option<RunEnd>,
    /// The last look, once it has begun, and the steps that it may still take.
    last: Option<Look>,
    steps_left: usize,
    /// Pressure at which the pump stands or runs on once all legs have stopped [Pa].
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
        Self {
            watch: Watch::new(supply, &power),
            supply: *supply,
            power,
            direction,
            legs,
            state,
            time: 0.0,
            step: 1e-3,
            tolerance: options.tolerance,
            events: Vec::new(),
            samples: Vec::new(),
            largest_current: None,
            end: None,
            last: None,
            steps_left: MAX_STEPS,
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
            self.step = self.step.min(self.longest_step(&look));
            let trial = self.trial(&look, self.step)?;
            let scales: Vec<f64> = self
                .legs
                .iter()
                .map(|leg| {
                    leg.now()
                        .map_or(f64::INFINITY, |s| s.extent * self.tolerance)
                })
                .collect();
            let error = trial.error(&scales);
            let growth = (0.9 * error.max(1e-10).powf(-0.2)).clamp(0.2, 4.0);
            if error > 1.0 {
                self.step *= growth.min(0.9);
                continue;
            }
            let (next, current) = self.next_in(&trial)?;
            self.largest_current = larger(self.largest_current, current);
            match next {
                None => {
                    self.state.clone_from(&trial.to);
                    self.time += self.step;
                    self.step *= growth;
                    look = self.look(&self.state, self.time)?;
                    self.sample(&look);
                }
                Some(next) => look = self.take(&look, &next)?,
            }
        }
        if self.steps_left == 0 {
            return Err(SupplyError::TooManySteps {
                time: self.time,
                steps: MAX_STEPS,
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

    pub(super) fn look(&self, state: &[f64], time: f64) -> Result<Look, SupplyError> {
        self.power.look(&self.legs, state, time)
    }

    /// Longest step in which no leg comes by more than a few of its stations.
    fn longest_step(&self, look: &Look) -> f64 {
        self.legs
            .iter()
            .zip(&look.rates)
            .filter_map(|(leg, rate)| Some(leg.now()?.extent * LARGEST_SHARE / rate.max(1e-300)))
            .fold(LARGEST_STEP, f64::min)
    }

    fn trial(&self, look: &Look, size: f64) -> Result<Step, SupplyError> {
        Step::new(&self.state, &look.rates, size, |state| {
            self.look(state, self.time).map(|look| look.rates)
        })
    }

    /// Steps to an event and lets it happen.
    fn take(&mut self, look: &Look, next: &Next) -> Result<Look, SupplyError> {
        let size = self.step * next.share;
        // The place is known exactly; the time step comes as near as its tolerance.
        let legs = self.legs.len();
        let exact = next.leg.or_else(|| self.power.exactly_at(next.seen?, legs));
        if size > 0.0 {
            let (step, size) = self.up_to(look, exact, size)?;
            self.state.clone_from(&step.to);
            self.time += size;
        }
        if let Some((at, fluid)) = exact
            && let Some(place) = self.state.get_mut(at)
        {
            *place = fluid;
        }
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

    /// A step of a size at which a part of the state comes to a value: what the longer step said of it is off where
    /// another leg starts within that one.
    fn up_to(
        &self,
        look: &Look,
        exact: Option<(usize, f64)>,
        mut size: f64,
    ) -> Result<(Step, f64), SupplyError> {
        let mut step = self.trial(look, size)?;
        let Some((at, value)) = exact else {
            return Ok((step, size));
        };
        let stage = self.legs.get(at).and_then(Moving::now);
        let near = stage.map_or(NEAR_FLUID, |stage| stage.extent * EXACT);
        for _ in 0..MOST_CORRECTIONS {
            let (end, rate) = step.end(at);
            let off = end - value;
            let nearer = size - off / rate;
            if off.abs() <= near || !(nearer > 0.0 && nearer <= 2.0 * size) {
                break;
            }
            size = nearer;
            step = self.trial(look, size)?;
        }
        Ok((step, size))
    }

    /// Lets everything happen that legs have come to.
    fn arrive(&mut self, look: &Look) {
        let mut happened = Vec::new();
        for (at, (leg, fluid)) in self.legs.iter_mut().zip(&mut self.state).enumerate() {
            happened.extend(leg.settle(fluid).into_iter().map(|what| (at, what)));
        }
        let pressure = look.manifold.map(|manifold| manifold.pressure);
        for (at, (kind, place)) in happened {
            self.events.push(RunEvent {
                time: self.time,
                leg: Some(at),
                kind,
                place: Some(place),
                pressure,
            });
        }
        let all_done = self.legs.iter().all(Moving::is_done);
        let all_home = self.legs.iter().all(Moving::is_home);
        let switched = self.legs.iter().all(Moving::end_switch);
        let by_pressure = self.pressure_switch();
        if by_pressure.is_none() && switched {
            self.tell(None, RunEventKind::SwitchesStop, pressure);
            self.end = Some(if all_home {
                RunEnd::Complete
            } else {
                RunEnd::SwitchedOff
            });
        } else if all_done {
            self.end = Some(if all_home {
                RunEnd::Complete
            } else {
                RunEnd::Stalled
            });
            self.runs_on(by_pressure);
        }
    }

    /// Pressure at which a switch stops the pump; electric actuators have none [Pa].
    pub(super) fn pressure_switch(&self) -> Option<f64> {
        self.supply.pump_switch()
    }

    /// What a jump of the load has brought about at once.
    fn check(&mut self, look: &Look) {
        if self.end.is_some() {
            return;
        }
        for kind in self.watch.seen(look) {
            if self.end.is_none() {
                self.see(kind, look);
            }
        }
    }

    /// Something that the watch has seen.
    fn see(&mut self, kind: RunEventKind, look: &Look) {
        let pressure = look.manifold.map(|manifold| manifold.pressure);
        if kind == RunEventKind::BreakerPassed && self.watch.breaker_passed() {
            // told with the sample
            return;
        }
        self.watch.note(kind);
        self.power.happens(kind);
        match kind {
            RunEventKind::Stalled => {
                // legs may stand because it has run empty at this instant
                if self.power.runs_empty(look) {
                    self.tell(None, RunEventKind::AccumulatorEmpty, pressure);
                }
                for at in 0..self.legs.len() {
                    if let Some(leg) = self.legs.get(at)
                        && !leg.is_done()
                    {
                        let place = self.state.get(at).map(|fluid| leg.place(*fluid));
                        self.events.push(RunEvent {
                            time: self.time,
                            leg: Some(at),
                            kind,
                            place,
                            pressure,
                        });
                    }
                }
                if let Power::Fluid(pump) = &self.power
                    && pump.motor.is_some()
                    && !pump.switched
                {
                    self.tell(None, RunEventKind::RunsOn, pressure);
                }
                self.end = Some(RunEnd::Stalled);
            }
            RunEventKind::PressureSwitch => {
                self.tell(None, kind, self.watch.stops_at(look).or(pressure));
                self.end = Some(RunEnd::PressureSwitch);
            }
            // one that comes down to where the pump gives again tells nothing
            _ if kind == RunEventKind::AccumulatorFull && look.is_above() => {}
            _ => self.tell(None, kind, pressure),
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

    fn sample(&mut self, look: &Look) {
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
