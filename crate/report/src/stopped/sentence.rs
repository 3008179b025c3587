//! What was seen against what explanations need, and what to look at next.
use gearswing_gear::model::PumpSeen;
use gearswing_solver::result::{
    Check, Demand, Explanation, Finds, Fit, NextCheck, ReadingFit, StopExplained,
};
use gearswing_solver::stop::StopError;
use gearswing_units::Quantity;

use super::Stopped;
use crate::fault::fault_text;
use crate::text::capital_first;
use crate::timed::{Timed, supply_error_text};

/// Cautions that belong to a stopped leg.
#[must_use]
pub fn stop_cautions() -> &'static [&'static str] {
    &[
        crate::cautions::LIVE_SELECTOR,
        "A leg that has stopped can move on without warning, and one that stands part of the way may hang on its pressure and fall when that is let down: support it where it stands, take the power off, let the pressure down, and only then let a hand go near it (common practice).",
        "With power on against a stopped leg: everybody clear, and a second or two only (common practice).",
        "Do not cure a stop by more pressure or a larger breaker; find what holds the leg first, and ask the maker's data.",
    ]
}

/// What the weighing does and does not do.
#[must_use]
pub fn stop_notes() -> &'static [&'static str] {
    &[
        "Worked out for the airplane level on jacks, with this leg alone against the source.",
        "\"Off\" is how far a reading is from what the explanation needs, against the ± (95 %) of reading and calculation together: up to about 1.0 times fits, above 1.5 times is ruled out. A number that was chosen to fit counts as 1.0 times in the order.",
        "To stand at a place and not before also needs that nothing stopped the leg on the way there: by how much the drawing or the loads would have to be wrong for that counts as well.",
        "Only the explanations listed are weighed, one at a time. Another one, or two together, may be the true one.",
        "A breaker that may have tripped leaves gauge and volts untold, unless the pump was heard to run on.",
    ]
}

/// How well an explanation fits, in a word or two.
#[must_use]
pub fn fit_words(fit: Fit) -> &'static str {
    match fit {
        Fit::Fits => "fits",
        Fit::Doubtful => "doubtful",
        Fit::RuledOut => "ruled out",
    }
}

/// One thing seen against what an explanation needs.
/// `place_within` is the half-width of the place seen (ratio).
pub(super) fn reading_words(stopped: &Stopped, reading: &ReadingFit, place_within: f64) -> String {
    let off = |off: f64| {
        let times = off / STANDARD_IN_95;
        if times >= 99.95 {
            "more than 100 times its ±".to_owned()
        } else {
            format!("{times:.1} times its ±")
        }
    };
    let read = |what: &str, quantity, both: [f64; 2], by| {
        let apart = stopped.say(quantity, (both[0] - both[1]).abs());
        let [needed, seen] = both.map(|si| stopped.say(quantity, si));
        format!("{what} {needed}, read {seen}: {apart} off, {}", off(by))
    };
    match *reading {
        ReadingFit::HowFar {
            asked,
            seen,
            off: by,
        } => match asked {
            None => format!(
                "stands at {}, chosen to fit",
                stopped.say(Quantity::Travel, seen)
            ),
            Some(asked) => {
                let apart = (asked - seen).abs();
                let [needed, seen] = [asked, seen].map(|si| stopped.say(Quantity::Travel, si));
                let alone = stopped.say(Quantity::Travel, apart);
                if by / STANDARD_IN_95 > apart / place_within + NOT_THE_PLACE {
                    format!(
                        "to stand at {needed}, seen at {seen}: {alone} off; and by drawing and loads it would have stood elsewhere: in all {}",
                        off(by)
                    )
                } else {
                    format!(
                        "to stand at {needed} and not before, seen at {seen}: {alone} off, {}",
                        off(by)
                    )
                }
            }
        },
        ReadingFit::Pressure {
            asked,
            seen,
            off: by,
        } => read("gauge", Quantity::Pressure, [asked, seen], by),
        ReadingFit::Voltage {
            asked,
            seen,
            off: by,
        } => read("battery", Quantity::Voltage, [asked, seen], by),
        ReadingFit::Pump { asked, seen, .. } => {
            let word = |runs| if runs { "runs on" } else { "stops" };
            let agrees = if asked == seen { "agrees" } else { "disagrees" };
            let seen = if seen { "ran on" } else { "had stopped" };
            format!("{} {}, {seen}: {agrees}", stopped.driver(), word(asked))
        }
    }
}

