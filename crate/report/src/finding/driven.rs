//! Can it be driven? Pressure and dead points in words.
use gearswing_gear::model::View;
use gearswing_solver::result::{
    CaseForce, CaseOutcome, DrivenBy, Finding, LoadCase, Motion, Stroke, Verdict,
};
use gearswing_units::Quantity;

use super::answer::AnswerText;
use super::available::{available, more_force};
use super::spare;
use crate::cases::{in_case, motion_verb};
use crate::subject::Subject;
use crate::text::the_leg;

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
        Verdict::Marginal | Verdict::Bad => more_force(subject, pressure),
    };
    AnswerText {
        sentence: format!(
            "{}{}{balance}{load}{}{}{}{}{}",
            needs(subject, finding, pressure),
            on_one_drive(subject, pressure),
            on_jacks(subject, pressure),
            as_set(subject, pressure),
            stroke_left(subject),
            spare::pins_not_counted(subject),
            without_air(subject),
        ),
        try_next,
    }
}

/// Less than this left of the stroke is told (m): 1/16 in, common practice.
const LITTLE_STROKE: f64 = 0.0254 / 16.0;

/// That the actuator comes to an end of its stroke; empty where enough is left at both.
fn stroke_left(subject: &Subject) -> String {
    let lengths = || subject.result.stations.iter().map(|at| at.actuator_length);
    let leg = subject.gear.legs.get(subject.leg);
    let Some(leg) = leg.filter(|_| subject.gear.drives_alone(subject.leg)) else {
        return String::new();
    };
    let most = lengths().fold(f64::NEG_INFINITY, f64::max);
    let least = lengths().fold(f64::INFINITY, f64::min);
    let ends = [
        ("extended", leg.actuator.longest - most),
        ("retracted", least - leg.actuator.shortest),
    ];
    let few = ends.into_iter().filter(|(_, left)| *left < LITTLE_STROKE);
    let few: Vec<String> = few
        .map(|(end, left)| {
            let left = subject.say(Quantity::Length, left.max(0.0));
            format!("{left} at the {end} end")
        })
        .collect();
    if few.is_empty() {
        return String::new();
    }
    format!(
        " Of the actuator's stroke only {} is left: see on the jacks that the leg comes to its own stop before the actuator does.",
        few.join(" and ")
    )
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

fn prove(subject: &Subject) -> String {
    let force = &subject.result.force;
    if force.driven_by == DrivenBy::Electricity {
        return "Prove it on jacks, on the weakest battery that is to do: it must come all the way up without slowing to a halt.".to_owned();
    }
    let on_jacks = force.case(LoadCase::OnJacks).and_then(CaseForce::hardest);
    let figure = match on_jacks {
        Some((_, peak)) if peak.pressure <= 0.0 => {
            return "Prove it on jacks with a gauge in the line: level on jacks nothing is needed of the actuator, and a slow swing should read hardly anything; more is drag that these figures don't have.".to_owned();
        }
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

/// That no air load is in any case, where it would count; a leg that is seen from ahead swings across the wind.
fn without_air(subject: &Subject) -> &'static str {
    let set = &subject.gear.conditions;
    let air = subject.model().map(|leg| &leg.air);
    let catches = air.is_some_and(|air| air.wheel_drag_area + air.leg_drag_area > 0.0);
    if subject.result.view == View::Front {
        ""
    } else if !catches {
        " No air load is in this: no drag area is put in."
    } else if set.airspeed == 0.0 && set.gear_speed.is_none() {
        " No air load is in this: the gear operating speed is not put in."
    } else {
        ""
    }
}

/// That the jacks do not show it, where what is missing in another case is there level on jacks.
fn on_jacks(subject: &Subject, pressure: &Pressure) -> String {
    let force = &subject.result.force;
    let short = pressure.margin < 0.0 && pressure.available > 0.0;
    if !short || pressure.case == LoadCase::OnJacks || pressure.motion == Motion::Extend {
        return String::new();
    }
    let jacks = force.case(LoadCase::OnJacks).map(|case| case.outcome);
    let Some(CaseOutcome::Worked {
        retract: Some(peak),
        binds_at: None,
        ..
    }) = jacks
    else {
        return String::new();
    };
    if peak.margin < 0.0 {
        return String::new();
    }
    let who = match force.shares_drive_with.is_empty() {
        true => "the leg needs",
        false => "all on its drive need",
    };
    format!(
        " A swing on jacks does not show it: level there {who} no more than {} to retract.",
        subject.say(subject.drive(), peak.pressure)
    )
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

#[cfg(test)]
mod tests {
    use gearswing_solver::result::{CaseForce, CaseOutcome, LoadCase, Motion};
    use gearswing_units::UnitChoice;

    use super::{Pressure, View, on_jacks, prove, without_air};
    use crate::sample::{full_gear, result, subject};

    /// A leg that is short in flight and passes on jacks is told; where the weight takes it up there, so is
    /// what a gauge should read.
    #[test]
    fn what_the_jacks_do_not_show_is_told() {
        let (gear, mut result) = (full_gear(), result());
        let as_set = result.force.cases[0];
        let mut said = |case, motion, needed: f64| {
            let mut jacks = CaseForce {
                case: LoadCase::OnJacks,
                ..as_set
            };
            if let CaseOutcome::Worked {
                retract: Some(peak),
                ..
            } = &mut jacks.outcome
            {
                (peak.pressure, peak.margin) = (needed, 1.0 - needed / 6.9e6);
            }
            result.force.cases.truncate(1);
            result.force.cases.push(jacks);
            let subject = subject(&gear, &result, UnitChoice::METRIC);
            let pressure = Pressure {
                case,
                motion,
                needed: 8e6,
                available: 6.9e6,
                margin: -0.16,
                required: 0.1,
                mount_load: 1_000.0,
            };
            (on_jacks(&subject, &pressure), prove(&subject))
        };
        let (shown, prove) = said(LoadCase::AsSet, Motion::Retract, 6e6);
        assert_eq!(
            shown,
            " A swing on jacks does not show it: level there the leg needs no more than 60.0 bar to retract."
        );
        assert!(prove.contains("60.0 bar"), "{prove}");
        assert_eq!(said(LoadCase::OnJacks, Motion::Retract, 6e6).0, "");
        assert_eq!(said(LoadCase::AsSet, Motion::Retract, 7.5e6).0, "");
        let (_, prove) = said(LoadCase::AsSet, Motion::Retract, 0.0);
        assert!(prove.contains("hardly anything"), "{prove}");
    }

    /// A side view swings along the wind.
    #[test]
    fn that_no_air_is_counted_is_told() {
        let (mut gear, mut result) = (full_gear(), result());
        let mut said = |view, airspeed, gear_speed, area| {
            (gear.conditions.airspeed, gear.conditions.gear_speed) = (airspeed, gear_speed);
            let air = &mut gear.legs[0].air;
            (air.wheel_drag_area, air.leg_drag_area) = (area, 0.0);
            result.view = view;
            without_air(&subject(&gear, &result, UnitChoice::METRIC))
        };
        assert!(said(View::Side, 0.0, None, 0.02).contains("gear operating speed"));
        assert!(said(View::Side, 40.0, Some(40.0), 0.0).contains("no drag area"));
        assert_eq!(said(View::Side, 40.0, None, 0.02), "");
        assert_eq!(said(View::Side, 0.0, Some(40.0), 0.02), "");
        assert_eq!(said(View::Front, 0.0, None, 0.0), "");
    }
}
