//! Which message goes where, and what every message ends with.
use crate::effect::Effect;
use crate::msg::Msg;
use crate::state::State;

use super::{
    compare, field, file, history, key, late, note, play, pointer, share, strip, times, view,
};

/// Does what a message asks for; what has to be done outside comes back in order.
pub fn update(state: &mut State, msg: Msg) -> Vec<Effect> {
    let mut effects = match msg {
        Msg::Pointer(msg) => pointer::pointer(state, msg),
        Msg::CurvePointer(msg) => pointer::curve_pointer(state, msg),
        Msg::StripPointer(msg) => strip::strip(state, msg),
        Msg::Key(msg) => key::key(state, msg),
        Msg::Field(msg) => field::field(state, msg),
        Msg::View(msg) => view::view(state, msg),
        Msg::Play(msg) => play::play(state, msg),
        Msg::Times(msg) => times::times(state, msg),
        Msg::Compare(msg) => compare::compare(state, msg),
        Msg::Note(msg) => note::note(state, msg),
        Msg::File(msg) => file::file(state, msg),
        Msg::Share(msg) => share::share(state, msg),
        // no deed of a person, and no change of the document: nothing is to be stored
        Msg::Late(msg) => {
            late::late(state, msg);
            return Vec::new();
        }
        Msg::History(msg) => history::history(state, msg),
        Msg::Frame { time_s } => {
            let mut effects = play::frame(state, time_s);
            effects.extend(times::frame(state, time_s));
            effects
        }
    };
    state.keep_in_bounds();
    effects.extend(state.store());
    if effects.iter().any(Effect::stores) {
        state.files.asked += 1;
        let ticket = state.files.asked;
        effects.push(Effect::TellKept { ticket });
    }
    effects.extend(state.recovery());
    effects
}

impl State {
    /// A leg that is gone is no longer looked at.
    pub(crate) fn keep_in_bounds(&mut self) {
        let legs = self.gear().legs.len();
        self.session.leg = self.session.leg.min(legs.saturating_sub(1));
        if !self.session.progress.is_finite() {
            self.session.progress = 0.0;
        }
        self.leave_changes();
    }
}
