//! What somebody says about the gear.
use gearswing_gear::model::{MOST_NOTES, Note as Said};
use gearswing_report::page::history::{Step, step_words};
use gearswing_report::page::notes as words;
use gearswing_report::page::sheets::Sheet;

use crate::effect::Effect;
use crate::fields;
use crate::msg::{Field, HangOn, Note};
use crate::state::{Act, State};

/// Most letters of a note, and of a name.
const MOST_LETTERS: usize = 200;
const MOST_OF_NAME: usize = 40;

pub(super) fn note(state: &mut State, msg: Note) -> Vec<Effect> {
    match msg {
        Note::Add { text, by, on } => return add(state, &text, &by, on),
        Note::Show { at } => return show(state, at),
        Note::Remove { at } => {
            state.edit(Act::single(step_words(Step::Note)), |gear| {
                (at < gear.notes.len())
                    .then(|| gear.notes.remove(at))
                    .map(drop)
            });
        }
    }
    Vec::new()
}

fn add(state: &mut State, text: &str, by: &str, on: HangOn) -> Vec<Effect> {
    let cut = |text: &str, most: usize| text.trim().chars().take(most).collect::<String>();
    let text = cut(text, MOST_LETTERS);
    if text.is_empty() {
        return told(words::NO_TEXT);
    }
    if state.gear().notes.len() >= MOST_NOTES {
        let text = words::too_many(MOST_NOTES);
        state.session.notices.problem(text.clone());
        return told(&text);
    }
    let leg = state.session.leg;
    let (on, progress) = match on {
        HangOn::Gear => (String::new(), None),
        HangOn::Here => (format!("legs[{leg}]"), Some(state.session.progress)),
        HangOn::Selected => {
            let selected = state.session.selection.as_deref();
            let point = selected.map(|path| fields::point_of(path).unwrap_or(path));
            (point.unwrap_or_default().to_owned(), None)
        }
    };
    let said = Said {
        text,
        by: cut(by, MOST_OF_NAME),
        on,
        progress,
    };
    state.edit(Act::single(step_words(Step::Note)), |gear| {
        gear.notes.push(said.clone());
        Some(())
    });
    state.take_sheet(Sheet::Changes);
    Vec::new()
}

fn told(text: &str) -> Vec<Effect> {
    let text = text.to_owned();
    vec![Effect::Announce { text }]
}

fn show(state: &mut State, at: usize) -> Vec<Effect> {
    let Some(said) = state.gear().notes.get(at).cloned() else {
        return Vec::new();
    };
    if let Some(leg) = words::leg_at(&said) {
        state.select_leg(leg);
        state.session.playing = None;
        if let Some(progress) = said.progress {
            state.session.progress = progress;
        }
        return Vec::new();
    }
    if let Some(leg) = fields::leg_of(&said.on) {
        state.select_leg(leg);
    }
    if fields::point(state.gear(), &said.on).is_some() {
        state.select(&said.on);
        return Vec::new();
    }
    super::field::field(state, Field::Show { path: said.on })
}
