//! What a text on a stop speaks of.
use gearswing_gear::model::{Gear, Leg, Source};
use gearswing_units::{Quantity, UnitChoice, format};

use crate::text::the_leg;

/// A leg whose stop is spoken of, and the units to say it in.
#[derive(Clone, Copy, Debug)]
pub struct Stopped<'a> {
    /// The gear.
    pub gear: &'a Gear,
    /// The leg, as index.
    pub leg: usize,
    /// Units of every number.
    pub units: UnitChoice,
}

impl Stopped<'_> {
    pub(super) fn say(&self, quantity: Quantity, si: f64) -> String {
        format(quantity, self.units, si)
    }

    pub(super) fn model(&self) -> Option<&Leg> {
        self.gear.legs.get(self.leg)
    }

    pub(super) fn is_electric(&self) -> bool {
        matches!(self.gear.supply.source, Source::ElectricActuators)
    }

    /// What is heard to run.
    pub(super) fn driver(&self) -> &'static str {
        if self.is_electric() { "motor" } else { "pump" }
    }

    pub(super) fn the_leg(&self) -> String {
        the_leg(self.model().map_or("", |leg| &leg.name), self.leg)
    }
}
