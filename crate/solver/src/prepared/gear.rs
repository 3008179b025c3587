//! A gear whose legs are made ready when they are first asked for.
use std::borrow::Cow;
use std::sync::{Arc, OnceLock};

use super::PreparedLeg;
use crate::faults::{Fault, FaultKind, Faults, check_leg};
use crate::model::Gear;

/// A gear with its legs made ready: each is checked and swept when it is first asked for, and once.
#[derive(Clone, Debug)]
pub struct PreparedGear<'a> {
    gear: Cow<'a, Gear>,
    legs: Vec<Slot>,
}

/// A leg: as it was before a change, and as it is.
#[derive(Clone, Debug, Default)]
struct Slot {
    before: Option<Arc<PreparedLeg>>,
    now: OnceLock<Result<Arc<PreparedLeg>, Faults>>,
}

impl<'a> PreparedGear<'a> {
    /// Of a gear of which nothing is known yet.
    #[must_use]
    pub fn of(gear: &'a Gear) -> Self {
        Self::new(Cow::Borrowed(gear))
    }

    fn new(gear: Cow<'a, Gear>) -> Self {
        let legs = gear.legs.iter().map(|_| Slot::default()).collect();
        Self { gear, legs }
    }

    /// Of a gear that has changed: what the change leaves of each leg is taken over.
    #[must_use]
    pub fn after(gear: Gear, before: &PreparedGear<'_>) -> PreparedGear<'static> {
        let slot = |at: usize| Slot {
            before: before.legs.get(at).and_then(Slot::last),
            now: OnceLock::new(),
        };
        PreparedGear {
            legs: (0..gear.legs.len()).map(slot).collect(),
            gear: Cow::Owned(gear),
        }
    }

    /// The gear.
    #[must_use]
    pub fn gear(&self) -> &Gear {
        &self.gear
    }

    /// A leg made ready.
    ///
    /// # Errors
    /// Its faults and those of the gear's own fields.
    pub fn leg(&self, index: usize) -> Result<&Arc<PreparedLeg>, Faults> {
        let slot = self.legs.get(index).ok_or_else(no_such_leg)?;
        let made = slot.now.get_or_init(|| {
            check_leg(&self.gear, index)?;
            let leg = self
                .gear
                .as_driven(index)
                .ok_or_else(no_such_leg)?
                .into_owned();
            Ok(Arc::new(PreparedLeg::new(leg, slot.before.as_deref())))
        });
        made.as_ref().map_err(Clone::clone)
    }

    /// The same legs with the airplane level on jacks.
    #[must_use]
    pub fn on_jacks(&self) -> PreparedGear<'static> {
        self.with(self.gear.on_jacks())
    }

    /// The same legs in other conditions, or on another supply: checked anew, for the faults of what has
    /// changed are theirs too, and not swept again.
    fn with(&self, gear: Gear) -> PreparedGear<'static> {
        for at in 0..self.legs.len() {
            // one with faults here may have none there
            let _ = self.leg(at);
        }
        PreparedGear::after(gear, self)
    }
}

impl From<Gear> for PreparedGear<'_> {
    fn from(gear: Gear) -> Self {
        Self::new(Cow::Owned(gear))
    }
}

impl Slot {
    /// As it was last made ready.
    fn last(&self) -> Option<Arc<PreparedLeg>> {
        let now = self.now.get().and_then(|made| made.as_ref().ok());
        now.or(self.before.as_ref()).cloned()
    }
}

fn no_such_leg() -> Faults {
    Faults(vec![Fault {
        leg: None,
        path: "legs".into(),
        kind: FaultKind::NoLegs,
    }])
}
