//! Can it be driven? Pressure and dead points in words.
use gearswing_gear::model::{AttachTo, Joint, Source};
use gearswing_solver::result::{
    CaseForce, DrivenBy, Finding, LoadCase, Motion, SetBy, Stroke, Verdict,
};
use gearswing_units::Quantity;

use super::answer::AnswerText;
use crate::cases::{in_case, joint_words, motion_verb, motion_words};
use crate::subject::Subject;
use crate::text::{capital_first, the_leg};

/// Numbers of the pressure answer, and what asks for them.
pub(super) struct Pressure {
    pub(super) case: LoadCase,
    pub(super) motion: Motion,
    pub(super) needed: f64,
    pub(super) available: f64,
    pub(super) margin: f64,
    pub(super) required: f64,
    pub(super) mount_load: f64,
}

pub(super) fn pressure(subject: &Subject, finding: &Finding, pressure: &Pressure) -> AnswerText {
    let force = &subject.result.force;
    let say = |si| subject.say(subject.drive(), si);
    let wanted = pressure.required;
    let available = available(subject, pressure.motion, pressure.available);
    let left = subject.say(Quantity::Travel, pressure.margin);
    let balance = match Verdict::of_margin(pressure.margin, wanted) {
        Verdict::Bad if pressure.available <= 0.0 => format!("; {available}."),
        Verdict::Bad => {
            let stalls = match pressure.motion {
                Motion::Retract => force.stalls_in(pressure.case),
                Motion::Extend => None,
            };
            let stall = stalls.map_or_else(String::new, |at| {
                format!(" The leg stalls {}.", subject.at(&at))
            });
            let lack = say(pressure.needed - pressure.available);
            format!("; {available}, {lack} too little.{stall}")
        }
        Verdict::Marginal => format!(
            "; {available}, so {left} is left where {} is required.",
            subject.say(Quantity::Travel, wanted)
        ),
        Verdict::Good | Verdict::NotShown => format!("; {available}, so {left} is left."),
    };
    let load = subject.say(Quantity::Force, pressure.mount_load);
    let load = match force.shares_drive_with.is_empty() {
        true => format!(" The actuator mount carries {load} there."),
        false => format!(
            " Its own share of the drive is {load} there; the mount of the drive carries what all need."
        ),
    };
    let try_next = match finding.verdict {
        Verdict::Good | Verdict::NotShown => vec![prove(subject)],
        Verdict::Marginal | Verdict::Bad => more_force(subject, pressure, wanted),
    };
    AnswerText {
        sentence: format!(
            "{}{}{balance}{load}{}",
            needs(subject, finding, pressure),
            on_one_drive(subject, pressure),
            as_set(subject, pressure),
        ),
        try_next,
    }
}

/// What is needed, in which case and where.
fn needs(subject: &Subject, finding: &Finding, pressure: &Pressure) -> String {
    let force = &subject.result.force;
    let peak = match (pressure.case, pressure.motion) {
        (LoadCase::AsSet, Motion::Retract) => force.peak,
        (LoadCase::AsSet, Motion::Extend) => force.extend_peak,
        (case, _) => force.case(case).and_then(|case| Some(case.hardest()?.1)),
    };
    let place = peak.map(|peak| peak.place).or(finding.place);
    let place = place.map_or_else(String::new, |at| format!(", {}", subject.at(&at)));
    let case = match pressure.case {
        LoadCase::AsSet => String::new(),
        case => format!(", {}", in_case(case)),
    };
    let work = match (force.stroke, pressure.motion) {
        (Stroke::Push, Motion::Retract) => "pushing",
        (Stroke::Pull, Motion::Retract) => "pulling",
        (Stroke::Push, Motion::Extend) => "pulling to extend",
        (Stroke::Pull, Motion::Extend) => "pushing to extend",
    };
    format!(
        "{}, {work}, needs {} at the worst{case}{place}",
        subject.own("actuator"),
        subject.say(subject.drive(), pressure.needed)
    )
}

/// The way that has less pressure to count on.
fn least_way(subject: &Subject) -> Motion {
    let force = &subject.result.force;
    if force.available_extend_pressure < force.available_pressure {
        Motion::Extend
    } else {
        Motion::Retract
    }
}

/// The other legs that the same drive moves, and how much of it all need; empty where there are none.
fn on_one_drive(subject: &Subject, pressure: &Pressure) -> String {
    let shares = &subject.result.force.shares_drive_with;
    if shares.is_empty() {
        return String::new();
    }
    let all = if pressure.available > 0.0 {
        let share = pressure.needed / pressure.available;
        format!(
            ": all need {} of what it has",
            subject.say(Quantity::Travel, share)
        )
    } else {
        String::new()
    };
    format!(" with {}, on one drive{all}", others(subject, shares))
}

