//! What the source does against a stopped leg.
use super::StopError;
use crate::hydraulics::{Circuit, Line, Pump};
use crate::model::{ElectricActuator, Gear, Leg, MotorPump, PumpSeen, Source};
use crate::numeric::bracketed_root;
use crate::result::Demand;
use crate::supply::LegStages;

/// A switch that is off by less, as a share, is the file's own (ratio).
const TOLD: f64 = 0.01;

/// The source as one leg feels it, against a stop.
pub(super) struct SourceAtStop {
    /// Largest load that it moves (Pa; N with electric actuators).
    pub most: f64,
    /// Standard uncertainty of it, for what the other legs take is not known (Pa; N).
    pub unsure: f64,
    /// Most that it makes against a leg that stands, a switch apart (Pa; N).
    pub makes: f64,
    kind: Kind,
    /// What the fluid comes through in the swing.
    line: Option<Line>,
    /// Gauge pressure at which a switch stops the pump (Pa).
    switch: Option<f64>,
    /// Rating of the breaker (A).
    breaker: Option<f64>,
    /// What was noticed of the pump or motor.
    pump: PumpSeen,
}

enum Kind {
    Fluid(Pump, Option<MotorPump>),
    Electric(Circuit, ElectricActuator),
}

/// What can be read while the leg stands; `None` = the model does not say.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub(super) struct Held {
    /// Gauge pressure (Pa).
    pub pressure: Option<f64>,
    /// Voltage at the posts (V).
    pub voltage: Option<f64>,
    /// Voltage at the motor (V).
    pub at_motor: Option<f64>,
    /// Whether the pump or motor runs.
    pub runs: Option<bool>,
    /// The breaker may have tripped: then nothing else is known.
    pub may_trip: bool,
}

/// A battery or a contact that lets a leg stall at a load.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) struct Sagged {
    /// Open-circuit voltage that does it (V).
    pub open_circuit: f64,
    /// The file's (V).
    pub file: f64,
    /// What is read then.
    pub held: Held,
    /// Resistance, within the battery or behind the posts, that does it instead (Ω).
    pub extra_resistance: f64,
    /// What is read then, if it is within.
    pub held_within: Held,
    /// What is read then, if it is behind.
    pub held_behind: Held,
}

impl SourceAtStop {
    /// A pump that was noticed to run on had no breaker tripped.
    pub(super) fn new(
        gear: &Gear,
        leg: &Leg,
        track: &LegStages,
        pump: PumpSeen,
    ) -> Result<Self, StopError> {
        let supply = &gear.supply;
        let (makes, kind) = match Pump::new(supply).map_err(StopError::Source)? {
            Some(pump) => {
                let own = match supply.source {
                    Source::MotorPump(own) => Some(own),
                    _ => None,
                };
                (pump.most, Kind::Fluid(pump, own))
            }
            None => {
                let motor = leg.drive.electric.ok_or(StopError::NotDriven)?;
                let circuit = Circuit::new(&supply.battery);
                (circuit.stall_force(&motor), Kind::Electric(circuit, motor))
            }
        };
        let swing = track.stages.iter().find(|stage| !stage.is_strut);
        let mut head = Self {
            most: makes,
            unsure: 0.0,
            makes,
            kind,
            line: swing.map(|stage| stage.line),
            switch: supply.pump_switch(),
            breaker: supply
                .battery
                .breaker_rating
                .filter(|_| pump != PumpSeen::Running),
            pump,
        };
        if let Some(set) = head.switch.filter(|set| *set < makes) {
            // other legs that move take their share of the flow, and the line then less of the pressure
            let drop = head.drop_at(set);
            let shared = if gear.legs.len() > 1 { 0.5 * drop } else { 0.0 };
            head.most = set - drop + shared;
            head.unsure = 0.5 * shared;
        }
        Ok(head)
    }

    /// What stands across the line of the moving leg at a manifold pressure, this leg alone on the
    /// pump (Pa). An accumulator gives what the pump does not: then the switch is not passed in motion.
    fn drop_at(&self, pressure: f64) -> f64 {
        let Kind::Fluid(pump, _) = &self.kind else {
            return 0.0;
        };
        let (Some(flow), Some(line), false) = (pump.flow(pressure), self.line, pump.has_gas())
        else {
            return 0.0;
        };
        let spare = |drop: f64| line.flow(drop) - flow;
        bracketed_root(spare, 0.0, pressure, 1.0).map_or(pressure, |root| root.x)
    }

    /// Set pressure of a switch that stops the pump as the moving leg comes to a load (Pa).
    fn switch_for(&self, load: f64) -> Option<f64> {
        let over = |set: f64| set - self.drop_at(set) - load;
        let root = bracketed_root(over, load, self.makes, 1.0).ok()?;
        Some(root.x)
    }

    /// Set pressure of the switch that would be too low by stopping the pump at a load, where the file has
    /// one: (that pressure, the file's) (Pa).
    pub(super) fn switch_low(&self, load: f64) -> Option<(f64, f64)> {
        let file = self.switch?;
        let set = self.switch_for(load)?;
        (set < (1.0 - TOLD) * file).then_some((set, file))
    }

