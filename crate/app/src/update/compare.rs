//! States kept to compare with, and taking back what has changed since.
use gearswing_gear::field::{Group, Place, take_back};
use gearswing_gear::model::{Gear, Kept, MOST_KEPT, MOST_NOTES, Note, PREVIOUS_TIRE};
use gearswing_report::page::changes as words;
use gearswing_report::page::history::{Step, step_words};
use gearswing_report::page::link::Own;
use gearswing_report::page::notes;
use gearswing_report::page::sheets::Sheet;
use gearswing_report::{changed_place, name_words};

use crate::effect::Effect;
use crate::fields;
use crate::msg::Compare;
use crate::state::{Act, Origin, State};
use crate::view::NoticeKind;

pub(super) fn compare(state: &mut State, msg: Compare) -> Vec<Effect> {
    state.end_gesture();
    let act = |step: Step| Act::single(step_words(step));
    match msg {
        Compare::Keep => return state.with_id(keep),
        Compare::WithOwn => return with_own(state),
        Compare::With { state: which } => {
            let which = which.filter(|at| *at < state.gear().kept.len());
            // what is looked at: no step, and no change of what a link has brought
            state.document.amend_present(|gear| gear.before = which);
            state.unsaved |= state.files.open_id().is_some();
        }
        Compare::Rename { name } => {
            state.edit(act(Step::RenameKept), |gear| rename(gear, name.trim()));
        }
        Compare::Remove { state: at } => {
            let kept = state.gear().kept.get(at);
            let of = kept.map_or_else(String::new, |kept| name_words(&kept.name));
            state.edit(act(Step::Remove { of: &of }), |gear| remove(gear, at));
        }
        Compare::TakeBack { place } => take(state, place),
        Compare::TakeAllBack => {
            state.edit(act(Step::TakeAllBack), |gear| {
                let before = gear.state_before()?;
                let sent = before.sent;
                let old = gear.without_kept();
                *gear = Gear {
                    name: gear.name.clone(),
                    note: gear.note.clone(),
                    notes: gear.notes.clone(),
                    id: gear.id,
                    kept: gear.kept.clone(),
                    before: gear.before,
                    ..(*before.gear).clone()
                };
                fields::keep_notes(&old, gear);
                if sent {
                    for leg in &mut gear.legs {
                        let mut own = old.legs.iter();
                        if let Some(own) = own.find(|own| own.name == leg.name) {
                            leg.seen_stop.clone_from(&own.seen_stop);
                        }
                    }
                }
                Some(())
            });
        }
    }
    Vec::new()
}

/// A name that no kept state has: `name`, with a number behind it if need be.
fn free_name(gear: &Gear, name: &str) -> String {
    fields::free_name(name, gear.kept.iter().map(|kept| kept.name.as_str()))
}

/// Gives the state compared with another name; one without a name could not be told from others.
fn rename(gear: &mut Gear, name: &str) -> Option<()> {
    let at = gear.before.filter(|_| !name.is_empty())?;
    // its own name is free for it
    gear.kept.get_mut(at)?.name.clear();
    let free = free_name(gear, name);
    gear.kept.get_mut(at)?.name = free;
    Some(())
}

/// Compares with one more state.
fn push(gear: &mut Gear, kept: Kept) {
    gear.kept.push(kept);
    gear.before = Some(gear.kept.len() - 1);
}

/// What a link brought is somebody else's state of the own file.
fn with_own(state: &mut State) -> Vec<Effect> {
    let own = state.files.own.take();
    let Some(own) = own.filter(|_| *state.origin() == Origin::Link) else {
        return Vec::new();
    };
    let brought = state.gear().clone();
    let effects = super::file::leave_shared(state);
    super::file::open(state, &own.id);
    let refused = if state.files.open_id() != Some(&own.id) {
        Some(words::OWN_IS_GONE.to_owned())
    } else if state.gear().kept.len() >= MOST_KEPT {
        Some(words::too_many(MOST_KEPT))
    } else {
        None
    };
    if let Some(text) = refused {
        state.session.notices.problem(text);
        return effects;
    }
    if own.how == Own::Seems && state.gear().id.is_none() {
        // from now on they are known to be of one gear
        state.document.amend_present(|gear| gear.id = brought.id);
    }
    let name = free_name(state.gear(), words::SENT);
    let mut left = 0;
    state.edit(Act::single(step_words(Step::Keep)), |gear| {
        let kept = Kept {
            sent: true,
            ..Kept::of(&brought, name)
        };
        push(gear, kept);
        // what is said stays with what it is said of
        let said = brought
            .notes
            .iter()
            .filter(|note| !gear.notes.contains(note));
        let said: Vec<Note> = said.cloned().collect();
        gear.notes.extend(said);
        left = gear.notes.len().saturating_sub(MOST_NOTES);
        gear.notes.truncate(MOST_NOTES);
        Some(())
    });
    if left > 0 {
        let text = notes::left_out(left, MOST_NOTES);
        state.session.notices.problem(text);
    }
    state.take_sheet(Sheet::Changes);
    effects
}

