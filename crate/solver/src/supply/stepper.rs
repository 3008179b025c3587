//! How long a time step is and how it is made.
use super::leg::Moving;
use super::live::Live;
use super::run::Going;
use super::state::{Budget, Look, Power, Step};
use super::{LARGEST_SHARE, LARGEST_STEP, USUAL_LEGS};
use crate::numeric::{Implicit, SMALL, explicit};
use crate::result::SupplyError;

/// How near to a place, as a share of its stage, a step must end (ratio), and most corrections of its size; one
/// that is so many times as far off has not come there (ratio).
const EXACT: f64 = 1e-10;
const FAR: f64 = 100.0;
const MOST_CORRECTIONS: usize = 12;

/// The same of the fluid in an accumulator (m3).
const NEAR_FLUID: f64 = 1e-14;

/// Stiffness of an explicit step that is held back by it, so many of which make the next implicit, and
/// below which an implicit one is explicit again (ratio). So many free ones one after the other end the count: a
/// leg that a step has taken too far stands for some, and is not stiff as it stands.
const HELD_BACK: f64 = 2.5;
const MOST_HELD_BACK: usize = 12;
const MOST_FREE: usize = 6;
const FREE: f64 = 0.5;

/// A step that is so much shorter than it might be is held back too (ratio), so many of which make the next
/// implicit.
const SHORT: f64 = 0.02;
const MOST_SHORT: usize = 40;

/// The same of one that is not so short, for long.
const LESS_SHORT: f64 = 0.2;
const MOST_LESS_SHORT: usize = 1_000;

/// Implicit steps that are not found one after the other, after which they are explicit again.
const MOST_LOST: usize = 4;

/// How the steps of a run are made.
#[derive(Clone, Copy, Debug)]
pub(super) struct Stepper {
    tolerance: f64,
    /// Whether steps are implicit.
    implicit: bool,
    /// Explicit steps that were held back with few free ones between, the free ones since, those that were
    /// short one after the other, and implicit ones that were not found.
    held_back: usize,
    free: usize,
    short: [usize; 2],
    lost: usize,
    /// How fast neighboring states came together in the last implicit step (1/s).
    fastest: f64,
}

impl Stepper {
    /// At the start of a run; `tolerance` is the error allowed in a step, as a share of a stage (ratio).
    pub(super) fn new(tolerance: f64) -> Self {
        Self {
            tolerance,
            implicit: false,
            held_back: 0,
            free: 0,
            short: [0; 2],
            lost: 0,
            fastest: 0.0,
        }
    }

    /// An implicit step has not been found.
    fn is_lost(&mut self) {
        self.lost += 1;
        if self.lost >= MOST_LOST {
            *self = Self::new(self.tolerance);
        }
    }

    /// The gear has come on by a step: those that were not found count anew.
    pub(super) fn is_taken(&mut self) {
        self.lost = 0;
    }

    /// A step of this share of the longest has been made, or was too coarse: which kind the next one is.
    fn is_made(&mut self, share: f64, stiffness: f64, fastest: f64) {
        if self.implicit {
            if fastest < FREE {
                *self = Self::new(self.tolerance);
            }
            return;
        }
        if stiffness > HELD_BACK {
            (self.held_back, self.free) = (self.held_back + 1, 0);
        } else {
            self.free += 1;
            if self.free >= MOST_FREE {
                self.held_back = 0;
            }
        }
        for (count, bound) in self.short.iter_mut().zip([SHORT, LESS_SHORT]) {
            *count = if share < bound { *count + 1 } else { 0 };
        }
        let [short, less_short] = self.short;
        self.implicit = self.held_back >= MOST_HELD_BACK
            || short >= MOST_SHORT
            || less_short >= MOST_LESS_SHORT;
    }
}

impl Going {
    /// Error allowed in each part of the state: in the fluid of the legs and of the accumulator.
    fn scales(&self) -> Vec<f64> {
        let tolerance = self.stepper.tolerance;
        let of = |leg: &Moving| leg.now().map_or(f64::INFINITY, |s| s.extent * tolerance);
        let mut scales: Vec<f64> = self.legs.iter().map(of).collect();
        scales.resize(self.state.len(), f64::INFINITY);
        let gas = self.legs.len() + Budget::FromGas as usize;
        if let (Some(volume), Some(scale)) = (self.power.gas_volume(), scales.get_mut(gas)) {
            *scale = volume * tolerance;
        }
        scales
    }

