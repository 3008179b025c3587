//! Undo and redo.
use gearswing_report::fields::path_words;
use gearswing_report::page::history::{self as words, Step, step_words};

use crate::effect::Effect;
use crate::msg::History;
use crate::state::State;
use crate::view::unread;

pub(super) fn history(state: &mut State, msg: History) -> Vec<Effect> {
    state.end_gesture();
    if matches!(msg, History::Undo)
        && let Some(path) = state.entry_to_undo().map(str::to_owned)
    {
        return take_back(state, &path);
    }
    let (say, done): (fn(&str) -> String, _) = match msg {
        History::Undo => (words::undone, state.document.undo()),
        History::Redo => (words::redone, state.document.redo()),
    };
    match done {
        Some(Ok(step)) => {
            state.session.notices.changed();
            state.touch();
            vec![Effect::Announce { text: say(&step) }]
        }
        Some(Err(_)) => {
            state.touch();
            state.session.notices.problem(words::STEPS_LOST);
            Vec::new()
        }
        None => Vec::new(),
    }
}

/// Takes an entry back that was not taken: the number that is in use stands there again.
fn take_back(state: &mut State, path: &str) -> Vec<Effect> {
    state.session.drafts.remove(path);
    state.session.not_taken.retain(|(other, _)| other != path);
    state.touch();
    let step = step_words(Step::Entry {
        of: &path_words(path, state.gear()),
    });
    vec![Effect::Announce {
        text: words::undone(&step),
    }]
}

impl State {
    /// Path of the last entry that was not taken, where no step was made since, or those made are undone.
    pub(crate) fn entry_to_undo(&self) -> Option<&str> {
        let step = self.document.last_step();
        let mut since = self.session.not_taken.iter().rev();
        let (path, _) = since
            .find(|(path, then)| *then == step && unread(self).any(|(other, _)| other == path))?;
        Some(path)
    }
}
