//! Why a leg stands, and what would free it.
use gearswing_gear::model::{Leg, Shortening, Source};
use gearswing_solver::result::{Direction, Phase, Run, RunEnd, Stall, StallCause};
use gearswing_units::Quantity;

use super::Timed;
use crate::cases::joint_words;
use crate::finding::BEYOND;
use crate::subject::{obstacle_words, part_name};
use crate::text::capital_first;

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
                    "{leg} stalls {at}: for the rest of its travel it needs {}, all that the supply makes, and so it barely moves.",
                    say(needed)
                ));
            }
            if needed <= available {
                // The pump was stopped before it came to this leg.
                return capital_first(&format!(
                    "{leg} stands {at}: it needs {} for the rest of its travel, which the supply makes, but the pump was stopped first by what its line and the other legs took. Look for a pressure switch set too low, by the maker's data.",
                    say(needed)
                ));
            }
            if needed > BEYOND * available && available > 0.0 {
                return capital_first(&format!(
                    "{leg} stalls {at}: for the rest of its travel it needs {}, and {}. No pressure and no battery makes up so much: something all but holds it there, by its pins, its arm or its load.",
                    say(needed),
                    makes(timed, available)
                ));
            }
            let mut ways = vec![format!("{} more pressure", say(needed - available))];
            if let Some(volts) = volts_short {
                ways.push(format!(
                    "{} more at the battery (charge it, or put ground power on)",
                    timed.say(Quantity::Voltage, volts)
                ));
            }
            match thrust_over {
                Some(thrust) => ways.push(format!(
                    "{} less load on {}",
                    timed.say(Quantity::Force, thrust),
                    if is_jack(timed, run, stall, needed) {
                        "its strut-shortening cylinder"
                    } else {
                        "its actuator"
                    }
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
                "{leg} stalls {at}: for the rest of its travel it needs {}, and {}. Any one of these would free it: {}.{no_volts}",
                say(needed),
                makes(timed, available),
                listed(&ways)
            )
        }
        StallCause::Force {
            needed, available, ..
        } if needed <= available => format!(
            "{leg} barely moves {at}: its electric actuator makes {} on this battery, and it needs {} for the rest of its travel.",
            timed.say(Quantity::Force, available),
            timed.say(Quantity::Force, needed)
        ),
        StallCause::Force {
            needed,
            available,
            volts_short,
        } => format!(
            "{leg} stalls {at}: for the rest of its travel it needs {}, and its electric actuator makes no more than {} on this battery{}. Either would free it: {} more at the battery{} or {} less load.",
            timed.say(Quantity::Force, needed),
            timed.say(Quantity::Force, available),
            if run.stalls.len() > 1 {
                " while the others stand and push too"
            } else {
                ""
            },
            timed.say(Quantity::Voltage, volts_short),
            if run.stalls.len() > 1 {
                " (less once the others have come to their ends)"
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
        StallCause::TouchesItself { part } => format!(
            "{leg} stops {at}, where by the drawing its tire touches its own {}: no pressure frees it.",
            part_name(part)
        ),
        StallCause::EndOfWay => format!(
            "{leg} stops {at}, where its parts or its actuator let it go no further: no pressure frees it."
        ),
        StallCause::Binds { joint } => format!(
            "{leg} binds {at}: friction at {} grows with the actuator force faster than the force itself, and no pressure frees it. Clean and grease the pins, and look for a bent or misaligned part.",
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

/// What the supply has for a leg that stalls, to go before a pressure.
fn makes(timed: &Timed, available: f64) -> String {
    let supply = &timed.gear.supply;
    let say = timed.say(Quantity::Pressure, available);
    match supply.source {
        Source::ConstantPressure
            if supply.accumulator.is_some() && available <= supply.return_pressure =>
        {
            "the accumulator is empty".to_owned()
        }
        Source::ConstantPressure if supply.accumulator.is_some() => {
            format!("the accumulator has no more left than {say}")
        }
        _ => format!("the supply makes no more than {say}"),
    }
}

/// Whether what a stalled leg needs is the pressure of the jack of its strut.
fn is_jack(timed: &Timed, run: &Run, stall: &Stall, needed: f64) -> bool {
    let leg: Option<&Leg> = timed.gear.legs.get(stall.leg);
    let before = |leg: &&Leg| matches!(leg.strut.shortening, Shortening::BeforeSwing { .. });
    let Some(jack) = leg.filter(before).and_then(|leg| leg.drive.strut_jack) else {
        return false;
    };
    let own = match run.direction {
        Direction::Up => jack.shorten_pressure,
        Direction::Down => jack.lengthen_pressure,
    };
    let asked = own + timed.gear.supply.return_pressure;
    let is_strut = stall.place.phase == Phase::Shorten || run.direction == Direction::Down;
    is_strut && (needed / asked - 1.0).abs() < 1e-6
}
