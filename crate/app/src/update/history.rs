//! Undo and redo.
use crate::effect::Effect;
use crate::msg::History;
use crate::state::State;

pub(super) fn history(state: &mut State, msg: History) -> Vec<Effect> {
    state.end_gesture();
    let done = match msg {
        History::Undo => state.document.undo().map(|text| format!("Undone: {text}.")),
        History::Redo => state.document.redo().map(|text| format!("Redone: {text}.")),
    };
    match done {
        Some(text) => {
            state.touch();
            vec![Effect::Announce { text }]
        }
        None => Vec::new(),
    }
}