/// Other legs by name: "the left main and the nose leg".
pub(super) fn others(subject: &Subject, legs: &[usize]) -> String {
    let name = |&leg: &usize| {
        let name = subject.gear.legs.get(leg).map_or("", |leg| &leg.name);
        the_leg(name, leg)
    };
    match legs.split_last() {
        None => String::new(),
        Some((last, [])) => name(last),
        Some((last, before)) => {
            let before: Vec<String> = before.iter().map(name).collect();
            format!("{} and {}", before.join(", "), name(last))
        }
    }
}

/// What there is one way, and what sets it.
fn available(subject: &Subject, motion: Motion, si: f64) -> String {
    let force = &subject.result.force;
    let amount = subject.say(subject.drive(), si);
    let supply = &subject.gear.supply.going(motion.direction());
    let set_by = match motion {
        Motion::Retract => force.available_set_by,
        Motion::Extend => force.available_extend_set_by,
    };
    match (force.driven_by, set_by, supply.source) {
        (DrivenBy::Electricity, ..) if force.available_among_all.is_some() && subject.gear.legs.len() > 1 => {
            format!("it makes {amount} there while the others run on the same battery")
        }
        (DrivenBy::Electricity, ..) => format!("it makes {amount} at most"),
        (_, SetBy::File, _) => format!("{amount} is available"),
        (_, SetBy::Source, _) if supply.pump_switch().is_some_and(|set| set <= si) => {
            format!("the pressure switch stops the pump at {amount}")
        }
        (_, SetBy::Source, Source::ConstantPressure) if si <= 0.0 => {
            "the accumulator is empty before all legs are up: the gear against time shows how far each comes"
                .to_owned()
        }
        (_, SetBy::Source, Source::ConstantPressure) => {
            format!("with all legs there the accumulator has {amount} left")
        }
        (_, SetBy::Source, Source::MotorPump(_)) => {
            format!("pump, battery and relief valve make {amount} at most")
        }
        (_, SetBy::Source, _) => format!("the source makes {amount} at most"),
    }
}

fn prove(subject: &Subject) -> String {
    let force = &subject.result.force;
    if force.driven_by == DrivenBy::Electricity {
        return "Prove it on jacks, on the weakest battery that is to do: it must come all the way up without slowing to a halt.".to_owned();
    }
    let on_jacks = force.case(LoadCase::OnJacks).and_then(CaseForce::hardest);
    let figure = match on_jacks {
        Some((_, peak)) => format!(
            "{}, the most that it needs level on jacks; more is drag that these figures don't have",
            subject.say(Quantity::Pressure, peak.pressure)
        ),
        None => "this figure".to_owned(),
    };
    format!(
        "Prove it on jacks with a gauge in the line: the highest reading of a slow swing should come near {figure}."
    )
}

fn more_force(subject: &Subject, pressure: &Pressure, wanted: f64) -> Vec<String> {
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
    let left = pressure.available * (1.0 - wanted);
    let more = more_area(pressure.needed, left, subject.gear.supply.return_pressure);
    if fluid && more.is_finite() && more > 0.0 {
        let side = match (force.stroke, pressure.motion) {
            (Stroke::Push, Motion::Retract) | (Stroke::Pull, Motion::Extend) => "piston area",
            _ => "piston area on the rod side",
        };
        steps.push(format!(
            "Or about {} more {side}: a larger bore, which also takes more hydraulic fluid and time.",
            subject.say(Quantity::Travel, more)
        ));
    }
    steps.push("Check for drag in pins and brace before changing any part.".to_owned());
    steps
}

/// By how much the working area must grow to need `left` of a pressure and not `needed`, against a back
/// pressure (all Pa; ratio), rod, seal friction and weights unchanged: of the force p·A = F + back·(A ∓ rod)
/// the part back·A grows with it.
fn more_area(needed: f64, left: f64, back: f64) -> f64 {
    (needed - back) / (left - back) - 1.0
}

/// What is needed with attitude and air as set, where that is not what asks for most, and what
/// leaves too little there.
fn as_set(subject: &Subject, pressure: &Pressure) -> String {
    let force = &subject.result.force;
    let wanted = force.required_margin;
    let mut said = String::new();
    for (motion, peak) in [
        (Motion::Retract, force.peak),
        (Motion::Extend, force.extend_peak),
    ] {
        let Some(peak) = peak else { continue };
        let is_told = (pressure.case, pressure.motion) == (LoadCase::AsSet, motion);
        if is_told || motion == Motion::Extend && peak.margin >= wanted {
            continue;
        }
        let to = motion_verb(motion);
        said.push_str(&format!(
            " To {to} {} it needs {} {}{}.",
            in_case(LoadCase::AsSet),
            subject.say(subject.drive(), peak.pressure),
            subject.at(&peak.place),
            left_over(subject, peak.margin)
        ));
    }
    said
}

