//! Will it lock? The fall without pressure in words.
use gearswing_solver::result::{
    Arrival, Fall, FallAirspeed, FallOutcome, LockKind, Place, Unpowered,
};
use gearswing_units::Quantity;

use super::answer::AnswerText;
use super::{spare, way_down};
use crate::subject::Subject;
use crate::text::capital_first;

const PROVE_ELECTRIC: &str = "On jacks, let the leg down by the emergency procedure, without power, several times: each time it must lock by itself. Keep clear: nothing stops it on its way.";
const PROVE: &str = "On jacks, let the leg down by the emergency procedure, without pressure, several times: each time it must lock by itself. Keep clear: nothing stops it on its way.";
const HELP: &str = "Look for what holds it back or should help it: tight pins, dragging seals, a restrictor too small, a weak or missing down spring. What the maker gives for it wins. If the airplane has another way down without its normal power (hand pump, bottle, crank), say so at the supply, and prove it on jacks.";

/// Places this near to each other are one (ratio).
const NEAR: f64 = 5e-3;

const SLOW_DOWN: &str = "Slow down before the emergency procedure, as the maker's data say; if they give no airspeed, ask for it.";

/// Adds what the fall says to an answer about the lock.
pub(super) fn append(subject: &Subject, said: &mut AnswerText) {
    let Some(fall) = &subject.result.fall else {
        said.sentence.push_str(
            " Whether it comes down to its lock without its normal power is not shown: its way is not worked out to up.",
        );
        return;
    };
    said.sentence.push_str(&way_down::sentence(subject));
    said.sentence.push(' ');
    said.sentence.push_str(&sentence(subject, fall));
    said.sentence.push_str(&spare::sentence(subject, fall));
    if fall.at_gear_speed == Some(false) {
        said.try_next.push(SLOW_DOWN.to_owned());
    }
    said.try_next.extend(spare::measure(subject));
    said.try_next.extend(way_down::look(subject));
    if !fall.reaches_lock() || fall.by_speed_alone() || spare::is_small(fall) {
        said.try_next.push(HELP.to_owned());
    }
    let prove = match fall.actuator {
        Unpowered::Fluid => PROVE,
        Unpowered::DrivenBack | Unpowered::Released => PROVE_ELECTRIC,
    };
    said.try_next.push(prove.to_owned());
}

/// How the actuator is while the leg falls, to begin a sentence.
fn without(fall: &Fall) -> &'static str {
    match fall.actuator {
        Unpowered::Fluid => "Without pressure",
        Unpowered::DrivenBack => "Without power, driving its actuator back,",
        Unpowered::Released => "With its actuator released",
    }
}

/// The fall in one to three short sentences.
fn sentence(subject: &Subject, fall: &Fall) -> String {
    let text = outcome(subject, fall);
    match fall.actuator {
        Unpowered::Fluid | Unpowered::DrivenBack => text,
        Unpowered::Released => format!(
            "{text} Whether its actuator lets it fall without power is not known: put in what drives it back, or find how it is released."
        ),
    }
}

fn outcome(subject: &Subject, fall: &Fall) -> String {
    let without = without(fall);
    match &fall.outcome {
        FallOutcome::ReachesLock(arrival) => reaches(subject, fall, arrival),
        FallOutcome::StopsShort { place, .. } => format!(
            "{without} it does not free-fall to {}: it hangs {}.{}{}",
            to_its_lock(subject),
            subject.at(place),
            spare(subject, fall, Some(place)),
            slower(subject, fall)
        ),
        FallOutcome::StaysUp => format!(
            "{without} it does not start down on its own: {}.{}",
            fall.moment_at_up.map_or_else(
                || "its pins bind, so that what pushes it on holds it as well".to_owned(),
                |left| format!(
                    "{} is missing about the trunnion",
                    subject.say(Quantity::Moment, -left)
                ),
            ),
            slower(subject, fall)
        ),
        FallOutcome::Creeps { place, time } => format!(
            "{without} it is not {} after {}: it is still {}.{}",
            to_its_lock(subject),
            subject.say(Quantity::Time, *time),
            subject.at(place),
            slower(subject, fall)
        ),
        FallOutcome::NotFollowed { place, time } => format!(
            "{without} its motion could not be worked out beyond {} ({}): whether it free-falls to {} is not known.",
            subject.say(Quantity::Time, *time),
            subject.at(place),
            to_its_lock(subject)
        ),
    }
}

/// Up to which airspeed a leg that does not come down as set does.
fn slower(subject: &Subject, fall: &Fall) -> String {
    match fall.airspeed {
        FallAirspeed::UpTo { airspeed } => format!(
            " It does up to {}, all else as set.",
            subject.say(Quantity::Speed, airspeed)
        ),
        _ => String::new(),
    }
}

/// Only an over-center knee is a lock that the fall can show.
fn to_its_lock(subject: &Subject) -> &'static str {
    match subject.result.lock.kind {
        LockKind::OverCentre => "down and locked",
        LockKind::FoldsOn | LockKind::SlidingBrace | LockKind::NoBrace => "down",
    }
}

fn reaches(subject: &Subject, fall: &Fall, arrival: &Arrival) -> String {
    let limit = match fall.airspeed {
        FallAirspeed::UpTo { airspeed } => {
            let limit = subject.say(Quantity::Speed, airspeed);
            match subject.gear.conditions.gear_speed {
                Some(speed) if fall.at_gear_speed == Some(false) => format!(
                    ", but only up to {limit}: not at the {} at which the gear is moved",
                    subject.say(Quantity::Speed, speed)
                ),
                _ => format!(", up to {limit}"),
            }
        }
        FallAirspeed::NoAirLoad | FallAirspeed::NotInStillAir | FallAirspeed::AtEvery { .. } => {
            String::new()
        }
    };
    format!(
        "{} it free-falls to {} in {}{limit}.{}",
        without(fall),
        to_its_lock(subject),
        subject.say(Quantity::Time, arrival.time),
        spare(subject, fall, None)
    )
}

