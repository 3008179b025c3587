//! Gear files.
use gearswing_gear::model::GearId;
use gearswing_gearfile::link::Shared;
use gearswing_gearfile::{find_example, read, to_text};
use gearswing_report::page::files as words;
use gearswing_report::page::history::{Step, step_words};
use gearswing_report::page::paper::NO_PICTURE;
use gearswing_report::page::sheets::Sheet;
use gearswing_report::{open_error_text, save_error_text};
use gearswing_units::UnitSystem;

use crate::effect::Effect;
use crate::msg::{File, Msg};
use crate::paper::drawing_svg;
use crate::state::{Act, Document, Entry, Origin, State, demo, read_file};
use crate::view::NoticeKind;

use super::archive;

/// Media type of a gear file.
pub(super) const JSON: &str = "application/json";

pub(super) fn file(state: &mut State, msg: File) -> Vec<Effect> {
    match msg {
        File::New { starter } => new(state, &starter),
        File::Open { id } => open(state, &id),
        File::OpenDemo => {
            state.set_aside();
            state.drop_shared();
            state.show(Document::new(demo().0, 0), Origin::Demo);
            return vec![Effect::ClearFragment];
        }
        File::Rename { name } => {
            state.edit(Act::single(step_words(Step::Rename)), |gear| {
                gear.name = name;
                Some(())
            });
        }
        File::Chance { bytes } => state.files.spare_id = Some(GearId(bytes)),
        File::Duplicate | File::AnotherAirplane => {
            let (mut gear, takes_along) = (state.gear().clone(), state.session.takes_along);
            if matches!(msg, File::AnotherAirplane) {
                gear.id = None;
            }
            state.add_file(gear);
            state.session.takes_along = takes_along;
            return vec![Effect::ClearFragment];
        }
        File::Delete { id } => return delete(state, &id),
        File::BringBack => return bring_back(state),
        File::Export => return state.with_id(export),
        File::SavePicture => return save_picture(state),
        File::ExportAll => return archive::export(state),
        File::ExportStored { id } => {
            return state
                .files
                .entry(&id)
                .map(|entry| Effect::Download {
                    name: format!("{}.txt", file_stem(&entry.name)),
                    mime: "text/plain".to_owned(),
                    text: entry.text.clone(),
                })
                .into_iter()
                .collect();
        }
        File::ImportText { name, text } => return import(state, &name, &text),
        File::ImportFailed { name, reason } => {
            let text = words::unreadable(&name, &reason);
            state.session.notices.problem(text);
        }
        File::KeepShared => return keep_shared(state),
        File::LeaveShared => return leave_shared(state),
        File::NotStored { reason } => state.not_stored(reason),
        File::Kept { ticket } => return state.kept(ticket),
        File::Steps { id, steps } => state.take_steps(&id, steps),
        File::MayBeCleared => state.may_be_cleared(),
        File::NotWritten { id, text } => {
            // what is open and changed here goes on as a file of its own, in its newest state
            if state.files.open_id() != Some(&id) || !state.touched {
                return archive::add(state, text).1;
            }
        }
        File::StoredElsewhere { id, text } => stored_elsewhere(state, &id, text),
    }
    Vec::new()
}

fn new(state: &mut State, starter: &str) {
    let Some(example) = find_example(starter) else {
        return;
    };
    let gear = match state.session.units.system {
        UnitSystem::Inch => example.gear_in_inches(),
        UnitSystem::Metric => example.gear(),
    };
    match gear {
        Ok(gear) => {
            state.add_file(gear);
            // its numbers are to be put in, the place of its trunnion first
            state.session.takes_along = true;
            state.take_sheet(Sheet::Measurements);
        }
        Err(error) => state
            .session
            .notices
            .problem(words::example_unreadable(&open_error_text(&error))),
    }
}

pub(super) fn open(state: &mut State, id: &str) {
    if state.files.open_id() == Some(id) {
        return;
    }
    state.set_aside();
    if state.open_entry(id) {
        state.drop_shared();
    }
}

fn delete(state: &mut State, id: &str) -> Vec<Effect> {
    let Some(at) = state.files.entries.iter().position(|entry| entry.id == id) else {
        return Vec::new();
    };
    if state.files.open_id() == Some(id) {
        state.set_aside();
        let next = state
            .files
            .entries
            .iter()
            .find(|entry| entry.id != id && entry.broken.is_none())
            .map(|entry| entry.id.clone());
        let opened = next.is_some_and(|next| state.open_entry(&next));
        if !opened {
            state.show(Document::new(demo().0, 0), Origin::Demo);
        }
    }
    let entry = state.files.entries.remove(at);
    if state
        .files
        .parked
        .as_ref()
        .is_some_and(|parked| parked.origin == Origin::Stored(id.to_owned()))
        && let Some(parked) = &mut state.files.parked
    {
        parked.origin = Origin::Demo;
        parked.document = Document::new(demo().0, 0);
    }
    state.session.notices.add(
        NoticeKind::Info,
        words::deleted(&entry.name),
        vec![(words::BRING_BACK.to_owned(), Msg::File(File::BringBack))],
    );
    state.files.deleted.push(entry);
    vec![Effect::DeleteFile { id: id.to_owned() }]
}

