//! Fields and lists.
use gearswing_gear::field::Field::Knee;
use gearswing_gear::model::{Gear, View, renumbered};
use gearswing_report::fields::path_words;
use gearswing_report::page::fields as sayings;
use gearswing_report::page::history::{Step, step_words};
use gearswing_report::page::names::leg_title;
use gearswing_units::{Quantity, StepSize, format_field, parse};

use crate::effect::Effect;
use crate::fields::{self, Room};
use crate::msg::Field;
use crate::scene;
use crate::state::{Act, Draft, State};
use crate::view::NoticeKind;

use super::pasted::{pair, paste};
use super::tire::{keep_tire, take_tire};

pub(super) fn field(state: &mut State, msg: Field) -> Vec<Effect> {
    match msg {
        Field::Focus { path } => focus(state, &path),
        Field::Show { path } => return show(state, &path),
        Field::Draft { path, text } => draft(state, path, text),
        Field::Commit { path } => return commit(state, &path),
        Field::Revert { path } => revert(state, &path),
        Field::Step { path, up, size } => return step(state, &path, up, size),
        Field::Choose { path, option } => {
            if let Some(tire) = path.strip_suffix(crate::view::SIZE_TABLE) {
                take_tire(state, tire.trim_end_matches('.'), &option);
                return Vec::new();
            }
            let act = changing(state, &path);
            // A source that was there before comes back with its figures.
            let source = state.document.latest(|gear| {
                let is_it = fields::chosen(gear, SOURCE) == Some(option.as_str());
                is_it.then_some(gear.supply.source)
            });
            state.edit(act, |gear| {
                fields::choose(gear, &path, &option)?;
                if path == SOURCE {
                    gear.supply.source = source.unwrap_or(gear.supply.source);
                }
                Some(())
            });
        }
        Field::Switch { path, option, on } => {
            let act = changing(state, &path);
            state.edit(act, |gear| fields::switch(gear, &path, &option, on));
        }
        Field::Add { path } => return add(state, &path),
        Field::AddMirrorImage { leg } => {
            let added = |gear: &mut Gear| fields::add_mirror_image(gear, leg);
            return add_entry(state, &format!("legs[{leg}]"), added);
        }
        Field::TurnSwing { leg } => {
            let path = gearswing_gear::field::Field::SwingUp
                .of_leg(leg)
                .to_string();
            let act = changing(state, &path);
            state.edit(act, |gear| {
                let swing = &mut gear.legs.get_mut(leg)?.swing_up;
                *swing = -*swing;
                Some(())
            });
        }
        Field::TakeAlong { on } => {
            state.session.takes_along = on;
            state.unsaved |= state.files.open_id().is_some();
        }
        Field::Alike { on, follow } => state.change_alike(on, follow),
        Field::Paste { path, text } => return paste(state, &path, &text),
        Field::Remove { path } => return remove(state, &path),
        Field::TakeTire { path, size } => take_tire(state, &path, &size),
        Field::KeepTire { leg } => return keep_tire(state, leg),
    }
    Vec::new()
}

/// Path of the choice of the supply's source.
const SOURCE: &str = "supply.source";

/// A change of the field at a path, in words.
fn changing(state: &State, path: &str) -> Act {
    Act::single(changed(&path_words(path, state.gear())))
}

/// A change of a field of this name, in words.
fn changed(name: &str) -> String {
    step_words(Step::Change { of: name })
}

fn focus(state: &mut State, path: &str) {
    if let Some(leg) = fields::leg_of(path) {
        state.select_leg(leg);
    }
    if fields::shown(state.gear(), path).is_some()
        || fields::text(state.gear(), path).is_some()
        || fields::chosen(state.gear(), path).is_some()
    {
        state.select(path);
    }
}

