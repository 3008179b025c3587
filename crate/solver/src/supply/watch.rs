//! What is looked for in pressures and currents while the legs move.
use super::run::stands;
use super::state::{Look, Power};
use crate::hydraulics::Stands;
use crate::model::Supply;
use crate::result::RunEventKind;

/// Levels that make an event when they are crossed.
#[derive(Clone, Debug, PartialEq)]
pub(super) struct Watch {
    pressure_switch: Option<f64>,
    breaker: Option<f64>,
    relieves: bool,
    relief_open: bool,
    breaker_passed: bool,
}

impl Watch {
    pub(super) fn new(supply: &Supply, power: &Power) -> Self {
        let relieves = matches!(power, Power::Fluid(pump) if pump.relieves);
        Self {
            pressure_switch: supply
                .pump_switch()
                .filter(|_| supply.accumulator.is_none()),
            breaker: supply.battery.breaker_rating,
            relieves,
            relief_open: false,
            breaker_passed: false,
        }
    }

    /// How far a kind of event is away: it happens where this comes down to zero.
    pub(super) fn measure(&self, kind: RunEventKind, look: &Look) -> f64 {
        let manifold = look.manifold;
        let below_relief = manifold.map_or(f64::INFINITY, |m| m.below_relief);
        let below = |level: Option<f64>, value: Option<f64>| match (level, value) {
            (Some(level), Some(value)) => level - value,
            _ => f64::INFINITY,
        };
        match kind {
            RunEventKind::Stalled => stands(look),
            RunEventKind::ReliefOpen => below_relief,
            RunEventKind::ReliefClosed => -below_relief,
            RunEventKind::PressureSwitch => {
                below(self.pressure_switch, manifold.map(|m| m.pressure))
            }
            RunEventKind::AccumulatorEmpty => look.gas.map_or(f64::INFINITY, |(_, stored)| stored),
            RunEventKind::AccumulatorFull => {
                let below = manifold.map_or(f64::INFINITY, |m| m.below_full);
                if look.is_above() { -below } else { below }
            }
            RunEventKind::BreakerPassed => below(self.breaker, look.current),
            _ => f64::INFINITY,
        }
    }

    /// Kinds that have happened at a look and are not noted yet; the order is that in which they
    /// are told.
    pub(super) fn seen(&self, look: &Look) -> Vec<RunEventKind> {
        let relief = if self.relief_open {
            RunEventKind::ReliefClosed
        } else {
            RunEventKind::ReliefOpen
        };
        let mut kinds = vec![RunEventKind::PressureSwitch];
        if !self.breaker_passed {
            kinds.push(RunEventKind::BreakerPassed);
        }
        let stands = look.gas.map(|(stands, _)| stands);
        if stands.is_some_and(|stands| stands != Stands::Empty) {
            kinds.push(RunEventKind::AccumulatorEmpty);
        }
        if self.relieves {
            kinds.push(relief);
        } else if matches!(stands, Some(Stands::Holds | Stands::Above)) {
            kinds.push(RunEventKind::AccumulatorFull);
        }
        kinds.push(RunEventKind::Stalled);
        kinds.retain(|kind| self.measure(*kind, look) < 0.0);
        kinds
    }

    /// Pressure at which the switch stops the pump, where a look is above it (Pa).
    pub(super) fn stops_at(&self, look: &Look) -> Option<f64> {
        let reached = look.manifold.map(|manifold| manifold.pressure);
        self.pressure_switch
            .filter(|set| reached.is_some_and(|reached| reached > *set))
    }

    /// Whether the relief valve has opened and not closed again.
    pub(super) fn relief_is_open(&self) -> bool {
        self.relief_open
    }

    /// Whether a current has passed the breaker's rating.
    pub(super) fn breaker_passed(&self) -> bool {
        self.breaker_passed
    }

    /// Whether a current passes the breaker's rating for the first time.
    pub(super) fn passes_breaker(&self, current: Option<f64>) -> bool {
        let over = self
            .breaker
            .zip(current)
            .is_some_and(|(level, current)| current > level);
        over && !self.breaker_passed
    }

    /// Notes an event.
    pub(super) fn note(&mut self, kind: RunEventKind) {
        match kind {
            RunEventKind::ReliefOpen => self.relief_open = true,
            RunEventKind::ReliefClosed => self.relief_open = false,
            RunEventKind::BreakerPassed => self.breaker_passed = true,
            _ => {}
        }
    }
}
