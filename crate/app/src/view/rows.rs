//! Rows of fields: value as typed or as stored, echo, error, range, help.
use gearswing_gear::field::{self, Path, Range, told};
use gearswing_report::fault_text;
use gearswing_report::fields::{ChoiceWords, label, path_words, words};
use gearswing_report::page::fields as sayings;
use gearswing_report::page::worked::{Worked, worked_words};
use gearswing_solver::faults::Fault;
use gearswing_units::{Quantity, UnitChoice, format_field, parse, si_range_text};

use std::f64::consts::PI;

use super::page::{Action, ChoiceOption, FieldKind, FieldRow};
use crate::fields::{self, MEASURES, Measure, measure_path};
use crate::msg::{Field, Msg};
use crate::state::State;

/// The row of a field; `None` when this gear has no such field.
pub(crate) fn row(state: &State, path: Path) -> Option<FieldRow> {
    let gear = state.gear();
    if !path.is_asked(gear) {
        return None;
    }
    let info = path.field.info();
    let known = words(path.field);
    let at = path.to_string();
    // a coordinate must be filled, whatever stands for its whole outline
    let if_empty = known.if_empty.filter(|_| path.axis.is_none());
    let mut row = FieldRow {
        label: label(path, gear),
        axis: path.axis,
        value: String::new(),
        unit: String::new(),
        echo: String::new(),
        help: known.help.to_owned(),
        if_empty: if_empty.unwrap_or_default().to_owned(),
        range: String::new(),
        error: None,
        marked: is_marked(state, path),
        kind: FieldKind::Text,
        actions: list_actions(state, &at),
        path: at,
    };
    if let Some(value) = path.number(gear) {
        let value = value.map(|stored| told(gear, path, stored));
        row.kind = FieldKind::Number;
        number(
            state,
            info.quantity()?,
            value,
            || fault_of(state, path),
            &mut row,
        );
        let range = Range {
            // told without a sign
            either_way: info.range()?.either_way && path.field != field::Field::SwingUp,
            ..info.range()?
        };
        row.range = range_text(info.quantity()?, range, 1.0, state.session.units);
    } else if let Some(text) = path.text(gear) {
        row.value = text.to_owned();
        row.kind = if path.field == field::Field::GearNote {
            FieldKind::LongText
        } else {
            FieldKind::Text
        };
    } else if let Some(chosen) = path.chosen(gear) {
        row.kind = FieldKind::Choice {
            options: choices(known.choices),
            chosen: chosen.to_owned(),
        };
    } else if let Some(on) = path.switched_on(gear) {
        row.kind = FieldKind::Switches {
            options: choices(known.choices)
                .into_iter()
                .map(|option| {
                    let is_on = on.contains(&option.key.as_str());
                    (option, is_on)
                })
                .collect(),
        };
    } else {
        return None;
    }
    if typed_path(state, &row.path).is_none() {
        row.error = row.error.or_else(|| fault_of(state, path));
    }
    // What an empty field stands for has no room in the field when it is long.
    let is_typed = matches!(row.kind, FieldKind::Number | FieldKind::Text);
    if is_typed && row.value.is_empty() && row.if_empty.chars().count() > SHORT {
        row.echo = sayings::empty_means(&std::mem::take(&mut row.if_empty));
    }
    Some(row)
}

/// Letters that a field has room for.
const SHORT: usize = 15;

/// Path of the field that was typed into, where the number at `path` follows from that one.
pub(crate) fn typed_path(state: &State, path: &str) -> Option<String> {
    let typed = fields::circumference_of(path)?;
    let draft = state.session.drafts.get(&typed)?;
    let stands = draft.committed && Some(draft.over) == fields::shown(state.gear(), &typed);
    stands.then_some(typed)
}

fn choices(options: &[ChoiceWords]) -> Vec<ChoiceOption> {
    options
        .iter()
        .map(|option| ChoiceOption {
            key: option.key.to_owned(),
            label: option.label.to_owned(),
        })
        .collect()
}

/// Fills in value, unit, echo and error of a number.
///
/// `fault` is what is wrong with the number in use.
fn number(
    state: &State,
    quantity: Quantity,
    value: Option<f64>,
    fault: impl FnOnce() -> Option<String>,
    row: &mut FieldRow,
) {
    let units = state.session.units;
    row.unit = quantity.unit_label(units).to_owned();
    row.value = value.map_or_else(String::new, |si| format_field(quantity, units, si));
    let Some(draft) = state.session.drafts.get(&row.path) else {
        return;
    };
    let read = parse(quantity, draft.units, &draft.text);
    if !draft.committed {
        row.value.clone_from(&draft.text);
        if let Ok(read) = read {
            row.echo = read.echo;
        }
        return;
    }
    match read {
        // the text stands for the value as long as both are what they were when it was entered
        Ok(read) if draft.units == units && draft.over == value => {
            row.value.clone_from(&draft.text);
            row.echo = read.echo;
        }
        Ok(_) => {}
        Err(error) if draft.over == value => {
            row.value.clone_from(&draft.text);
            row.error = Some(sayings::not_in_use(&error.to_string(), fault().as_deref()));
        }
        Err(_) => {}
    }
}

