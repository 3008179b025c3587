//! The mark of a gear, and which of the own files is of the same gear as what somebody has sent.
use gearswing_gear::field::changes;
use gearswing_gear::model::Gear;
use gearswing_gearfile::read;
use gearswing_report::page::link::Own;

use crate::effect::Effect;
use crate::state::{OwnFile, State, read_file};

/// Trunnions no further apart are the same (m).
const SAME_PLACE: f64 = 1e-3;

impl State {
    /// Gives the gear its mark, as it is first kept or shared.
    pub(crate) fn give_id(&mut self) -> Vec<Effect> {
        if self.gear().id.is_some() {
            return Vec::new();
        }
        if let Some(id) = self.files.spare_id.take() {
            self.document.amend_present(|gear| gear.id = Some(id));
            // what is no file does not become one by it
            self.unsaved |= self.files.open_id().is_some();
        }
        vec![Effect::DrawChance]
    }

    /// Does something with the gear that has its mark from then on.
    pub(crate) fn with_id(&mut self, then: fn(&mut Self) -> Vec<Effect>) -> Vec<Effect> {
        let mut effects = self.give_id();
        effects.extend(then(self));
        effects
    }

    /// Whether an imported gear is another version of an own file, and none of these as it is.
    pub(crate) fn is_of_own(&self, gear: &Gear) -> bool {
        let marked = self.marked(gear);
        !marked.is_empty() && !marked.iter().any(|(_, own)| is_as(own, gear))
    }

    /// The own files with the mark of a gear: that which was open first.
    fn marked(&self, gear: &Gear) -> Vec<(String, Gear)> {
        if gear.id.is_none() {
            return Vec::new();
        }
        let parked = self.parked_own();
        let parked = parked.map(|(id, own)| (id.to_owned(), own.clone()));
        let stored = self.files.entries.iter().filter_map(|entry| {
            let stored = read_file(&entry.text).ok()?;
            Some((entry.id.clone(), read(&stored.gear_text).ok()?))
        });
        let mut all: Vec<(String, Gear)> = parked.into_iter().chain(stored).collect();
        all.retain(|(_, own)| own.id == gear.id);
        all
    }

    /// The own file that was open before what was sent.
    fn parked_own(&self) -> Option<(&str, &Gear)> {
        let parked = self.files.parked.as_ref()?;
        Some((parked.origin.stored_id()?, parked.document.gear()))
    }

    /// The own file of the gear that was brought: by its mark, of several the one that it answers, or the one that was
    /// open where its legs have the same names and trunnions.
    pub(crate) fn find_own(&self, brought: &Gear) -> Option<OwnFile> {
        let found = |id: String, own: &Gear, how| OwnFile {
            id,
            name: own.name.clone(),
            how,
        };
        let marked = self.marked(brought);
        let mut ranked = marked.iter().map(|(id, own)| (id, own, how(own, brought)));
        let answered = ranked.find(|(_, _, how)| *how == Own::AsItIs);
        let first = || marked.first().map(|(id, own)| (id, own, how(own, brought)));
        if let Some((id, own, how)) = answered.or_else(first) {
            return Some(found(id.clone(), own, how));
        }
        let (at, own) = self.parked_own()?;
        let unmarked = brought.id.is_none() || own.id.is_none();
        let kept = brought.kept.iter().map(|kept| &*kept.gear);
        let alike = std::iter::once(brought)
            .chain(kept)
            .any(|state| has_the_legs_of(state, own));
        (unmarked && alike).then(|| found(at.to_owned(), own, Own::Seems))
    }
}

/// How an own file stands to a gear with its mark. What the file itself keeps says nothing of what was answered.
fn how(own: &Gear, brought: &Gear) -> Own {
    if is_as(own, brought) {
        return Own::Same;
    }
    let is_own = |state: &Gear| own.kept.iter().any(|kept| is_as(&kept.gear, state));
    let mut states = brought.kept.iter().map(|kept| &*kept.gear);
    if states.clone().any(|state| is_as(own, state)) {
        Own::AsItIs
    } else if states.any(|state| !is_own(state)) {
        Own::Changed
    } else {
        Own::Same
    }
}

/// Whether no number of one differs from the other, whatever they are called.
fn is_as(gear: &Gear, other: &Gear) -> bool {
    changes(gear, other).is_empty()
}

fn has_the_legs_of(gear: &Gear, other: &Gear) -> bool {
    let pairs = || gear.legs.iter().zip(&other.legs);
    gear.legs.len() == other.legs.len()
        && pairs().all(|(a, b)| {
            a.name.trim().eq_ignore_ascii_case(b.name.trim())
                && (a.trunnion - b.trunnion).norm() < SAME_PLACE
        })
}
