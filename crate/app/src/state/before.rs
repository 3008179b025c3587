//! Results of the kept state that is compared with.
use gearswing_gear::field::leg_before;
use gearswing_gear::model::Gear;
use std::sync::Arc;

use super::derived::{Derived, Good};

/// Results of the state before, worked out once.
#[derive(Clone, Debug, Default)]
pub(crate) struct Before {
    of: Option<Arc<Gear>>,
    /// Rises with every other state.
    number: u64,
    derived: Derived,
}

impl Before {
    /// Works out one leg of the state that a gear is compared with; false = there was none left.
    pub(crate) fn settle_part(&mut self, gear: &Gear) -> bool {
        self.settle(gear.state_before().map(|kept| &kept.gear))
    }

    fn settle(&mut self, wanted: Option<&Arc<Gear>>) -> bool {
        let is_it = match (&self.of, wanted) {
            (Some(own), Some(wanted)) => Arc::ptr_eq(own, wanted) || own == wanted,
            (None, None) => true,
            _ => false,
        };
        if !is_it {
            self.number += 1;
        }
        // the same state read anew is told by its address from here on
        self.of = wanted.cloned();
        let Some(of) = &self.of else {
            self.derived = Derived::default();
            return false;
        };
        self.derived.settle_part(of, self.number)
    }

    /// The state and the leg of it that a leg of the gear is compared with, and its result; `None` where it has none,
    /// or one that cannot be worked out.
    pub(crate) fn leg(&self, gear: &Gear, leg: usize) -> Option<(&Gear, usize, &Good)> {
        self.leg_of(gear, &gear.state_before()?.gear, leg)
    }

    fn leg_of(&self, gear: &Gear, kept: &Arc<Gear>, leg: usize) -> Option<(&Gear, usize, &Good)> {
        let of = self.of.as_ref()?;
        // of another state, until it is worked out, there is none
        if !Arc::ptr_eq(of, kept) {
            return None;
        }
        let at = leg_before(gear, of, leg)?;
        Some((of.as_ref(), at, self.derived.leg(at)?.current()?))
    }
}

/// Results of all kept states side by side, each worked out once.
#[derive(Clone, Debug, Default)]
pub(crate) struct Beside(Vec<Before>);

impl Beside {
    /// Works out one leg of one of them; false = there was none left.
    pub(crate) fn settle_part(&mut self, gear: &Gear) -> bool {
        self.0.resize_with(gear.kept.len(), Before::default);
        let mut all = self.0.iter_mut().zip(&gear.kept);
        all.any(|(known, kept)| known.settle(Some(&kept.gear)))
    }

    /// The leg of a kept state that a leg of the gear is compared with, as [`Before::leg`].
    pub(crate) fn leg(&self, gear: &Gear, at: usize, leg: usize) -> Option<(&Gear, usize, &Good)> {
        let kept = gear.kept.get(at)?;
        self.0.get(at)?.leg_of(gear, &kept.gear, leg)
    }
}