fn show(state: &mut State, path: &str) -> Vec<Effect> {
    if let Some(leg) = fields::leg_of(path) {
        state.select_leg(leg);
    }
    state.select(path);
    let sheet = crate::view::sheet_of_group(state.session.open_group.as_deref());
    state.take_sheet(sheet);
    let first = match fields::point_of(path) {
        Some(point) if fields::point(state.gear(), point).is_some() => format!("{point}[0]"),
        _ if fields::points(state.gear(), path).is_some() => format!("{path}[0][0]"),
        _ => path.to_owned(),
    };
    let first = match fields::path(&first) {
        Some(at) if at.field == Knee && fields::is_measured(state.gear(), at.leg) => {
            fields::measure_path(at.leg, fields::MEASURES[0].1)
        }
        _ => first,
    };
    vec![Effect::FocusField { path: first }]
}

fn draft(state: &mut State, path: String, text: String) {
    if fields::text(state.gear(), &path).is_some() {
        let words = path_words(&path, state.gear());
        let act = Act::going_on(format!("typing:{path}"), changed(&words));
        state.edit(act, |gear| fields::set_text(gear, &path, &text).ok());
        return;
    }
    let Some(over) = fields::shown(state.gear(), &path) else {
        return;
    };
    state.session.drafts.insert(
        path,
        Draft {
            text,
            units: state.session.units,
            over,
            committed: false,
        },
    );
    state.touch();
}

pub(super) fn commit(state: &mut State, path: &str) -> Vec<Effect> {
    let open = state.document.open_act();
    if open == Some(format!("typing:{path}").as_str())
        || open == Some(format!("steps:{path}").as_str())
    {
        state.document.close();
    }
    let Some(draft) = state.session.drafts.get(path).cloned() else {
        return Vec::new();
    };
    if draft.committed {
        return Vec::new();
    }
    state.touch();
    let (Some(quantity), Some(stored)) =
        (fields::quantity(path), fields::shown(state.gear(), path))
    else {
        state.session.drafts.remove(path);
        return Vec::new();
    };
    // The rounded text of a field, typed again, is no change.
    if let Some(stored) = stored
        && draft.text.trim() == format_field(quantity, state.session.units, stored)
    {
        state.session.drafts.remove(path);
        return Vec::new();
    }
    let act = changing(state, path);
    if draft.text.trim().is_empty()
        && let Some(value) = fields::when_empty(path)
    {
        state.session.drafts.remove(path);
        state.edit(act, |gear| fields::set_shown(gear, path, value).ok());
        return Vec::new();
    }
    if let Some(known) = state.session.drafts.get_mut(path) {
        known.committed = true;
    }
    match parse(quantity, draft.units, &draft.text) {
        Ok(read) if fields::set_shown(&mut state.gear().clone(), path, Some(read.si)).is_err() => {
            state.session.drafts.remove(path);
            state.session.notices.problem(sayings::CANNOT_BE);
            let text = sayings::CANNOT_BE.to_owned();
            vec![Effect::Announce { text }]
        }
        Ok(read) => {
            let side = state.side_of(path);
            state.edit_place(act, path, |gear| {
                fields::set_shown(gear, path, Some(read.si)).ok()
            });
            // what the typed text now stands for
            let over = fields::shown(state.gear(), path).flatten();
            // told with another sign than it was typed, as on the other side of the center line
            let turned = over.is_some_and(|over| over != 0.0 && over.signum() != read.si.signum());
            if turned {
                state.session.drafts.remove(path);
            } else if let Some(known) = state.session.drafts.get_mut(path) {
                known.over = over;
            }
            state.say_side(path, side);
            Vec::new()
        }
        Err(_) if fields::point_of(path).is_some() && pair(&draft.text, draft.units).is_some() => {
            paste(state, path, &draft.text)
        }
        Err(error) => {
            let step = state.document.last_step();
            let known = &mut state.session.not_taken;
            known.retain(|(other, _)| other != path);
            known.push((path.to_owned(), step));
            vec![Effect::Announce {
                text: sayings::not_taken(&error.to_string()),
            }]
        }
    }
}

impl State {
    /// On which side of the center line the leg of a path has its trunnion.
    fn side_of(&self, path: &str) -> f64 {
        let leg = fields::leg_of(path).and_then(|leg| self.gear().legs.get(leg));
        leg.map_or(0.0, |leg| leg.trunnion.x)
    }

