//! Balance at one instant: manifold pressure from the flows, or bus voltage from the currents.
use crate::hydraulics::{Circuit, Line, Pump, Stands};
use crate::model::ElectricActuator;
use crate::numeric::{MOST_NEWTON_STEPS, rising_root};
use crate::result::SupplyError;

/// Bracket of the manifold pressure that is close enough (Pa).
const PRESSURE_TOLERANCE: f64 = 1e-8;

/// Bracket of the motor voltage that is close enough (V).
const VOLTAGE_TOLERANCE: f64 = 1e-13;

/// A cylinder that may move: what it needs and what its line lets through.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) struct Load {
    /// Pressure at the manifold from which it moves (Pa); negative: the weight drives it.
    pub pressure: f64,
    /// What it comes through.
    pub line: Line,
}

/// Flow into all of them (m3/s).
fn taken_by(loads: &[Load], pressure: f64) -> f64 {
    let flow = |load: &Load| load.line.flow(pressure - load.pressure);
    loads.iter().map(flow).sum()
}

/// The manifold in balance.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) struct Manifold {
    /// Gauge pressure (Pa).
    pub pressure: f64,
    /// Flow out of the pump (m3/s).
    pub pumped: f64,
    /// Part of it that goes through the relief valve (m3/s).
    pub relieved: f64,
    /// Flow drawn from the return line by legs that run ahead of the pump (m3/s).
    pub drawn: f64,
    /// Flow out of the accumulator, negative = into it (m3/s).
    pub from_gas: f64,
    /// By how much the pump falls short of what it takes to open the relief valve (m3/s);
    /// negative = it is open.
    pub below_relief: f64,
    /// How far the accumulator is below the pressure at which the pump fills it no further, over that
    /// pressure (ratio); infinite where nothing fills it.
    pub below_full: f64,
}

/// Manifold pressure at which the pump's flow is what the legs take. Flow into the legs rises with
/// pressure and that of the pump falls, so the root is alone in its bracket.
///
/// # Errors
/// [`SupplyError::Unbalanced`] when the bound on steps is reached.
pub(super) fn manifold(
    pump: &Pump,
    loads: &[Load],
    stored: Option<f64>,
    time: f64,
) -> Result<Manifold, SupplyError> {
    let (Some(gas), Some(stored)) = (&pump.gas, stored) else {
        return direct(pump, loads, time);
    };
    let taken = |pressure: f64| taken_by(loads, pressure);
    let full = |pressure: f64| pump.flow(pressure).unwrap_or(0.0);
    let held = gas.pressure(stored);
    let empty = gas.stands == Stands::Empty;
    // an empty one fills where the pump makes more than its precharge and gives more than is taken
    if !empty || (held < pump.most && full(held) > taken(held)) {
        let is_full = gas.stands == Stands::Full;
        // only a relief valve lets the gas down
        let pressure = if is_full && pump.relieves {
            held.min(pump.most)
        } else {
            held
        };
        let (full, taken) = (full(pressure), taken(pressure));
        let spare = full - taken;
        let pumped = match gas.stands {
            Stands::Above => 0.0,
            Stands::Full if !pump.relieves => full.min(taken),
            _ => full,
        };
        let relieved = if is_full && pump.relieves {
            spare.max(0.0)
        } else {
            0.0
        };
        return Ok(Manifold {
            pressure,
            pumped,
            relieved,
            drawn: 0.0,
            from_gas: taken + relieved - pumped,
            below_relief: if pump.relieves && is_full {
                -spare
            } else if pump.relieves {
                pump.most - pressure
            } else {
                f64::INFINITY
            },
            below_full: if pump.free.is_some() {
                1.0 - held / pump.most
            } else {
                f64::INFINITY
            },
        });
    }
    if pump.free.is_none() {
        // Nothing is left: only what runs by its weight moves, and draws from the return line.
        return Ok(Manifold {
            pressure: pump.least,
            pumped: 0.0,
            relieved: 0.0,
            drawn: taken(pump.least),
            from_gas: 0.0,
            below_relief: f64::INFINITY,
            below_full: f64::INFINITY,
        });
    }
    direct(pump, loads, time)
}

