//! What a text on times speaks of.
use gearswing_gear::model::Gear;
use gearswing_solver::result::{Phase, Place};
use gearswing_units::{Quantity, UnitChoice, format};

use crate::subject::END_OF_TRAVEL;
use crate::text::the_leg;

/// A gear whose times are spoken of, and the units to say them in.
#[derive(Clone, Copy, Debug)]
pub struct Timed<'a> {
    /// The gear.
    pub gear: &'a Gear,
    /// Units of every number.
    pub units: UnitChoice,
}

impl Timed<'_> {
    /// A rounded number with its unit.
    pub(super) fn say(&self, quantity: Quantity, si: f64) -> String {
        format(quantity, self.units, si)
    }

    /// A leg within a sentence: "the right main".
    pub(super) fn the_leg(&self, index: usize) -> String {
        let name = self.gear.legs.get(index).map_or("", |leg| &leg.name);
        the_leg(name, index)
    }

    /// Where a leg is, to go behind a verb.
    pub(super) fn at(&self, place: &Place) -> String {
        match place.phase {
            Phase::Shorten => "in the stroke of its strut".to_owned(),
            Phase::Unlock => "before its knee is past the straight line".to_owned(),
            Phase::Swing if place.travel.abs() < END_OF_TRAVEL => "with the gear down".to_owned(),
            Phase::Swing => format!("at {} of travel", self.say(Quantity::Travel, place.travel)),
        }
    }
}
