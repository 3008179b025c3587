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
        let wanted = gear.state_before().map(|kept| &kept.gear);
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
        self.derived.settle_part(of, self.number, false)
    }

    /// The state and the leg of it that a leg of the gear is compared with, and its result; `None` where it has none,
    /// or one that cannot be worked out.
    pub(crate) fn leg(&self, gear: &Gear, leg: usize) -> Option<(&Gear, usize, &Good)> {
        let of = self.of.as_ref()?;
        // of another state, until it is worked out, there is none
        if !Arc::ptr_eq(of, &gear.state_before()?.gear) {
            return None;
        }
        let at = leg_before(gear, of, leg)?;
        let derived = self.derived.leg(at).filter(|leg| !leg.faded())?;
        Some((of.as_ref(), at, derived.good.as_ref()?))
    }
}
