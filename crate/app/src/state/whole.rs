//! Everything together, and how it begins.
use gearswing_gear::model::{ClearanceRule, Conditions, Fluid, Gear, PointsFrom, Supply};
use gearswing_gearfile::{DEMO, SaveError};
use gearswing_report::page::files;
use gearswing_report::page::header::tab_title;
use gearswing_report::page::names::leg_title;
use gearswing_report::page::working::Work;
use gearswing_report::{Program, open_error_text};
use gearswing_solver::numeric::sort_by;

use super::before::{Before, Beside};
use super::derived::Derived;
use super::document::Document;
use super::files::{Entry, Files, Origin};
use super::later::Later;
use super::session::Session;
use super::start::Start;
use super::storage::{Index, read_index};
use crate::effect::Effect;
use crate::msg::{File, Msg};
use crate::view::NoticeKind;

/// Everything.
#[derive(Clone, Debug)]
pub struct State {
    /// The build that runs.
    pub(crate) program: Program<'static>,
    /// What is looked at, typed and selected.
    pub session: Session,
    pub(crate) document: Document,
    pub(crate) derived: Derived,
    /// Results of the kept state that is compared with.
    pub(crate) before: Before,
    /// Results of every kept state, while they are looked at.
    pub(crate) beside: Beside,
    /// The gear against time, and what explains stops.
    pub(crate) later: Later,
    pub(crate) files: Files,
    /// The document or its drafts changed since they were last stored.
    pub(crate) unsaved: bool,
    /// Something was changed or typed here since the document was opened.
    pub(crate) touched: bool,
    /// Revision whose text the page has for the case of a breakdown.
    pub(crate) recovery_revision: u64,
    /// The gear file, and the revision that it is of; 0 = none yet.
    pub(crate) gear_text: (u64, String),
    /// What is being worked out, if not all is.
    pub(crate) working: Option<Work>,
    /// What the person has given up to work out, by its revision.
    pub(crate) given_up: Option<u64>,
    /// Revision whose name the browser's tab shows.
    pub(crate) titled_revision: u64,
    /// Revision for which the link was last made.
    pub(crate) link_revision: u64,
}

impl State {
    /// The state at the start, with what has to be done first. Call [`crate::settle`] next, as
    /// after every update.
    #[must_use]
    pub fn new(start: Start) -> (Self, Vec<Effect>) {
        let (gear, demo_error) = demo();
        let mut state = Self {
            program: start.program,
            session: Session {
                reduced_motion: start.reduced_motion,
                seek_worst: true,
                drawing_size_px: (640.0, 480.0),
                curves_width_px: 640.0,
                strip_size_px: (640.0, 112.0),
                detail_px: 160.0,
                ..Session::default()
            },
            document: Document::new(gear, 1),
            derived: Derived::default(),
            before: Before::default(),
            beside: Beside::default(),
            later: Later::default(),
            files: Files::new(start.address),
            unsaved: false,
            touched: false,
            recovery_revision: 0,
            gear_text: (0, String::new()),
            working: None,
            given_up: None,
            titled_revision: 0,
            link_revision: 0,
        };
        state.files.revisions = 1;
        state.files.spare_id = start.chance.map(gearswing_gear::model::GearId);
        if let Some(error) = demo_error {
            state.session.notices.problem(error);
        }
        if let Some(reason) = start.storage_refused {
            state.not_stored(reason);
        }
        let mut effects = Vec::new();
        let index = state.take_index(start.index, &mut effects);
        state.files.home = index.home.clone().unwrap_or(start.home);
        state.take_files(&index, start.files);
        let wanted = index.open.as_deref();
        let open = state
            .files
            .entries
            .iter()
            .find(|entry| entry.broken.is_none() && Some(entry.id.as_str()) == wanted)
            .or_else(|| {
                state
                    .files
                    .entries
                    .iter()
                    .find(|entry| entry.broken.is_none() && wanted.is_some())
            })
            .map(|entry| entry.id.clone());
        if let Some(id) = open {
            state.open_entry(&id);
        } else if !state.files.entries.is_empty() {
            state.session.notices.info(files::OWN_FILES);
        }
        if let Some(fragment) = start.fragment.filter(|fragment| !fragment.is_empty()) {
            let made = start.given.then(|| state.file_made_from(&fragment, wanted));
            match made.flatten() {
                Some(id) => {
                    state.open_entry(&id);
                }
                None => effects.extend(state.open_link(&fragment)),
            }
        }
        if let Some(line) = &start.looking {
            state.look_at(line);
        }
        effects.extend(state.steps_wanted());
        effects.push(Effect::SetTheme(state.session.theme));
        effects.push(state.title());
        effects.extend(state.recovery());
        (state, effects)
    }

