//! Sentences on a run: how it ended, why a leg stands, what it took.
use gearswing_solver::model::Source;
use gearswing_solver::result::{
    Cycle, Direction, Run, RunEnd, RunEvent, RunEventKind, Stall, StallCause,
};
use gearswing_solver::supply::{SupplyError, is_run_down, open_circuit_voltage};
use gearswing_units::Quantity;

use super::Timed;
use crate::cases::joint_words;
use crate::subject::{obstacle_words, part_name};
use crate::text::capital_first;

/// Cautions that belong to times.
#[must_use]
pub fn supply_cautions(source: &Source) -> &'static [&'static str] {
    const PRESSURE: &str = "Pressure can start a leg without warning, and a stalled leg can move on when it comes back: keep out of the arc until the pressure is down.";
    const RELIEF: &str = "Do not raise a relief valve or change a breaker to cure a stall: find the load, and ask the maker's data.";
    match source {
        Source::MotorPump(_) => &[
            "A pump can start a leg without warning, and a stalled leg can move on when the pressure comes back: keep out of the arc until the power is off and the pressure is down.",
            "A pump motor is made for one cycle at a time: let it cool as its maker says before the next swing, and have ground power on the battery.",
            RELIEF,
        ],
        Source::ConstantPressure | Source::HandPump(_) => &[PRESSURE, RELIEF],
        Source::ElectricActuators => &[
            "An actuator can start a leg without warning, and a stalled leg can move on: keep out of the arc until the power is off.",
            "An actuator's motor is made for one cycle at a time: let it cool as its maker says before the next swing, and have ground power on the battery.",
            "Do not change a breaker to cure a stall: find the load, and ask the maker's data.",
        ],
    }
}

/// Why a gear has no times at all.
#[must_use]
pub fn times_missing() -> &'static str {
    "No times: they need an orifice up on every leg, an accumulator, a pump or electric actuators."
}

/// What the times leave out or make simple.
#[must_use]
pub fn supply_simplified() -> &'static [&'static str] {
    &[
        "Everything is in balance at each instant: no motor run-up and no inrush current, no inertia of the legs, no fluid that gives, no air in it, no hose that swells.",
        "A leg that its weight drives down runs ahead of the pump, held back by its orifice alone; the manifold then stays at the return pressure.",
        "The flow of an orifice goes over from the root of the pressure across it to a straight line at about 1 kPa (0.15 psi).",
        "A separate unlocking device, and a strut without a jack, take no time and no fluid.",
        "Pump, battery and motor are straight lines at one temperature; how soon a breaker trips is not worked out.",
        "The switches sit where the file says; doors are not modelled.",
        "A leg stops where its new tire or another part first touches its well by the drawing: how far either gives way is not worked out. What touches where a leg starts stops nothing.",
        "An accumulator takes and gives up no heat; after the swing the pump fills it again, which is not timed.",
    ]
}

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
        SupplyError::Faults(_) => "The times are not worked out: the data have faults.".to_owned(),
        SupplyError::NoFlow { voltage } => format!(
            "The pump does not turn: resistance of battery and wires leaves {} at the motor even without pressure. Check charge, connections and the figures put in.",
            timed.say(Quantity::Voltage, *voltage)
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
        SupplyError::NoStroke => {
            "The times are not worked out: no actuator has any stroke to drive a leg over."
                .to_owned()
        }
        SupplyError::Unbalanced { time, .. } | SupplyError::TooManySteps { time, .. } => format!(
            "The times could not be worked out beyond {}; take nothing from them.",
            timed.say(Quantity::Time, *time)
        ),
    }
}

fn way(selected: Direction) -> &'static str {
    match selected {
        Direction::Up => "up",
        Direction::Down => "down",
    }
}

