//! Why there are no times in a direction, and from where the way down starts.
use gearswing_gear::model::Source;
use gearswing_solver::result::{Cycle, Direction, Stall, StallCause};
use gearswing_solver::supply::SupplyError;
use gearswing_units::Quantity;

use super::Timed;
use crate::fault::fault_text;
use crate::text::the_leg;

/// Why there are no times, as a sentence.
#[must_use]
pub fn supply_error_text(timed: &Timed, error: &SupplyError) -> String {
    let electric = matches!(timed.gear.supply.source, Source::ElectricActuators);
    let load = |si: f64| {
        let quantity = if electric {
            Quantity::Force
        } else {
            Quantity::Pressure
        };
        timed.say(quantity, si)
    };
    match error {
        SupplyError::Faults(faults) => match faults.0.split_first() {
            Some((first, rest)) => {
                let more = match rest.len() {
                    0 => String::new(),
                    more => format!(" And {more} more."),
                };
                let first = fault_text(first, timed.gear, timed.units);
                format!("The times are not worked out. {first}{more}")
            }
            None => "The times are not worked out: the data have faults.".to_owned(),
        },
        SupplyError::NoFlow { voltage } => format!(
            "The pump does not turn: without pressure its motor already takes all that battery and wires give, {} too much. Check charge, connections and the figures put in.",
            timed.say(Quantity::Voltage, -voltage)
        ),
        SupplyError::NothingMoves {
            selected,
            needed,
            available,
        } => format!(
            "Selected {}, nothing moves: the least loaded leg needs {} to start, and the supply makes no more than {}.",
            way(*selected),
            load(*needed),
            load(*available)
        ),
        SupplyError::SharedDrive { leg } => {
            let name = timed.gear.legs.get(*leg).map_or("", |leg| &leg.name);
            format!(
                "The times are not worked out: {} shares its drive with another leg, and legs on one drive are not followed through time.",
                the_leg(name, *leg)
            )
        }
        SupplyError::NoStroke => {
            "The times are not worked out: no actuator has any stroke to drive a leg over."
                .to_owned()
        }
        SupplyError::Unbalanced { time, .. } => format!(
            "The times could not be worked out beyond {}; take nothing from them.",
            timed.say(Quantity::Time, *time)
        ),
        SupplyError::TooManySteps { time, .. } => format!(
            "This program gave up after {}: it could follow the gear no further in the steps that it allows itself. Nothing is said by that of the gear; take nothing from these times.",
            timed.say(Quantity::Time, *time)
        ),
    }
}

pub(super) fn way(selected: Direction) -> &'static str {
    match selected {
        Direction::Up => "up",
        Direction::Down => "down",
    }
}

/// Why there are no times in one direction.
#[must_use]
pub fn run_missing(timed: &Timed, cycle: &Cycle, direction: Direction) -> String {
    match cycle.error(direction) {
        Some(SupplyError::NoStroke) => format!(
            "Selected {}: no leg can be driven from where it stands.",
            way(direction)
        ),
        Some(error) => supply_error_text(timed, error),
        None => format!(
            "Selected {}: not worked out, for a leg cannot be driven at all.",
            way(direction)
        ),
    }
}

/// From where the way down starts.
#[must_use]
pub fn down_title(cycle: &Cycle) -> &'static str {
    let stops = |stall: &Stall| {
        !matches!(
            stall.cause,
            StallCause::Pressure { .. } | StallCause::Force { .. }
        )
    };
    let Some(up) = &cycle.up else {
        return "Down, as if every leg had come up before";
    };
    if up.stalls.iter().any(stops) {
        "Down, from as far up as each leg can come"
    } else if up.stalls.is_empty() {
        "Down, from every leg up"
    } else {
        "Down, as if every leg had come up before"
    }
}
