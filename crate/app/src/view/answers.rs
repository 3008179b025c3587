//! The answers of every leg, in the words of the report.
use gearswing_gear::field::Group;
use gearswing_gear::model::Gear;
use gearswing_report::page::names::leg_title;
use gearswing_report::page::{answers as words, changes};
use gearswing_report::{
    Subject, fault_text, finding_figure, finding_line, finding_short, finding_text, question_head,
    question_text, verdict_text,
};
use gearswing_solver::faults::{Fault, check_gear};
use gearswing_solver::result::Finding;
use gearswing_units::UnitChoice;

use super::example::of_example;
use super::leg_answers::{AnswerRow, FaultRow, LegAnswers, RestsOn};
use super::page::Action;
use super::rows::{typed_path, unread};
use crate::fields;
use crate::msg::{Field, Msg, View};
use crate::state::{Good, LegDerived, State};

/// What a text about a result speaks of.
pub(crate) fn subject<'a>(
    gear: &'a Gear,
    leg: usize,
    good: &'a Good,
    units: UnitChoice,
) -> Subject<'a> {
    Subject {
        gear,
        leg,
        result: &good.result,
        units,
    }
}

/// The sentence of an answer of the selected leg.
pub(crate) fn finding_sentence(state: &State, good: &Good, finding: &Finding) -> String {
    let session = &state.session;
    let subject = subject(state.gear(), session.leg, good, session.units);
    finding_text(&subject, finding).sentence
}

/// The answers of every leg.
pub(crate) fn answers(state: &State) -> Vec<LegAnswers> {
    if state.gear().legs.is_empty() {
        return vec![no_leg(state)];
    }
    state
        .gear()
        .legs
        .iter()
        .enumerate()
        .map(|(index, leg)| {
            let derived = state.derived.leg(index);
            let selected = state.session.leg == index;
            let name = leg_title(&leg.name, index);
            let not_taken = not_taken(state, index);
            // an entry that is not taken makes them answers of before it, as a fault does
            let faded = derived.is_some_and(LegDerived::faded) || !not_taken.is_empty();
            LegAnswers {
                leg: index,
                selected,
                select: Action {
                    id: format!("leg.{index}"),
                    label: name.clone(),
                    hint: words::show_in_drawing(&name),
                    enabled: true,
                    msg: Msg::View(View::SelectLeg { leg: index }),
                },
                answers: derived.map_or_else(Vec::new, |d| rows(state, index, d)),
                faults: derived
                    .map_or_else(Vec::new, |d| faults(state, &d.faults))
                    .into_iter()
                    .chain(not_taken)
                    .collect(),
                over: match derived {
                    Some(d) if faded && d.good.is_some() => words::FADED.to_owned(),
                    _ => of_example(state, index),
                },
                faded: faded && derived.is_some_and(|d| d.good.is_some()),
                name,
            }
        })
        .collect()
}

/// A gear file without legs: the fault stands where the answers would.
fn no_leg(state: &State) -> LegAnswers {
    let found = check_gear(state.gear())
        .err()
        .map_or_else(Vec::new, |faults| faults.0);
    LegAnswers {
        leg: 0,
        name: words::NO_LEG.to_owned(),
        selected: true,
        select: Action {
            id: "leg.0".to_owned(),
            label: words::NO_LEG.to_owned(),
            hint: String::new(),
            enabled: false,
            msg: Msg::View(View::SelectLeg { leg: 0 }),
        },
        answers: Vec::new(),
        faults: faults(state, &found),
        over: String::new(),
        faded: false,
    }
}

/// Entries of a leg, and on the selected one those of the whole gear, that could not be read.
fn not_taken(state: &State, leg: usize) -> Vec<FaultRow> {
    let here = |path: &str| fields::leg_of(path).unwrap_or(state.session.leg) == leg;
    unread(state)
        .filter(|(path, _)| here(path))
        // what was seen on the jacks is said on its own sheet: no verdict rests on it
        .filter(|(path, _)| {
            fields::path(path).is_none_or(|of| of.field.info().group != Group::Seen)
        })
        .map(|(path, text)| FaultRow {
            text: words::unread_entry(path, text, state.gear()),
            show: Some(show_field(state, path)),
        })
        .collect()
}

/// Opens the field that something is said of.
fn show_field(state: &State, path: &str) -> Action {
    Action {
        id: format!("fault.{path}.{}", state.session.units),
        label: words::SHOW_FIELD.to_owned(),
        hint: String::new(),
        enabled: true,
        msg: Msg::Field(Field::Show {
            path: path.to_owned(),
        }),
    }
}

fn faults(state: &State, faults: &[Fault]) -> Vec<FaultRow> {
    faults
        .iter()
        .map(|fault| FaultRow {
            text: fault_text(fault, state.gear(), state.session.units),
            show: Some(match typed_path(state, &fault.path) {
                Some(typed) => show_field(state, &typed),
                None => show_field(state, &fault.path),
            }),
        })
        .collect()
}

fn rows(state: &State, leg: usize, derived: &LegDerived) -> Vec<AnswerRow> {
    let Some(good) = &derived.good else {
        return Vec::new();
    };
    let units = state.session.units;
    let about = subject(state.gear(), leg, good, units);
    good.result
        .findings
        .iter()
        .map(|finding| {
            let text = finding_text(&about, finding);
            AnswerRow {
                question: finding.question,
                question_text: question_text(finding.question).to_owned(),
                verdict: finding.verdict,
                verdict_text: verdict_text(finding.question, finding.verdict).to_owned(),
                line: finding_line(&about, finding),
                head: question_head(finding.question).to_owned(),
                figure: finding_figure(&about, finding),
                short: finding_short(&about, finding),
                sentence: text.sentence,
                rests_on: text
                    .governs
                    .into_iter()
                    .map(|governing| RestsOn {
                        text: governing.text,
                        weak: governing.mark.is_some(),
                        mark: governing.mark.map_or("", |mark| mark.as_str()).to_owned(),
                    })
                    .collect(),
                cautions: text.cautions.into_iter().map(str::to_owned).collect(),
                try_next: text.try_next,
                was: was(state, leg, finding, &finding_figure(&about, finding)),
                open: Action {
                    id: format!("verdict.{leg}.{:?}", finding.question),
                    label: String::new(),
                    hint: String::new(),
                    enabled: true,
                    msg: Msg::View(View::GoTo {
                        leg,
                        question: finding.question,
                    }),
                },
                go_to: finding.place.map(|_| Action {
                    id: format!("go.{leg}.{:?}", finding.question),
                    label: words::SHOW_PLACE.to_owned(),
                    hint: words::show_where(&good.result.name, finding.question),
                    enabled: true,
                    msg: Msg::View(View::GoTo {
                        leg,
                        question: finding.question,
                    }),
                }),
            }
        })
        .collect()
}

/// The number of an answer in the state compared with, where it or the verdict was another.
fn was(state: &State, leg: usize, finding: &Finding, figure: &str) -> Option<String> {
    let (gear, at, good) = state.before.leg(state.gear(), leg)?;
    let sent = state.gear().state_before().is_some_and(|kept| kept.sent);
    let mut found = good.result.findings.iter();
    let before = found.find(|before| before.question == finding.question)?;
    let about = subject(gear, at, good, state.session.units);
    let told = finding_figure(&about, before);
    (told != figure || before.verdict != finding.verdict).then(|| changes::was(&told, sent))
}