/// The least push on the way, and where; for a leg that comes to `rest` what it lacks further on,
/// else with what its speed makes up for.
fn spare(subject: &Subject, fall: &Fall, rest: Option<&Place>) -> String {
    let missing = |size: String, at: &Place, what: &str| {
        let place = subject.at(at);
        match rest {
            Some(rest) if at.progress < rest.progress - NEAR => {
                format!(" Most is missing further on: {size} {what}, {place}.")
            }
            Some(_) => format!(" {}, {size} is missing {what}.", capital_first(&place)),
            None => format!(
                " {}, {size} is missing {what}: only its speed carries it on, and slowed or stopped there it stays short of the lock.",
                capital_first(&place)
            ),
        }
    };
    let moment = fall.least_moment.filter(|least| least.moment < 0.0);
    let push = fall.least_knee_push.filter(|least| least.push < 0.0);
    // a leg that has come to rest far from the straight knee rests for want of a moment
    let push = push.filter(|_| rest.is_none() || moment.is_none());
    match (moment.or(fall.least_moment), push) {
        (_, Some(least)) => missing(
            subject.say(Quantity::Force, -least.push),
            &least.place,
            "at the nearly straight knee",
        ),
        (Some(least), _) if least.moment < 0.0 => missing(
            subject.say(Quantity::Moment, -least.moment),
            &least.place,
            "about the trunnion",
        ),
        (Some(least), _) => format!(
            " The least moment left on the way is {}, {}.",
            subject.say(Quantity::Moment, least.moment),
            subject.at(&least.place)
        ),
        (None, _) => String::new(),
    }
}

#[cfg(test)]
mod tests {
    use std::fmt::Write as _;

    use gearswing_solver::result::{Assumption, Phase};
    use gearswing_units::UnitChoice;

    use super::*;
    use crate::finding_text;
    use crate::sample::{full_gear, place, result, subject};

    const METRIC: UnitChoice = UnitChoice::METRIC;

    #[test]
    fn every_fall_sentence() {
        let (gear, base) = (full_gear(), result());
        let rest = Place {
            phase: Phase::Swing,
            ..place(0.052)
        };
        let mut lines = String::new();
        for (outcome, moment, push, kind) in [
            (None, Some(8.4), 5.2, LockKind::OverCentre),
            (None, Some(-8.4), 5.2, LockKind::NoBrace),
            (None, Some(-8.4), -5.2, LockKind::OverCentre),
            (
                Some(FallOutcome::StaysUp),
                Some(-20.0),
                5.2,
                LockKind::OverCentre,
            ),
            (Some(FallOutcome::StaysUp), None, 5.2, LockKind::OverCentre),
            (
                Some(FallOutcome::StopsShort {
                    place: rest,
                    time: 1.2,
                }),
                Some(-8.4),
                5.2,
                LockKind::OverCentre,
            ),
            (
                Some(FallOutcome::Creeps {
                    place: rest,
                    time: 60.0,
                }),
                Some(8.4),
                5.2,
                LockKind::SlidingBrace,
            ),
            (
                Some(FallOutcome::NotFollowed {
                    place: rest,
                    time: 3.0,
                }),
                Some(8.4),
                5.2,
                LockKind::OverCentre,
            ),
        ] {
            let mut result = base.clone();
            result.lock.kind = kind;
            let fall = result.fall.as_mut().unwrap();
            fall.airspeed = FallAirspeed::NoAirLoad;
            fall.moment_at_up = moment;
            if let Some(moment) = moment {
                fall.least_moment.as_mut().unwrap().moment = moment;
            }
            fall.least_knee_push.as_mut().unwrap().push = push;
            if let Some(outcome) = outcome {
                fall.outcome = outcome;
            }
            let subject = subject(&gear, &result, METRIC);
            let text = finding_text(&subject, &result.findings[2]).sentence;
            let (_, falls) = text.split_once("Without pressure").unwrap();
            let _ = writeln!(lines, "Without pressure{falls}");
        }
        insta::assert_snapshot!(lines);
    }

    /// A limit below the speed at which the gear is moved, a knee that the air takes off its stop, and a
    /// switch that tells of a lock too early are said.
    #[test]
    fn what_the_air_and_the_switch_do() {
        let (mut gear, mut result) = (full_gear(), result());
        gear.conditions.gear_speed = Some(45.0);
        gear.conditions.load_factor = 2.0;
        gear.legs[0].drive.switches.down = 0.03;
        result.lock.knee_push_at_gear_speed = Some(-12.0);
        result.lock.over_centre_less_play = Some(0.0003);
        let fall = result.fall.as_mut().unwrap();
        fall.airspeed = FallAirspeed::UpTo { airspeed: 31.0 };
        fall.at_gear_speed = Some(false);
        let subject = subject(&gear, &result, METRIC);
        let mut finding = result.findings[2].clone();
        finding.assumptions = vec![Assumption::FallWithoutPressure];
        let text = finding_text(&subject, &finding);
        let governs = text.governs.iter().map(|g| g.text.as_str());
        let all: Vec<&str> = std::iter::once(text.sentence.as_str())
            .chain(governs)
            .chain(text.try_next.iter().map(String::as_str))
            .collect();
        insta::assert_snapshot!(all.join("\n"));
    }
}
