//! Lines of text about what happened.
use gearswing_report::brief;

use crate::msg::Msg;
use crate::view::NoticeKind;

/// Most notices shown; older ones go.
const MOST: usize = 6;

/// One notice.
#[derive(Clone, Debug, PartialEq)]
pub(crate) struct NoticeData {
    pub(crate) id: u64,
    pub(crate) kind: NoticeKind,
    pub(crate) text: String,
    /// It is of the gear as it is, and goes with the next change.
    pub(crate) of_now: bool,
    /// Label and message of each press.
    pub(crate) actions: Vec<(String, Msg)>,
}

/// All notices, newest first.
#[derive(Clone, Debug, Default)]
pub(crate) struct Notices {
    pub(crate) all: Vec<NoticeData>,
    last: u64,
}

impl Notices {
    /// Adds a notice; the same text twice stands once.
    pub(crate) fn add(
        &mut self,
        kind: NoticeKind,
        text: impl Into<String>,
        actions: Vec<(String, Msg)>,
    ) -> u64 {
        let text = brief(&text.into());
        self.all.retain(|notice| notice.text != text);
        self.last += 1;
        self.all.insert(
            0,
            NoticeData {
                id: self.last,
                kind,
                text,
                of_now: false,
                actions,
            },
        );
        self.all.truncate(MOST);
        self.last
    }

    /// For information.
    pub(crate) fn info(&mut self, text: impl Into<String>) {
        self.add(NoticeKind::Info, text, Vec::new());
    }

    /// Something did not work.
    pub(crate) fn problem(&mut self, text: impl Into<String>) {
        self.add(NoticeKind::Problem, text, Vec::new());
    }

    /// Adds a notice of the gear as it is: it goes with the next change.
    pub(crate) fn add_of_now(
        &mut self,
        kind: NoticeKind,
        text: impl Into<String>,
        actions: Vec<(String, Msg)>,
    ) {
        self.add(kind, text, actions);
        if let Some(newest) = self.all.first_mut() {
            newest.of_now = true;
        }
    }

    /// Drops the notices that offer a press of such a message.
    pub(crate) fn drop_offering(&mut self, is_such: impl Fn(&Msg) -> bool) {
        self.all.retain(|notice| {
            let mut actions = notice.actions.iter();
            !actions.any(|(_, msg)| is_such(msg))
        });
    }

    /// The gear has changed.
    pub(crate) fn changed(&mut self) {
        self.all.retain(|notice| !notice.of_now);
    }

    pub(crate) fn dismiss(&mut self, id: u64) {
        self.all.retain(|notice| notice.id != id);
    }
}
