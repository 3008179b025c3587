//! Will it lock? Knee, telescoping brace or no brace in words.
use std::cmp::Ordering;

use gearswing_solver::{
    LATCH_GAP, LEAST_AFTER_PLAY, LEAST_KNEE_PUSH, LEAST_OVER_CENTRE, PRINTED_OVER_CENTER,
};
use gearswing_units::Quantity;

use super::answer::AnswerText;
use crate::cases::load_name;
use crate::published::{LOCK_BY_HAND, LOCK_PROOFS, OVER_CENTER_PRINTED};
use crate::subject::Subject;

/// Ground load for which the push into the lock is said (N): 100 lb or 100 N in the units chosen.
const ROUND_LOAD: f64 = 100.0;

/// A push at the knee below so many times the least that counts is said to be little (ratio). Our own
/// figure, no source.
const FIRM: f64 = 2.0;

const PUSH_CHECK: &str = "On jacks, push the locked knee by hand in the unlocking direction: it must snap back hard onto its stop.";
const LOCK_SPRING: &str = "Check the lock spring, hook or pressure that holds the knee on its stop in service: by these figures little does.";
const ADJUST: &str = "Set the offset by the maker's figure, half a turn of a rod end at a time, and swing again. Never give up down-lock travel to gain up travel.";
const OTHER_LOCK: &str = "Find the lock that holds this leg (hook, latch, actuator lock) and check it by the maker's data.";

pub(super) fn over_centre(
    subject: &Subject,
    offset: f64,
    ground_into_lock: f64,
    knee_push: f64,
) -> AnswerText {
    let round = round_load(subject);
    let per_load = |share: f64| {
        format!(
            "{} at the knee for each {} on the wheel",
            subject.say(Quantity::Force, round * share.abs()),
            subject.say(Quantity::Force, round)
        )
    };
    let less_play = subject.result.lock.over_centre_less_play;
    let is_slack = less_play.is_some_and(|left| left <= 0.0);
    let little_left = less_play.is_some_and(|left| left < LEAST_AFTER_PLAY);
    let ground = if ground_into_lock > 0.0 && is_slack {
        format!(
            "Only without that play would a load straight up from the ground hold it there ({}).",
            per_load(ground_into_lock)
        )
    } else if ground_into_lock > 0.0 {
        format!(
            "A load straight up from the ground holds it there ({}{}).",
            per_load(ground_into_lock),
            turned_by(subject, ground_into_lock)
        )
    } else if ground_into_lock < 0.0 {
        format!(
            "A load straight up from the ground pushes it out of the lock ({}).",
            per_load(ground_into_lock)
        )
    } else {
        "A load straight up from the ground neither holds it there nor pushes it out.".to_owned()
    };
    let sprung = subject.model().is_some_and(|leg| !leg.springs.is_empty());
    let is_loose = knee_push < LEAST_KNEE_PUSH;
    let weight = if knee_push > 0.0 {
        format!(
            "With the leg hanging, a push of {} at the knee unlocks it{}.",
            subject.say(Quantity::Force, knee_push),
            if is_loose {
                if sprung {
                    ": weight and springs hardly hold it"
                } else {
                    ": its dead weight hardly holds it"
                }
            } else if is_little(knee_push) {
                ", little more than a hand's touch"
            } else {
                ""
            }
        )
    } else {
        format!(
            "With the leg hanging, {} the knee off its stop with {}{}",
            if sprung {
                "weight and springs push"
            } else {
                "its own weight pushes"
            },
            subject.say(Quantity::Force, -knee_push),
            if sprung {
                "."
            } else {
                ": only a lock spring, and none is given, can hold it there."
            }
        )
    };
    let is_small = offset < LEAST_OVER_CENTRE;
    let asked = if is_small {
        format!(
            ", less than {}: manuals of light airplanes print {} to {}",
            subject.length(LEAST_OVER_CENTRE),
            subject.length(PRINTED_OVER_CENTER.0),
            subject.length(PRINTED_OVER_CENTER.1)
        )
    } else {
        String::new()
    };
    let play = match less_play {
        Some(left) if left > 0.0 => format!(
            " Its play may take it back to {} over center{}.",
            subject.size(left),
            if little_left {
                ", too little to count on"
            } else {
                ""
            }
        ),
        Some(_) => " Its play is enough to bring it back to the straight line.".to_owned(),
        None => String::new(),
    };
    let air = in_the_air(subject);
    let good = ground_into_lock > 0.0 && !is_loose && !is_small && !little_left && air.is_empty();
    let steps: &[&str] = if good && is_little(knee_push) {
        &[LOCK_SPRING, PUSH_CHECK, LOCK_PROOFS, LOCK_BY_HAND]
    } else if good {
        &[PUSH_CHECK, LOCK_PROOFS, LOCK_BY_HAND]
    } else {
        &[ADJUST, OTHER_LOCK, PUSH_CHECK, LOCK_PROOFS, LOCK_BY_HAND]
    };
    AnswerText {
        sentence: format!(
            "{} stands {} over center{asked}.{play} {ground} {weight}{air}",
            subject.own("knee"),
            subject.size(offset)
        ),
        try_next: steps.iter().map(|&step| step.to_owned()).collect(),
    }
}

