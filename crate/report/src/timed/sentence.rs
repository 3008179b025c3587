//! Sentences on a run: how it ended and what it took.
use gearswing_gear::model::Source;
use gearswing_solver::result::{
    Direction, Phase, Place, Question, Run, RunEnd, RunEvent, RunEventKind,
};
use gearswing_solver::supply::{is_run_down, open_circuit_voltage};
use gearswing_units::Quantity;

use super::Timed;
use super::missing::way;
use super::stall::stall_sentence;
use crate::finding::question_text;
use crate::text::capital_first;

/// How a run ended.
#[must_use]
pub fn run_sentence(timed: &Timed, run: &Run) -> String {
    let time = timed.say(Quantity::Time, run.time);
    let way = way(run.direction);
    let goal = match run.direction {
        Direction::Up => "up",
        Direction::Down => "down and locked",
    };
    match run.end {
        RunEnd::Complete => format!(
            "Selected {way}, every leg is {goal} after {time}{}.",
            if may_trip(run) {
                ", if the breaker holds so long"
            } else {
                ""
            }
        ),
        RunEnd::SwitchedOff => format!(
            "Selected {way}, the {} switches stop the {} after {time}, before every leg is at the end of its way: a switch closes early.",
            match run.direction {
                Direction::Up => "up-limit",
                Direction::Down => "down-lock",
            },
            driver(timed)
        ),
        RunEnd::PressureSwitch => {
            let set = pump_switch(timed, run);
            let set = set.map_or_else(String::new, |set| {
                format!(" at {}", timed.say(Quantity::Pressure, set))
            });
            format!(
                "Selected {way}, the pressure switch stops the pump{set} after {time}, before every leg is {goal}."
            )
        }
        RunEnd::Stalled => format!("Selected {way}, nothing moves any more after {time}."),
    }
}

/// Whether the current passes the breaker's rating.
fn may_trip(run: &Run) -> bool {
    run.breaker.is_some_and(|breaker| breaker.passed)
}

/// Pressure at which a switch stops the pump on this way (Pa).
fn pump_switch(timed: &Timed, run: &Run) -> Option<f64> {
    timed.gear.supply.going(run.direction).pump_switch()
}

/// What a switch stops.
fn driver(timed: &Timed) -> &'static str {
    match timed.gear.supply.source {
        Source::ElectricActuators => "actuators",
        _ => "pump",
    }
}

/// That a run down is with its source at work, where the answer on the lock is without it: a hand pump may be
/// the way down that is answered for.
fn driven_down(timed: &Timed, run: &Run) -> Option<String> {
    let (with, without) = match timed.gear.supply.source {
        Source::HandPump(_) => return None,
        Source::ConstantPressure => ("the pressure on", "it"),
        Source::MotorPump(_) => ("the pump at work", "it"),
        Source::ElectricActuators => ("the actuators at work", "them"),
    };
    (run.direction == Direction::Down).then(|| format!(
        "This run is with {with}; whether a leg comes down and locks without {without} is the answer to “{}”.",
        question_text(Question::Locks)
    ))
}

/// Legs whose switch at the end of the way closes before they are there.
fn early_switches(timed: &Timed, run: &Run) -> Vec<String> {
    let home = |made: &RunEvent| {
        let same = |e: &&RunEvent| e.leg == made.leg && e.time == made.time;
        let mut done = run.events.iter().filter(same);
        done.any(|e| e.kind == RunEventKind::SwingDone)
    };
    let kind = match run.direction {
        Direction::Up => RunEventKind::UpMade,
        Direction::Down => RunEventKind::DownMade,
    };
    let early = |e: &&RunEvent| e.kind == kind && !home(e);
    run.events
        .iter()
        .filter(early)
        .filter_map(|made| {
            let at = timed.at(&made.place?);
            let leg = timed.the_leg(made.leg?);
            Some(capital_first(&match run.direction {
                Direction::Up => format!(
                    "{leg}: its up-limit switch closes {at}, before it is up. Set the switch so that only the end of its way closes it."
                ),
                Direction::Down => format!(
                    "{leg}: its down-lock switch closes {at}: its light shows down and locked before the lock is engaged. Set the switch."
                ),
            }))
        })
        .collect()
}

