//! Opening, storing and setting aside of gear files.
use gearswing_gear::field::{Field, move_leg};
use gearswing_gear::model::Gear;
use gearswing_gearfile::{SaveError, read};
use gearswing_report::page::{files, link, storage};
use gearswing_report::{open_error_text, save_error_text};

use super::pairs;
use crate::effect::Effect;
use crate::state::{Act, Document, Entry, Gesture, Hover, Later, Origin, State, Stored, read_file};
use crate::view::unread;

impl State {
    /// Changes the gear as one act, and stores it as soon as the act is done.
    pub(crate) fn edit<T>(
        &mut self,
        act: Act,
        change: impl FnOnce(&mut Gear) -> Option<T>,
    ) -> Option<T> {
        let before = self.document.revision();
        let alike = self.session.alike;
        let mut parted = None;
        let done = self.document.edit(act, |gear| {
            if alike == Some(false) {
                return change(gear);
            }
            let before = pairs::pairs(gear);
            let done = change(gear)?;
            parted = before.parted(gear, alike == Some(true));
            Some(done)
        });
        if self.document.revision() != before {
            self.session.notices.changed();
            self.touch();
            self.ask_alike(parted);
        }
        done
    }

    /// [`State::edit`] of what stands at a path: a trunnion takes its leg along where that is wanted.
    pub(crate) fn edit_place(
        &mut self,
        act: Act,
        at: &str,
        change: impl FnOnce(&mut Gear) -> Option<()>,
    ) {
        let trunnion = crate::fields::path(at)
            .filter(|path| self.session.takes_along && path.field == Field::Trunnion)
            .map(|path| (path.leg, path.point()));
        self.edit(act, |gear| {
            let before = trunnion.and_then(|(_, point)| point.at(gear));
            change(gear)?;
            if let (Some((leg, point)), Some(before)) = (trunnion, before) {
                let now = point.at(gear)?;
                move_leg(gear, leg, now - before);
                // it has moved twice
                point.set_point(gear, now).ok()?;
            }
            Some(())
        });
    }

    /// Something of the person's own is to be stored.
    pub(crate) fn touch(&mut self) {
        self.unsaved = true;
        self.touched = true;
    }

    /// Stores what has changed; a document that was not a stored file becomes one.
    pub(crate) fn store(&mut self) -> Vec<Effect> {
        let mut effects = Vec::new();
        // what is not a file yet becomes one when the drag ends: it may still be given up
        let dragging = matches!(self.session.gesture, Gesture::Drag { .. });
        if self.unsaved && !(dragging && self.files.open_id().is_none()) {
            self.unsaved = false;
            self.files.revisions = self.files.revisions.max(self.document.revision());
            if self.files.open_id().is_none() {
                effects.extend(self.become_a_file());
            }
            effects.extend(self.save_open());
        }
        effects.extend(self.save_steps());
        effects.extend(self.save_index());
        effects.extend(self.steps_wanted());
        effects
    }

    fn become_a_file(&mut self) -> Option<Effect> {
        let was_link = *self.origin() == Origin::Link;
        let id = self.files.free_id();
        let name = self.gear().name.clone();
        let free = self.files.free_name(&name);
        let entry = Entry::made(id.clone(), free.clone());
        self.files.entries.push(entry);
        if free != name {
            self.document.rename(&free);
        }
        self.files.origin = Origin::Stored(id);
        if was_link {
            if self.touched {
                self.keep_received();
            }
            self.set_parked_aside();
            self.session.notices.info(link::kept_as(&free));
            return Some(Effect::ClearFragment);
        }
        None
    }

    /// The file that was open before a link keeps its history.
    fn set_parked_aside(&mut self) {
        if let Some(parked) = self.files.parked.take()
            && let Origin::Stored(id) = &parked.origin
            && let Some(entry) = self.files.entry_mut(id)
        {
            entry.aside = Some(parked.document);
        }
    }

    /// What is stored for the open document.
    pub(crate) fn stored_text(&mut self) -> Result<String, SaveError> {
        let gear_text = self.gear_text()?.to_owned();
        let next = self.document.next_number();
        Ok(Stored {
            drafts: self.session.drafts.clone(),
            next_step: if next > 1 { next } else { 0 },
            takes_along: self.session.takes_along,
            gear_text,
        }
        .to_text())
    }

    fn save_open(&mut self) -> Option<Effect> {
        let id = self.files.open_id()?.to_owned();
        let text = match self.stored_text() {
            Ok(text) => text,
            Err(error) => {
                let text = storage::change_not_stored(&save_error_text(&error));
                self.session.notices.problem(text);
                return None;
            }
        };
        let name = self.gear().name.clone();
        let entry = self.files.entry_mut(&id)?;
        entry.name = name;
        if entry.text == text {
            return None;
        }
        entry.text.clone_from(&text);
        Some(Effect::SaveFile { id, text })
    }

