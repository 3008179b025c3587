//! Undo and redo.
use gearswing_report::page::history as words;

use crate::effect::Effect;
use crate::msg::History;
use crate::state::State;

pub(super) fn history(state: &mut State, msg: History) -> Vec<Effect> {
    state.end_gesture();
    let (say, done): (fn(&str) -> String, _) = match msg {
        History::Undo => (words::undone, state.document.undo()),
        History::Redo => (words::redone, state.document.redo()),
    };
    match done {
        Some(Ok(step)) => {
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
