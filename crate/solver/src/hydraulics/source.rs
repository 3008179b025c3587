//! What the source gives at a pressure: flow, current, voltage.
use super::battery::open_circuit_voltage;
use super::gas::{Gas, Stands};
use crate::model::{Battery, ElectricActuator, MotorPump, Source, Supply};
use crate::result::SupplyError;

/// Straight line of flow against pressure, with its ends.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(crate) struct Pump {
    /// Flow without pressure (m3/s); `None` = any flow at the largest pressure.
    pub free: Option<f64>,
    /// Loss of flow with pressure (m3/s/Pa).
    pub slope: f64,
    /// Largest gauge pressure (Pa).
    pub most: f64,
    /// Whether a switch stops it at that pressure, and starts it again below.
    pub switched: bool,
    /// Whether a relief valve holds that pressure and lets the rest go.
    pub relieves: bool,
    /// Least gauge pressure: the return line's, from which the legs can draw (Pa).
    pub least: f64,
    /// Electric side.
    pub motor: Option<Motor>,
    /// Accumulator at the manifold.
    pub(crate) gas: Option<Gas>,
}

/// Straight line of current against pressure, and the battery behind it.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(crate) struct Motor {
    idle: f64,
    per_pressure: f64,
    circuit: Circuit,
}

/// Battery and wires.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(crate) struct Circuit {
    /// Open-circuit voltage (V).
    pub open: f64,
    /// Internal resistance (Ω).
    pub inside: f64,
    /// Internal and wire resistance (Ω).
    pub total: f64,
}

impl Circuit {
    pub(crate) fn new(battery: &Battery) -> Self {
        Self {
            open: open_circuit_voltage(battery),
            inside: battery.internal_resistance,
            total: battery.internal_resistance + battery.wire_resistance,
        }
    }

    /// Voltage behind the wires, at the motor (V).
    pub(crate) fn behind(&self, current: f64) -> f64 {
        self.open - self.total * current
    }

    /// Force that stops an actuator alone on this bus (N).
    pub(crate) fn stall_force(&self, motor: &ElectricActuator) -> f64 {
        self.stall_force_among(motor, std::slice::from_ref(motor))
    }

    /// Force that stops an actuator while all of these, itself among them, stand stalled on the bus (N):
    /// F = Fs·V/Vn, V = E − R·Σ(I0 + (Is − I0)·V/Vn).
    pub(crate) fn stall_force_among(
        &self,
        motor: &ElectricActuator,
        all: &[ElectricActuator],
    ) -> f64 {
        let idle: f64 = all.iter().map(|of| of.idle_current).sum();
        let rise = |of: &ElectricActuator| (of.locked_current - of.idle_current) / of.rated_voltage;
        let rises: f64 = all.iter().map(rise).sum();
        let volts = (self.open - self.total * idle) / (1.0 + self.total * rises);
        motor.stall_force * volts.max(0.0) / motor.rated_voltage
    }

    /// Force that stops an actuator on this bus beside others that draw so much (N):
    /// F = Fs·V/Vn, V = E − R·(I + I0 + (Is − I0)·V/Vn).
    pub(crate) fn stall_force_beside(&self, motor: &ElectricActuator, others: f64) -> f64 {
        let rise = (motor.locked_current - motor.idle_current) / motor.rated_voltage;
        let volts =
            (self.open - self.total * (others + motor.idle_current)) / (1.0 + self.total * rise);
        motor.stall_force * volts.max(0.0) / motor.rated_voltage
    }

    /// Voltage at the battery's posts (V).
    pub(crate) fn bus(&self, current: f64) -> f64 {
        self.open - self.inside * current
    }
}

impl Motor {
    /// Current at a pressure (A).
    pub(crate) fn current(&self, pressure: f64) -> f64 {
        self.idle + self.per_pressure * pressure
    }

    /// Voltage at the battery's posts at a pressure (V).
    pub(crate) fn bus(&self, pressure: f64) -> f64 {
        self.circuit.bus(self.current(pressure))
    }

    pub(crate) fn circuit(&self) -> &Circuit {
        &self.circuit
    }
}

/// The most that a pump, by motor or by hand, holds against legs that stand (Pa): where it stalls on its
/// battery, its relief valve opens, or the switch of an accumulator stops it; `None` where there is no pump, or
/// one that does not turn.
#[must_use]
pub fn pump_holds(supply: &Supply) -> Option<f64> {
    let pump = Pump::new(supply).ok()??;
    pump.free.map(|_| pump.most)
}

