//! What differs from the state that is compared with, and the kept states.
use gearswing_gear::field::Place;
use gearswing_gear::model::Gear;
use gearswing_report::page::changes as words;
use gearswing_report::page::names::leg_title;
use gearswing_report::{change_text, finding_figure, name_words, question_head};
use gearswing_solver::result::Finding;

use super::answers::subject;
use super::notes;
use super::page::{Action, ChangesText, ListRow};
use crate::msg::{Compare, Msg};
use crate::state::{Good, LegDerived, State};

fn action(id: String, label: &str, hint: String, msg: Compare) -> Action {
    Action {
        id,
        label: label.to_owned(),
        hint,
        enabled: true,
        msg: Msg::Compare(msg),
    }
}

/// The sheet of changes; empty where no state is kept.
pub(crate) fn changes(state: &State) -> ChangesText {
    let gear = state.gear();
    let notes = notes::notes(state);
    if gear.kept.is_empty() {
        return ChangesText {
            notes,
            ..ChangesText::default()
        };
    }
    let units = state.session.units;
    let found = state.changes();
    let before = gear.state_before();
    let sent = before.is_some_and(|kept| kept.sent);
    let rows = found.iter().enumerate().map(|(at, change)| {
        let text = change_text(change, gear, units);
        let back = action(
            format!("change.{at}"),
            words::take(sent),
            words::take_hint(&text.place, &text.before),
            Compare::TakeBack {
                place: change.place,
            },
        );
        ListRow {
            id: id_of(change.place),
            name: text.place,
            text: if sent {
                words::from_to(&text.now, &text.before)
            } else {
                words::from_to(&text.before, &text.now)
            },
            actions: vec![back],
            ..ListRow::default()
        }
    });
    let all = action(
        "changes.all".to_owned(),
        words::take_all(sent),
        String::new(),
        Compare::TakeAllBack,
    );
    ChangesText {
        line: match before {
            Some(kept) => words::changes_line(found.len(), &kept.name, sent),
            None => words::NONE_CHOSEN.to_owned(),
        },
        rows: rows.collect(),
        actions: if found.len() > 1 {
            vec![all]
        } else {
            Vec::new()
        },
        name: before.map(|kept| kept.name.clone()),
        kept: kept(state),
        notes,
    }
}

fn id_of(place: Place) -> String {
    match place {
        Place::Legs => "legs".to_owned(),
        Place::Field(path) => path.to_string(),
        Place::List(path) => ["list.", &path.to_string()].concat(),
    }
}

fn kept(state: &State) -> Vec<ListRow> {
    let gear = state.gear();
    let leg = state.session.leg;
    let row = |at: usize, name: &str| {
        let chosen = gear.before == Some(at);
        let (label, with) = if chosen {
            (words::COMPARE_NO_MORE, None)
        } else {
            (words::COMPARE, Some(at))
        };
        ListRow {
            id: at.to_string(),
            name: name_words(name),
            text: words::kept_text(chosen, &numbers(state, state.beside.leg(gear, at, leg))),
            current: chosen,
            problem: false,
            actions: vec![
                action(
                    format!("kept.with.{at}"),
                    label,
                    words::act_on(label, name),
                    Compare::With { state: with },
                ),
                action(
                    format!("kept.remove.{at}"),
                    words::REMOVE,
                    words::act_on(words::REMOVE, name),
                    Compare::Remove { state: at },
                ),
            ],
        }
    };
    let good = state.derived.leg(leg).and_then(LegDerived::current);
    let now = ListRow {
        id: "now".to_owned(),
        name: words::NOW.to_owned(),
        text: words::kept_text(false, &numbers(state, good.map(|good| (gear, leg, good)))),
        ..ListRow::default()
    };
    let all = gear.kept.iter().enumerate();
    let rows = all.map(|(at, kept)| row(at, &kept.name));
    std::iter::once(now).chain(rows).collect()
}

/// The numbers of a leg's answers side by side; empty where it has none.
fn numbers(state: &State, leg: Option<(&Gear, usize, &Good)>) -> String {
    let Some((gear, leg, good)) = leg else {
        return String::new();
    };
    let about = subject(gear, leg, good, state.session.units);
    let told = |finding: &Finding| {
        let head = question_head(finding.question);
        [head, &finding_figure(&about, finding)].join(" ")
    };
    let numbers: Vec<String> = good.result.findings.iter().map(told).collect();
    words::leg_numbers(&leg_title(&gear.legs[leg].name, leg), &numbers.join(", "))
}