/// Whether a push at the knee (N) counts as holding it, and hardly more.
pub(super) fn is_little(knee_push: f64) -> bool {
    (LEAST_KNEE_PUSH..FIRM * LEAST_KNEE_PUSH).contains(&knee_push)
}

/// A round load in the units chosen (N).
fn round_load(subject: &Subject) -> f64 {
    Quantity::Force.to_si(subject.units, ROUND_LOAD)
}

/// The load at the axle that takes the least to undo what a load straight up does, where it is the smaller
/// of the two.
fn turned_by(subject: &Subject, ground_into_lock: f64) -> String {
    let loads = subject.result.lock.axle_loads.iter();
    let outward = loads.filter(|load| load.effect.into_lock < 0.0);
    let worst = outward.min_by(|a, b| a.effect.into_lock.total_cmp(&b.effect.into_lock));
    let Some(worst) = worst else {
        return String::new();
    };
    let share = ground_into_lock / -worst.effect.into_lock;
    // one that takes more than the ground's own load is none to be told, nor is what is not a number
    if !matches!(share.partial_cmp(&1.0), Some(Ordering::Less)) {
        return String::new();
    }
    format!(
        "; {} of {} at the axle takes as much away",
        subject.say(Quantity::Force, round_load(subject) * share),
        load_name(worst.direction)
    )
}

/// What the air does to a knee that it hardly leaves on its stop.
fn in_the_air(subject: &Subject) -> String {
    let speed = subject.gear.conditions.gear_speed;
    let push = subject.result.lock.knee_push_at_gear_speed;
    match (speed, push) {
        (Some(speed), Some(push)) if push < LEAST_KNEE_PUSH => {
            let speed = subject.say(Quantity::Speed, speed);
            let newtons = subject.say(Quantity::Force, push.abs());
            if push > 0.0 {
                format!(" In the air at {speed} a push of {newtons} unlocks it.")
            } else {
                format!(
                    " In the air at {speed} the air pushes the knee off its stop with {newtons}."
                )
            }
        }
        _ => String::new(),
    }
}

/// Adds what a down-lock switch that closes early tells.
pub(super) fn append_switch(subject: &Subject, said: &mut AnswerText) {
    let set = subject.model().map_or(0.0, |leg| leg.drive.switches.down);
    if set > 0.0 {
        said.sentence.push_str(&format!(
            " Its down-lock switch closes at {} of travel: its light shows down and locked before the lock is engaged.",
            subject.say(Quantity::Travel, set)
        ));
        said.try_next.push(
            "Set the down-lock switch so that only the lock, engaged and on its stop, closes it."
                .to_owned(),
        );
    }
}

pub(super) fn not_over_centre(subject: &Subject, offset: f64) -> AnswerText {
    let stands = if offset == 0.0 {
        "on the straight line".to_owned()
    } else {
        format!("{} short of center", subject.size(offset.abs()))
    };
    AnswerText::new(
        format!(
            "{} stands {stands}: its geometry does not lock it; that something else does is not shown and needs a look at that lock.",
            subject.own("knee")
        ),
        [OTHER_LOCK, ADJUST, OVER_CENTER_PRINTED],
    )
}