    /// Whether it is a pump that the position switches stop.
    pub(super) fn stops_by_position(&self) -> bool {
        match &self.kind {
            Kind::Fluid(pump, _) => self.switch.is_none() && pump.motor.is_some(),
            Kind::Electric(..) => true,
        }
    }

    /// Pressure at which its switch stops the pump, where it has (Pa).
    pub(super) fn cuts_out(&self, held: &Held) -> Option<f64> {
        self.switch.filter(|_| held.runs == Some(false))
    }

    pub(super) fn demand(&self, value: f64) -> Demand {
        match self.kind {
            Kind::Fluid(..) => Demand::Pressure(value),
            Kind::Electric(..) => Demand::Force(value),
        }
    }

    /// Against a leg that cannot move: the source goes to the most that it makes.
    pub(super) fn dead(&self) -> Held {
        match self.switch {
            Some(set) if set <= self.makes => Held {
                pressure: Some(set),
                ..self.stopped()
            },
            _ => self.at(self.makes),
        }
    }

    /// The source gives out at less than by the file; volts and amps follow the load.
    pub(super) fn at(&self, value: f64) -> Held {
        match &self.kind {
            Kind::Fluid(pump, _) => {
                let current = pump.motor.map(|motor| motor.current(value));
                let held = Held {
                    pressure: Some(value),
                    voltage: pump
                        .motor
                        .zip(current)
                        .map(|(motor, amps)| motor.circuit().bus(amps)),
                    at_motor: pump
                        .motor
                        .zip(current)
                        .map(|(motor, amps)| motor.circuit().behind(amps)),
                    runs: pump.motor.map(|_| true),
                    may_trip: false,
                };
                self.unless_tripped(held, current, self.rest_voltage())
            }
            Kind::Electric(circuit, motor) => {
                let current = electric_current(motor, value);
                let held = Held {
                    pressure: None,
                    voltage: Some(circuit.bus(current)),
                    at_motor: Some(circuit.behind(current)),
                    runs: Some(true),
                    may_trip: false,
                };
                self.unless_tripped(held, Some(current), self.rest_voltage())
            }
        }
    }

    /// Voltage of the battery at rest (V).
    pub(super) fn rest_voltage(&self) -> Option<f64> {
        self.stopped().voltage
    }

    /// With the pump stopped: the battery rests; what the gauge shows depends on leaks.
    pub(super) fn stopped(&self) -> Held {
        let circuit = match &self.kind {
            Kind::Fluid(pump, _) => pump.motor.map(|motor| *motor.circuit()),
            Kind::Electric(circuit, _) => Some(*circuit),
        };
        Held {
            pressure: None,
            voltage: circuit.map(|circuit| circuit.open),
            at_motor: None,
            runs: circuit.map(|_| false),
            may_trip: false,
        }
    }

    /// Volts too few, of the battery or behind its posts, that stall the leg at `value`; `None`
    /// without a motor, or where a relief valve or a switch gives out first.
    pub(super) fn sagged(&self, value: f64) -> Option<Sagged> {
        let (circuit, at_motor, current, pressure) = match &self.kind {
            Kind::Fluid(pump, own) => {
                let (motor, own) = (pump.motor?, (*own)?);
                // The pump stands at p when V/Vn = p/Ps.
                let at_motor = own.rated_voltage * value / own.stall_pressure;
                (
                    *motor.circuit(),
                    at_motor,
                    motor.current(value),
                    Some(value),
                )
            }
            Kind::Electric(circuit, motor) => {
                let at_motor = motor.rated_voltage * value / motor.stall_force;
                (*circuit, at_motor, electric_current(motor, value), None)
            }
        };
        let held = |voltage, rest| {
            let held = Held {
                pressure,
                voltage: Some(voltage),
                at_motor: Some(at_motor),
                runs: Some(true),
                may_trip: false,
            };
            self.unless_tripped(held, Some(current), Some(rest))
        };
        let wires = (circuit.total - circuit.inside) * current;
        let open_circuit = at_motor + circuit.total * current;
        Some(Sagged {
            open_circuit,
            file: circuit.open,
            held: held(at_motor + wires, open_circuit),
            extra_resistance: (circuit.open - at_motor) / current - circuit.total,
            held_within: held(at_motor + wires, circuit.open),
            held_behind: held(circuit.bus(current), circuit.open),
        })
    }

    /// Beyond its rating a breaker may have tripped: then nothing is known, but where the pump had
    /// stopped, that the battery rests, at this voltage.
    fn unless_tripped(&self, held: Held, current: Option<f64>, rest: Option<f64>) -> Held {
        match (current, self.breaker) {
            (Some(current), Some(rating)) if current > rating => {
                let stopped = self.pump == PumpSeen::Stopped;
                Held {
                    may_trip: true,
                    voltage: rest.filter(|_| stopped),
                    runs: stopped.then_some(false),
                    ..Held::default()
                }
            }
            _ => held,
        }
    }
}

/// Current of an electric actuator against a force (A).
fn electric_current(motor: &ElectricActuator, force: f64) -> f64 {
    let rise = (motor.locked_current - motor.idle_current) / motor.stall_force;
    motor.idle_current + rise * force
}
