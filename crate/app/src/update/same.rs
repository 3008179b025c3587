//! The mark of a gear, and which of the own files is of the same gear as what somebody has sent.
use gearswing_gear::model::Gear;
use gearswing_gearfile::read;
use gearswing_report::page::link::Own;

use crate::effect::Effect;
use crate::state::{Origin, OwnFile, State, read_file};

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

    /// Whether some own file has the mark of a gear.
    pub(crate) fn is_of_own(&self, gear: &Gear) -> bool {
        gear.id.is_some() && self.marked(gear).is_some()
    }

    /// The stored file with the mark of a gear.
    fn marked(&self, gear: &Gear) -> Option<(&str, Gear)> {
        self.files.entries.iter().find_map(|entry| {
            let stored = read_file(&entry.text).ok()?;
            let own = read(&stored.gear_text).ok()?;
            (own.id == gear.id).then_some((entry.id.as_str(), own))
        })
    }

    /// The own file of the gear that was brought: by its mark, or the one that was open where its legs have the same
    /// names and trunnions.
    pub(crate) fn find_own(&self, brought: &Gear) -> Option<OwnFile> {
        let found = |id: &str, own: &Gear, is_sure: bool| OwnFile {
            id: id.to_owned(),
            name: own.name.clone(),
            how: match brought.kept.iter().any(|kept| is_of(own, &kept.gear)) {
                _ if !is_sure => Own::Seems,
                true => Own::AsItIs,
                false if brought.kept.is_empty() => Own::Same,
                false => Own::Changed,
            },
        };
        let parked = self.files.parked.as_ref();
        let parked = parked.and_then(|parked| match &parked.origin {
            Origin::Stored(id) => Some((id.as_str(), parked.document.gear())),
            Origin::Demo | Origin::Link => None,
        });
        if let Some(id) = brought.id {
            let open = parked.filter(|(_, own)| own.id == Some(id));
            if let Some((at, own)) = open {
                return Some(found(at, own, true));
            }
            if let Some((at, own)) = self.marked(brought) {
                return Some(found(at, &own, true));
            }
        }
        let (at, own) = parked?;
        let unmarked = brought.id.is_none() || own.id.is_none();
        let mut states =
            std::iter::once(brought).chain(brought.kept.iter().map(|kept| &*kept.gear));
        let alike = states.any(|state| has_the_legs_of(state, own));
        (unmarked && alike).then(|| found(at, own, false))
    }
}

/// Whether a state is the own file as it is now, whatever it is called.
fn is_of(own: &Gear, state: &Gear) -> bool {
    let named = Gear {
        name: state.name.clone(),
        ..own.without_kept()
    };
    named == state.without_kept()
}

fn has_the_legs_of(gear: &Gear, other: &Gear) -> bool {
    let pairs = || gear.legs.iter().zip(&other.legs);
    gear.legs.len() == other.legs.len()
        && pairs().all(|(a, b)| {
            a.name.trim().eq_ignore_ascii_case(b.name.trim())
                && (a.trunnion - b.trunnion).norm() < SAME_PLACE
        })
}