/// Why there are no times in one direction.
#[must_use]
pub fn run_missing(timed: &Timed, cycle: &Cycle, direction: Direction) -> String {
    match cycle.error(direction) {
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
        RunEnd::Complete => format!("Selected {way}, every leg is {goal} after {time}."),
        RunEnd::SwitchedOff => format!(
            "Selected {way}, the {way} switches stop the pump after {time}, before every leg is at the end of its way: a switch makes early."
        ),
        RunEnd::PressureSwitch => {
            let set = timed.gear.supply.pressure_switch;
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

/// Why a leg stands, and what would free it.
#[must_use]
pub fn stall_sentence(timed: &Timed, run: &Run, stall: &Stall) -> String {
    let leg = timed.the_leg(stall.leg);
    let at = timed.at(&stall.place);
    let text = match stall.cause {
        StallCause::Pressure {
            needed,
            available,
            thrust_over,
            volts_short,
            relief_too_low,
            switch_too_low,
        } => {
            let say = |si| timed.say(Quantity::Pressure, si);
            if needed <= available && run.end == RunEnd::Stalled {
                return capital_first(&format!(
                    "{leg} stalls {at}: on the rest of its way it needs {}, all that the supply makes, and so it all but stands.",
                    say(needed)
                ));
            }
            if needed <= available {
                // The pump was stopped before it came to this leg.
                return capital_first(&format!(
                    "{leg} stands {at}: it needs {} on the rest of its way, which the supply makes.",
                    say(needed)
                ));
            }
            let mut ways = vec![format!("{} more pressure", say(needed - available))];
            if let Some(volts) = volts_short {
                ways.push(format!(
                    "{} more at the battery",
                    timed.say(Quantity::Voltage, volts)
                ));
            }
            match thrust_over {
                Some(thrust) => ways.push(format!(
                    "{} less load on its actuator",
                    timed.say(Quantity::Force, thrust)
                )),
                None => ways.push("a stage valve that opens lower".to_owned()),
            }
            let no_volts = match run.end {
                RunEnd::Stalled if switch_too_low => {
                    " More volts alone would not: the pressure switch stops the pump first."
                }
                RunEnd::Stalled if relief_too_low => {
                    " More volts alone would not: the relief valve opens first."
                }
                _ => "",
            };
            format!(
                "{leg} stalls {at}: on the rest of its way it needs {}, and the supply makes no more than {}. Any one of these would free it: {}.{no_volts}",
                say(needed),
                say(available),
                listed(&ways)
            )
        }
        StallCause::Force {
            needed, available, ..
        } if needed <= available => format!(
            "{leg} stands {at}, hardly moving: its electric actuator makes {} on this battery, and it needs {} on the rest of its way.",
            timed.say(Quantity::Force, available),
            timed.say(Quantity::Force, needed)
        ),
        StallCause::Force {
            needed,
            available,
            volts_short,
        } => format!(
            "{leg} stalls {at}: on the rest of its way it needs {}, and its electric actuator makes no more than {} on this battery{}. Either would free it: {} more at the battery{} or {} less load.",
            timed.say(Quantity::Force, needed),
            timed.say(Quantity::Force, available),
            if run.stalls.len() > 1 {
                " while the others stand and push too"
            } else {
                ""
            },
            timed.say(Quantity::Voltage, volts_short),
            if run.stalls.len() > 1 {
                " (less once the others are home)"
            } else {
                ""
            },
            timed.say(Quantity::Force, needed - available)
        ),
        StallCause::Touches { part, obstacle } => {
            let wells = timed.gear.legs.get(stall.leg).map(|leg| &leg.well);
            let name = wells.and_then(|well| Some(&well.get(obstacle)?.name));
            format!(
                "{leg} stops {at}, where by the drawing its {} touches {}: no pressure frees it.",
                part_name(part),
                obstacle_words(name.map_or("", |name| name), obstacle)
            )
        }
        StallCause::EndOfWay => format!(
            "{leg} stops {at}, where its parts or its actuator let it go no further: no pressure frees it."
        ),
        StallCause::Binds { joint } => format!(
            "{leg} binds {at}: friction at {} grows with the thrust faster than the thrust itself, and no pressure frees it. Clean and grease the pins, and look for a bent or misaligned part.",
            joint_words(joint)
        ),
    };
    capital_first(&text)
}

fn listed(ways: &[String]) -> String {
    match ways.split_last() {
        Some((last, [])) => last.clone(),
        Some((last, rest)) => format!("{} or {last}", rest.join(", ")),
        None => String::new(),
    }
}

/// Legs whose down switch makes before the lock is home.
fn early_locks(timed: &Timed, run: &Run) -> Vec<String> {
    let home = |made: &RunEvent| {
        let same = |e: &&RunEvent| e.leg == made.leg && e.time == made.time;
        let mut done = run.events.iter().filter(same);
        done.any(|e| e.kind == RunEventKind::SwingDone)
    };
    let early = |e: &&RunEvent| e.kind == RunEventKind::DownMade && !home(e);
    run.events
        .iter()
        .filter(early)
        .filter_map(|made| {
            let at = timed.at(&made.place?);
            Some(capital_first(&format!(
                "{}: its down switch makes {at}, before its lock is home. Its light then tells of a lock that is not there: set the switch.",
                timed.the_leg(made.leg?)
            )))
        })
        .collect()
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
    found.extend(early_locks(timed, run));
    if run.events.iter().any(|e| e.kind == RunEventKind::RunsOn) {
        found.push(
            "Nothing stops the pump then: it runs on against the stopped legs until it is switched off."
                .to_owned(),
        );
    }
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
            "At {} at rest the battery has a quarter of its charge or less: under load it gives way by more than its resistance says, so don't count on these times (common practice).",
            timed.say(Quantity::Voltage, open_circuit_voltage(battery))
        ));
    }
    if let Some(current) = run.largest_current {
        let current = timed.say(Quantity::Current, current);
        found.push(match run.breaker {
            Some(breaker) if breaker.passed => format!(
                "Largest current {current}: more than the breaker's {}; it may trip on the way.",
                timed.say(Quantity::Current, breaker.rating)
            ),
            Some(breaker) => format!(
                "Largest current {current}; the breaker is rated {}.",
                timed.say(Quantity::Current, breaker.rating)
            ),
            None => format!("Largest current {current}."),
        });
    }
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