    /// What has changed of the history of the open file; only once its text is stored.
    fn save_steps(&mut self) -> Option<Effect> {
        let id = self.files.open_id()?.to_owned();
        let entry = self
            .files
            .entry_mut(&id)
            .filter(|entry| !entry.text.is_empty())?;
        let change = entry.steps.update(&self.document)?;
        Some(Effect::SaveSteps {
            id,
            fresh: change.fresh,
            put: change.put,
            gone: change.gone,
        })
    }

    /// The stored history that is to be read.
    pub(crate) fn steps_wanted(&mut self) -> Option<Effect> {
        let id = self.files.wants_steps.take()?;
        Some(Effect::LoadSteps { id })
    }

    fn save_index(&mut self) -> Option<Effect> {
        let text = crate::state::index_text(self);
        if text == self.files.index_text {
            return None;
        }
        self.files.index_text.clone_from(&text);
        Some(Effect::SaveIndex { text })
    }

    /// Puts the open document aside with its history, if it is a stored file.
    pub(crate) fn set_aside(&mut self) {
        self.end_gesture();
        self.document.close();
        let document = self.document.clone();
        if let Some(id) = self.files.open_id().map(str::to_owned)
            && let Some(entry) = self.files.entry_mut(&id)
        {
            entry.aside = Some(document);
        }
    }

    /// Shows another document.
    pub(crate) fn show(&mut self, mut document: Document, origin: Origin) {
        let revision = self.fresh_revision();
        document.set_revision(revision);
        self.document = document;
        self.files.origin = origin;
        self.later = Later::default();
        self.files.received = None;
        self.files.own = None;
        let session = &mut self.session;
        session.leg = 0;
        session.progress = 0.0;
        session.selection = None;
        session.papers.clear();
        session.strip = None;
        session.way_down = false;
        session.takes_along = false;
        session.alike = None;
        session.stepped = None;
        session.drag_text.clear();
        session.clock.at_s = None;
        session.drafts.clear();
        session.not_taken.clear();
        session.notices.changed();
        session.playing = None;
        session.gesture = Gesture::Idle;
        session.snapped = None;
        session.hover = Hover::Off;
        session.seek_worst = true;
        self.derived = Default::default();
        self.unsaved = false;
        self.touched = false;
    }

    /// Opens a stored file; false, with a notice, when it cannot be read.
    pub(crate) fn open_entry(&mut self, id: &str) -> bool {
        let Some(entry) = self.files.entry_mut(id) else {
            return false;
        };
        let aside = entry.aside.take();
        let opened = read_file(&entry.text).and_then(|stored| {
            let gear = read(&stored.gear_text).map_err(|error| open_error_text(&error))?;
            Ok((stored, gear))
        });
        match opened {
            Ok((stored, gear)) => {
                let document = aside
                    .filter(|document| *document.gear() == gear)
                    .unwrap_or_else(|| Document::new(gear, 0).numbered_from(stored.next_step));
                if entry.steps.is_unread() {
                    self.files.wants_steps = Some(id.to_owned());
                }
                self.show(document, Origin::Stored(id.to_owned()));
                self.session.drafts = stored.drafts;
                self.session.takes_along = stored.takes_along;
                self.take_typed();
                // in what order they were made is not kept: they stand before every step
                let left: Vec<_> = unread(self)
                    .map(|(path, _)| (path.to_owned(), None))
                    .collect();
                self.session.not_taken = left;
                self.keep_in_bounds();
                true
            }
            Err(reason) => {
                entry.broken = Some(reason.clone());
                let text = files::not_opened(&reason);
                self.session.notices.problem(text);
                false
            }
        }
    }

    /// Enters what was still being typed when the page was left, where it can be read.
    fn take_typed(&mut self) {
        let typed: Vec<String> = self
            .session
            .drafts
            .iter()
            .filter(|(_, draft)| !draft.committed)
            .map(|(path, _)| path.clone())
            .collect();
        for path in typed {
            super::field::commit(self, &path);
        }
    }

    /// A gear as a new stored file, shown at once.
    pub(crate) fn add_file(&mut self, mut gear: Gear) {
        self.set_aside();
        self.drop_shared();
        gear.name = self.files.free_name(&gear.name);
        let id = self.files.free_id();
        let entry = Entry::made(id.clone(), gear.name.clone());
        self.files.entries.push(entry);
        self.show(Document::new(gear, 0), Origin::Stored(id));
        self.unsaved = true;
    }

    /// Leaves what a link brought; own work that was parked is a stored file or the demo.
    pub(crate) fn drop_shared(&mut self) {
        self.set_parked_aside();
    }
}