pub(super) fn excursion_stopped(subject: &Subject, at_axle: f64, allowed: f64) -> AnswerText {
    AnswerText::new(
        format!(
            "{} can't pass the straight line: at the axle it needs {} of overtravel past down, and the stop allows {}.",
            subject.own("knee"),
            subject.size(at_axle),
            subject.length(allowed)
        ),
        [
            "Measure the overtravel past down again, and where the knee stands when locked.",
            "A smaller over-center offset needs less overtravel: stay within the maker's figure.",
        ],
    )
}

pub(super) fn sliding_brace(subject: &Subject, end_gap: f64) -> AnswerText {
    let stands = if end_gap.abs() < 5e-5 {
        "at its end length".to_owned()
    } else {
        format!("{} from its nearer end length", subject.size(end_gap.abs()))
    };
    // the verdict may be that of the fall, which says nothing of the latch
    let latch = if end_gap > LATCH_GAP {
        "it does not stand where a latch at its end would catch it"
    } else {
        "that its latch holds it is not shown and needs a look at the latch"
    };
    AnswerText::new(
        format!(
            "{} stands {stands} with the gear down: {latch}.",
            subject.own("telescoping brace")
        ),
        [
            "Check latch engagement and its indicator switch by the maker's data, on jacks, without pressure.",
        ],
    )
}

pub(super) fn no_brace(subject: &Subject) -> AnswerText {
    AnswerText::new(
        format!(
            "{} has no brace: its geometry holds nothing; that the actuator or a separate lock holds it is not shown and needs a look at that lock.",
            subject.the_leg()
        ),
        [
            "Find what holds this leg down, and that it is not hydraulic pressure alone (14 CFR 23.729(b), before amendment 23-64, requires other positive means; for amateur-built and older types it is guidance), and check it by the maker's data.",
        ],
    )
}

#[cfg(test)]
mod tests {
    use gearswing_solver::result::{AxleLoad, AxleLoadEffect, AxlePush};
    use gearswing_units::UnitChoice;

    use super::{FIRM, LEAST_KNEE_PUSH, over_centre, turned_by};
    use crate::sample::{full_gear, result, subject};

    /// Forces add (statics): 0.03 N into the lock for a newton up and 0.2 N out of it for a newton sideways
    /// are even at 0.15 N sideways for each newton up.
    #[test]
    fn the_load_that_undoes_the_grounds_is_told() {
        let (gear, mut result) = (full_gear(), result());
        let load = |direction, into_lock| AxleLoad {
            direction,
            effect: AxleLoadEffect { into_lock },
        };
        let mut told = |left: f64, right: f64| {
            result.lock.axle_loads = vec![
                load(AxlePush::SideLeft, left),
                load(AxlePush::SideRight, right),
            ];
            turned_by(&subject(&gear, &result, UnitChoice::METRIC), 0.03)
        };
        assert_eq!(
            told(0.2, -0.2),
            "; 15.0 N of side load to the right at the axle takes as much away"
        );
        assert!(told(-0.2, 0.2).contains("15.0 N of side load to the left"));
        assert_eq!(told(0.2, -0.03), "");
        assert_eq!(told(0.2, 0.1), "");
    }

    #[test]
    fn a_push_near_the_least_is_said_to_be_little() {
        let (gear, result) = (full_gear(), result());
        let subject = subject(&gear, &result, UnitChoice::METRIC);
        let said = |push| over_centre(&subject, 0.003, 0.1, push).sentence;
        let little = "little more than a hand's touch";
        assert!(said(1.01 * LEAST_KNEE_PUSH).contains(little));
        assert!(!said(1.01 * FIRM * LEAST_KNEE_PUSH).contains(little));
        assert!(!said(0.99 * LEAST_KNEE_PUSH).contains(little));
        assert!(said(0.99 * LEAST_KNEE_PUSH).contains("hardly hold"));
    }
}