/// So much more than the place itself is off, in its ±, is told to be something else's (ratio).
const NOT_THE_PLACE: f64 = 0.25;

/// Standard uncertainties in the half-width that holds 95 % of a normal distribution (ratio).
const STANDARD_IN_95: f64 = 1.96;

/// Where the leg stood, and how far the numbers carry.
#[must_use]
pub fn stop_lead(stopped: &Stopped, found: &StopExplained) -> String {
    let lead = capital_first(&format!(
        "{} stood at {} of travel, to within {}.",
        stopped.the_leg(),
        stopped.say(Quantity::Travel, found.place.travel),
        stopped.say(Quantity::Travel, found.travel_within)
    ));
    let doubts = impossible(stopped, found);
    let left = found
        .explanations
        .iter()
        .filter(|one| one.fit != Fit::RuledOut)
        .count();
    let end = match (left, found.told_apart) {
        (0, _) => {
            "None of the explanations weighed here fits: look at the file's figures and at the readings again."
        }
        (1, _) => "One explanation is left of those weighed here.",
        (_, true) => {
            "The first explanation fits best of those weighed here; the others that are not ruled out stay possible."
        }
        (_, false) => "What was seen does not tell the first explanations apart.",
    };
    format!("{lead}{doubts} {end}")
}

/// Readings that the source of the file can't give.
fn impossible(stopped: &Stopped, found: &StopExplained) -> String {
    let mut said = String::new();
    let Some(seen) = stopped.model().and_then(|leg| leg.seen_stop.as_ref()) else {
        return said;
    };
    let above = |read: f64, within: f64, most: f64| read > most * ABOVE + within;
    if let (Some(read), Demand::Pressure(most)) = (seen.pressure, found.makes)
        && above(read, seen.pressure_within, most)
    {
        said.push_str(&format!(
            " The gauge read {}, and by the file the source makes no more than {}: check the gauge, its unit, and the file.",
            stopped.say(Quantity::Pressure, read),
            stopped.say(Quantity::Pressure, most)
        ));
    }
    if let (Some(read), Some(most)) = (seen.voltage, found.rest_voltage)
        && above(read, seen.voltage_within, most)
    {
        said.push_str(&format!(
            " The battery read {}, and by the file its resting voltage is {}: check the meter, whether a charger was on, and the file.",
            stopped.say(Quantity::Voltage, read),
            stopped.say(Quantity::Voltage, most)
        ));
    }
    said
}

/// A reading so many times what there can be is not believed (ratio).
const ABOVE: f64 = 1.1;

/// Each thing seen against what an explanation needs.
#[must_use]
pub fn readings_words(stopped: &Stopped, whole: &StopExplained, one: &Explanation) -> Vec<String> {
    let readings = one.readings.iter();
    let within = whole.travel_within;
    let mut found: Vec<String> = readings
        .map(|r| reading_words(stopped, r, within))
        .collect();
    let seen = stopped.model().and_then(|leg| leg.seen_stop.as_ref());
    let looked = seen.is_some_and(|seen| {
        seen.pump != PumpSeen::NotNoticed || seen.pressure.is_some() || seen.voltage.is_some()
    });
    if one.may_trip && looked && one.fit != Fit::RuledOut {
        let stopped = seen.is_some_and(|seen| seen.pump == PumpSeen::Stopped);
        found.push(
            if stopped {
                "passes the breaker's rating: with the breaker tripped, of which the gauge tells nothing"
            } else {
                "passes the breaker's rating: if it tripped, pump, gauge and volts tell nothing"
            }
            .to_owned(),
        );
    }
    found
}

