//! What the browser tells of its storage.
use gearswing_report::page::storage as words;

use crate::effect::Effect;
use crate::state::{State, StoredStep, read_step};
use crate::view::NoticeKind;

impl State {
    /// Something is not stored, and why. However often, one notice stands for it.
    pub(crate) fn not_stored(&mut self, reason: String) {
        self.drop_refusal();
        let text = words::not_kept(&reason);
        let notice = self
            .session
            .notices
            .add(NoticeKind::Problem, text, Vec::new());
        self.files.refusal = Some(notice);
        self.files.refused = Some(reason);
    }

    fn drop_refusal(&mut self) {
        if let Some(id) = self.files.refusal.take() {
            self.session.notices.dismiss(id);
        }
    }

    /// Some of the work is not on the disk yet.
    pub(crate) fn is_being_kept(&self) -> bool {
        self.unsaved || self.files.kept < self.files.asked
    }

    /// What was asked for up to this ticket is on the disk.
    pub(super) fn kept(&mut self, ticket: u64) -> Vec<Effect> {
        self.files.kept = self.files.kept.max(ticket);
        if self.files.refused.take().is_some() {
            self.drop_refusal();
            self.session.notices.info(words::KEPT_AGAIN);
        }
        let own = self.files.open_id().is_some();
        if own && !std::mem::replace(&mut self.files.asked_to_stay, true) {
            return vec![Effect::AskToStay];
        }
        Vec::new()
    }

    /// The browser may clear what it keeps; told once, and never again on this browser.
    pub(super) fn may_be_cleared(&mut self) {
        if !std::mem::replace(&mut self.files.told_clearing, true) {
            self.session.notices.info(words::MAY_BE_CLEARED);
        }
    }

    /// The stored history of a file has been read.
    pub(super) fn take_steps(&mut self, id: &str, steps: Vec<StoredStep>) {
        let is_open = self.files.open_id() == Some(id);
        let Some(entry) = self
            .files
            .entry_mut(id)
            .filter(|entry| entry.steps.is_unread())
        else {
            return;
        };
        let aside = entry.aside.as_mut();
        let document = if is_open {
            Some(&mut self.document)
        } else {
            aside
        };
        // without a document it is read again when the file is opened
        let Some(document) = document else { return };
        entry.steps.found(&steps);
        document.take_up(steps.into_iter().filter_map(read_step).collect());
    }
}
