//! What the source does against legs that have stopped.
use super::leg::Moving;
use super::run::Going;
use super::state::{Look, Power};
use crate::result::RunEventKind;
use crate::result::SupplyError;

impl Going {
    /// Stopped legs take the pressure at once to the most that the source makes, or to what makes its
    /// switch.
    pub(super) fn runs_on(&mut self, by_pressure: Option<f64>) {
        let Power::Fluid(pump) = &self.power else {
            return;
        };
        if pump.is_kept_off() {
            return;
        }
        let (most, relieves) = (pump.most, pump.relieves);
        let (has_gas, has_motor) = (pump.gas.is_some(), pump.motor.is_some());
        let set = by_pressure.filter(|set| most >= *set);
        let at = set.unwrap_or(most);
        if !has_gas && pump.free.is_some() {
            self.stopped_at = Some(at);
        }
        self.draw(self.power.current(at), Some(at));
        if set.is_none() && relieves && !self.watch.relief_is_open() {
            self.watch.note(RunEventKind::ReliefOpen);
            self.tell(None, RunEventKind::ReliefOpen, Some(at));
        }
        if set.is_some() {
            self.tell(None, RunEventKind::PressureSwitch, Some(at));
        } else if has_motor {
            self.tell(None, RunEventKind::RunsOn, Some(at));
        }
    }

    /// A look after a jump of the load: the pressure rises at once, but only to what makes the switch
    /// that stops the pump.
    pub(super) fn stopped_at_switch(&self, look: &Look) -> Look {
        match self.watch.stops_at(look) {
            Some(set) => self.standing(look, set),
            None => look.clone(),
        }
    }

    /// A look with every leg stopped and the pump at a pressure.
    fn standing(&self, look: &Look, pressure: f64) -> Look {
        let mut look = look.clone();
        if let Some(manifold) = &mut look.manifold {
            manifold.pressure = pressure;
            manifold.pumped = self.power.past_relief(pressure);
            look.current = self.power.current(pressure);
            look.bus_voltage = self.power.bus_voltage(pressure);
        }
        look
    }

    /// The last look of a run whose legs have all come to their ends: what is stopped on its way is
    /// still pushed.
    pub(super) fn at_end(&self, there: &Look) -> Result<Look, SupplyError> {
        match (&self.power, self.stopped_at) {
            (Power::Fluid(_), Some(pressure)) => Ok(self.standing(there, pressure)),
            (Power::Electric { .. }, _) if self.legs.iter().any(Moving::is_blocked) => {
                self.look(&self.state, self.time)
            }
            _ => Ok(there.clone()),
        }
    }
}
