//! The short text of each group while it is closed.
use gearswing_gear::model::{
    Brace, Conditions, Direction, ElectricActuator, Leg, LineOrifice, SeenStop, Source,
    SpringJoint, SpringKind, Supply, Switches, Tire,
};
use gearswing_solver::result::{Fall, FallOutcome};
use gearswing_units::{Quantity, UnitChoice, format, format_signed};

use super::names::seen_words;
use crate::name::name_words;

fn length(units: UnitChoice, si: f64) -> String {
    format(Quantity::Length, units, si)
}

/// The leg as a whole.
#[must_use]
pub fn leg_summary(leg: &Leg, units: UnitChoice) -> String {
    format!(
        "{}, swing {}",
        seen_words(leg.view),
        format(Quantity::Angle, units, leg.swing_up.abs())
    )
}

/// A tire.
#[must_use]
pub fn tire_summary(tire: &Tire, units: UnitChoice) -> String {
    let mut size = name_words(&tire.size);
    if size.is_empty() {
        size.push_str("tire");
    }
    format!(
        "{size}, {} × {}",
        length(units, tire.diameter),
        length(units, tire.width)
    )
}

/// The brace.
#[must_use]
pub fn brace_summary(brace: &Brace) -> &'static str {
    match brace {
        Brace::None => "none",
        Brace::Folding(_) => "folding",
        Brace::Sliding(_) => "telescoping",
    }
}

/// The actuator.
#[must_use]
pub fn actuator_summary(leg: &Leg, units: UnitChoice) -> String {
    format!(
        "{} bore, {} rod",
        length(units, leg.actuator.bore),
        length(units, leg.actuator.rod)
    )
}

/// The structure in the well.
#[must_use]
pub fn well_summary(pieces: usize) -> String {
    match pieces {
        0 => "nothing in it".to_owned(),
        1 => "1 piece".to_owned(),
        count => format!("{count} pieces"),
    }
}

/// The lines of an actuator.
#[must_use]
pub fn lines_summary(leg: &Leg, units: UnitChoice) -> String {
    let hole = |orifice: Option<LineOrifice>| {
        orifice.map_or_else(
            || "open".to_owned(),
            |orifice| format(Quantity::Hole, units, orifice.hole),
        )
    };
    match (leg.drive.orifice_up, leg.drive.orifice_down) {
        (None, None) => "open lines".to_owned(),
        (up, down) => format!("{} up, {} down", hole(up), hole(down)),
    }
}

/// An electric actuator.
#[must_use]
pub fn motor_summary(motor: &ElectricActuator, units: UnitChoice) -> String {
    format!(
        "{} stall",
        format(Quantity::Force, units, motor.stall_force)
    )
}

/// Switches and start.
#[must_use]
pub fn switches_summary(switches: &Switches) -> &'static str {
    if *switches == Switches::default() {
        "at the ends of travel"
    } else {
        "set otherwise"
    }
}

/// The springs.
#[must_use]
pub fn springs_summary(springs: usize) -> String {
    match springs {
        0 => "none".to_owned(),
        1 => "1 spring".to_owned(),
        count => format!("{count} springs"),
    }
}

/// What a spring does, in a few words.
#[must_use]
pub fn spring_summary(kind: &SpringKind, units: UnitChoice) -> String {
    match kind {
        SpringKind::Linear(s) => format(Quantity::Stiffness, units, s.rate),
        SpringKind::Gas(s) => format!(
            "gas, {} out",
            format(Quantity::Force, units, s.force_longest)
        ),
        SpringKind::Torsion(s) => {
            let joint = match s.joint {
                SpringJoint::Trunnion => "trunnion",
                SpringJoint::BracePivot => "brace pivot",
                SpringJoint::Knee => "knee",
                SpringJoint::LegAttach => "brace on the leg",
            };
            let moment = format_signed(Quantity::Moment, units, s.moment_at_down);
            format!("{joint}, {moment}")
        }
    }
}

/// The pins.
#[must_use]
pub fn pins_summary(leg: &Leg) -> String {
    match leg.pins.all().iter().filter(|pin| pin.rubs()).count() {
        0 => "no friction".to_owned(),
        count => format!("{count} of 6 with friction"),
    }
}

/// An outline.
#[must_use]
pub fn points_summary(points: usize) -> String {
    match points {
        0 => "not given".to_owned(),
        count => format!("{count} points"),
    }
}

/// The fall without pressure, where it is worked out.
#[must_use]
pub fn fall_summary(fall: Option<&Fall>) -> &'static str {
    match fall {
        None => "not worked out",
        Some(fall) => match fall.outcome {
            FallOutcome::ReachesLock(_) if fall.by_speed_alone() => "down by speed alone",
            FallOutcome::ReachesLock(_) => "free-falls to down",
            FallOutcome::StopsShort { .. } => "stops short of down",
            FallOutcome::StaysUp => "stays up",
            FallOutcome::Creeps { .. } => "creeps",
            FallOutcome::NotFollowed { .. } => "could not be worked out",
        },
    }
}

/// What was seen on the jacks.
#[must_use]
pub fn seen_summary(seen: Option<&SeenStop>) -> &'static str {
    match seen.map(|seen| seen.selected) {
        None => "none noted",
        Some(Direction::Up) => "on the way up",
        Some(Direction::Down) => "on the way down",
    }
}

/// The supply.
#[must_use]
pub fn supply_summary(supply: &Supply, units: UnitChoice) -> String {
    format!(
        "{}, {}",
        format(Quantity::Pressure, units, supply.available_pressure),
        match supply.source {
            Source::ConstantPressure => "constant",
            Source::MotorPump(_) => "pump on a DC motor",
            Source::HandPump(_) => "hand pump",
            Source::ElectricActuators => "electric actuators",
        }
    )
}

/// Battery and wires.
#[must_use]
pub fn battery_summary(supply: &Supply, units: UnitChoice) -> String {
    match supply.source {
        Source::ConstantPressure | Source::HandPump(_) => "not used".to_owned(),
        Source::MotorPump(_) | Source::ElectricActuators => {
            match supply.battery.open_circuit_voltage {
                Some(voltage) => format!("{} resting", format(Quantity::Voltage, units, voltage)),
                None => format!(
                    "{} charged",
                    format(Quantity::Travel, units, supply.battery.charge)
                ),
            }
        }
    }
}

/// The accumulator.
#[must_use]
pub fn accumulator_summary(supply: &Supply, units: UnitChoice) -> String {
    supply.accumulator.map_or_else(
        || "none".to_owned(),
        |gas| format(Quantity::Volume, units, gas.gas_volume),
    )
}

/// Attitude and air.
#[must_use]
pub fn conditions_summary(conditions: &Conditions, units: UnitChoice) -> String {
    format!(
        "{}, {}",
        format(Quantity::LoadFactor, units, conditions.load_factor),
        format(Quantity::Speed, units, conditions.airspeed)
    )
}
