//! State of all legs and budgets, and how fast each part of it changes.
use super::balance::{Bus, Load, Manifold, bus, manifold};
use super::leg::Moving;
use super::live::Live;
use crate::hydraulics::{Circuit, Line, Pump, Stands};
use crate::model::ElectricActuator;
use crate::result::RunEventKind;
use crate::result::SupplyError;

/// What the legs are driven by.
#[derive(Clone, Debug, PartialEq)]
pub(super) enum Power {
    /// Fluid from one manifold.
    Fluid(Pump),
    /// An electric actuator on each leg.
    Electric {
        circuit: Circuit,
        /// One for each leg.
        motors: Vec<ElectricActuator>,
    },
}

impl Power {
    /// Most that it gives a leg at first, by its index (Pa; N with electric actuators): a bus at its
    /// open-circuit voltage; nothing to a leg without a motor.
    pub(super) fn most_at_first(&self, leg: usize) -> f64 {
        match self {
            Self::Fluid(pump) => pump.most_at_first(),
            Self::Electric { circuit, motors } => motors.get(leg).map_or(0.0, |motor| {
                motor.stall_force * circuit.open / motor.rated_voltage
            }),
        }
    }
}

/// A time step of it.
pub(super) type Step = crate::numeric::Step<Vec<f64>>;

/// Parts of the state behind the fluid of each leg.
pub(super) const BUDGETS: usize = 10;

/// Budget parts, in order behind the legs.
#[derive(Clone, Copy, Debug)]
pub(super) enum Budget {
    Pumped,
    Relieved,
    Drawn,
    Battery,
    Wires,
    Given,
    Loads,
    Lines,
    FromGas,
    GasWork,
}

/// Everything that follows from a state at one instant.
#[derive(Clone, Debug, PartialEq)]
pub(super) struct Look {
    /// Rate of change of the state, legs first, then the budgets.
    pub rates: Vec<f64>,
    /// The manifold, with fluid.
    pub manifold: Option<Manifold>,
    /// How an accumulator stands and the fluid left in it (m3).
    pub gas: Option<(Stands, f64)>,
    /// Current from the battery (A).
    pub current: Option<f64>,
    /// Voltage at the battery's posts (V).
    pub bus_voltage: Option<f64>,
    /// Largest share of its free speed or flow at which anything still moves (ratio).
    pub pace: f64,
}

impl Look {
    /// Whether an accumulator is above what stops its pump.
    pub(super) fn is_above(&self) -> bool {
        matches!(self.gas, Some((Stands::Above, _)))
    }
}

impl Power {
    /// Part of the state that an event sets, and what it is there: the fluid that has left an
    /// accumulator which is just empty or just full (m3).
    pub(super) fn exactly_at(&self, kind: RunEventKind, legs: usize) -> Option<(usize, f64)> {
        let Self::Fluid(pump) = self else { return None };
        let gas = pump.gas?;
        // on the side to which it goes
        let beside = f64::EPSILON.sqrt();
        let held = match kind {
            RunEventKind::AccumulatorEmpty => 0.0,
            RunEventKind::AccumulatorFull | RunEventKind::ReliefOpen => {
                gas.held(pump.most) * (1.0 + beside)
            }
            RunEventKind::ReliefClosed => gas.held(pump.most) * (1.0 - beside),
            _ => return None,
        };
        Some((legs + Budget::FromGas as usize, gas.first - held))
    }

    /// Lets an accumulator stand as an event leaves it.
    pub(super) fn happens(&mut self, kind: RunEventKind) {
        let stands = match kind {
            RunEventKind::AccumulatorEmpty => Stands::Empty,
            RunEventKind::AccumulatorFull | RunEventKind::ReliefOpen => Stands::Full,
            RunEventKind::ReliefClosed => Stands::Holds,
            _ => return,
        };
        self.stand(stands);
    }

    /// Lets an accumulator that has some fluid again, or less than it can take, hold the pressure; at
    /// the start of a time step, where no rate jumps by it.
    pub(super) fn follow(&mut self, look: &Look) {
        let Some((manifold, (stands, stored))) = look.manifold.zip(look.gas) else {
            return;
        };
        let holds = match stands {
            Stands::Holds | Stands::Above => false,
            Stands::Full => manifold.below_full > 0.0,
            Stands::Empty => stored > 0.0,
        };
        if holds {
            self.stand(Stands::Holds);
        }
    }

    /// Current of the pump's motor at a pressure (A).
    pub(super) fn current(&self, pressure: f64) -> Option<f64> {
        match self {
            Self::Fluid(pump) => pump.motor.map(|motor| motor.current(pressure)),
            Self::Electric { .. } => None,
        }
    }

    /// Voltage at the battery's posts with the pump at a pressure (V).
    pub(super) fn bus_voltage(&self, pressure: f64) -> Option<f64> {
        match self {
            Self::Fluid(pump) => pump.motor.map(|motor| motor.bus(pressure)),
            Self::Electric { .. } => None,
        }
    }

    /// Flow of the pump at a pressure at which no leg takes any: what its relief valve lets go (m3/s).
    pub(super) fn past_relief(&self, pressure: f64) -> f64 {
        match self {
            Self::Fluid(pump) if pump.relieves && pressure >= pump.most => {
                // a source of any flow has no relief valve
                pump.flow(pressure).unwrap_or(0.0)
            }
            _ => 0.0,
        }
    }

    /// Whether an accumulator has no fluid left that has not been seen to be empty.
    pub(super) fn runs_empty(&self, look: &Look) -> bool {
        match (self, look.gas) {
            (Self::Fluid(pump), Some((stands, stored))) => {
                stands != Stands::Empty && pump.gas.is_some_and(|gas| gas.is_empty(stored))
            }
            _ => false,
        }
    }