    /// Says that a leg seen from ahead has come to the other side: what was told out is told the other way now.
    fn say_side(&mut self, path: &str, before: f64) {
        let Some(leg) = fields::leg_of(path) else {
            return;
        };
        let Some(model) = self.gear().legs.get(leg) else {
            return;
        };
        if model.view == View::Front && before * model.trunnion.x < 0.0 {
            let name = leg_title(&model.name, leg);
            let notices = &mut self.session.notices;
            notices.add_of_now(NoticeKind::Info, sayings::other_side(&name), Vec::new());
        }
    }
}

fn revert(state: &mut State, path: &str) {
    if state.document.open_act() == Some(format!("typing:{path}").as_str()) {
        state.document.give_up();
        state.touch();
    }
    if state.session.drafts.remove(path).is_some() {
        state.touch();
    }
}

fn step(state: &mut State, path: &str, up: bool, size: StepSize) -> Vec<Effect> {
    let (Some(quantity), Some(stored)) =
        (fields::quantity(path), fields::shown(state.gear(), path))
    else {
        return Vec::new();
    };
    let typed = state
        .session
        .drafts
        .get(path)
        .filter(|draft| !draft.committed)
        .and_then(|draft| parse(quantity, draft.units, &draft.text).ok());
    let from = typed.map(|read| read.si).or(stored).unwrap_or(0.0);
    let value = quantity.nudged(state.session.units, from, size, up);
    state.session.drafts.remove(path);
    state.touch();
    let words = path_words(path, state.gear());
    let act = Act::going_on(format!("steps:{path}"), changed(&words));
    state.edit_place(act, path, |gear| {
        fields::set_shown(gear, path, Some(value)).ok()
    });
    Vec::new()
}

fn add(state: &mut State, path: &str) -> Vec<Effect> {
    let view = scene::paper_of(state).viewport;
    let step = Quantity::Length.step(state.session.units).coarse;
    let room = Room {
        middle: view.centre(),
        // a twelfth of what is seen, in whole coarse steps
        half: ((view.width().min(view.height()) / 12.0 / step).round() * step).max(step),
    };
    add_entry(state, path, |gear| fields::add(gear, path, room))
}

/// Adds an entry to the list at a path and shows it, the typed texts of those behind it going with them.
fn add_entry(
    state: &mut State,
    path: &str,
    new: impl FnOnce(&mut Gear) -> Option<String>,
) -> Vec<Effect> {
    let list = path_words(path, state.gear());
    let act = Act::single(step_words(Step::Add { to: &list }));
    state.end_gesture();
    let Some(added) = state.edit(act, new) else {
        return Vec::new();
    };
    if let Some((list, at)) = fields::entry(&added) {
        shift_drafts(state, list, at, true);
    }
    match fields::leg_of(&added) {
        Some(leg) if added == format!("legs[{leg}]") => {
            state.session.papers.clear();
            state.select_leg(leg);
        }
        Some(leg) => state.select_leg(leg),
        None => {}
    }
    state.select(&added);
    vec![Effect::Announce {
        text: sayings::added(&path_words(&added, state.gear())),
    }]
}

fn remove(state: &mut State, path: &str) -> Vec<Effect> {
    let words = path_words(path, state.gear());
    let act = Act::single(step_words(Step::Remove { of: &words }));
    state.end_gesture();
    if state.edit(act, |gear| fields::remove(gear, path)).is_none() {
        return Vec::new();
    }
    if let Some((list, at)) = fields::entry(path) {
        shift_drafts(state, list, at, false);
        if list == "legs" {
            state.session.papers.clear();
        }
    }
    state.session.selection = None;
    vec![Effect::Announce {
        text: sayings::removed(&words),
    }]
}

/// Typed texts go with the entries of a list that move by one.
fn shift_drafts(state: &mut State, list: &str, at: usize, inserted: bool) {
    let drafts = std::mem::take(&mut state.session.drafts);
    let kept = drafts.into_iter().filter_map(|(path, draft)| {
        let path = renumbered(&path, list, at, !inserted)?;
        Some((path, draft))
    });
    for (path, draft) in kept {
        state.session.drafts.insert(path, draft);
    }
}
