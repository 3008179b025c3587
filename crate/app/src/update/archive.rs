//! All files out into one, and back from it.
use gearswing_gearfile::{archive_text, read, read_archive, to_text};
use gearswing_report::page::files as words;
use gearswing_report::{archive_error_text, save_error_text};

use crate::effect::Effect;
use crate::state::{Entry, State, read_file};

use super::file::JSON;

/// Name of the file that holds all.
const NAME: &str = "all-airplanes.json";

/// Offers all files as one; the open one as it is shown, what cannot be read as it is stored.
pub(super) fn export(state: &mut State) -> Vec<Effect> {
    let open = state.files.open_id().map(str::to_owned);
    let shown = match state.gear_text() {
        Ok(text) => text.to_owned(),
        Err(error) => {
            let text = words::all_not_exported(&save_error_text(&error));
            state.session.notices.problem(text);
            return Vec::new();
        }
    };
    let mut texts: Vec<String> = Vec::new();
    if open.is_none() {
        texts.push(shown.clone());
    }
    for entry in &state.files.entries {
        texts.push(if open.as_ref() == Some(&entry.id) {
            shown.clone()
        } else if entry.broken.is_some() {
            entry.text.clone()
        } else {
            read_file(&entry.text).map_or_else(|_| entry.text.clone(), |stored| stored.gear_text)
        });
    }
    match archive_text(&texts) {
        Ok(text) => vec![Effect::Download {
            name: NAME.to_owned(),
            mime: JSON.to_owned(),
            text,
        }],
        Err(error) => {
            let text = words::all_not_exported(&save_error_text(&error));
            state.session.notices.problem(text);
            Vec::new()
        }
    }
}

/// Takes in a file that holds several; `None` where it is none of those. Each becomes a file of its
/// own, also one that cannot be read: it is listed and kept as it is.
pub(super) fn import(state: &mut State, name: &str, text: &str) -> Option<Vec<Effect>> {
    let texts = match read_archive(text)? {
        Ok(texts) => texts,
        Err(error) => {
            let text = words::not_imported(name, &archive_error_text(&error));
            state.session.notices.problem(text);
            return Some(Vec::new());
        }
    };
    let (mut effects, mut first, mut unread) = (Vec::new(), None, 0_usize);
    let count = texts.len();
    for text in texts {
        let ((id, whole), stored) = add(state, text);
        effects.extend(stored);
        if whole {
            first = first.or(Some(id));
        } else {
            unread += 1;
        }
    }
    if let Some(first) = first {
        state.set_aside();
        if state.open_entry(&first) {
            state.drop_shared();
        }
    }
    let text = words::several_imported(name, count, unread);
    state.session.notices.info(text);
    effects.push(Effect::ClearFragment);
    Some(effects)
}

/// A text as a file of its own, which is not opened: its key, whether it can be read, and its storing.
pub(super) fn add(state: &mut State, text: String) -> ((String, bool), Vec<Effect>) {
    let id = state.files.free_id();
    let named = named(state, &text);
    let whole = named.is_some();
    let entry = match named {
        Some((name, text)) => Entry {
            text,
            ..Entry::made(id.clone(), name)
        },
        None => Entry {
            steps: Entry::made(String::new(), String::new()).steps,
            ..Entry::stored(id.clone(), text)
        },
    };
    let stored = Effect::SaveFile {
        id: id.clone(),
        text: entry.text.clone(),
    };
    state.files.entries.push(entry);
    ((id, whole), vec![stored])
}

/// A gear file under a name that no other file has, and that name; `None` where it cannot be read.
fn named(state: &State, text: &str) -> Option<(String, String)> {
    let mut stored = read_file(text).ok()?;
    let mut gear = read(&stored.gear_text).ok()?;
    gear.name = state.files.free_name(&gear.name);
    stored.gear_text = to_text(&gear).ok()?;
    Some((gear.name, stored.to_text()))
}
