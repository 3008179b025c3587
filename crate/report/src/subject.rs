//! What a text speaks of: one leg of one gear, its result, and the units to say it in.
use gearswing_gear::model::{Gear, Leg, MovingPart};
use gearswing_solver::result::{DrivenBy, LegResult, Phase, Place};
use gearswing_units::{Quantity, UnitChoice, format, format_signed};

use crate::name::name_words;
use crate::text::{own, the_leg};

/// One leg and its result, with the units to say it in.
#[derive(Clone, Copy, Debug)]
pub struct Subject<'a> {
    /// The gear.
    pub gear: &'a Gear,
    /// The leg, as index.
    pub leg: usize,
    /// Its result.
    pub result: &'a LegResult,
    /// Units of every number in the text.
    pub units: UnitChoice,
}

/// Quantity in which what a drive makes, and what a leg needs of it, is said: pressure of fluid, or force of
/// an electric actuator.
#[must_use]
pub fn drive_quantity(driven_by: DrivenBy) -> Quantity {
    match driven_by {
        DrivenBy::Fluid => Quantity::Pressure,
        DrivenBy::Electricity => Quantity::Force,
    }
}

/// Travel within this of an end is that end (ratio): it would be printed as 0.0 % or 100.0 %.
pub(crate) const END_OF_TRAVEL: f64 = 5e-4;

impl Subject<'_> {
    pub(crate) fn model(&self) -> Option<&Leg> {
        self.gear.legs.get(self.leg)
    }

    /// Quantity in which what an actuator needs is said: pressure, or force of an electric one.
    pub(crate) fn drive(&self) -> Quantity {
        drive_quantity(self.result.force.driven_by)
    }

    /// Leg within a sentence: "the right main", "the nose leg", "leg “LH gear”".
    pub(crate) fn the_leg(&self) -> String {
        the_leg(&self.result.name, self.leg)
    }

    /// A thing of the leg, to begin a sentence: "the right main's actuator", "on leg “LH gear”: the
    /// actuator".
    pub(crate) fn own(&self, thing: &str) -> String {
        own(&self.result.name, self.leg, thing)
    }

    /// A rounded number with its unit.
    pub(crate) fn say(&self, quantity: Quantity, si: f64) -> String {
        format(quantity, self.units, si)
    }

    /// A rounded number with its sign and unit.
    pub(crate) fn signed(&self, quantity: Quantity, si: f64) -> String {
        format_signed(quantity, self.units, si)
    }

    /// A length with its unit.
    pub(crate) fn length(&self, si: f64) -> String {
        self.say(Quantity::Length, si)
    }

    /// A size that is not zero, even where rounding would print zero: "less than 0.1 mm".
    pub(crate) fn size(&self, si: f64) -> String {
        let text = self.length(si);
        if si == 0.0 || text != self.length(0.0) {
            return text;
        }
        // Down from 1 of the shown unit to its last printed place.
        let si_of = |shown| Quantity::Length.to_si(self.units, shown);
        let mut place = 1.0;
        for _ in 0..6 {
            if self.length(si_of(place / 10.0)) == text {
                break;
            }
            place /= 10.0;
        }
        format!("less than {}", self.length(si_of(place)))
    }

    /// Where a place is, to go behind a verb: "at 78.0 % of travel", "with the gear down".
    pub(crate) fn at(&self, place: &Place) -> String {
        match place.phase {
            Phase::Shorten => "while the strut shortens, before the swing".to_owned(),
            Phase::Unlock => "while the knee passes the straight line".to_owned(),
            // Out of an over-center lock the swing starts at the straight knee.
            Phase::Swing if place.progress <= 0.0 && self.result.excursion.is_some() => {
                "with the knee on the straight line".to_owned()
            }
            Phase::Swing if place.travel.abs() < END_OF_TRAVEL => "with the gear down".to_owned(),
            Phase::Swing if (place.travel - 1.0).abs() < END_OF_TRAVEL => {
                "with the gear up".to_owned()
            }
            Phase::Swing => format!("at {} of travel", self.say(Quantity::Travel, place.travel)),
        }
    }
}

/// A moving part within a sentence, without article.
pub(crate) fn part_name(part: MovingPart) -> &'static str {
    match part {
        MovingPart::Wheel => "tire",
        MovingPart::LegBody => "upper leg",
        MovingPart::SlidingStrut => "lower strut",
        MovingPart::UpperLink => "upper brace link",
        MovingPart::LowerLink => "lower brace link",
        MovingPart::LinkArm => "arm of the brace link",
        MovingPart::SlidingBrace => "telescoping brace",
        MovingPart::ActuatorBody => "actuator barrel",
        MovingPart::ActuatorRod => "actuator rod",
    }
}

/// Name of a piece of structure within a sentence.
#[must_use]
pub fn obstacle_words(name: &str, index: usize) -> String {
    let name = name_words(name);
    if name.is_empty() {
        format!("piece {} of the well", index.saturating_add(1))
    } else {
        name
    }
}

/// Name of a spring within a sentence.
pub(crate) fn spring_words(name: &str, index: usize) -> String {
    let name = name_words(name);
    if name.is_empty() {
        format!("spring {}", index.saturating_add(1))
    } else {
        name
    }
}

/// A rounded number with its unit, and with a sign only where it is negative.
pub(crate) fn negative_told(quantity: Quantity, units: UnitChoice, si: f64) -> String {
    let said = format_signed(quantity, units, si);
    said.trim_start_matches('+').to_owned()
}
