//! Load cases side by side and the largest load of each joint.
use gearswing_solver::result::{CaseForce, CaseOutcome, ForcePeak};
use gearswing_units::{NO_VALUE, Quantity};

use super::lines::Lines;
use super::numbers::title;
use crate::cases::{case_words, joint_words, missing_words, motion_words};
use crate::subject::Subject;
use crate::table::{Align, Column, aligned};

/// What the cases rest on.
const CASES_NOTE: &str = "Cases in flight take calibrated speeds. The air-load case takes speed and load factor from 14 CFR 23.729(a)(1) before amendment 23-64; inertia and brake torque, which it names too, are not in it, and for amateur-built and older types it is guidance. The load factor of 2, unless you set one, is from memory, the 10° of the climb common practice.";

/// What the loads of the joints are.
const JOINTS_NOTE: &str = "In the plane of the swing, while the leg moves, with the friction given, the largest of all cases: the arrows of the drawing hold the leg still, without friction, in the case as set, and are less. Landing and ground loads are larger and not among them.";

/// Title over the load cases.
const CASES_TITLE: &str = "Load cases";

/// Title over the loads of the joints.
const JOINTS_TITLE: &str = "Largest joint loads, all cases";

/// A table under its title, and what is to be said of it.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct TitledTable {
    /// Title.
    pub title: &'static str,
    /// Columns; those without any cell are no table.
    pub columns: Vec<Column>,
    /// Sentences under it.
    pub notes: Vec<String>,
}

/// Load cases side by side, and the largest load of each joint.
#[must_use]
pub fn load_tables(subject: &Subject) -> [TitledTable; 2] {
    let hardest = hardest(subject).into_iter();
    [
        TitledTable {
            title: CASES_TITLE,
            columns: case_columns(subject),
            notes: hardest.chain([CASES_NOTE.to_owned()]).collect(),
        },
        TitledTable {
            title: JOINTS_TITLE,
            columns: joint_columns(subject),
            notes: vec![JOINTS_NOTE.to_owned()],
        },
    ]
}

/// Puts the tables on a sheet.
pub(super) fn put(lines: &mut Lines, subject: &Subject) {
    for table in load_tables(subject) {
        if table.columns.iter().all(|column| column.cells.is_empty()) {
            continue;
        }
        title(lines, table.title);
        lines.block(&aligned("  ", &table.columns));
        for note in &table.notes {
            lines.text(2, note);
        }
    }
}

/// Which case asks for most.
fn hardest(subject: &Subject) -> Option<String> {
    let force = &subject.result.force;
    let case = force.cases.get(force.hardest_case?)?;
    Some(format!("Hardest: {}.", case_words(case.case)))
}

fn case_columns(subject: &Subject) -> Vec<Column> {
    let force = &subject.result.force;
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
    let pressure = |peak: &ForcePeak| say(subject.drive(), peak.pressure);
    let margin = |peak: &ForcePeak| subject.signed(Quantity::Travel, peak.margin);
    let travel = |peak: &ForcePeak| say(Quantity::Travel, peak.place.travel);
    vec![
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
        Column::new("to spare", Align::Right, peak(&margin, false)),
        Column::new("travel", Align::Right, peak(&travel, false)),
        Column::new("extend", Align::Right, peak(&pressure, true)),
        Column::new("travel", Align::Right, peak(&travel, true)),
        Column::new("remark", Align::Left, texts(&|case| remark(subject, case))),
    ]
}

fn remark(subject: &Subject, case: &CaseForce) -> String {
    match case.outcome {
        CaseOutcome::Worked {
            binds_at: Some(bind),
            ..
        } => format!("pins bind {}", subject.at(&bind.place)),
        CaseOutcome::Worked {
            stalls_at: Some(place),
            ..
        } => format!("stalls {}", subject.at(&place)),
        CaseOutcome::Worked { .. } => String::new(),
        CaseOutcome::Missing { needs } => missing_words(needs).to_owned(),
    }
}

fn joint_columns(subject: &Subject) -> Vec<Column> {
    let joints = &subject.result.force.joint_loads;
    vec![
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
    ]
}
