//! Can it be driven? Pressure and dead points in words.
use gearswing_solver::model::{AttachTo, Joint};
use gearswing_solver::result::{Finding, LoadCase, Motion, Stroke, Verdict};
use gearswing_units::Quantity;

use super::answer::Said;
use crate::cases::{case_words, joint_words, motion_words};
use crate::subject::Subject;

/// Numbers of the pressure answer.
pub(super) struct Pressure {
    pub(super) needed: f64,
    pub(super) available: f64,
    pub(super) margin: f64,
    pub(super) mount_load: f64,
}

pub(super) fn pressure(subject: &Subject, finding: &Finding, pressure: &Pressure) -> Said {
    let say = |si| subject.say(Quantity::Pressure, si);
    let share = |si: f64| subject.say(Quantity::Travel, si);
    let place = subject
        .result
        .force
        .peak
        .as_ref()
        .map_or_else(String::new, |peak| format!(", {}", subject.at(&peak.place)));
    let work = match subject.result.force.stroke {
        Stroke::Push => "pushing",
        Stroke::Pull => "pulling",
    };
    let needs = format!(
        "{} actuator, {work}, needs {} at the worst{place}",
        subject.the_legs(),
        say(pressure.needed)
    );
    let wanted = subject.gear.supply.margin_wanted;
    let balance = match finding.verdict {
        Verdict::Bad => {
            let stall = subject
                .result
                .force
                .stalls_at
                .map_or_else(String::new, |at| {
                    format!(" The leg stalls {}.", subject.at(&at))
                });
            format!(
                ": {} more than the {} available.{stall}",
                say(pressure.needed - pressure.available),
                say(pressure.available)
            )
        }
        Verdict::Marginal => format!(
            "; {} is available, so {} is left where {} is asked for.",
            say(pressure.available),
            share(pressure.margin),
            share(wanted)
        ),
        Verdict::Good | Verdict::NotShown => format!(
            "; {} is available, so {} is left.",
            say(pressure.available),
            share(pressure.margin)
        ),
    };
    let load = format!(
        " The actuator mount carries {} there.",
        subject.say(Quantity::Force, pressure.mount_load)
    );
    let try_next = match finding.verdict {
        Verdict::Good | Verdict::NotShown => vec![
            "Prove it on jacks with a gauge in the line: the highest reading of a slow swing should come near this figure."
                .to_owned(),
        ],
        Verdict::Marginal | Verdict::Bad => more_force(subject, pressure, wanted),
    };
    let hardest = hardest_case(subject, pressure);
    Said {
        sentence: format!("{needs}{balance}{load}{hardest}"),
        try_next,
    }
}

fn more_force(subject: &Subject, pressure: &Pressure, wanted: f64) -> Vec<String> {
    let mut steps = vec![
        "Read the pressure with a gauge at the actuator while it is held: a tired pump or relief valve gives less than its plate says."
            .to_owned(),
        "Move the actuator's mount or attach point so that it has more arm at this place."
            .to_owned(),
    ];
    // Area grows as the pressure it saves, seal friction and weights unchanged.
    let more = pressure.needed / (pressure.available * (1.0 - wanted)) - 1.0;
    if more.is_finite() && more > 0.0 {
        let side = match subject.result.force.stroke {
            Stroke::Push => "piston area",
            Stroke::Pull => "piston area on the rod side",
        };
        steps.push(format!(
            "Or about {} more {side}: a larger bore, which also takes more oil and time.",
            subject.say(Quantity::Travel, more)
        ));
    }
    steps.push("Check for drag in pins and brace before changing any part.".to_owned());
    steps
}

/// The load case that asks for more than the one as set, if one does.
fn hardest_case(subject: &Subject, pressure: &Pressure) -> String {
    let force = &subject.result.force;
    let Some(case) = force.hardest_case.and_then(|at| force.cases.get(at)) else {
        return String::new();
    };
    match case.pressure() {
        Some(needed) if case.case != LoadCase::AsSet && needed > pressure.needed * 1.001 => {
            format!(
                " Of the load cases compared the hardest is {}, which needs {}.",
                case_words(case.case),
                subject.say(Quantity::Pressure, needed)
            )
        }
        _ => String::new(),
    }
}

/// Where a finding holds, with a blank before it; empty where it has no place.
fn behind(subject: &Subject, finding: &Finding) -> String {
    let place = finding.place.as_ref();
    place.map_or_else(String::new, |place| format!(" {}", subject.at(place)))
}

pub(super) fn binds(subject: &Subject, finding: &Finding, joint: Joint, motion: Motion) -> Said {
    let place = behind(subject, finding);
    Said::new(
        format!(
            "{} pins bind{place} while {}: friction there, most of it at the {}, grows faster than the thrust, so no pressure moves the leg.",
            subject.the_legs(),
            motion_words(motion),
            joint_words(joint)
        ),
        [
            "Check radius and friction of that pin: a dry or tight bush can bind where a greased one moves.",
            "Move the actuator's mount or attach point so that it has more arm at this place.",
        ],
    )
}

pub(super) fn dead_point(subject: &Subject, finding: &Finding) -> Said {
    let place = behind(subject, finding);
    Said::new(
        format!(
            "{} actuator loses its arm{place}: no thrust moves the leg there.",
            subject.the_legs()
        ),
        [
            "Move the actuator's mount or attach point so that its line stays clear of the pivot all the way.",
        ],
    )
}

pub(super) fn cannot_unlock(subject: &Subject) -> Said {
    let on_leg = subject
        .model()
        .is_some_and(|leg| leg.actuator.attach_to == AttachTo::Leg);
    let why = if on_leg {
        "it works on the leg, and a locked knee does not give way to the leg"
    } else {
        "pressed to retract, it drives the knee further into its lock"
    };
    Said::new(
        format!(
            "{} actuator can't bring the knee back through the straight line: {why}.",
            subject.the_legs()
        ),
        [
            "Say so if a device of its own unlocks the knee (unlock jack, hook, cable).",
            "Or let the actuator work on a brace link, so that it pulls the knee through first.",
        ],
    )
}