fn bring_back(state: &mut State) -> Vec<Effect> {
    let Some(entry) = state.files.deleted.pop() else {
        return Vec::new();
    };
    let notices = &mut state.session.notices;
    notices.drop_offering(|msg| matches!(msg, Msg::File(File::BringBack)));
    let (id, text) = (entry.id.clone(), entry.text.clone());
    state.files.entries.push(entry);
    state.set_aside();
    if state.open_entry(&id) {
        state.drop_shared();
    }
    vec![Effect::SaveFile { id, text }]
}

/// Name fit for a file on any disk.
pub(super) fn file_stem(name: &str) -> String {
    // beyond ASCII all but Latin signs, spaces, and marks that are not seen
    let parts = |c: char| match c {
        '\0'..='\x7f' => !c.is_ascii_alphanumeric(),
        '\u{80}'..='\u{bf}'
        | '\u{61c}'
        | '\u{2000}'..='\u{206f}'
        | '\u{fe00}'..='\u{feff}'
        | '\u{fff0}'..='\u{ffff}' => true,
        _ => false,
    };
    let words = name.split(parts);
    let words: Vec<&str> = words.filter(|word| !word.is_empty()).collect();
    let stem: String = words.join("-").chars().take(60).collect();
    let stem = stem.trim_end_matches('-');
    if stem.is_empty() {
        "gear".to_owned()
    } else {
        stem.to_owned()
    }
}

fn export(state: &mut State) -> Vec<Effect> {
    match to_text(state.gear()) {
        Ok(text) => vec![Effect::Download {
            name: format!("{}.json", file_stem(&state.gear().name)),
            mime: JSON.to_owned(),
            text,
        }],
        Err(error) => {
            state
                .session
                .notices
                .problem(words::not_exported(&save_error_text(&error)));
            Vec::new()
        }
    }
}

fn save_picture(state: &mut State) -> Vec<Effect> {
    let Some(text) = drawing_svg(state) else {
        state.session.notices.problem(NO_PICTURE);
        return Vec::new();
    };
    vec![Effect::Download {
        name: format!(
            "{}-{}.svg",
            file_stem(&state.gear().name),
            file_stem(&state.leg_title(state.session.leg))
        ),
        mime: "image/svg+xml".to_owned(),
        text,
    }]
}

/// Opens an imported text as a new file; a text stored by this program is understood as well.
fn import(state: &mut State, name: &str, text: &str) -> Vec<Effect> {
    if let Some(effects) = archive::import(state, name, text) {
        return effects;
    }
    let opened = match read_file(text) {
        Ok(stored) => read(&stored.gear_text),
        Err(_) => read(text),
    };
    match opened {
        // what somebody sends back of a gear of one's own stands beside it, as what a link brings
        Ok(gear) if state.is_of_own(&gear) => {
            state.bring(Shared::of(gear));
            vec![Effect::ClearFragment]
        }
        Ok(gear) => {
            state.add_file(gear);
            let text = words::imported(name, &state.gear().name);
            state.session.notices.info(text);
            vec![Effect::ClearFragment]
        }
        Err(error) => {
            let text = words::not_imported(name, &open_error_text(&error));
            state.session.notices.problem(text);
            Vec::new()
        }
    }
}

fn keep_shared(state: &mut State) -> Vec<Effect> {
    if *state.origin() == Origin::Link {
        // storing makes it a file of its own
        state.unsaved = true;
    }
    Vec::new()
}

pub(super) fn leave_shared(state: &mut State) -> Vec<Effect> {
    if *state.origin() != Origin::Link {
        return Vec::new();
    }
    match state.files.parked.take() {
        Some(parked) => {
            state.show(parked.document, parked.origin);
            state.session.leg = parked.leg;
            state.session.progress = parked.progress;
            state.session.takes_along = parked.takes_along;
            state.session.drafts = parked.drafts;
            state.session.papers = parked.papers;
            state.session.seek_worst = false;
        }
        None => state.show(Document::new(demo().0, 0), Origin::Demo),
    }
    vec![Effect::ClearFragment]
}

/// Another window stored a file: nothing of either side may be lost.
fn stored_elsewhere(state: &mut State, id: &str, text: String) {
    let is_open = state.files.open_id() == Some(id);
    let Some(entry) = state.files.entry_mut(id) else {
        let entry = Entry::stored(id.to_owned(), text);
        state.files.entries.push(entry);
        return;
    };
    if entry.text == text {
        return;
    }
    *entry = Entry::stored(id.to_owned(), text);
    if !is_open {
        return;
    }
    if !state.touched {
        state.open_entry(id);
        state.session.notices.info(words::CHANGED_ELSEWHERE);
    } else {
        // the next store makes what is shown here a file of its own
        state.files.origin = Origin::Demo;
        state.unsaved = true;
        state.session.notices.info(words::CHANGED_IN_BOTH);
    }
}
