//! What somebody says about the gear.
use gearswing_gear::model::Note;
use gearswing_report::fields::path_words;
use gearswing_report::page::changes::{REMOVE, act_on};
use gearswing_report::page::notes as words;
use gearswing_report::page::transport::leg_at;

use super::page::{Action, ListRow};
use super::readout::shown_leg;
use crate::fields;
use crate::msg::{self, Msg};
use crate::scene;
use crate::state::State;

/// All notes, with what each hangs on.
pub(super) fn notes(state: &State) -> Vec<ListRow> {
    let all = state.gear().notes.iter().enumerate();
    all.map(|(at, note)| row(state, at, note)).collect()
}

/// Heading of a note: its number, as on its flag, and on what it hangs.
fn heading(state: &State, at: usize, note: &Note) -> String {
    let place = note.progress.and_then(|progress| {
        let good = state.derived.good(words::leg_at(note)?)?;
        Some(good.pose(progress)?.place)
    });
    let on = words::hangs_on(note, state.gear(), place.as_ref(), state.session.units);
    words::head(at + 1, &on)
}

fn row(state: &State, at: usize, note: &Note) -> ListRow {
    let name = heading(state, at, note);
    let action = |id: &str, label: &str, msg| Action {
        id: format!("note.{id}.{at}"),
        label: label.to_owned(),
        hint: act_on(label, &name),
        enabled: true,
        msg: Msg::Note(msg),
    };
    let mut actions = Vec::new();
    if name != words::head(at + 1, "") {
        actions.push(action("show", words::SHOW, msg::Note::Show { at }));
    }
    actions.push(action("remove", REMOVE, msg::Note::Remove { at }));
    ListRow {
        id: format!("note.{at}"),
        text: words::note_words(note),
        name,
        actions,
        ..ListRow::default()
    }
}

/// Hangs a note on the place of travel that is shown.
pub(super) fn add_here(state: &State) -> String {
    let place = super::controls::transport(state).travel;
    words::add_at(&leg_at(&shown_leg(state), &place))
}

/// Hangs it on what is selected; empty where nothing is.
pub(super) fn add_selected(state: &State) -> String {
    let Some(path) = state.session.selection.as_deref() else {
        return String::new();
    };
    let path = fields::point_of(path).unwrap_or(path);
    if fields::point(state.gear(), path).is_some() {
        return words::add_at(&scene::point_name(state.gear(), path));
    }
    let is_field = fields::shown(state.gear(), path).is_some()
        || fields::text(state.gear(), path).is_some()
        || fields::chosen(state.gear(), path).is_some();
    if is_field {
        words::add_at(&path_words(path, state.gear()))
    } else {
        String::new()
    }
}
