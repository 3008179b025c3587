//! Will it lock? The fall without pressure in words.
use gearswing_solver::result::{Arrival, Fall, FallAirspeed, FallOutcome, LockKind, Place};
use gearswing_units::Quantity;

use super::answer::Said;
use crate::subject::Subject;
use crate::text::capital_first;

const PROVE: &str = "On jacks, let the leg down by the emergency procedure, without pressure, several times: each time it must lock by itself. Keep clear, it comes down fast.";
const HELP: &str = "Look for what holds it back or should help it: tight pins, dragging seals, a restrictor too small, a weak or missing down spring. What the maker gives for it wins.";

/// Adds what the fall says to an answer about the lock.
pub(super) fn append(subject: &Subject, said: &mut Said) {
    let Some(fall) = &subject.result.fall else {
        return;
    };
    said.sentence.push(' ');
    said.sentence.push_str(&sentence(subject, fall));
    if !matches!(fall.outcome, FallOutcome::ReachesLock(_)) || fall.by_speed_alone() {
        said.try_next.push(HELP.to_owned());
    }
    said.try_next.push(PROVE.to_owned());
}

/// The fall in one to three short sentences.
fn sentence(subject: &Subject, fall: &Fall) -> String {
    match &fall.outcome {
        FallOutcome::ReachesLock(arrival) => reaches(subject, fall, arrival),
        FallOutcome::StopsShort { place, .. } => format!(
            "Without pressure it does not come down{} by itself: it comes to rest {}.{}",
            to_its_lock(subject),
            subject.at(place),
            spare(subject, fall, false)
        ),
        FallOutcome::StaysUp => format!(
            "Without pressure it does not leave up by itself: {} is missing about the trunnion.",
            subject.say(Quantity::Moment, -fall.moment_at_up)
        ),
        FallOutcome::Creeps { place, time } => format!(
            "Without pressure it has not come down{} after {}: it is still {}.",
            to_its_lock(subject),
            subject.say(Quantity::Time, *time),
            subject.at(place)
        ),
        FallOutcome::NotFollowed { place, time } => format!(
            "Without pressure its motion could not be worked out beyond {} ({}): whether it comes down{} is not known.",
            subject.say(Quantity::Time, *time),
            subject.at(place),
            to_its_lock(subject)
        ),
    }
}

/// Only an over-centre knee is a lock that the fall can show.
fn to_its_lock(subject: &Subject) -> &'static str {
    match subject.result.lock.kind {
        LockKind::OverCentre => " to its lock",
        LockKind::FoldsOn | LockKind::SlidingBrace | LockKind::NoBrace => "",
    }
}

fn reaches(subject: &Subject, fall: &Fall, arrival: &Arrival) -> String {
    let limit = match fall.airspeed {
        FallAirspeed::UpTo { airspeed } => {
            format!(", up to {}", subject.say(Quantity::Speed, airspeed))
        }
        FallAirspeed::NoAirLoad | FallAirspeed::NotInStillAir | FallAirspeed::AtEvery { .. } => {
            String::new()
        }
    };
    format!(
        "Without pressure it comes down{} by itself in {}{limit}.{}",
        to_its_lock(subject),
        subject.say(Quantity::Time, arrival.time),
        spare(subject, fall, true)
    )
}

/// The least push on the way, and where; `carried` where speed made up for what is missing.
fn spare(subject: &Subject, fall: &Fall, carried: bool) -> String {
    let missing = |size: String, at: &Place, what: &str| {
        let by_speed = if carried {
            ": only its speed carries it on, and slowed or stopped there it stays short of the lock"
        } else {
            ""
        };
        format!(
            " {}, {size} is missing {what}{by_speed}.",
            capital_first(&subject.at(at))
        )
    };
    match (&fall.least_moment, &fall.least_knee_push) {
        (_, Some(least)) if least.push < 0.0 => missing(
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

    use gearswing_solver::result::Phase;
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
            (None, 8.4, 5.2, LockKind::OverCentre),
            (None, -8.4, 5.2, LockKind::NoBrace),
            (None, -8.4, -5.2, LockKind::OverCentre),
            (Some(FallOutcome::StaysUp), -20.0, 5.2, LockKind::OverCentre),
            (
                Some(FallOutcome::StopsShort {
                    place: rest,
                    time: 1.2,
                }),
                -8.4,
                5.2,
                LockKind::OverCentre,
            ),
            (
                Some(FallOutcome::Creeps {
                    place: rest,
                    time: 60.0,
                }),
                8.4,
                5.2,
                LockKind::SlidingBrace,
            ),
            (
                Some(FallOutcome::NotFollowed {
                    place: rest,
                    time: 3.0,
                }),
                8.4,
                5.2,
                LockKind::OverCentre,
            ),
        ] {
            let mut result = base.clone();
            result.lock.kind = kind;
            let fall = result.fall.as_mut().unwrap();
            fall.airspeed = FallAirspeed::NoAirLoad;
            fall.moment_at_up = moment;
            fall.least_moment.as_mut().unwrap().moment = moment;
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
}