fn left_over(subject: &Subject, margin: f64) -> String {
    if margin < 0.0 {
        ": too much".to_owned()
    } else {
        format!(" and leaves {}", subject.say(Quantity::Travel, margin))
    }
}

/// Where a finding holds, with a blank before it; empty where it has no place.
fn behind(subject: &Subject, finding: &Finding) -> String {
    let place = finding.place.as_ref();
    place.map_or_else(String::new, |place| format!(" {}", subject.at(place)))
}

pub(super) fn binds(
    subject: &Subject,
    finding: &Finding,
    joint: Joint,
    (motion, case): (Motion, LoadCase),
) -> AnswerText {
    let place = behind(subject, finding);
    let case = match case {
        LoadCase::AsSet => String::new(),
        case => format!(", {},", in_case(case)),
    };
    AnswerText::new(
        format!(
            "{} bind{place}{case} while {}: friction there, most of it at the {}, grows faster than the actuator force, so nothing moves the leg.",
            subject.own("pins"),
            motion_words(motion),
            joint_words(joint)
        ),
        [
            "Check radius and friction of that pin: a dry or tight bushing can bind where a greased one moves.",
            "Move the actuator's mount or attach point so that it has more arm at this place.",
        ],
    )
}

pub(super) fn partner_stands(subject: &Subject, finding: &Finding, leg: usize) -> AnswerText {
    let place = behind(subject, finding);
    let other = others(subject, &[leg]);
    AnswerText::new(
        format!(
            "{} is on one drive with {other}, which nothing moves{place}: the drive stops both there.",
            capital_first(&subject.the_leg())
        ),
        ["Look at the answers of that leg first: what frees it frees this one."],
    )
}

pub(super) fn dead_point(subject: &Subject, finding: &Finding) -> AnswerText {
    let place = behind(subject, finding);
    AnswerText::new(
        format!(
            "{} loses its arm{place}: no actuator force moves the leg there.",
            subject.own("actuator")
        ),
        [
            "Move the actuator's mount or attach point so that its line stays clear of the pivot all the way.",
        ],
    )
}

pub(super) fn strut_jack(subject: &Subject, needed: f64, most: f64) -> AnswerText {
    let say = |si| subject.say(Quantity::Pressure, si);
    AnswerText::new(
        format!(
            "{} needs {}; {}.",
            subject.own("strut-shortening cylinder"),
            say(needed),
            available(subject, least_way(subject), most)
        ),
        [
            "Read the gauge while the strut moves, and check the cylinder's figures against its maker's data.",
        ],
    )
}

pub(super) fn stage_valve(subject: &Subject, opens: f64, most: f64) -> AnswerText {
    let say = |si| subject.say(Quantity::Pressure, si);
    AnswerText::new(
        format!(
            "{}, which holds the swing back until the strut is short, opens at {}; {}.",
            subject.own("stage valve"),
            say(opens),
            available(subject, least_way(subject), most)
        ),
        ["Check the figure of the valve against its maker's data before changing either."],
    )
}

pub(super) fn cannot_unlock(subject: &Subject) -> AnswerText {
    let on_leg = subject
        .model()
        .is_some_and(|leg| leg.actuator.attach_to == AttachTo::Leg);
    let why = if on_leg {
        "it works on the leg, and a locked knee does not give way to the leg"
    } else {
        "pressed to retract, it drives the knee further into its lock"
    };
    AnswerText::new(
        format!(
            "{} can't bring the knee back through the straight line: {why}.",
            subject.own("actuator")
        ),
        [
            "Say so if a separate unlock device (actuator, hook, cable) unlocks the knee.",
            "Or let the actuator work on a brace link, so that it pulls the knee through first.",
        ],
    )
}

#[cfg(test)]
mod tests {
    use super::more_area;

    /// 1,500 N on a bore of 10 cm2 with a rod of 3 cm2, 0.2 MPa in the return line, by F = p·A (textbook): the
    /// bore that is told needs the pressure that is left, pushing and, from the rod's side, pulling.
    #[test]
    fn the_area_that_is_told_is_enough() {
        let (force, rod, back, left) = (1_500.0, 3e-4, 2e5, 1.2e6);
        for (area, sign) in [(10e-4, -1.0), (7e-4, 1.0)] {
            let needs = |area: f64| (force + back * (area + sign * rod)) / area;
            let more = more_area(needs(area), left, back);
            assert!(more > 0.0);
            assert!((needs(area * (1.0 + more)) / left - 1.0).abs() < 1e-12);
        }
    }
}