    /// Longest step in which no leg comes by more than a few of its stations.
    pub(super) fn longest_step(&self, look: &Look) -> f64 {
        if self.moved.is_some() {
            let gas = look.rates.get(self.legs.len() + Budget::FromGas as usize);
            let rate = gas.map_or(0.0, |rate| rate.abs()).max(f64::MIN_POSITIVE);
            let volume = self.power.gas_volume().unwrap_or(0.0);
            return (volume * LARGEST_SHARE / rate).max(LARGEST_STEP);
        }
        // the more legs share the flow, the longer each takes
        let legs = f64::from(u32::try_from(self.legs.len()).unwrap_or(u32::MAX));
        let longest = LARGEST_STEP * (legs / USUAL_LEGS).max(1.0);
        self.legs
            .iter()
            .zip(&look.rates)
            .filter_map(|(leg, rate)| Some(leg.now()?.extent * LARGEST_SHARE / rate.max(1e-300)))
            .fold(longest, f64::min)
    }

    /// Tries a step; with it, by how much the next may be longer. `None` where it is to be tried anew, as
    /// the stepper then says.
    pub(super) fn attempt(&mut self, look: &Look) -> Result<Option<(Step, f64)>, SupplyError> {
        let scales = self.scales();
        let longest = self.longest_step(look);
        let (trial, order, fastest) = if self.stepper.implicit {
            let Some((step, fastest)) = self.implicit(look, self.step, &scales)? else {
                self.step *= 0.25;
                self.stepper.is_lost();
                return Ok(None);
            };
            if fastest.is_finite() {
                self.stepper.fastest = fastest;
            }
            (step, 4.0, fastest * self.step)
        } else {
            (self.explicit(look, self.step)?, 5.0, f64::INFINITY)
        };
        let error = trial.error(&scales);
        let growth = (0.9 * error.max(1e-10).powf(-1.0 / order)).clamp(0.2, 4.0);
        let share = self.step / longest;
        let stiffness = trial.stiffness(&scales);
        if error.is_nan() || error > 1.0 {
            self.stepper.is_made(share, stiffness, fastest);
            self.step *= if error.is_nan() { 0.2 } else { growth.min(0.9) };
            return Ok(None);
        }
        self.stepper.is_made(share, stiffness, fastest);
        Ok(Some((trial, growth)))
    }

    fn explicit(&self, look: &Look, size: f64) -> Result<Step, SupplyError> {
        explicit(&self.state, &look.rates, size, |state| {
            self.look(state, self.time).map(|look| look.rates)
        })
    }

    /// An implicit step. Legs that are only just past where they would flow are let flow both ways in it; not
    /// so those that would still run back at its end, where it is tried without.
    fn implicit(
        &self,
        look: &Look,
        size: f64,
        scales: &[f64],
    ) -> Result<Option<(Step, f64)>, SupplyError> {
        let flowing = self.live_both_ways(look, |_| false);
        let all = self.live_both_ways(look, |at| self.is_just_past(at, look, scales));
        if all.both_ways.len() > flowing.both_ways.len() {
            let found = self.implicit_of(&all, look, size, scales)?;
            if found.is_some() {
                return Ok(found);
            }
            // it waits for the pressure, and is as stiff as before when it flows again
            let found = self.implicit_of(&flowing, look, size, scales)?;
            return Ok(found.map(|(step, _)| (step, f64::INFINITY)));
        }
        self.implicit_of(&flowing, look, size, scales)
    }

