//! The link.
use gearswing_gear::model::Point;
use gearswing_gearfile::link::{self, LinkError, Shared, ViewState};
use gearswing_report::page::link::{self as words, Reach};
use gearswing_report::page::sheets::Sheet;
use gearswing_report::{link_error_text, save_error_text};
use gearswing_solver::result::Question;

use crate::effect::Effect;
use crate::msg::{File, Msg, Share};
use crate::scene::{self, Paper, Viewport};
use crate::state::{Document, LinkState, Origin, Parked, State, reach};
use crate::view::{NoticeKind, unread};

use super::one_file;

pub(super) fn share(state: &mut State, msg: Share) -> Vec<Effect> {
    match msg {
        Share::CopyLink => state.with_id(copy_link),
        Share::Copied => {
            let reach = reach(state.files.link_address());
            let text = words::copied(unread(state).count(), reach);
            let notices = &mut state.session.notices;
            notices.add_of_now(NoticeKind::Info, text.clone(), Vec::new());
            vec![Effect::Announce { text }]
        }
        Share::CopyFailed { reason } => {
            let text = words::not_copied(&reason);
            let notices = &mut state.session.notices;
            notices.add_of_now(NoticeKind::Problem, text, Vec::new());
            Vec::new()
        }
        Share::OpenLink { text } => state.open_link(&text),
        Share::SaveOneFile => state.with_id(one_file::save),
        Share::OneFileFailed { reason } => {
            let text = words::not_one_file(&reason);
            state.session.notices.problem(text);
            Vec::new()
        }
        Share::Home { text } => {
            one_file::home(state, &text);
            Vec::new()
        }
        Share::NewerWaits => {
            let take = (words::TAKE_NEWER.to_owned(), Msg::Share(Share::TakeNewer));
            let notices = &mut state.session.notices;
            notices.add(NoticeKind::Info, words::NEWER_WAITS, vec![take]);
            Vec::new()
        }
        Share::TakeNewer => vec![Effect::TakeNewer],
    }
}

impl State {
    /// The code of the gear as it is looked at.
    pub(crate) fn link_text(&self) -> Result<String, String> {
        let view = self
            .session
            .papers
            .get(&self.session.leg)
            .filter(|paper| !paper.fitted)
            .map(|paper| ViewState {
                centre: [paper.viewport.centre().x, paper.viewport.centre().y],
                width: paper.viewport.width(),
            });
        link::encode(&Shared {
            gear: self.gear().clone(),
            leg: self.session.leg,
            progress: self.session.progress,
            view,
            units: self.session.units.to_string(),
            sheet: match self.session.sheet {
                Sheet::Answers => String::new(),
                sheet => sheet.key().to_owned(),
            },
            curve: self.session.strip.map_or("", curve_key).to_owned(),
            down: self.session.way_down,
        })
        .map_err(|error| save_error_text(&error))
    }

    /// The code of the gear; where there is none, it is said why.
    pub(super) fn code_to_send(&mut self) -> Option<String> {
        let reason = match self.link_text() {
            Ok(code) => return Some(code),
            Err(reason) => reason,
        };
        let notices = &mut self.session.notices;
        notices.add_of_now(NoticeKind::Problem, words::no_link(&reason), Vec::new());
        None
    }

    /// What is copied to be sent: the link, or its code where the link would lead to this machine.
    fn link_or_code(&self, code: &str) -> String {
        match self.files.link_address() {
            address if reach(address) == Reach::Machine => code.to_owned(),
            address => format!("{address}#{code}"),
        }
    }

    /// Looks up how long the link would be.
    pub(crate) fn measure_link(&mut self) {
        self.files.link = match self.link_text() {
            Ok(code) => {
                let whole = self.link_or_code(&code);
                let length = whole.chars().count();
                if link::fits(&whole) {
                    LinkState::Ready(length)
                } else {
                    LinkState::TooLong(length)
                }
            }
            Err(reason) => LinkState::Refused(reason),
        };
    }

