//! Can it be driven? Pressure and dead points in words.
use gearswing_solver::model::{AttachTo, Joint, Source};
use gearswing_solver::result::{
    CaseOutcome, DrivenBy, Finding, LoadCase, Motion, SetBy, Stroke, Verdict,
};
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
    let force = &subject.result.force;
    let say = |si| subject.say(subject.drive(), si);
    let share = |si: f64| subject.say(Quantity::Travel, si);
    let peak = force.peak.as_ref();
    let place = peak.map_or_else(String::new, |peak| format!(", {}", subject.at(&peak.place)));
    let work = match force.stroke {
        Stroke::Push => "pushing",
        Stroke::Pull => "pulling",
    };
    let needs = format!(
        "{} actuator, {work}, needs {} at the worst{place}",
        subject.the_legs(),
        say(pressure.needed)
    );
    let wanted = subject.gear.supply.margin_wanted;
    let available = available(subject, say(pressure.available));
    let left = share(pressure.margin);
    let balance = match Verdict::of_margin(pressure.margin, wanted) {
        Verdict::Bad => {
            let stall = force.stalls_at.map_or_else(String::new, |at| {
                format!(" The leg stalls {}.", subject.at(&at))
            });
            let lack = say(pressure.needed - pressure.available);
            format!("; {available}, {lack} too little.{stall}")
        }
        Verdict::Marginal => format!(
            "; {available}, so {left} is left where {} is asked for.",
            share(wanted)
        ),
        Verdict::Good | Verdict::NotShown => format!("; {available}, so {left} is left."),
    };
    let load = format!(
        " The actuator mount carries {} there.",
        subject.say(Quantity::Force, pressure.mount_load)
    );
    let (hardest, needed) = hardest_case(subject, pressure);
    let try_next = match finding.verdict {
        Verdict::Good | Verdict::NotShown => vec![prove(force.driven_by).to_owned()],
        Verdict::Marginal | Verdict::Bad => more_force(subject, pressure, needed, wanted),
    };
    Said {
        sentence: format!(
            "{needs}{balance}{load}{}{}{hardest}",
            extending(subject),
            among_all(subject)
        ),
        try_next,
    }
}

/// What there is, and what sets it.
fn available(subject: &Subject, amount: String) -> String {
    let force = &subject.result.force;
    match (
        force.driven_by,
        force.available_set_by,
        subject.gear.supply.source,
    ) {
        (DrivenBy::Electricity, ..) => {
            format!("it makes {amount} at most with the battery to itself")
        }
        (_, SetBy::File, _) => format!("{amount} is available"),
        (_, SetBy::Source, Source::MotorPump(_)) => {
            format!("pump, battery and relief valve make {amount} at most")
        }
        (_, SetBy::Source, _) => format!("the source makes {amount} at most"),
    }
}

/// What is left of it while the actuators of the other legs take their share of the battery.
fn among_all(subject: &Subject) -> String {
    let force = &subject.result.force;
    match force.available_among_all {
        Some(makes) if force.stalls_among_all() => format!(
            " While the other legs stand stalled as well it makes no more than {}.",
            subject.say(Quantity::Force, makes)
        ),
        _ => String::new(),
    }
}

fn prove(by: DrivenBy) -> &'static str {
    match by {
        DrivenBy::Fluid => {
            "Prove it on jacks with a gauge in the line: the highest reading of a slow swing should come near this figure."
        }
        DrivenBy::Electricity => {
            "Prove it on jacks, on the weakest battery that is to do: it must come all the way up without slowing to a halt."
        }
    }
}

fn more_force(subject: &Subject, pressure: &Pressure, needed: f64, wanted: f64) -> Vec<String> {
    let force = &subject.result.force;
    let fluid = force.driven_by == DrivenBy::Fluid;
    let first = if fluid {
        "Read the pressure with a gauge at the actuator while it is held: a tired pump or relief valve gives less than its plate says."
    } else {
        "Read the volts at the actuator while it works: a tired battery or thin wires leave it less than its plate says."
    };
    let mut steps = vec![
        first.to_owned(),
        "Move the actuator's mount or attach point so that it has more arm at this place."
            .to_owned(),
    ];
    // Area grows as the pressure it saves, seal friction and weights unchanged.
    let more = needed / (pressure.available * (1.0 - wanted)) - 1.0;
    if fluid && more.is_finite() && more > 0.0 {
        let side = match force.stroke {
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

/// What the load cases add to the one as set: one in which pins bind, else the one that asks for more;
/// and the most that is needed.
fn hardest_case(subject: &Subject, pressure: &Pressure) -> (String, f64) {
    let force = &subject.result.force;
    let others = || {
        force
            .cases
            .iter()
            .filter(|case| case.case != LoadCase::AsSet)
    };
    for case in others() {
        if let CaseOutcome::Worked {
            binds_at: Some(place),
            ..
        } = case.outcome
        {
            let text = format!(
                " In the load case {} the pins bind {}.",
                case_words(case.case),
                subject.at(&place)
            );
            return (text, pressure.needed);
        }
    }
    let hardest = force.hardest_case.and_then(|at| force.cases.get(at));
    let Some((case, (motion, peak))) = hardest.and_then(|case| Some((case, case.hardest()?)))
    else {
        return (String::new(), pressure.needed);
    };
    if case.case == LoadCase::AsSet || peak.pressure <= pressure.needed * 1.001 {
        return (String::new(), pressure.needed);
    }
    let stalls = match case.outcome {
        CaseOutcome::Worked { stalls_at, .. } => stalls_at,
        CaseOutcome::Missing { .. } => None,
    };
    let left = match stalls.filter(|_| motion == Motion::Retract) {
        Some(place) => format!(": too much, the leg stalls {}", subject.at(&place)),
        None => left_over(subject, peak.margin),
    };
    let text = format!(
        " Of the load cases compared the hardest is {}, which needs {}{}{left}.",
        case_words(case.case),
        subject.say(subject.drive(), peak.pressure),
        if motion == Motion::Extend {
            " to extend"
        } else {
            ""
        }
    );
    (text, peak.pressure)
}

fn left_over(subject: &Subject, margin: f64) -> String {
    if margin < 0.0 {
        ": too much".to_owned()
    } else {
        format!(" and leaves {}", subject.say(Quantity::Travel, margin))
    }
}

/// What it takes to extend, where that leaves too little.
fn extending(subject: &Subject) -> String {
    let wanted = subject.gear.supply.margin_wanted;
    let peak = subject.result.force.extend_peak.as_ref();
    peak.filter(|peak| peak.margin < wanted)
        .map_or_else(String::new, |peak| {
            format!(
                " To extend it needs {} {}{}.",
                subject.say(subject.drive(), peak.pressure),
                subject.at(&peak.place),
                left_over(subject, peak.margin)
            )
        })
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

pub(super) fn strut_jack(subject: &Subject, needed: f64, most: f64) -> Said {
    let say = |si| subject.say(Quantity::Pressure, si);
    Said::new(
        format!(
            "The jack of {} strut needs {}; {}.",
            subject.the_legs(),
            say(needed),
            available(subject, say(most))
        ),
        [
            "Read the gauge while the strut moves, and check the jack's figures against its maker's data.",
        ],
    )
}

pub(super) fn stage_valve(subject: &Subject, opens: f64, most: f64) -> Said {
    let say = |si| subject.say(Quantity::Pressure, si);
    Said::new(
        format!(
            "The valve that holds {} swing until its strut is short opens at {}; {}.",
            subject.the_legs(),
            say(opens),
            available(subject, say(most))
        ),
        ["Check the figure of the valve against its maker's data before changing either."],
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