    fn stand(&mut self, stands: Stands) {
        if let Self::Fluid(pump) = self
            && let Some(gas) = &mut pump.gas
        {
            gas.stands = stands;
        }
    }

    /// Looks at a state: `fluid` of each leg's present stage, budgets behind.
    pub(super) fn look(
        &self,
        legs: &[Moving],
        state: &[f64],
        time: f64,
        live: &Live,
    ) -> Result<Look, SupplyError> {
        match self {
            Self::Fluid(pump) => look_fluid(pump, legs, state, (time, live)),
            Self::Electric { circuit, motors } => look_electric(circuit, motors, legs, state, time),
        }
    }
}

fn budgets(rates: &mut [f64], legs: usize, values: &[(Budget, f64)]) {
    for (which, value) in values {
        if let Some(rate) = rates.get_mut(legs + *which as usize) {
            *rate = *value;
        }
    }
}

fn look_fluid(
    pump: &Pump,
    legs: &[Moving],
    state: &[f64],
    (time, live): (f64, &Live),
) -> Result<Look, SupplyError> {
    let load = |at: &usize| match (legs.get(*at).and_then(Moving::now), state.get(*at)) {
        (Some(stage), Some(fluid)) => Load {
            pressure: stage.draws(*fluid),
            line: Line {
                both_ways: live.both_ways.binary_search(at).is_ok(),
                ..stage.line
            },
        },
        _ => Load {
            pressure: f64::INFINITY,
            line: Line::SHUT,
        },
    };
    let loads: Vec<Load> = live.legs.iter().map(load).collect();
    let out = state.get(legs.len() + Budget::FromGas as usize).copied();
    let stored = pump.gas.zip(out).map(|(gas, out)| gas.first - out);
    let balance = manifold(pump, &loads, stored, time)?;
    let pressure = balance.pressure;
    let mut rates = vec![0.0; legs.len() + BUDGETS];
    let (mut to_loads, mut to_lines, mut taken) = (0.0, 0.0, 0.0);
    let mut free = live.free;
    for (at, load) in live.legs.iter().zip(&loads) {
        let flow = load.line.flow(pressure - load.pressure);
        if let Some(rate) = rates.get_mut(*at) {
            *rate = flow;
        }
        taken += flow;
        free += load.line.flow(pump.most);
        if flow > 0.0 {
            to_loads += load.pressure * flow;
            to_lines += (pressure - load.pressure) * flow;
        }
    }
    let on = pump.share_on(balance.pressure, balance.pumped);
    // behind its non-return valve it makes no more than its most, whatever the gas stands at
    let running = pump
        .motor
        .map(|motor| motor.current(pressure.min(pump.most)));
    let current = running.map(|current| on * current);
    // a source without a motor draws nothing
    let amps = current.unwrap_or(0.0);
    let (volts, ohms) = pump
        .motor
        .map_or((0.0, 0.0), |m| (m.circuit().open, m.circuit().total));
    budgets(
        &mut rates,
        legs.len(),
        &[
            (Budget::Pumped, balance.pumped),
            (Budget::Relieved, balance.relieved),
            (Budget::Drawn, balance.drawn),
            (Budget::Battery, volts * amps),
            (Budget::Wires, ohms * amps * running.unwrap_or(0.0)),
            (Budget::Given, pressure * balance.pumped),
            (Budget::Loads, to_loads),
            (Budget::Lines, to_lines),
            (Budget::FromGas, balance.from_gas),
            (Budget::GasWork, pressure * balance.from_gas),
        ],
    );
    Ok(Look {
        rates,
        manifold: Some(balance),
        gas: pump.gas.map(|gas| gas.stands).zip(stored),
        current,
        bus_voltage: pump.motor.map(|motor| motor.circuit().bus(amps)),
        // A pump that fills the accumulator has not stalled: the pressure still rises.
        pace: (taken + (-balance.from_gas).max(0.0))
            / pump.free.unwrap_or(free).max(f64::MIN_POSITIVE),
    })
}

fn look_electric(
    circuit: &Circuit,
    motors: &[ElectricActuator],
    legs: &[Moving],
    state: &[f64],
    time: f64,
) -> Result<Look, SupplyError> {
    let running: Vec<(usize, ElectricActuator, f64)> = legs
        .iter()
        .zip(state)
        .zip(motors)
        .enumerate()
        .filter_map(|(at, ((leg, stroke), motor))| {
            let force = match leg.now() {
                Some(stage) => stage.load.value(*stroke),
                // pushes with all it has
                None if leg.is_blocked() => f64::INFINITY,
                None => return None,
            };
            Some((at, *motor, force))
        })
        .collect();
    let pairs: Vec<(ElectricActuator, f64)> = running
        .iter()
        .map(|(_, motor, force)| (*motor, *force))
        .collect();
    let Bus { current, speeds } = bus(circuit, &pairs, time)?;
    let mut rates = vec![0.0; legs.len() + BUDGETS];
    let (mut given, mut pace) = (0.0, 0.0_f64);
    for ((at, motor, force), speed) in running.iter().zip(&speeds) {
        if let Some(rate) = rates.get_mut(*at) {
            *rate = *speed;
        }
        if *speed > 0.0 {
            given += force.max(0.0) * speed;
        }
        pace = pace.max(speed / motor.free_speed);
    }
    budgets(
        &mut rates,
        legs.len(),
        &[
            (Budget::Battery, circuit.open * current),
            (Budget::Wires, circuit.total * current * current),
            (Budget::Given, given),
            (Budget::Loads, given),
        ],
    );
    Ok(Look {
        rates,
        manifold: None,
        gas: None,
        current: Some(current),
        bus_voltage: Some(circuit.bus(current)),
        pace,
    })
}