fn keep(state: &mut State) -> Vec<Effect> {
    if let Some(text) = keep_once(state) {
        return tell(state, text);
    }
    if state.gear().kept.len() >= MOST_KEPT {
        let text = words::too_many(MOST_KEPT);
        state.session.notices.problem(text.clone());
        return vec![Effect::Announce { text }];
    }
    let kept = state.gear().kept.iter();
    let number = kept.filter(|kept| kept.name != PREVIOUS_TIRE).count() + 1;
    let name = free_name(state.gear(), &words::state_name(number));
    state.edit(Act::single(step_words(Step::Keep)), |gear| {
        let kept = Kept::of(gear, name.clone());
        push(gear, kept);
        Some(())
    });
    tell(state, words::kept(&name))
}

/// Says something of the gear as it is, on the page and aloud.
fn tell(state: &mut State, text: String) -> Vec<Effect> {
    let notices = &mut state.session.notices;
    notices.add_of_now(NoticeKind::Info, text.clone(), Vec::new());
    vec![Effect::Announce { text }]
}

/// Compares with the kept state that is as the gear is now, if there is one; what is said then.
fn keep_once(state: &mut State) -> Option<String> {
    let gear = state.gear();
    let same = |kept: &Kept| gearswing_gear::field::changes(gear, &kept.gear).is_empty();
    let at = gear.kept.iter().position(same)?;
    let name = gear.kept.get(at)?.name.clone();
    state.document.amend_present(|gear| gear.before = Some(at));
    Some(words::kept_already(&name))
}

fn remove(gear: &mut Gear, at: usize) -> Option<()> {
    if at >= gear.kept.len() {
        return None;
    }
    gear.kept.remove(at);
    gear.before = match gear.before {
        Some(before) if before == at => None,
        Some(before) if before > at => Some(before - 1),
        before => before,
    };
    Some(())
}

fn take(state: &mut State, place: Place) {
    let Some(before) = state.gear().state_before().map(|kept| kept.gear.clone()) else {
        return;
    };
    let of = changed_place(place, state.gear());
    state.edit(Act::single(step_words(Step::Change { of: &of })), |gear| {
        let old = gear.without_kept();
        take_back(place, gear, &before)?;
        fields::keep_notes(&old, gear);
        Some(())
    });
}

/// Whether a place is of what was seen on the jacks.
fn is_seen(place: Place) -> bool {
    match place {
        Place::Legs => false,
        Place::Field(path) | Place::List(path) => path.field.info().group == Group::Seen,
    }
}

impl State {
    /// Keeps what a link brought, as it is first changed, in the present and in its history: so whoever sent it sees
    /// what was changed.
    pub(crate) fn keep_received(&mut self) {
        let Some(received) = self.files.received.take() else {
            return;
        };
        let kept = &self.gear().kept;
        if kept.len() < MOST_KEPT && !kept.iter().any(|kept| *kept.gear == received) {
            let name = free_name(self.gear(), words::AS_RECEIVED);
            let kept = Kept::of(&received, name);
            self.document.amend(|gear| push(gear, kept.clone()));
        }
    }

    /// What differs from the state compared with.
    pub(crate) fn changes(&self) -> Vec<gearswing_gear::field::Change> {
        let gear = self.gear();
        let Some(before) = gear.state_before() else {
            return Vec::new();
        };
        let mut found = gearswing_gear::field::changes(gear, &before.gear);
        if before.sent {
            // what was seen on the jacks is one's own: an adviser who has not seen it has changed nothing of it
            found.retain(|change| !is_seen(change.place));
        }
        found
    }

    /// The sheet of what has changed goes with the last kept state.
    pub(crate) fn leave_changes(&mut self) {
        let gear = self.gear();
        let none = gear.kept.is_empty() && gear.notes.is_empty();
        if self.session.sheet == Sheet::Changes && none {
            self.session.sheet = Sheet::default();
        }
    }
}