impl Pump {
    /// The pump of a hydraulic supply; `None` for electric actuators.
    ///
    /// With V = E − R·I(p) at the motor and I(p) = I0 + (Is − I0)·p/Ps the line
    /// Q = Q0·(V/Vn) − (Q0/Ps)·p stays straight in p.
    pub(crate) fn new(supply: &Supply) -> Result<Option<Self>, SupplyError> {
        let least = supply.return_pressure;
        let gas = supply.accumulator.as_ref().map(Gas::new);
        let mut pump = match &supply.source {
            Source::ElectricActuators => return Ok(None),
            Source::ConstantPressure => Self {
                gas: None,
                free: None,
                slope: 0.0,
                most: supply.available_pressure,
                relieves: false,
                switched: false,
                least,
                motor: None,
            },
            Source::HandPump(hand) => Self {
                gas: None,
                free: Some(hand.stroke_volume / hand.stroke_time),
                slope: 0.0,
                most: hand.largest_pressure,
                switched: false,
                relieves: false,
                least,
                motor: None,
            },
            Source::MotorPump(pump) => Self::on_motor(pump, Circuit::new(&supply.battery), least)?,
        };
        pump.gas = gas;
        // the switch stops the pump that fills an accumulator, and starts it again
        if let (Some(_), Some(set)) = (&supply.accumulator, supply.pump_switch())
            && set < pump.most
        {
            pump.most = set;
            pump.relieves = false;
            pump.switched = true;
        }
        if let (Some(of), Some(gas)) = (&supply.accumulator, &mut pump.gas) {
            if pump.free.is_none() {
                pump.most = of.charged;
            } else if of.charged >= pump.most {
                gas.stands = if pump.relieves || of.charged == pump.most {
                    Stands::Full
                } else {
                    Stands::Above
                };
            }
        }
        Ok(Some(pump))
    }

    fn on_motor(pump: &MotorPump, circuit: Circuit, least: f64) -> Result<Self, SupplyError> {
        let motor = Motor {
            idle: pump.no_load_current,
            per_pressure: (pump.stall_current - pump.no_load_current) / pump.stall_pressure,
            circuit,
        };
        let voltage = circuit.open - circuit.total * motor.idle;
        if voltage <= 0.0 {
            return Err(SupplyError::NoFlow { voltage });
        }
        let per_volt = pump.free_flow / pump.rated_voltage;
        let free = per_volt * voltage;
        let slope =
            pump.free_flow / pump.stall_pressure + per_volt * circuit.total * motor.per_pressure;
        let dead = free / slope;
        Ok(Self {
            free: Some(free),
            slope,
            most: dead.min(pump.relief_pressure),
            relieves: pump.relief_pressure < dead,
            switched: false,
            least,
            motor: Some(motor),
            gas: None,
        })
    }

    /// Whether an accumulator stands at the manifold.
    pub(crate) fn has_gas(&self) -> bool {
        self.gas.is_some()
    }

    /// Most that stands at the manifold when the gear is selected (Pa): an accumulator is charged above its
    /// precharge, and so holds some fluid then.
    pub(crate) fn most_at_first(&self) -> f64 {
        match self.gas {
            Some(gas) => gas.pressure(gas.first).max(self.most),
            None => self.most,
        }
    }

    /// Whether a switch keeps the pump off, for the gas stands above it.
    pub(crate) fn is_kept_off(&self) -> bool {
        self.switched && self.gas.is_some_and(|gas| gas.stands == Stands::Above)
    }

    /// Share of the time in which the motor is on (ratio), with this pressure at the manifold (Pa) and so much
    /// pumped (m3/s): a switch stops it while the accumulator is full.
    pub(crate) fn share_on(&self, pressure: f64, pumped: f64) -> f64 {
        match self.gas.map(|gas| gas.stands) {
            _ if self.is_kept_off() => 0.0,
            Some(Stands::Full) if self.switched => {
                // a switch stops a pump, and a pump has a line
                let full = self.flow(pressure).unwrap_or(0.0);
                if full > 0.0 {
                    (pumped / full).min(1.0)
                } else {
                    0.0
                }
            }
            _ => 1.0,
        }
    }

    /// Flow at a pressure (m3/s); without a line of its own, any.
    pub(crate) fn flow(&self, pressure: f64) -> Option<f64> {
        self.free
            .map(|free| (free - self.slope * pressure).max(0.0))
    }
}