/// The balance without an accumulator, or with an empty one.
fn direct(pump: &Pump, loads: &[Load], time: f64) -> Result<Manifold, SupplyError> {
    let taken = |pressure: f64| taken_by(loads, pressure);
    let at_most = taken(pump.most);
    let Some(full) = pump.flow(pump.most) else {
        return Ok(Manifold {
            pressure: pump.most,
            pumped: at_most,
            relieved: 0.0,
            drawn: 0.0,
            from_gas: 0.0,
            below_relief: f64::INFINITY,
            below_full: f64::INFINITY,
        });
    };
    let below_relief = if pump.relieves {
        at_most - full
    } else {
        f64::INFINITY
    };
    if at_most <= full {
        let pumped = if pump.relieves { full } else { at_most };
        return Ok(Manifold {
            pressure: pump.most,
            pumped,
            relieved: pumped - at_most,
            drawn: 0.0,
            from_gas: 0.0,
            below_relief,
            below_full: f64::INFINITY,
        });
    }
    let spare = |pressure: f64| taken(pressure) - pump.flow(pressure).unwrap_or(0.0);
    let at_least = spare(pump.least);
    if at_least >= 0.0 {
        return Ok(Manifold {
            pressure: pump.least,
            pumped: pump.flow(pump.least).unwrap_or(0.0),
            relieved: 0.0,
            drawn: at_least,
            from_gas: 0.0,
            below_relief,
            below_full: f64::INFINITY,
        });
    }
    let slope = |pressure: f64| -> f64 {
        let legs: f64 = loads
            .iter()
            .map(|load| load.line.slope(pressure - load.pressure))
            .sum();
        legs + pump.slope
    };
    let pressure = rising_root(spare, slope, pump.least, pump.most, PRESSURE_TOLERANCE).ok_or(
        SupplyError::Unbalanced {
            time,
            steps: MOST_NEWTON_STEPS,
        },
    )?;
    Ok(Manifold {
        pressure,
        // What the legs take, so that no fluid is lost to the bracket's width.
        pumped: taken(pressure),
        relieved: 0.0,
        drawn: 0.0,
        from_gas: 0.0,
        below_relief,
        below_full: f64::INFINITY,
    })
}

/// The bus in balance with its motors.
#[derive(Clone, Debug, Default, PartialEq)]
pub(super) struct Bus {
    /// Current of all motors (A).
    pub current: f64,
    /// Speed of each (m/s).
    pub speeds: Vec<f64>,
}

/// Motor voltage at which the battery gives what the motors take: V + R·ΣI(V) = E rises with V.
///
/// A motor takes I0 + (Is − I0)·F/Fs for the force F it makes, no more than it can at that voltage,
/// Fs·V/Vn; driven by its load it takes I0 (its screw holds).
///
/// # Errors
/// [`SupplyError::Unbalanced`] when the bound on steps is reached.
pub(super) fn bus(
    circuit: &Circuit,
    motors: &[(ElectricActuator, f64)],
    time: f64,
) -> Result<Bus, SupplyError> {
    let current = |voltage: f64| -> f64 {
        motors
            .iter()
            .map(|(motor, force)| {
                let most = motor.stall_force * (voltage / motor.rated_voltage).max(0.0);
                let share = force.clamp(0.0, most.max(0.0)) / motor.stall_force;
                motor.idle_current + (motor.locked_current - motor.idle_current) * share
            })
            .sum()
    };
    let short = |voltage: f64| voltage + circuit.total * current(voltage) - circuit.open;
    let voltage = if short(0.0) >= 0.0 {
        0.0
    } else {
        let slope = |voltage: f64| {
            let step = 1e-6;
            (short(voltage + step) - short(voltage - step)) / (2.0 * step)
        };
        rising_root(short, slope, 0.0, circuit.open, VOLTAGE_TOLERANCE).ok_or(
            SupplyError::Unbalanced {
                time,
                steps: MOST_NEWTON_STEPS,
            },
        )?
    };
    Ok(Bus {
        current: current(voltage),
        speeds: motors
            .iter()
            .map(|(motor, force)| {
                let free = voltage / motor.rated_voltage;
                let share = free - force.max(0.0) / motor.stall_force;
                motor.free_speed * share.max(0.0)
            })
            .collect(),
    })
}
