//! The link.
use gearswing_gear::model::Point;
use gearswing_gearfile::link::{self, Shared, ViewState};
use gearswing_report::page::link as words;
use gearswing_report::page::sheets::Sheet;
use gearswing_report::{link_error_text, save_error_text};

use crate::effect::Effect;
use crate::msg::{File, Msg, Share};
use crate::scene::{Paper, Viewport};
use crate::state::{Document, LinkState, Origin, Parked, State};
use crate::view::{NoticeKind, unread};

pub(super) fn share(state: &mut State, msg: Share) -> Vec<Effect> {
    match msg {
        Share::CopyLink => copy_link(state),
        Share::Copied => {
            let text = words::copied(unread(state).count(), is_here_only(&state.files.address));
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
    }
}

impl State {
    fn link_text(&self) -> Result<String, String> {
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
        })
        .map_err(|error| save_error_text(&error))
    }

    /// Looks up how long the link would be.
    pub(crate) fn measure_link(&mut self) {
        self.files.link = match self.link_text() {
            Ok(code) => {
                let whole = format!("{}#{code}", self.files.address);
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
                let sentence = words::not_opened(&link_error_text(&error));
                self.session.notices.problem(sentence.clone());
                return vec![Effect::Announce { text: sentence }, Effect::ClearFragment];
            }
        };
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
                drafts: self.session.drafts.clone(),
                papers: self.session.papers.clone(),
            });
        }
        let received = shared.gear.without_kept();
        let compares = shared.gear.before.is_some();
        self.show(Document::new(shared.gear, 0), Origin::Link);
        self.files.received = Some(received);
        if compares {
            self.take_sheet(Sheet::Changes);
        }
        self.session.seek_worst = false;
        self.session.leg = shared.leg;
        self.session.progress = shared.progress;
        if let Ok(units) = shared.units.parse() {
            self.session.units = units;
        }
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
        Vec::new()
    }
}

/// Whether an address leads to this computer only: a page that is served here, or a file.
fn is_here_only(address: &str) -> bool {
    let Some((scheme, rest)) = address.split_once("://") else {
        return true;
    };
    let host = rest.split(['/', '?', '#']).next().unwrap_or_default();
    let name = match host.strip_prefix('[') {
        Some(six) => six.split(']').next().unwrap_or_default(),
        None => host.split(':').next().unwrap_or_default(),
    };
    let is_number = name
        .bytes()
        .all(|byte| byte.is_ascii_digit() || byte == b'.');
    // 0.0.0.0 is where a server listens, not where others find it
    let is_ours = name.starts_with("127.") || name == "0.0.0.0";
    let by_number = name == "::1" || is_ours && is_number;
    scheme == "file" || by_number || name == "localhost" || name.ends_with(".localhost")
}

fn copy_link(state: &mut State) -> Vec<Effect> {
    let code = match state.link_text() {
        Ok(code) => code,
        Err(reason) => {
            let text = words::no_link(&reason);
            let notices = &mut state.session.notices;
            notices.add_of_now(NoticeKind::Problem, text, Vec::new());
            return Vec::new();
        }
    };
    let text = format!("{}#{code}", state.files.address);
    if !link::fits(&text) {
        state.session.notices.add_of_now(
            NoticeKind::Problem,
            words::too_long(text.chars().count(), link::LINK_LIMIT),
            vec![(words::SAVE_FILE.to_owned(), Msg::File(File::Export))],
        );
        return Vec::new();
    }
    let mut effects = vec![Effect::CopyText { text }];
    if state.files.open_id().is_none() || *state.origin() == Origin::Link {
        effects.push(Effect::SetFragment { text: code });
    }
    effects
}

#[cfg(test)]
mod tests {
    use super::is_here_only;

    /// Loopback and "this host" by RFC 1122 section 3.2.1.3 (127/8, 0.0.0.0), RFC 4291 section 2.5.3 (::1), RFC 6761 section 6.3
    /// (localhost).
    #[test]
    fn an_address_of_this_computer_is_told() {
        for here in [
            "http://127.0.0.1:8080/",
            "http://127.9.9.9",
            "http://0.0.0.0:8000/",
            "http://localhost:8000/gear/",
            "http://gear.localhost/",
            "http://[::1]:8080/",
            "file:///srv/gear/index.html",
        ] {
            assert!(is_here_only(here), "{here}");
        }
        for away in [
            "https://example.org/localhost/",
            "https://localhost.example.org/",
            "http://192.168.1.20:8080/",
            "http://127.example.org/",
            "http://[2001:db8::1]/",
        ] {
            assert!(!is_here_only(away), "{away}");
        }
    }
}
