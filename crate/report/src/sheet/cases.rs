//! Load cases side by side and the largest load of each joint.
use gearswing_solver::result::{CaseForce, CaseOutcome, ForcePeak};
use gearswing_units::{NO_VALUE, Quantity};

use super::lines::Lines;
use super::numbers::title;
use crate::cases::{case_words, joint_words, missing_words, motion_words};
use crate::subject::Subject;
use crate::table::{Align, Column, aligned};

pub(super) fn cases(lines: &mut Lines, subject: &Subject) {
    let force = &subject.result.force;
    if force.cases.is_empty() {
        return;
    }
    title(lines, "Load cases");
    let say = |quantity, si| subject.say(quantity, si);
    let texts = |text: &dyn Fn(&CaseForce) -> String| force.cases.iter().map(text).collect();
    let peak = |text: &dyn Fn(&ForcePeak) -> String, extend: bool| {
        texts(&|case: &CaseForce| match case.outcome {
            CaseOutcome::Worked {
                retract,
                extend: down,
                ..
            } => if extend { down } else { retract }
                .as_ref()
                .map_or_else(|| NO_VALUE.to_owned(), text),
            CaseOutcome::Missing { .. } => NO_VALUE.to_owned(),
        })
    };
    let pressure = |peak: &ForcePeak| say(Quantity::Pressure, peak.pressure);
    let margin = |peak: &ForcePeak| subject.signed(Quantity::Travel, peak.margin);
    let travel = |peak: &ForcePeak| say(Quantity::Travel, peak.place.travel);
    let columns = [
        Column::new(
            "case",
            Align::Left,
            texts(&|case| case_words(case.case).to_owned()),
        ),
        Column::new(
            "load factor",
            Align::Right,
            texts(&|case| match case.outcome {
                CaseOutcome::Worked { load_factor, .. } => say(Quantity::LoadFactor, load_factor),
                CaseOutcome::Missing { .. } => NO_VALUE.to_owned(),
            }),
        ),
        Column::new("retract", Align::Right, peak(&pressure, false)),
        Column::new("left", Align::Right, peak(&margin, false)),
        Column::new("travel", Align::Right, peak(&travel, false)),
        Column::new("extend", Align::Right, peak(&pressure, true)),
        Column::new("travel", Align::Right, peak(&travel, true)),
        Column::new("", Align::Left, texts(&|case| remark(subject, case))),
    ];
    lines.block(&aligned("  ", &columns));
    if let Some(case) = force.hardest_case.and_then(|at| force.cases.get(at)) {
        lines.text(2, &format!("Hardest: {}.", case_words(case.case)));
    }
    lines.text(
        2,
        "Cases in flight take calibrated speeds. The air-load case follows 14 CFR 23.729(a)(1) before amendment 23-64; its load factor of 2, unless you set one, is from memory, the 10° of the climb common practice.",
    );
}

fn remark(subject: &Subject, case: &CaseForce) -> String {
    match case.outcome {
        CaseOutcome::Worked {
            binds_at: Some(place),
            ..
        } => format!("pins bind {}", subject.at(&place)),
        CaseOutcome::Worked {
            stalls_at: Some(place),
            ..
        } => format!("stalls {}", subject.at(&place)),
        CaseOutcome::Worked { .. } => String::new(),
        CaseOutcome::Missing { needs } => missing_words(needs).to_owned(),
    }
}

pub(super) fn joints(lines: &mut Lines, subject: &Subject) {
    let joints = &subject.result.force.joint_loads;
    if joints.is_empty() {
        return;
    }
    title(lines, "Largest joint loads, all cases");
    let columns = [
        Column::new(
            "joint",
            Align::Left,
            joints
                .iter()
                .map(|j| joint_words(j.joint).to_owned())
                .collect(),
        ),
        Column::new(
            "load",
            Align::Right,
            joints
                .iter()
                .map(|j| subject.say(Quantity::Force, j.load))
                .collect(),
        ),
        Column::new(
            "travel",
            Align::Right,
            joints
                .iter()
                .map(|j| subject.say(Quantity::Travel, j.place.travel))
                .collect(),
        ),
        Column::new(
            "moving",
            Align::Left,
            joints
                .iter()
                .map(|j| motion_words(j.motion).to_owned())
                .collect(),
        ),
        Column::new(
            "case",
            Align::Left,
            joints
                .iter()
                .map(|j| case_words(j.case).to_owned())
                .collect(),
        ),
    ];
    lines.block(&aligned("  ", &columns));
    lines.text(
        2,
        "In the plane of the swing, while the leg moves: landing and ground loads are larger and not among them.",
    );
}