    /// The gear as it is.
    #[must_use]
    pub fn gear(&self) -> &Gear {
        self.document.gear()
    }

    /// How a leg is called.
    pub(crate) fn leg_title(&self, leg: usize) -> String {
        let name = self.gear().legs.get(leg).map_or("", |leg| &leg.name);
        leg_title(name, leg)
    }

    /// Rises with every change of the gear; results are of [`State::settled_revision`].
    #[must_use]
    pub fn revision(&self) -> u64 {
        self.document.revision()
    }

    /// Revision that the results are of.
    #[must_use]
    pub fn settled_revision(&self) -> u64 {
        self.derived.revision
    }

    pub(crate) fn title(&self) -> Effect {
        Effect::SetTitle {
            text: tab_title(&self.gear().name),
        }
    }

    /// The document's text for the page, once for each revision.
    pub(crate) fn recovery(&mut self) -> Option<Effect> {
        if self.recovery_revision == self.document.revision() {
            return None;
        }
        self.recovery_revision = self.document.revision();
        let text = self.gear_text().ok()?.to_owned();
        Some(Effect::RecoveryText { text })
    }

    /// The gear file of the document as it is, made once for each revision.
    pub(crate) fn gear_text(&mut self) -> Result<&str, SaveError> {
        let revision = self.document.revision();
        if self.gear_text.0 != revision {
            self.gear_text = (revision, gearswing_gearfile::to_text(self.document.gear())?);
        }
        Ok(&self.gear_text.1)
    }

    /// The stored index; one that cannot be read is kept as a file of its own.
    fn take_index(&mut self, text: Option<String>, effects: &mut Vec<Effect>) -> Index {
        let Some(text) = text else {
            return Index::default();
        };
        match read_index(&text) {
            Ok(index) => {
                self.session.units = index.units;
                self.session.theme = index.theme;
                self.files.told_clearing = index.told_clearing;
                self.files.typed_home.clone_from(&index.home);
                self.files.index_text = text;
                index
            }
            Err(reason) => {
                let id = "kept-index".to_owned();
                let notice = files::list_unreadable(&reason, &id);
                self.session.notices.problem(notice);
                self.files.entries.push(Entry {
                    text: text.clone(),
                    broken: Some(reason),
                    ..Entry::made(id.clone(), files::KEPT_LIST.to_owned())
                });
                effects.push(Effect::SaveFile { id, text });
                Index::default()
            }
        }
    }

    /// Stored files in the order of the index; files that it does not name come behind.
    fn take_files(&mut self, index: &Index, files: Vec<super::StoredFile>) {
        let place = |id: &str| index.order.iter().position(|known| known == id);
        let mut files = files;
        let key = |file: &super::StoredFile| place(&file.id).unwrap_or(usize::MAX);
        sort_by(&mut files, |a, b| {
            key(a).cmp(&key(b)).then_with(|| a.id.cmp(&b.id))
        });
        for file in files {
            if self.files.entry(&file.id).is_some() {
                continue;
            }
            let entry = Entry::stored(file.id, file.text);
            if let Some(reason) = &entry.broken {
                let text = files::stored_unreadable(&entry.id, reason);
                let export = Msg::File(File::ExportStored {
                    id: entry.id.clone(),
                });
                self.session.notices.add(
                    NoticeKind::Problem,
                    text,
                    vec![(files::SAVE_TEXT.to_owned(), export)],
                );
            }
            self.files.entries.push(entry);
        }
    }

    /// A document that no result and no recovery text belongs to yet.
    pub(crate) fn fresh_revision(&mut self) -> u64 {
        // far enough from anything that the open document counts up to
        self.files.revisions = self.files.revisions.max(self.document.revision()) + 1;
        self.files.revisions
    }

    /// Where the document came from is stored: its key.
    pub(crate) fn origin(&self) -> &Origin {
        &self.files.origin
    }
}

/// The demo; should it not open, an empty gear and the reason.
pub(crate) fn demo() -> (Gear, Option<String>) {
    match DEMO.gear() {
        Ok(gear) => (gear, None),
        Err(error) => {
            let gear = Gear {
                id: None,
                name: String::new(),
                note: String::new(),
                legs: Vec::new(),
                conditions: Conditions::default(),
                supply: Supply::constant(0.0),
                fluid: Fluid::default(),
                clearance_rule: ClearanceRule::default(),
                emergency_way: None,
                emergency_pump: None,
                friction_times_required: None,
                points_from: PointsFrom::Airplane,
                kept: Vec::new(),
                notes: Vec::new(),
                before: None,
            };
            (gear, Some(files::demo_unreadable(&open_error_text(&error))))
        }
    }
}