/// Entries that cannot be read, with their texts: none of them is in use.
pub(crate) fn unread(state: &State) -> impl Iterator<Item = (&str, &str)> {
    let drafts = state.session.drafts.iter();
    drafts.filter_map(|(path, draft)| {
        let quantity = fields::quantity(path)?;
        let stands = draft.committed && fields::shown(state.gear(), path)? == draft.over;
        let unread = stands && parse(quantity, draft.units, &draft.text).is_err();
        unread.then_some((path.as_str(), draft.text.as_str()))
    })
}

/// What a number that is `times` that of the list may be, in the units shown.
fn range_text(quantity: Quantity, range: Range, times: f64, units: UnitChoice) -> String {
    let text = si_range_text(quantity, units, times * range.min, times * range.max);
    if range.either_way {
        sayings::either_way(&text)
    } else {
        text
    }
}

/// The first fault of the model that names this field.
fn fault_of(state: &State, path: Path) -> Option<String> {
    let (at, point) = (path.to_string(), path.point().to_string());
    let names = |fault: &&Fault| fault.path == at || fault.path == point;
    let fault = state.derived.all_faults().find(names)?;
    Some(fault_text(fault, state.gear(), state.session.units))
}

fn is_marked(state: &State, path: Path) -> bool {
    let selected = state.session.selection.as_deref().and_then(fields::path);
    selected.is_some_and(|selected| selected.point() == path.point())
}

/// Adding behind and taking out an entry of a list, on the last row of a corner, on the first of a row of a table.
fn list_actions(state: &State, path: &str) -> Vec<Action> {
    let entry = match fields::point_of(path) {
        Some(point) if path.ends_with("[1]") => point,
        _ => match path.strip_suffix(".travel") {
            Some(row) => row,
            None => return Vec::new(),
        },
    };
    if fields::entry(entry).is_none() {
        return Vec::new();
    }
    let name = path_words(entry, state.gear());
    let path = || entry.to_owned();
    vec![
        Action {
            id: format!("add.{entry}"),
            label: sayings::ADD_BEHIND.to_owned(),
            hint: sayings::add_behind(&name),
            enabled: true,
            msg: Msg::Field(Field::Add { path: path() }),
        },
        Action {
            id: format!("remove.{entry}"),
            label: sayings::REMOVE.to_owned(),
            hint: sayings::remove(&name),
            enabled: true,
            msg: Msg::Field(Field::Remove { path: path() }),
        },
    ]
}

/// A number that is worked out from others.
pub(crate) fn worked_out(path: String, label: &str, value: String, help: &str) -> FieldRow {
    FieldRow {
        axis: None,
        path,
        label: label.to_owned(),
        value,
        unit: String::new(),
        echo: String::new(),
        help: help.to_owned(),
        if_empty: String::new(),
        range: String::new(),
        error: None,
        marked: false,
        kind: FieldKind::ReadOnly,
        actions: Vec::new(),
    }
}

/// The row of a number that is worked out for a group.
pub(crate) fn worked_row(path: String, number: Worked, value: String) -> FieldRow {
    let (label, help) = worked_words(number);
    worked_out(path, label, value, help)
}

/// The rows of the knee as it is measured; none without a folding brace.
pub(crate) fn knee_rows(state: &State, leg: usize) -> Vec<FieldRow> {
    let rows = MEASURES.into_iter().filter_map(|(measure, key)| {
        let path = measure_path(leg, key);
        let value = fields::shown(state.gear(), &path)?;
        let mut row = worked_row(path, worked_of(measure), String::new());
        row.kind = FieldKind::Number;
        number(state, Quantity::Length, value, || None, &mut row);
        Some(row)
    });
    rows.collect()
}

/// The row of the size of a whole leg, while its numbers are still to be put in.
pub(crate) fn size_row(state: &State, leg: usize) -> Option<FieldRow> {
    if !state.session.takes_along {
        return None;
    }
    let path = fields::size_path(leg);
    let value = fields::shown(state.gear(), &path)?;
    let mut row = worked_row(path, Worked::Size, String::new());
    row.kind = FieldKind::Number;
    number(state, Quantity::Length, value, || None, &mut row);
    Some(row)
}

fn worked_of(measure: Measure) -> Worked {
    match measure {
        Measure::Upper => Worked::UpperLink,
        Measure::Lower => Worked::LowerLink,
        Measure::Offset => Worked::OverCenter,
    }
}

/// The row of a tire's circumference, which stands for its diameter.
pub(crate) fn circumference(state: &State, diameter: Path) -> Option<FieldRow> {
    let of_diameter = diameter.to_string();
    let path = fields::circumference_of(&of_diameter)?;
    let value = fields::shown(state.gear(), &path)?;
    let mut row = worked_out(
        path,
        sayings::CIRCUMFERENCE,
        String::new(),
        sayings::CIRCUMFERENCE_HELP,
    );
    row.kind = FieldKind::Number;
    number(state, Quantity::Length, value, || None, &mut row);
    let range = diameter.field.info().range()?;
    row.range = range_text(Quantity::Length, range, PI, state.session.units);
    if typed_path(state, &of_diameter).is_some() {
        row.error = row.error.or_else(|| fault_of(state, diameter));
    }
    Some(row)
}