/// Legs whose light shows down and locked at the end of a run, though they are out of their locks: their
/// switch is set to close before.
fn lit_early(timed: &Timed, run: &Run) -> Vec<String> {
    let Some(last) = run.moving().last() else {
        return Vec::new();
    };
    let home = |leg: usize| {
        let mut events = run.events.iter().filter(|e| e.leg == Some(leg));
        run.direction == Direction::Down && events.any(|e| e.kind == RunEventKind::SwingDone)
    };
    let out = |place: &Place| match place.phase {
        Phase::Shorten => false,
        Phase::Unlock => place.progress > -1.0,
        Phase::Swing => place.progress > 0.0,
    };
    let legs = last.legs.iter().enumerate();
    legs.filter(|(at, leg)| leg.down && out(&leg.place) && !home(*at))
        .map(|(at, leg)| {
            capital_first(&format!(
                "{} stands {}, and its light shows down and locked before the lock is engaged: set its down switch.",
                timed.the_leg(at),
                timed.at(&leg.place)
            ))
        })
        .collect()
}

/// Legs that their loads pull ahead of the fluid.
fn lags(timed: &Timed, run: &Run) -> Vec<String> {
    let events = run.events.iter();
    events
        .filter(|e| e.kind == RunEventKind::FluidLags)
        .filter_map(|e| {
            let (leg, at) = (timed.the_leg(e.leg?), timed.at(&e.place?));
            Some(capital_first(&format!(
                "{leg}: {at} its load begins to pull it ahead of the fluid, which its orifice lets in no faster. It then moves faster than told here, and may end hard."
            )))
        })
        .collect()
}

/// Strokes of a hand pump.
fn strokes(run: &Run) -> Option<String> {
    let count = run.strokes.filter(|count| *count > 0.0)?.ceil();
    let plural = if count == 1.0 { "" } else { "s" };
    Some(format!("{count:.0} stroke{plural} of the hand pump."))
}

/// How the accumulator is filled again, or left.
fn refilled(timed: &Timed, run: &Run) -> Option<String> {
    let say = |quantity, si| timed.say(quantity, si);
    if let Some(refill) = &run.refill {
        let stops = |e: &RunEvent| e.kind == RunEventKind::PressureSwitch;
        let ends = if run.events.iter().any(stops) {
            "its pressure switch stops it"
        } else {
            "it gets no further"
        };
        let energy = if refill.battery > 0.0 {
            format!(
                " It takes {} of the energy.",
                say(Quantity::Energy, refill.battery)
            )
        } else {
            String::new()
        };
        return Some(format!(
            "Then the pump fills the accumulator for {}, until {ends} at {}, {} after the selection.{energy}",
            say(Quantity::Time, refill.time - run.time),
            say(Quantity::Pressure, refill.pressure),
            say(Quantity::Time, refill.time)
        ));
    }
    let supply = &timed.gear.supply;
    let charged = supply.accumulator.as_ref()?.charged;
    let left = run.samples.last()?.pressure?;
    let ends = matches!(run.end, RunEnd::Complete | RunEnd::SwitchedOff);
    (ends && left < charged * NEARLY_FULL).then(|| {
        format!(
            "The accumulator is left at {}; it was at {} when the gear was selected, and the next swing has so much less.",
            say(Quantity::Pressure, left),
            say(Quantity::Pressure, charged)
        )
    })
}

/// An accumulator at less than this share of what it was charged to is told (ratio).
const NEARLY_FULL: f64 = 0.98;

/// Legs that a run down leaves short of their locks.
fn not_locked(timed: &Timed, run: &Run) -> Option<String> {
    if run.direction != Direction::Down || run.end == RunEnd::Complete {
        return None;
    }
    let home = |leg: usize| {
        let mut events = run.events.iter().filter(|e| e.leg == Some(leg));
        events.any(|e| e.kind == RunEventKind::SwingDone)
    };
    let stalls = |leg: usize| run.stalls.iter().any(|stall| stall.leg == leg);
    let legs = (0..timed.gear.legs.len()).filter(|&leg| stalls(leg) || !home(leg));
    let legs: Vec<String> = legs.map(|leg| timed.the_leg(leg)).collect();
    (!legs.is_empty()).then(|| format!("Not down and locked: {}.", legs.join(", ")))
}