    fn implicit_of(
        &self,
        live: &Live,
        look: &Look,
        size: f64,
        scales: &[f64],
    ) -> Result<Option<(Step, f64)>, SupplyError> {
        // a leg that waits takes nothing, whatever it stands at
        let asked = |at: &usize| *at >= self.legs.len() || live.legs.binary_search(at).is_ok();
        let known = |at: &usize| scales.get(*at).is_some_and(|scale| scale.is_finite());
        let parts: Vec<usize> = (0..self.state.len())
            .filter(|at| known(at) && asked(at))
            .collect();
        let implicit = Implicit {
            parts: &parts,
            scales,
            derivatives: self.derivatives(look, live, (&parts, scales)),
        };
        let found = implicit.step(&self.state, &look.rates, size, |state| {
            let look = self.look_both_ways(state, live)?;
            Ok(look.map(|look| look.rates))
        })?;
        // what stands in balance goes to and fro by its rounding
        let runs_back = |step: &Step| {
            live.legs.iter().any(|at| {
                let rounding = scales.get(*at).map_or(0.0, |scale| SMALL * scale);
                step.end(*at).1 * size < -rounding
            })
        };
        Ok(found.filter(|(step, _)| !runs_back(step)))
    }

    /// A step of the kind that is now made; `None` where an implicit one is not found: an explicit one of the
    /// same size would be far off.
    fn trial(&self, look: &Look, size: f64) -> Result<Option<Step>, SupplyError> {
        if !self.stepper.implicit {
            return self.explicit(look, size).map(Some);
        }
        let found = self.implicit(look, size, &self.scales())?;
        Ok(found.map(|(step, _)| step))
    }

    /// An event has happened: a rate may have jumped, and what follows it at once may be an event too, which
    /// an implicit step would pass over. The next one is explicit, and no longer than what dies out takes.
    pub(super) fn begins_anew(&mut self) {
        if self.stepper.implicit {
            self.step = self.step.min(1.0 / self.stepper.fastest);
            self.stepper = Stepper::new(self.stepper.tolerance);
        }
    }

    /// A step to an event is not found: it is tried anew with shorter ones.
    pub(super) fn falls_short(&mut self, size: f64) {
        self.step = 0.25 * size;
        self.stepper.is_lost();
    }

    /// State after a step of a size at which a part of it comes to a value, and that size: what the longer
    /// step said of it is off where another leg starts within that one. `None` where there is none.
    pub(super) fn up_to(
        &self,
        look: &Look,
        exact: Option<(usize, f64)>,
        mut size: f64,
    ) -> Result<Option<(Vec<f64>, f64)>, SupplyError> {
        let Some(mut step) = self.trial(look, size)? else {
            return Ok(None);
        };
        let Some((at, value)) = exact else {
            return Ok(Some((step.to, size)));
        };
        let stage = self.legs.get(at).and_then(Moving::now);
        let near = stage.map_or(NEAR_FLUID, |stage| stage.extent * EXACT);
        // an implicit step goes far beyond what its neighbor says
        let implicit = self.stepper.implicit;
        let longest = if implicit { self.step } else { 0.0 }.max(2.0 * size);
        // what stands before the place and behind it: where nothing moves at the end of a step, as at a brace
        // that goes no further, the way between the two says how far off it is
        let here = self.state.get(at).map_or(f64::NAN, |here| here - value);
        let (mut before, mut behind) = ((0.0, here), None);
        for _ in 0..MOST_CORRECTIONS {
            let (end, rate) = step.end(at);
            let off = end - value;
            if off.abs() <= near {
                break;
            }
            if off * here > 0.0 {
                before = (size, off);
                // the Illinois rule: a side that stays counts half
                behind = behind.map(|(size, off)| (size, 0.5 * off));
            } else {
                behind = Some((size, off));
            }
            let newton = size - off / rate;
            let nearer = match behind {
                Some((most, past)) if !(newton > before.0 && newton < most) => {
                    before.0 + (most - before.0) * before.1 / (before.1 - past)
                }
                _ => newton,
            };
            if !(nearer > 0.0 && nearer <= longest) {
                break;
            }
            let Some(other) = self.trial(look, nearer)? else {
                return Ok(None);
            };
            (size, step) = (nearer, other);
        }
        let is_off = (step.end(at).0 - value).abs() > FAR * near;
        Ok((!(implicit && is_off)).then_some((step.to, size)))
    }
}

impl Power {
    /// Gas of an accumulator without fluid (m3).
    fn gas_volume(&self) -> Option<f64> {
        match self {
            Self::Fluid(pump) => pump.gas.map(|gas| gas.volume()),
            Self::Electric { .. } => None,
        }
    }
}
