//! The short text of each group of fields while it is closed.
use gearswing_gear::model::{
    Brace, Direction, Leg, LineOrifice, Source, SpringJoint, SpringKind, Supply, Switches,
};
use gearswing_solver::result::FallOutcome;
use gearswing_units::{Quantity, UnitChoice, format, format_signed};

use super::worked::length;
use crate::state::State;

/// The short text of a group while it is closed.
pub(crate) fn summary(state: &State, index: usize, id: &str) -> String {
    let units = state.session.units;
    let gear = state.gear();
    let Some(leg) = gear.legs.get(index) else {
        return String::new();
    };
    match id {
        "leg" => format!(
            "{}, swing {}",
            view_text(leg),
            format(Quantity::Angle, units, leg.swing_up)
        ),
        "wheel" => tire_text(&leg.wheel.tire, units),
        "former" => leg
            .wheel
            .former
            .as_ref()
            .map_or_else(|| "none kept".to_owned(), |tire| tire_text(tire, units)),
        "brace" => match leg.brace {
            Brace::None => "none",
            Brace::Folding(_) => "folding",
            Brace::Sliding(_) => "telescoping",
        }
        .to_owned(),
        "actuator" => format!(
            "{} bore, {} rod",
            length(units, leg.actuator.bore),
            length(units, leg.actuator.rod)
        ),
        "well" => match leg.well.len() {
            0 => "nothing in it".to_owned(),
            1 => "1 piece".to_owned(),
            count => format!("{count} pieces"),
        },
        "lines" => lines_text(leg, units),
        "motor" => leg.drive.electric.map_or_else(String::new, |motor| {
            format!(
                "{} stall",
                format(Quantity::Force, units, motor.stall_force)
            )
        }),
        "switches" => if leg.drive.switches == Switches::default() {
            "at the ends of travel"
        } else {
            "set otherwise"
        }
        .to_owned(),
        "springs" => match leg.springs.len() {
            0 => "none".to_owned(),
            1 => "1 spring".to_owned(),
            count => format!("{count} springs"),
        },
        "pins" => match leg.pins.all().iter().filter(|pin| pin.rubs()).count() {
            0 => "no friction".to_owned(),
            count => format!("{count} of 6 with friction"),
        },
        "outline" => points_text(leg.body.outline.len()),
        "sliding" => points_text(leg.strut.sliding_outline.len()),
        "fall" => fall_text(state, index),
        "seen" => match leg.seen_stop.as_ref().map(|seen| seen.selected) {
            None => "none noted",
            Some(Direction::Up) => "on the way up",
            Some(Direction::Down) => "on the way down",
        }
        .to_owned(),
        "supply" => format!(
            "{}, {}",
            format(Quantity::Pressure, units, gear.supply.available_pressure),
            match gear.supply.source {
                Source::ConstantPressure => "constant",
                Source::MotorPump(_) => "pump on a DC motor",
                Source::HandPump(_) => "hand pump",
                Source::ElectricActuators => "electric actuators",
            }
        ),
        "battery" => battery_text(&gear.supply, units),
        "accumulator" => gear.supply.accumulator.map_or_else(
            || "none".to_owned(),
            |gas| format(Quantity::Volume, units, gas.gas_volume),
        ),
        "conditions" => format!(
            "{}, {}",
            format(Quantity::LoadFactor, units, gear.conditions.load_factor),
            format(Quantity::Speed, units, gear.conditions.airspeed)
        ),
        "file" => gearswing_report::name_words(&gear.name),
        _ => part_text(leg, id, units),
    }
}

/// The short text of one spring, or of one piece of the well.
fn part_text(leg: &Leg, id: &str, units: UnitChoice) -> String {
    let Some((list, at)) = id.split_once('.') else {
        return String::new();
    };
    let Ok(at) = at.parse::<usize>() else {
        return String::new();
    };
    match list {
        "spring" => leg
            .springs
            .get(at)
            .map_or_else(String::new, |spring| spring_text(&spring.kind, units)),
        "well" => leg
            .well
            .get(at)
            .map_or_else(String::new, |piece| points_text(piece.shape.points().len())),
        _ => String::new(),
    }
}

/// What a spring does, in a few words.
pub(super) fn spring_text(kind: &SpringKind, units: UnitChoice) -> String {
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

fn lines_text(leg: &Leg, units: UnitChoice) -> String {
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

fn battery_text(supply: &Supply, units: UnitChoice) -> String {
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

fn fall_text(state: &State, index: usize) -> String {
    let good = state.derived.good(index);
    match good.and_then(|good| good.result.fall.as_ref()) {
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
    .to_owned()
}

fn view_text(leg: &Leg) -> &'static str {
    match leg.view {
        gearswing_gear::model::View::Side => "seen from the side",
        gearswing_gear::model::View::Front => "seen from ahead",
    }
}

fn points_text(count: usize) -> String {
    match count {
        0 => "not given".to_owned(),
        count => format!("{count} points"),
    }
}

fn tire_text(tire: &gearswing_gear::model::Tire, units: UnitChoice) -> String {
    let mut size = gearswing_report::name_words(&tire.size);
    if size.is_empty() {
        size.push_str("tire");
    }
    format!(
        "{size}, {} × {}",
        length(units, tire.diameter),
        length(units, tire.width)
    )
}
