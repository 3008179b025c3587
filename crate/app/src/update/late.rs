//! What comes after the answers: asking for it, and taking it in.
use gearswing_report::page::working::{GIVEN_UP, WORK_OUT, failed};
use gearswing_report::save_error_text;

use super::settle::has_changed;
use crate::effect::Effect;
use crate::msg::{Late, Msg, View};
use crate::state::{Later, State};
use crate::view::NoticeKind;

pub(super) fn late(state: &mut State, msg: Late) {
    match msg {
        Late::Found { of, found } => state.later.take(of, *found),
        Late::Over { of } => state.later.over(of),
        Late::Failed { of, reason } => {
            let is_of_now = state.later.awaits(of);
            state.later.over(of);
            if is_of_now && !has_changed(state) {
                state.leave_late(&failed(&reason));
            }
        }
    }
}

impl State {
    /// Asks for what comes after the answers, where the document has changed in what it rests on.
    pub(super) fn ask_late(&mut self, effects: &mut Vec<Effect>) {
        let revision = self.revision();
        if !self.later.is_to_ask(self.document.gear(), revision) {
            return;
        }
        match self.gear_text() {
            Ok(text) => effects.push(Effect::WorkOut {
                of: revision,
                text: text.to_owned(),
            }),
            Err(error) => {
                let reason = save_error_text(&error);
                self.leave_late(&failed(&reason));
            }
        }
    }

    /// It does not come for this revision; the line says why, and offers to try.
    fn leave_late(&mut self, line: &str) {
        let revision = self.revision();
        self.given_up = Some(self.work());
        self.later.give_up(self.document.gear(), revision);
        self.session.notices.add_of_now(
            NoticeKind::Info,
            line,
            vec![(WORK_OUT.to_owned(), Msg::View(View::WorkOut))],
        );
    }

    /// Leaves what is not worked out yet; what is shown then is marked as being of an earlier state.
    pub(crate) fn give_up(&mut self) -> Vec<Effect> {
        if self.working.take().is_none() && self.later.work().is_none() {
            return Vec::new();
        }
        self.derived.revision = self.revision();
        self.leave_late(GIVEN_UP);
        vec![Effect::LeaveWork]
    }

    /// Works out after all what was given up.
    pub(crate) fn work_out(&mut self) {
        if self.given_up.take().is_some() {
            self.later = Later::default();
            let is_offer = |msg: &Msg| *msg == Msg::View(View::WorkOut);
            self.session.notices.all.retain(|notice| {
                let mut actions = notice.actions.iter();
                !actions.any(|(_, msg)| is_offer(msg))
            });
        }
    }
}
