//! What is left of a run when it has ended: budgets, breaker, stalls.
use super::leg::Moving;
use super::run::Going;
use super::stall::stalls;
use super::state::{Budget, Power};
use crate::model::Source;
use crate::result::{Breaker, EnergyBudget, FluidBudget, Run, RunEnd, Sample};

/// Most samples kept of a run; beyond them every other one between events goes.
pub(super) const MOST_SAMPLES: usize = 2_000;

impl Going {
    /// The run as a result.
    pub(super) fn finish(&mut self, end: RunEnd) -> Run {
        let ceiling = (end == RunEnd::PressureSwitch)
            .then_some(self.pressure_switch())
            .flatten();
        let stalls = match end {
            RunEnd::Complete => Vec::new(),
            // what the switches stopped was on its way; what touches, jams or binds was not
            RunEnd::SwitchedOff => {
                let mut all = stalls(&self.supply, &self.power, &self.legs, &self.state, None);
                all.retain(|stall| self.legs.get(stall.leg).is_some_and(Moving::is_blocked));
                all
            }
            RunEnd::Stalled | RunEnd::PressureSwitch => {
                stalls(&self.supply, &self.power, &self.legs, &self.state, ceiling)
            }
        };
        let of = |which: Budget| self.budget(which);
        let strokes = match &self.supply.source {
            Source::HandPump(hand) => Some(of(Budget::Pumped) / hand.stroke_volume),
            _ => None,
        };
        let refill = self.refill();
        let most = match &self.power {
            Power::Fluid(pump) => Some(pump.most),
            Power::Electric { .. } => None,
        };
        let fluid = match most {
            Some(_) => FluidBudget {
                pumped: of(Budget::Pumped),
                drawn: of(Budget::Drawn),
                accumulator: of(Budget::FromGas),
                swept: self.swept(),
                relieved: of(Budget::Relieved),
            },
            None => FluidBudget::default(),
        };
        let energy = EnergyBudget {
            battery: of(Budget::Battery),
            wires: of(Budget::Wires),
            given: of(Budget::Given),
            accumulator: of(Budget::GasWork),
            loads: of(Budget::Loads),
            lines: of(Budget::Lines),
            // electric actuators have no relief valve
            relief: most.unwrap_or(0.0) * of(Budget::Relieved),
        };
        let breaker = self
            .largest_current
            .zip(self.supply.battery.breaker_rating)
            .map(|(_, rating)| Breaker {
                rating,
                passed: self.watch.breaker_passed(),
            });
        thin(&mut self.samples);
        Run {
            direction: self.direction,
            end,
            time: self.moved.map_or(self.time, |moved| moved.time),
            events: std::mem::take(&mut self.events),
            samples: std::mem::take(&mut self.samples),
            fluid,
            energy,
            largest_current: self.largest_current,
            breaker,
            stalls,
            largest_pressure: most,
            strokes,
            refill,
        }
    }

    /// Fluid into all cylinders, by where the legs are (m3).
    fn swept(&self) -> f64 {
        let legs = self.legs.iter().zip(&self.state);
        legs.map(|(leg, fluid)| leg.swept() + fluid - leg.skipped())
            .sum()
    }
}

/// Drops every other sample until few enough are left, both ends kept.
pub(super) fn thin(samples: &mut Vec<Sample>) {
    // Each round halves them; no list is longer than 2^60.
    for _ in 0..60 {
        if samples.len() <= MOST_SAMPLES {
            return;
        }
        let last = samples.len() - 1;
        let mut at = 0;
        samples.retain(|_| {
            let keep = at % 2 == 0 || at == last;
            at += 1;
            keep
        });
    }
}
