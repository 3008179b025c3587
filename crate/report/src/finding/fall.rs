//! Will it lock? The fall without pressure in words.
use gearswing_solver::result::{Arrival, Fall, FallAirspeed, FallOutcome, Place};
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
    if !matches!(fall.outcome, FallOutcome::ReachesLock(_)) {
        said.try_next.push(HELP.to_owned());
    }
    said.try_next.push(PROVE.to_owned());
}

/// The fall in one to three short sentences.
fn sentence(subject: &Subject, fall: &Fall) -> String {
    match &fall.outcome {
        FallOutcome::ReachesLock(arrival) => reaches(subject, fall, arrival),
        FallOutcome::StopsShort { place, .. } => format!(
            "Without pressure it does not come down to its lock by itself: it comes to rest {}.{}",
            subject.at(place),
            spare(subject, fall, false)
        ),
        FallOutcome::StaysUp => format!(
            "Without pressure it does not leave up by itself: {} is missing about the trunnion.",
            subject.say(Quantity::Moment, -fall.moment_at_up)
        ),
        FallOutcome::Creeps { place, time } => format!(
            "Without pressure it has not come down to its lock after {}: it is still {}.",
            subject.say(Quantity::Time, *time),
            subject.at(place)
        ),
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
        "Without pressure it falls to its lock by itself in {}{limit}.{}",
        subject.say(Quantity::Time, arrival.time),
        spare(subject, fall, true)
    )
}

/// The least push on the way, and where; `carried` where speed made up for what is missing.
fn spare(subject: &Subject, fall: &Fall, carried: bool) -> String {
    let missing = |size: String, at: &Place, what: &str| {
        let by_speed = if carried {
            ": only its speed carries it on"
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
