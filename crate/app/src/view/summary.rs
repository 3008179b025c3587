//! The short text of each group of fields while it is closed.
use gearswing_gear::model::Leg;
use gearswing_report::page::summary as words;
use gearswing_units::UnitChoice;

use crate::state::State;

/// The short text of a group while it is closed.
pub(crate) fn summary(state: &State, index: usize, id: &str) -> String {
    let units = state.session.units;
    let gear = state.gear();
    let Some(leg) = gear.legs.get(index) else {
        return String::new();
    };
    match id {
        "leg" => words::leg_summary(leg, units),
        "wheel" => words::tire_summary(&leg.wheel.tire, units),
        "brace" => words::brace_summary(&leg.brace).to_owned(),
        "actuator" => words::actuator_summary(leg, units),
        "well" => words::well_summary(leg.well.len()),
        "lines" => words::lines_summary(leg, units),
        "motor" => {
            let motor = leg.drive.electric.as_ref();
            motor.map_or_else(String::new, |motor| words::motor_summary(motor, units))
        }
        "switches" => words::switches_summary(&leg.drive.switches).to_owned(),
        "springs" => words::springs_summary(leg.springs.len()),
        "pins" => words::pins_summary(leg),
        "outline" => words::points_summary(leg.body.outline.len()),
        "sliding" => words::points_summary(leg.strut.sliding_outline.len()),
        "fall" => {
            let good = state.derived.good(index);
            words::fall_summary(good.and_then(|good| good.result.fall.as_ref())).to_owned()
        }
        "seen" => words::seen_summary(leg.seen_stop.as_ref()).to_owned(),
        "supply" => words::supply_summary(&gear.supply, units),
        "battery" => words::battery_summary(&gear.supply, units),
        "accumulator" => words::accumulator_summary(&gear.supply, units),
        "conditions" => words::conditions_summary(&gear.conditions, units),
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
        "spring" => leg.springs.get(at).map_or_else(String::new, |spring| {
            words::spring_summary(&spring.kind, units)
        }),
        "well" => leg.well.get(at).map_or_else(String::new, |piece| {
            words::points_summary(piece.shape.points().len())
        }),
        _ => String::new(),
    }
}
