//! The legs that a look at the manifold must ask: those that wait for more pressure take nothing.
use std::cell::Cell;

use super::leg::Moving;
use super::run::Going;
use super::state::{Look, Power};
use crate::hydraulics::Line;
use crate::numeric::MOVED;
use crate::result::SupplyError;

/// A leg that needs more than the manifold has by so much, as a share of it and beside (ratio, Pa), waits.
const MARGIN: (f64, f64) = (0.02, 2e5);

/// Error in the fluid of a leg, as multiple of what is allowed in a step, by which it may be too far (ratio).
const JUST_PAST: f64 = 10.0;

/// The legs asked, as indices, and what is known of the others.
#[derive(Clone, Debug)]
pub(super) struct Live {
    /// Legs asked.
    pub legs: Vec<usize>,
    /// Flow that the others would take from the largest pressure without load (m3/s).
    pub free: f64,
    /// Legs whose lines let through both ways, as an implicit step wants them.
    pub both_ways: Vec<usize>,
    /// Least load of the others (Pa).
    floor: f64,
    /// Whether a look has come beyond that.
    passed: Cell<bool>,
}

impl Live {
    /// All legs.
    pub(super) fn all(count: usize) -> Self {
        Self {
            legs: (0..count).collect(),
            free: 0.0,
            both_ways: Vec::new(),
            floor: f64::INFINITY,
            passed: Cell::new(false),
        }
    }

    /// The legs to ask at a pressure.
    fn at(pressure: f64, power: &Power, legs: &[Moving], state: &[f64]) -> Self {
        let Power::Fluid(pump) = power else {
            return Self::all(legs.len());
        };
        let (share, beside) = MARGIN;
        let limit = pressure + (share * pressure.abs()).max(beside);
        let mut live = Self {
            legs: Vec::new(),
            ..Self::all(0)
        };
        for (at, (leg, fluid)) in legs.iter().zip(state).enumerate() {
            let Some(stage) = leg.now() else { continue };
            let load = stage.draws(*fluid);
            if load < limit {
                live.legs.push(at);
            } else {
                live.floor = live.floor.min(load);
                live.free += stage.line.flow(pump.most);
            }
        }
        live
    }
}

impl Going {
    /// A look that asks the legs that may move, or all where the pressure comes to one that waits.
    pub(super) fn look(&self, state: &[f64], time: f64) -> Result<Look, SupplyError> {
        let look = self.power.look(&self.legs, state, time, &self.live)?;
        let pressure = look.manifold.map_or(f64::NEG_INFINITY, |m| m.pressure);
        if pressure < self.live.floor {
            return Ok(look);
        }
        self.live.passed.set(true);
        let all = Live::all(self.legs.len());
        self.power.look(&self.legs, state, time, &all)
    }

    /// A look for an implicit step, in which legs that flow may run back; `None` beyond what is known of
    /// those that wait.
    pub(super) fn look_both_ways(
        &self,
        state: &[f64],
        live: &Live,
    ) -> Result<Option<Look>, SupplyError> {
        let look = self.power.look(&self.legs, state, self.time, live)?;
        let pressure = look.manifold.map_or(f64::NEG_INFINITY, |m| m.pressure);
        if pressure < live.floor {
            return Ok(Some(look));
        }
        self.live.passed.set(true);
        Ok(None)
    }

    /// The legs that are asked, those that now flow both ways, and those of which `also` says so.
    pub(super) fn live_both_ways(&self, look: &Look, also: impl Fn(usize) -> bool) -> Live {
        let flows = |at: usize| look.rates.get(at).is_some_and(|rate| *rate > 0.0);
        let legs = self.live.legs.iter().copied();
        Live {
            both_ways: legs.filter(|at| flows(*at) || also(*at)).collect(),
            ..self.live.clone()
        }
    }

    /// Whether a leg stands only because a step has taken it too far, by some of the error that is allowed:
    /// with the pressure at the manifold rising, it flows again at once.
    pub(super) fn is_just_past(&self, at: usize, look: &Look, scales: &[f64]) -> bool {
        let of = || {
            let stage = self.legs.get(at)?.now()?;
            let (fluid, scale) = (*self.state.get(at)?, *scales.get(at)?);
            let before = (fluid - JUST_PAST * scale).max(0.0);
            let pressure = look.manifold?.pressure;
            Some(stage.draws(before) < pressure && pressure <= stage.draws(fluid))
        };
        of().unwrap_or(false)
    }

    /// How the flow into each leg of `parts` changes with what each has taken, row after row (1/s), at a
    /// look; `None` where an accumulator stands between, or there is no fluid.
    ///
    /// The flow of a leg is q(p − load); the pressure p of a manifold in balance gives way as the loads
    /// rise, each by its share of the slopes of all flows and that of the pump; where pump or return line
    /// hold it, it stays.
    pub(super) fn derivatives(
        &self,
        look: &Look,
        live: &Live,
        (parts, scales): (&[usize], &[f64]),
    ) -> Option<Vec<f64>> {
        let (Power::Fluid(pump), Some(manifold)) = (&self.power, look.manifold) else {
            return None;
        };
        if pump.gas.is_some() {
            return None;
        }
        let of = |at: &usize| {
            let stage = self.legs.get(*at)?.now()?;
            let (fluid, moved) = (*self.state.get(*at)?, MOVED * scales.get(*at)?);
            let load = stage.draws(fluid);
            let rise = (stage.draws(fluid + moved) - load) / moved;
            let line = Line {
                both_ways: live.both_ways.binary_search(at).is_ok(),
                ..stage.line
            };
            Some((line.slope(manifold.pressure - load), rise))
        };
        let legs: Vec<(f64, f64)> = parts.iter().map(of).collect::<Option<_>>()?;
        let is_held = manifold.pressure <= pump.least || manifold.pressure >= pump.most;
        let all = pump.slope + legs.iter().map(|(slope, _)| slope).sum::<f64>();
        let gives = if is_held || all <= 0.0 {
            0.0
        } else {
            1.0 / all
        };
        let mut found = Vec::with_capacity(legs.len() * legs.len());
        for (row, (slope, _)) in legs.iter().enumerate() {
            for (column, (other, rise)) in legs.iter().enumerate() {
                let own = if row == column { *rise } else { 0.0 };
                found.push(slope * (gives * other * rise - own));
            }
        }
        Some(found)
    }

    /// Legs that may have moved in a step.
    pub(super) fn moving(&self) -> Vec<usize> {
        if self.live.passed.get() {
            (0..self.legs.len()).collect()
        } else {
            self.live.legs.clone()
        }
    }

    /// Chooses the legs to ask anew, where a look has found that others move too, or `anew`.
    pub(super) fn choose(&mut self, look: &Look, anew: bool) {
        if anew || self.live.passed.get() {
            let pressure = look.manifold.map_or(0.0, |manifold| manifold.pressure);
            self.live = Live::at(pressure, &self.power, &self.legs, &self.state);
        }
    }
}
