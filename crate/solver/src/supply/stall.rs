//! Why a leg stands still, and what would free it.
use super::leg::Moving;
use super::leg_stages::Blocked;
use super::state::{Budget, Power};
use super::touch::Touched;
use crate::hydraulics::{Circuit, Pump, Stands};
use crate::model::{ElectricActuator, Source, Supply};
use crate::numeric::sort_by;
use crate::result::{Stall, StallCause};
use crate::statics::Face;

/// Stalls of the legs that are not at the end of their way, the one that lacks most first.
/// `ceiling` is the pressure at which a switch stopped the pump, if one did.
pub(super) fn stalls(
    supply: &Supply,
    power: &Power,
    legs: &[Moving],
    state: &[f64],
    ceiling: Option<f64>,
) -> Vec<Stall> {
    let out = state.get(legs.len() + Budget::FromGas as usize).copied();
    let standing = match power {
        Power::Fluid(_) => Vec::new(),
        Power::Electric { motors, .. } => standing(legs, motors, state),
    };
    let mut found: Vec<(f64, Stall)> = legs
        .iter()
        .zip(state)
        .enumerate()
        .filter(|(_, (leg, _))| !leg.is_home())
        .map(|(at, (leg, fluid))| {
            let (lack, cause) = match power {
                Power::Fluid(pump) => by_pressure(supply, pump, leg, *fluid, [ceiling, out]),
                Power::Electric { circuit, motors } => match motors.get(at) {
                    Some(motor) => by_force(circuit, motor, leg, *fluid, &standing),
                    // what nothing drives lacks everything
                    None => (f64::INFINITY, StallCause::EndOfWay),
                },
            };
            let place = leg.place(*fluid);
            (
                lack,
                Stall {
                    leg: at,
                    place,
                    cause,
                },
            )
        })
        .collect();
    sort_by(&mut found, |a, b| b.0.total_cmp(&a.0));
    found.into_iter().map(|(_, stall)| stall).collect()
}

/// Why a leg that has no way left is not home.
fn end_of_way(leg: &Moving) -> StallCause {
    match leg.track.blocked {
        Some(Blocked::Binds(joint)) => StallCause::Binds { joint },
        Some(Blocked::Touches(touch)) => match touch.touched {
            Touched::Well(obstacle) => StallCause::Touches {
                part: touch.part,
                obstacle,
            },
            Touched::Itself(part) => StallCause::TouchesItself { part },
        },
        _ => StallCause::EndOfWay,
    }
}

/// Largest load on the rest of the way, and what stands against it, which is absent where a valve
/// asks for the pressure; `None` when there is no rest.
fn hardest(leg: &Moving, fluid: f64) -> Option<(f64, Option<Face>)> {
    let rest = leg.track.stages.iter().enumerate().skip(leg.stage);
    rest.map(|(at, stage)| {
        let from = if at == leg.stage { fluid } else { 0.0 };
        let peak = stage.load.peak_from(from).1;
        (peak, (peak > stage.opens_at).then_some(stage.face))
    })
    .max_by(|a, b| a.0.total_cmp(&b.0))
}

fn by_pressure(
    supply: &Supply,
    pump: &Pump,
    leg: &Moving,
    fluid: f64,
    [ceiling, out]: [Option<f64>; 2],
) -> (f64, StallCause) {
    let Some((needed, face)) = hardest(leg, fluid) else {
        return (f64::INFINITY, end_of_way(leg));
    };
    let most = match (&supply.source, pump.gas, out) {
        // Nothing fills it again.
        (Source::ConstantPressure, Some(gas), Some(out)) if gas.is_empty(gas.first - out) => {
            pump.least
        }
        (Source::ConstantPressure, Some(gas), Some(out)) => gas.pressure(gas.first - out),
        (_, Some(gas), Some(out)) if gas.stands == Stands::Above => gas.pressure(gas.first - out),
        _ => pump.most,
    };
    let available = ceiling.map_or(most, |ceiling| ceiling.min(most));
    let switch = ceiling.or(pump.switched.then_some(pump.most));
    let relief = match &supply.source {
        Source::MotorPump(pump) => Some(pump.relief_pressure),
        _ => None,
    };
    let relief_too_low = relief.is_some_and(|relief| relief < needed);
    let switch_too_low = switch.is_some_and(|set| set < needed);
    let volts_short = match (&supply.source, pump.motor) {
        (Source::MotorPump(own), Some(motor)) if !relief_too_low && switch.is_none() => {
            // The pump stands at p when V/Vn = p/Ps; the current there takes its own drop.
            let at_motor = own.rated_voltage * needed / own.stall_pressure;
            let circuit = motor.circuit();
            Some((at_motor + circuit.total * motor.current(needed) - circuit.open).max(0.0))
        }
        _ => None,
    };
    let lack = needed - available;
    (
        lack,
        StallCause::Pressure {
            needed,
            available,
            thrust_over: face.map(|face| face.thrust(lack.max(0.0))),
            volts_short,
            relief_too_low,
            switch_too_low,
        },
    )
}

/// Actuators that stand on the battery and push, and the force at which each would move on (N): infinite
/// for one that has no way left.
fn standing(
    legs: &[Moving],
    motors: &[ElectricActuator],
    state: &[f64],
) -> Vec<(ElectricActuator, f64)> {
    let each = legs.iter().zip(motors).zip(state);
    each.filter(|((leg, _), _)| !leg.is_home())
        .map(|((leg, motor), stroke)| {
            let needed = hardest(leg, *stroke).map_or(f64::INFINITY, |(needed, _)| needed);
            (*motor, needed)
        })
        .collect()
}

/// An actuator against those that stand on the same bus. One moves on at the voltage V at which it makes
/// what it needs; until then each of the others takes I0 + (Is − I0)·V/Vn, or what its own load takes
/// where that is less.
fn by_force(
    circuit: &Circuit,
    motor: &ElectricActuator,
    leg: &Moving,
    stroke: f64,
    standing: &[(ElectricActuator, f64)],
) -> (f64, StallCause) {
    let Some((needed, _)) = hardest(leg, stroke) else {
        return (f64::INFINITY, end_of_way(leg));
    };
    let motors: Vec<ElectricActuator> = standing.iter().map(|(motor, _)| *motor).collect();
    let available = circuit.stall_force_among(motor, &motors);
    let volts =
        |motor: &ElectricActuator, force: f64| motor.rated_voltage * force / motor.stall_force;
    let at_motor = volts(motor, needed);
    let current: f64 = standing
        .iter()
        .map(|(other, needs)| {
            let rise = (other.locked_current - other.idle_current) / other.rated_voltage;
            other.idle_current + rise * at_motor.min(volts(other, *needs))
        })
        .sum();
    (
        needed - available,
        StallCause::Force {
            needed,
            available,
            volts_short: (at_motor + circuit.total * current - circuit.open).max(0.0),
        },
    )
}