/// Everything that is said of a run: its end, its stalls, what it took.
#[must_use]
pub fn run_sentences(timed: &Timed, run: &Run) -> Vec<String> {
    let mut found = vec![run_sentence(timed, run)];
    found.extend(
        run.stalls
            .iter()
            .map(|stall| stall_sentence(timed, run, stall)),
    );
    found.extend(not_locked(timed, run));
    found.extend(driven_down(timed, run));
    found.extend(early_switches(timed, run));
    found.extend(lit_early(timed, run));
    found.extend(lags(timed, run));
    if run.events.iter().any(|e| e.kind == RunEventKind::RunsOn) {
        found.push(format!(
            "Nothing stops the pump then: it runs on against the stopped legs until it is switched off{}.{}",
            if may_trip(run) {
                " or the breaker trips"
            } else {
                ""
            },
            pump_switch(timed, run).map_or_else(String::new, |set| {
                format!(
                    " Its pressure switch is set at {}, which it does not reach.",
                    timed.say(Quantity::Pressure, set)
                )
            })
        ));
    }
    found.extend(more_than_given(timed, run));
    if run.energy.battery > 0.0 {
        found.push(format!(
            "Energy from the battery: {}, of which {} is lost in the battery and the wires.",
            timed.say(Quantity::Energy, run.energy.battery),
            timed.say(Quantity::Energy, run.energy.wires)
        ));
    }
    let battery = &timed.gear.supply.battery;
    if run.energy.battery > 0.0 && is_run_down(battery) {
        found.push(format!(
            "At a resting voltage of {} the battery has a quarter of its charge or less: under load it sags by more than its resistance says, so don't count on these times (common practice).",
            timed.say(Quantity::Voltage, open_circuit_voltage(battery))
        ));
    }
    if let Some(current) = run.largest_current {
        let current = timed.say(Quantity::Current, current);
        found.push(match run.breaker {
            Some(breaker) if breaker.passed => format!(
                "Largest current {current}: more than the breaker's {}{}; it may trip on the way.",
                timed.say(Quantity::Current, breaker.rating),
                passed_at(timed, run)
            ),
            Some(breaker) => format!(
                "Largest current {current}; the breaker is rated {}.",
                timed.say(Quantity::Current, breaker.rating)
            ),
            None => format!("Largest current {current}."),
        });
    }
    found.extend(strokes(run));
    found.extend(refilled(timed, run));
    let f = &run.fluid;
    if f.pumped > 0.0 || f.accumulator != 0.0 {
        let say = |si| timed.say(Quantity::Volume, si);
        let mut text = format!(
            "Fluid: {} pumped, {} into the cylinders",
            say(f.pumped),
            say(f.swept)
        );
        if f.accumulator.abs() > 1e-9 {
            let way = if f.accumulator > 0.0 {
                "out of"
            } else {
                "into"
            };
            text.push_str(&format!(
                ", {} {way} the accumulator",
                say(f.accumulator.abs())
            ));
        }
        if f.relieved > 1e-9 {
            text.push_str(&format!(", {} over the relief valve", say(f.relieved)));
        }
        if f.drawn > 1e-9 {
            text.push_str(&format!(", {} drawn from the return line", say(f.drawn)));
        }
        text.push('.');
        found.push(text);
    }
    found
}

/// From when the current is above the breaker's rating.
fn passed_at(timed: &Timed, run: &Run) -> String {
    let passed = |e: &&RunEvent| e.kind == RunEventKind::BreakerPassed;
    let event = run.events.iter().find(passed);
    event.map_or_else(String::new, |e| {
        format!(", first after {}", timed.say(Quantity::Time, e.time))
    })
}

/// A pump that makes so many times the pressure given is told (ratio).
const TOLD: f64 = 1.05;

/// The answers count on no more than the pressure given; the times take what the pump makes.
fn more_than_given(timed: &Timed, run: &Run) -> Option<String> {
    let supply = &timed.gear.supply.going(run.direction);
    let makes = run.largest_pressure?;
    let makes = supply.pump_switch().map_or(makes, |set| set.min(makes));
    let given = supply.available_pressure;
    let pumped = matches!(supply.source, Source::MotorPump(_) | Source::HandPump(_));
    (pumped && makes > given * TOLD).then(|| {
        format!(
            "These times take the {} that the pump makes; the answers count on no more than the {} given as available.",
            timed.say(Quantity::Pressure, makes),
            timed.say(Quantity::Pressure, given)
        )
    })
}
