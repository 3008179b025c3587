//! The pump fills the accumulator again when the legs stand at their ends.
use super::run::Going;
use super::state::{Budget, Look, Power};
use crate::hydraulics::Stands;
use crate::result::{Refill, RunEnd, RunEventKind};

/// How and when the legs have come to their ends.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) struct Moved {
    end: RunEnd,
    /// Time from the selection (s).
    pub time: f64,
    /// Out of the battery by then (J).
    battery: f64,
}

impl Going {
    /// Whether the pump goes on to fill an accumulator when no leg has any way left: one that a pressure
    /// switch stops does, and one on a motor against legs that are not home, which nothing stops.
    pub(super) fn fills_on(&self, all_home: bool) -> bool {
        let Power::Fluid(pump) = &self.power else {
            return false;
        };
        let takes = pump.gas.is_some_and(|gas| match gas.stands {
            Stands::Holds => true,
            Stands::Empty => gas.pressure(0.0) < pump.most,
            Stands::Full | Stands::Above => false,
        });
        let runs = self.pressure_switch().is_some() || (pump.motor.is_some() && !all_home);
        takes && runs && pump.free.is_some() && !pump.is_kept_off()
    }

    pub(super) fn moved_by_now(&self, end: RunEnd) -> Moved {
        Moved {
            end,
            time: self.time,
            battery: self.budget(Budget::Battery),
        }
    }

    /// What the pump comes to as it fills the accumulator: its switch, its relief valve, or its end.
    pub(super) fn filled(&mut self, kind: RunEventKind, look: &Look) {
        let Some(moved) = self.moved else { return };
        let (switched, has_motor) = match &self.power {
            Power::Fluid(pump) => (pump.switched, pump.motor.is_some()),
            Power::Electric { .. } => (false, false),
        };
        let pressure = look.manifold.map(|manifold| manifold.pressure);
        match kind {
            RunEventKind::AccumulatorFull | RunEventKind::ReliefOpen | RunEventKind::Stalled => {
                if kind != RunEventKind::Stalled {
                    self.tell(None, kind, pressure);
                }
                if switched && kind == RunEventKind::AccumulatorFull {
                    self.tell(None, RunEventKind::PressureSwitch, pressure);
                } else if has_motor {
                    self.tell(None, RunEventKind::RunsOn, pressure);
                }
                self.end = Some(moved.end);
            }
            _ => self.tell(None, kind, pressure),
        }
    }

    /// The filling, where the legs ended before the run.
    pub(super) fn refill(&self) -> Option<Refill> {
        let moved = self.moved?;
        let pressure = self.samples.last().and_then(|sample| sample.pressure)?;
        Some(Refill {
            time: self.time,
            pressure,
            battery: self.budget(Budget::Battery) - moved.battery,
        })
    }

    pub(super) fn budget(&self, which: Budget) -> f64 {
        let at = self.legs.len() + which as usize;
        self.state.get(at).copied().unwrap_or(0.0)
    }
}