    /// Opens a link beside the own work.
    pub(crate) fn open_link(&mut self, text: &str) -> Vec<Effect> {
        if text.trim().is_empty() {
            return vec![Effect::Announce {
                text: words::PASTE_FIRST.to_owned(),
            }];
        }
        let shared = match link::decode(text) {
            Ok(shared) => shared,
            Err(error) => {
                // a page from a disk has no place to look for a newer one
                let looks = !self.files.address.starts_with("file:");
                let newer = match error {
                    LinkError::TooNew { version, known } if looks => {
                        link_code(text).map(|code| (code, version, known))
                    }
                    _ => None,
                };
                let (sentence, then) = match newer {
                    Some((code, version, known)) => {
                        let text = code.to_owned();
                        let then = vec![Effect::SetFragment { text }, Effect::LookForNewer];
                        (words::looking_for_newer(version, known), then)
                    }
                    None => {
                        let sentence = words::not_opened(&link_error_text(&error));
                        (sentence, vec![Effect::ClearFragment])
                    }
                };
                self.session.notices.problem(sentence.clone());
                let mut effects = vec![Effect::Announce { text: sentence }];
                effects.extend(then);
                return effects;
            }
        };
        self.bring(shared);
        Vec::new()
    }

    /// Shows what somebody has sent beside the own work.
    pub(crate) fn bring(&mut self, shared: Shared) {
        if *self.origin() == Origin::Link {
            // one link after the other: the own work stays parked
        } else {
            self.end_gesture();
            self.document.close();
            self.files.parked = Some(Parked {
                origin: self.origin().clone(),
                document: self.document.clone(),
                leg: self.session.leg,
                progress: self.session.progress,
                takes_along: self.session.takes_along,
                drafts: self.session.drafts.clone(),
                papers: self.session.papers.clone(),
            });
        }
        let received = shared.gear.without_kept();
        let compares = shared.gear.before.is_some();
        self.show(Document::new(shared.gear, 0), Origin::Link);
        self.files.received = Some(received);
        self.files.own = self.find_own(self.gear());
        let noted = !self.gear().notes.is_empty();
        if compares || noted {
            self.take_sheet(Sheet::Changes);
        } else if let Some(sheet) = Sheet::of_key(&shared.sheet) {
            self.take_sheet(sheet);
        }
        self.session.seek_worst = false;
        self.session.strip = scene::ANSWERS
            .into_iter()
            .find(|question| curve_key(*question) == shared.curve);
        self.session.way_down = shared.down;
        self.session.leg = shared.leg;
        self.session.progress = shared.progress;
        if let Some(view) = shared.view {
            let size = self.session.drawing_size_px;
            let centre = Point::new(view.centre[0], view.centre[1]);
            let viewport = Viewport::of_width(centre, view.width, size);
            self.session.papers.insert(
                shared.leg,
                Paper {
                    viewport,
                    fitted: false,
                },
            );
        }
        self.keep_in_bounds();
    }
}

/// Key of an answer, whose curve the strip shows, in a link.
fn curve_key(question: Question) -> &'static str {
    match question {
        Question::Clears => "clears",
        Question::Driven => "driven",
        Question::Locks => "locks",
    }
}

/// The code in the text of a link, where it is one that can stand in an address.
fn link_code(text: &str) -> Option<&str> {
    let code = text.rsplit('#').next()?.trim();
    let stands = |c: char| c.is_ascii_alphanumeric() || c == '-' || c == '_';
    (!code.is_empty() && code.chars().all(stands)).then_some(code)
}

fn copy_link(state: &mut State) -> Vec<Effect> {
    let Some(code) = state.code_to_send() else {
        return Vec::new();
    };
    let text = state.link_or_code(&code);
    // a code is put into a field, not pressed: no program cuts it
    let is_link = text != code;
    if is_link && !link::fits(&text) {
        state.session.notices.add_of_now(
            NoticeKind::Problem,
            words::too_long(text.chars().count(), link::LINK_LIMIT),
            vec![
                (
                    words::SAVE_ONE_FILE.to_owned(),
                    Msg::Share(Share::SaveOneFile),
                ),
                (words::SAVE_FILE.to_owned(), Msg::File(File::Export)),
            ],
        );
        return Vec::new();
    }
    let mut effects = vec![Effect::CopyText { text }];
    if state.files.open_id().is_none() || *state.origin() == Origin::Link {
        effects.push(Effect::SetFragment { text: code });
    }
    effects
}
