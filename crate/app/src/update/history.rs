//! Undo and redo.
use crate::effect::Effect;
use crate::msg::History;
use crate::state::State;

pub(super) fn history(state: &mut State, msg: History) -> Vec<Effect> {
    state.end_gesture();
    let (word, done) = match msg {
        History::Undo => ("Undone", state.document.undo()),
        History::Redo => ("Redone", state.document.redo()),
    };
    match done {
        Some(Ok(text)) => {
            state.touch();
            let text = format!("{word}: {text}.");
            vec![Effect::Announce { text }]
        }
        Some(Err(_)) => {
            state.touch();
            let text =
                "This step and those before it cannot be read any more. The gear is as it was.";
            state.session.notices.problem(text);
            Vec::new()
        }
        None => Vec::new(),
    }
}