/// The next check and what it tells; explanations go by their number in the order, from 1.
#[must_use]
pub fn check_sentence(stopped: &Stopped, next: &NextCheck) -> String {
    let what = match next.check {
        Check::PumpRuns => "listen whether the pump or motor runs on while the leg stands",
        Check::Breaker => "look whether the breaker of the pump or motor has tripped",
        Check::Contact => {
            "with the leg held where it stands and the power off, look from clear of its arc, with a lamp, whether anything touches"
        }
        Check::StrutLength => {
            "with the leg held and the power off, measure by how much the strut falls short of its full shortening"
        }
        Check::RestVolts => {
            "with everything off, read the voltage at the battery's posts after it has rested"
        }
        Check::Gauge => {
            "with everybody clear, and for a second or two only, read the gauge at the manifold while the leg stands under power"
        }
        Check::CutOut => {
            "with everybody clear, select again and read the gauge at the instant at which the pump cuts out"
        }
        Check::Posts => {
            "with everybody clear, and for a second or two only, read the voltage at the battery's posts while the leg stands under power"
        }
        Check::MotorVolts => {
            "with everybody clear, and for a second or two only, read the voltage at the motor while the leg stands under power"
        }
        Check::EndSwitch => {
            "with the power off, try with a meter whether the leg's limit switch is closed"
        }
        Check::FullBattery => {
            "swing again on a full battery or ground power and see whether it goes on"
        }
        Check::StrokeLeft => {
            "with the leg held where it stands, so that it can't fall as the pressure is let down, measure how much stroke the actuator has left"
        }
        Check::ByHand => {
            "with the leg's weight held, the pressure let down and the actuator taken off the leg, swing it by hand past the place and feel whether it drags"
        }
        Check::DragsAll => {
            "with the leg's weight held, the pressure let down and the actuator taken off the leg, swing it by hand over its whole way and feel whether it drags all along (yes) or at this place alone (no)"
        }
    };
    let finds = |finds: Finds| match finds {
        Finds::Yes => "a yes".to_owned(),
        Finds::No => "a no".to_owned(),
        Finds::Pressure(si) => format!("about {}", stopped.say(Quantity::Pressure, si)),
        Finds::Voltage(si) => format!("about {}", stopped.say(Quantity::Voltage, si)),
        Finds::Length(si) => format!("about {}", stopped.say(Quantity::Length, si)),
    };
    format!(
        "Next, {what}: {} speaks for no. 1, {} for no. {}.",
        finds(next.if_first),
        finds(next.if_second),
        next.second.saturating_add(1)
    )
}

/// Why nothing can be explained.
#[must_use]
pub fn stop_error_text(stopped: &Stopped, error: &StopError) -> String {
    let length = |si: f64| stopped.say(Quantity::Length, si);
    let travel = |si: f64| stopped.say(Quantity::Travel, si);
    match error {
        StopError::Faults(faults) => {
            // Those of the leg stand with the leg.
            let own = faults.0.iter().filter(|f| f.path.contains("seen_stop"));
            let texts: Vec<String> = own
                .map(|fault| fault_text(fault, stopped.gear, stopped.units))
                .collect();
            if texts.is_empty() {
                "Nothing is explained: the data have faults.".to_owned()
            } else {
                format!("Nothing is explained. {}", texts.join(" "))
            }
        }
        StopError::NothingSeen => "No stop was entered for this leg.".to_owned(),
        StopError::SharedDrive => format!(
            "Nothing is explained: {} shares its drive with another leg, and what stops either stops both. Uncouple them, each on its own, and see which one stops.",
            stopped.the_leg()
        ),
        StopError::HowFarNotEntered => format!(
            "Nothing is explained yet: enter how far {} came.",
            stopped.the_leg()
        ),
        StopError::NotOnTheWay {
            seen,
            nearest,
            travel: at,
        } => format!(
            "Nowhere on its way does {} have {}; the nearest is {} at {} of travel. Measure again, or check what it is measured from.",
            stopped.the_leg(),
            length(*seen),
            length(*nearest),
            travel(*at)
        ),
        StopError::BeyondSwing { seen, swing } => format!(
            "{} is beyond the whole swing of {}: measure again.",
            stopped.say(Quantity::Angle, *seen),
            stopped.say(Quantity::Angle, *swing)
        ),
        StopError::SaysNothing { seen } => format!(
            "{} is about the same over much of the way and says nothing of the place: measure from elsewhere.",
            length(*seen)
        ),
        StopError::Ambiguous {
            seen,
            first,
            second,
        } => format!(
            "{} occurs at {} of travel and again at {}: measure from another place.",
            length(*seen),
            travel(*first),
            travel(*second)
        ),
        StopError::NotDriven => {
            "Nothing is explained: the actuator drives this leg nowhere.".to_owned()
        }
        StopError::Source(error) => {
            let timed = Timed {
                gear: stopped.gear,
                units: stopped.units,
            };
            supply_error_text(&timed, error)
        }
        StopError::Clearance { .. } => {
            "Nothing is explained: a clearance near the place could not be worked out. Look at the outlines there."
                .to_owned()
        }
    }
}
