//! What may have stopped a leg, as a sentence with its number.
use gearswing_gear::model::{Direction, MovingPart};
use gearswing_solver::result::{Demand, JamCause, StopCause, TireState};
use gearswing_units::Quantity;

use super::Stopped;
use crate::cases::joint_words;
use crate::subject::{obstacle_words, part_name};

/// The cause in a sentence.
#[must_use]
pub fn cause_sentence(stopped: &Stopped, cause: &StopCause) -> String {
    let length = |si: f64| stopped.say(Quantity::Length, si);
    let pressure = |si: f64| stopped.say(Quantity::Pressure, si);
    let volts = |si: f64| stopped.say(Quantity::Voltage, si);
    let demand = |demand: &Demand| match demand {
        Demand::Pressure(si) => pressure(*si),
        Demand::Force(si) => stopped.say(Quantity::Force, *si),
    };
    match cause {
        StopCause::Touches {
            obstacle,
            part,
            tire,
            clearance,
        } => {
            let place = if *clearance < 0.0 {
                format!(
                    "in the drawing they interfere by {} there",
                    length(-clearance)
                )
            } else {
                format!(
                    "in the drawing the clearance there is {}: it would have to be nearer or larger by that",
                    length(*clearance)
                )
            };
            format!(
                "The {} touches {}: {place}.",
                part_words(*part, *tire),
                obstacle_of(stopped, *obstacle)
            )
        }
        StopCause::StrutLong {
            missing,
            amount,
            obstacle,
            part,
            tire,
        } => format!(
            "The strut is {} short of its full shortening of {}, so that the {} touches {}.",
            length(*missing),
            length(*amount),
            part_words(*part, *tire),
            obstacle_of(stopped, *obstacle)
        ),
        StopCause::ForceShort { needed, available } => {
            let switch = match stopped.gear.supply.pump_switch() {
                Some(set) if matches!(available, Demand::Pressure(most) if *most < set) => format!(
                    ", for its switch stops the pump at {}, and the line takes the rest while it moves",
                    pressure(set)
                ),
                _ => String::new(),
            };
            let size = |demand: &Demand| match demand {
                Demand::Pressure(si) | Demand::Force(si) => *si,
            };
            let is_short = size(needed) > 0.98 * size(available);
            format!(
                "By the file's own figures the source is {} there: the leg needs {}, and the source moves {} at most{switch}.",
                if is_short { "too weak" } else { "strong enough" },
                demand(needed),
                demand(available)
            )
        }
        StopCause::BatteryLow {
            open_circuit,
            or_less,
            file,
        } => format!(
            "The battery is low: its resting (open-circuit) voltage would be {}{}, where the file has {}.",
            volts(*open_circuit),
            less(*or_less),
            volts(*file)
        ),
        StopCause::BadContact { extra } => format!(
            "A wire, relay, switch or ground loses volts behind the battery's posts: {} more than the file has.",
            stopped.say(Quantity::Resistance, *extra)
        ),
        StopCause::BatteryResists { extra } => format!(
            "The battery sags under load, though its resting voltage may read as it should: its own resistance would be {} more than in the file.",
            stopped.say(Quantity::Resistance, *extra)
        ),
        StopCause::AtItsEnd => {
            "It stands at the end of its own way; if the pump ran on, the switch there has not closed."
                .to_owned()
        }
        StopCause::StrutStays { needed } => format!(
            "Its strut has not done its stroke, which the swing waits for: by the file its strut-shortening cylinder needs {}.",
            demand(needed)
        ),
        StopCause::SourceWeak {
            gives,
            or_less,
            file,
        } => format!(
            "{} gives out at {}{}, where the file has {}.",
            match gives {
                Demand::Pressure(_) => "The pump, its relief valve or the supply",
                Demand::Force(_) => "The electric actuator",
            },
            demand(gives),
            less(*or_less),
            demand(file)
        ),
        StopCause::Friction {
            extra_thrust,
            or_more,
            extra_moment,
            pin_factor,
        } => {
            let moment = extra_moment.map_or_else(String::new, |si| {
                format!(
                    " ({} about the trunnion)",
                    stopped.say(Quantity::Moment, si)
                )
            });
            let factor = pin_factor.map_or_else(String::new, |factor| {
                format!(
                    ", as pins that rub {} times as much as in the file would",
                    stopped.say(Quantity::Ratio, factor)
                )
            });
            format!(
                "More friction all the way: {}{} at the actuator{moment} on top of the file's{factor}. An actuator that gives so much less than by the file{} shows the same.",
                stopped.say(Quantity::Force, *extra_thrust),
                if *or_more { " or more" } else { "" },
                if stopped.is_electric() {
                    ""
                } else {
                    " (bore, piston seal that leaks by)"
                }
            )
        }
        StopCause::HeldThere { thrust } => format!(
            "Something that is not in the drawing holds it just there, with {} at the actuator or more: a hose, a wire, a door, a burr.",
            stopped.say(Quantity::Force, *thrust)
        ),
        StopCause::Binds { joint } => format!(
            "The pins bind there, by the file: friction at {} grows with the actuator force faster than the force itself.",
            joint_words(*joint)
        ),
        StopCause::ActuatorEnds { left } => format!(
            "The actuator is at the end of its travel: by the file it has {} left there, by which its stroke or rod end would have to differ.",
            length(*left)
        ),
        StopCause::Jams { cause } => format!(
            "The linkage goes no further, by the file: {}.",
            jam_words(stopped, cause)
        ),
        StopCause::SwitchEarly { travel, file } => {
            let switch = match stopped.model().and_then(|leg| leg.seen_stop.as_ref()) {
                Some(seen) if seen.selected == Direction::Down => "down-lock",
                _ => "up-limit",
            };
            format!(
                "The {switch} switch closes at {} of travel or before and stops the {}; the file has it at {}.",
                stopped.say(Quantity::Travel, *travel),
                stopped.driver(),
                stopped.say(Quantity::Travel, *file)
            )
        }
        StopCause::PressureSwitchLow { opens, file } => format!(
            "The pressure switch stops the pump at {}, where the file has {}.",
            pressure(*opens),
            pressure(*file)
        ),
    }
}

fn less(or_less: bool) -> &'static str {
    if or_less { " or less" } else { "" }
}

fn part_words(part: MovingPart, tire: Option<TireState>) -> String {
    let state = match tire {
        Some(TireState::New) => "new ",
        Some(TireState::Grown) => "grown ",
        None => "",
    };
    format!("{state}{}", part_name(part))
}

fn obstacle_of(stopped: &Stopped, obstacle: usize) -> String {
    let name = stopped
        .model()
        .and_then(|leg| leg.well.get(obstacle))
        .map_or("", |o| &o.name);
    obstacle_words(name, obstacle)
}

fn jam_words(stopped: &Stopped, cause: &JamCause) -> String {
    let miss = stopped.say(Quantity::Length, cause.miss());
    match cause {
        JamCause::BraceTooShort { .. } => format!("the brace is {miss} too short"),
        JamCause::BraceTooLong { .. } => format!("the folded brace is {miss} too long"),
        JamCause::SlidingBraceEndsLong { .. } => {
            format!("the telescoping brace would have to be {miss} longer")
        }
        JamCause::SlidingBraceEndsShort { .. } => {
            format!("the telescoping brace would have to be {miss} shorter")
        }
        JamCause::ActuatorEndsLong { .. } => {
            format!("the actuator would have to be {miss} longer")
        }
        JamCause::ActuatorEndsShort { .. } => {
            format!("the actuator would have to be {miss} shorter")
        }
    }
}
