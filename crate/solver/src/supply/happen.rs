//! What happens on a run: places that legs come to, levels that pressures and currents come to.
use super::leg::Moving;
use super::run::Going;
use super::state::{Look, Power};
use crate::model::Source;
use crate::result::{Place, RunEnd, RunEvent, RunEventKind};

impl Going {
    /// Writes down what legs came to, and where.
    fn tell_places(
        &mut self,
        happened: Vec<(usize, (RunEventKind, Place))>,
        pressure: Option<f64>,
    ) {
        let time = self.time;
        let events = happened.into_iter().map(|(at, (kind, place))| RunEvent {
            time,
            leg: Some(at),
            kind,
            place: Some(place),
            pressure,
        });
        self.events.extend(events);
    }

    /// Lets everything happen that legs have come to.
    pub(super) fn arrive(&mut self, look: &Look) {
        let mut happened = Vec::new();
        for (at, (leg, fluid)) in self.legs.iter_mut().zip(&mut self.state).enumerate() {
            happened.extend(leg.settle(fluid).into_iter().map(|what| (at, what)));
        }
        let pressure = look.manifold.map(|manifold| manifold.pressure);
        self.tell_places(happened, pressure);
        if self.moved.is_some() {
            return;
        }
        let all_done = self.legs.iter().all(Moving::is_done);
        let all_home = self.legs.iter().all(Moving::is_home);
        let switched = self.legs.iter().all(Moving::end_switch);
        let by_pressure = self.pressure_switch();
        if self.stops_by_position() && switched {
            self.tell(None, RunEventKind::SwitchesStop, pressure);
            self.end = Some(if all_home {
                RunEnd::Complete
            } else {
                RunEnd::SwitchedOff
            });
        } else if all_done {
            let end = if all_home {
                RunEnd::Complete
            } else {
                RunEnd::Stalled
            };
            if self.fills_on(all_home) {
                self.moved = Some(self.moved_by_now(end));
            } else {
                self.end = Some(end);
                self.runs_on(by_pressure);
            }
        }
    }

    /// Whether switches at the ends of the way stop what drives the legs: nothing stops a hand or a
    /// constant pressure, and a pressure switch takes their place.
    fn stops_by_position(&self) -> bool {
        let powered = matches!(
            self.supply.source,
            Source::MotorPump(_) | Source::ElectricActuators
        );
        powered && self.pressure_switch().is_none()
    }

    /// Pressure at which a switch stops the pump; electric actuators have none (Pa).
    pub(super) fn pressure_switch(&self) -> Option<f64> {
        self.supply.pump_switch()
    }

    /// What a jump of the load has brought about at once.
    pub(super) fn check(&mut self, look: &Look) {
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
    pub(super) fn see(&mut self, kind: RunEventKind, look: &Look) {
        let pressure = look.manifold.map(|manifold| manifold.pressure);
        if kind == RunEventKind::BreakerPassed && self.watch.breaker_passed() {
            // told with the sample
            return;
        }
        self.watch.note(kind);
        self.power.happens(kind);
        if self.moved.is_some() {
            self.filled(kind, look);
            return;
        }
        match kind {
            RunEventKind::Stalled => {
                // legs may stand because it has run empty at this instant
                if self.power.runs_empty(look) {
                    self.tell(None, RunEventKind::AccumulatorEmpty, pressure);
                }
                let mut happened = Vec::new();
                let legs = self.legs.iter_mut().zip(&self.state).enumerate();
                for (at, (leg, fluid)) in legs.filter(|(_, (leg, _))| !leg.is_done()) {
                    let left = leg.leaves(*fluid).into_iter();
                    let stalled = (kind, leg.place(*fluid));
                    happened.extend(left.chain([stalled]).map(|what| (at, what)));
                }
                self.tell_places(happened, pressure);
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
}
