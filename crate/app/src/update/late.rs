//! What comes after the answers: asking for it, and taking it in.
use gearswing_report::page::working::{GIVEN_UP, WORK_OUT, failed};
use gearswing_report::save_error_text;

use crate::effect::Effect;
use crate::msg::{Late, Msg, View};
use crate::state::{Later, State};
use crate::view::NoticeKind;

pub(super) fn late(state: &mut State, msg: Late) {
    match msg {
        Late::Found { of, found } => state.later.take(of, *found),
        Late::Over { of } => state.later.over(of),
        Late::Failed { of, reason } => {
            if state.later.awaits(of) {
                state.later.fail();
                state.offer_late(NoticeKind::Problem, &failed(&reason));
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
                self.later.fail();
                self.offer_late(NoticeKind::Problem, &failed(&reason));
            }
        }
    }

    /// Says why something is not worked out, and offers to try.
    fn offer_late(&mut self, kind: NoticeKind, line: &str) {
        self.drop_offers();
        let offer = (WORK_OUT.to_owned(), Msg::View(View::WorkOut));
        self.session.notices.add_of_now(kind, line, vec![offer]);
    }

    fn drop_offers(&mut self) {
        let notices = &mut self.session.notices;
        notices.drop_offering(|msg| matches!(msg, Msg::View(View::WorkOut)));
    }

    /// Leaves what is not worked out yet; what is shown then is marked as being of an earlier state.
    pub(crate) fn give_up(&mut self) -> Vec<Effect> {
        if self.working.take().is_none() && self.later.work().is_none() {
            return Vec::new();
        }
        let revision = self.revision();
        self.derived.revision = revision;
        self.given_up = Some(self.revision());
        self.later.give_up(self.document.gear(), revision);
        self.offer_late(NoticeKind::Info, GIVEN_UP);
        vec![Effect::LeaveWork]
    }

    /// Works out after all what was given up.
    pub(crate) fn work_out(&mut self) {
        if self.given_up.take().is_some() || self.later.is_given_up() {
            self.later = Later::default();
            self.drop_offers();
        }
    }
}
