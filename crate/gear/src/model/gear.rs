//! The airplane's gear as a whole.
use std::borrow::Cow;

use serde::{Deserialize, Serialize};

use super::{
    ClearanceRule, Conditions, EmergencyWay, Fluid, GearId, Kept, Leg, Note, PointsFrom, Source,
    Supply,
};

/// The retractable gear of one airplane and the case it is asked about.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[serde(deny_unknown_fields)]
pub struct Gear {
    /// Name of this gear file.
    pub name: String,
    /// Which airplane's gear it is, as 16 hexadecimal digits drawn at random; absent until it is first kept or shared.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    #[cfg_attr(feature = "schema", schemars(with = "Option<String>"))]
    pub id: Option<GearId>,
    /// Free text of the owner.
    #[serde(default, skip_serializing_if = "String::is_empty")]
    pub note: String,
    /// The legs, at least one.
    pub legs: Vec<Leg>,
    /// Attitude, load factor and air.
    #[serde(default)]
    pub conditions: Conditions,
    /// Hydraulic pressure available to every actuator.
    pub supply: Supply,
    /// Hydraulic fluid.
    #[serde(default, skip_serializing_if = "Fluid::is_default")]
    pub fluid: Fluid,
    /// Required clearances where an obstacle has no figure of its own.
    #[serde(default)]
    pub clearance_rule: ClearanceRule,
    /// The way down without the normal power; absent = a hand pump where that is the source, else free
    /// fall.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub emergency_way: Option<EmergencyWay>,
    /// Largest gauge pressure of the hand pump of that way where another source moves the gear (Pa);
    /// absent = not known.
    #[serde(
        rename = "emergency_pump_pa",
        default,
        skip_serializing_if = "Option::is_none"
    )]
    pub emergency_pump: Option<f64>,
    /// How many times its friction a leg must free-fall against (ratio), 1 to 5; absent = 1.5.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub friction_times_required: Option<f64>,
    /// From where points are told to people; absent = the airplane's axes, as in the file.
    #[serde(default, skip_serializing_if = "PointsFrom::is_default")]
    pub points_from: PointsFrom,
    /// What is said about it, for those who open its file or link.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub notes: Vec<Note>,
    /// States kept to compare with; a file holds them as what differs from this one.
    #[serde(skip)]
    pub kept: Vec<Kept>,
    /// Which of them is compared with; absent = none.
    #[serde(skip)]
    pub before: Option<usize>,
}

impl Gear {
    /// The leg whose actuator drives this one: another where both share a drive.
    #[must_use]
    pub fn driving_leg(&self, leg: usize) -> usize {
        self.on_its_drive(leg).next().unwrap_or(leg)
    }

    /// The leg as the solver sees it: on the drive of another leg, whose bore and rod it has and whose
    /// ends are none of its own.
    #[must_use]
    pub fn as_driven(&self, leg: usize) -> Option<Cow<'_, Leg>> {
        let own = self.legs.get(leg)?;
        let driver = self.legs.get(self.driving_leg(leg))?;
        if std::ptr::eq(own, driver) {
            return Some(Cow::Borrowed(own));
        }
        let mut driven = own.clone();
        driven.actuator.bore = driver.actuator.bore;
        driven.actuator.rod = driver.actuator.rod;
        driven.actuator.shortest = 0.0;
        driven.actuator.longest = f64::INFINITY;
        driven.drive.electric = driver.drive.electric;
        Some(Cow::Owned(driven))
    }

    /// The legs on the drive of this one, by index: itself alone where it has its own. Names are one
    /// whatever blanks stand around them and whether English letters are capitals (a table of all others would make
    /// the page larger by 13 kB).
    pub fn on_its_drive(&self, leg: usize) -> impl Iterator<Item = usize> {
        let name_of = |leg: &Leg| leg.shared_drive.trim().to_ascii_lowercase();
        let name = self.legs.get(leg).map(name_of).unwrap_or_default();
        let same = move |(at, other): (usize, &Leg)| {
            (at == leg || (!name.is_empty() && name_of(other) == name)).then_some(at)
        };
        self.legs.iter().enumerate().filter_map(same)
    }

    /// Whether the answers of this leg rest on others too: what they share with it is a drive, a battery,
    /// or an accumulator that nothing fills again.
    #[must_use]
    pub fn rests_on_others(&self, leg: usize) -> bool {
        let by_source = match self.supply.source {
            Source::ElectricActuators => true,
            Source::ConstantPressure => self.supply.accumulator.is_some(),
            Source::MotorPump(_) | Source::HandPump(_) => false,
        };
        self.legs.len() > 1 && (by_source || !self.drives_alone(leg))
    }

    /// The same without legs and texts: what the answers of every leg rest on.
    #[must_use]
    pub fn without_legs(&self) -> Self {
        Self {
            legs: Vec::new(),
            name: String::new(),
            id: None,
            note: String::new(),
            conditions: self.conditions,
            supply: self.supply,
            emergency_way: self.emergency_way,
            emergency_pump: self.emergency_pump,
            friction_times_required: self.friction_times_required,
            fluid: self.fluid,
            clearance_rule: self.clearance_rule,
            // as much a text as the names
            points_from: PointsFrom::default(),
            notes: Vec::new(),
            kept: Vec::new(),
            before: None,
        }
    }

    /// The same without the states that it keeps, without notes and without its mark.
    #[must_use]
    pub fn without_kept(&self) -> Self {
        Self {
            id: None,
            notes: Vec::new(),
            kept: Vec::new(),
            before: None,
            ..self.clone()
        }
    }

    /// The kept state that is compared with.
    #[must_use]
    pub fn state_before(&self) -> Option<&Kept> {
        self.kept.get(self.before?)
    }

    /// Whether this leg has a drive to itself.
    #[must_use]
    pub fn drives_alone(&self, leg: usize) -> bool {
        self.on_its_drive(leg).count() < 2
    }

    /// The same with the airplane level on jacks.
    #[must_use]
    pub fn on_jacks(&self) -> Self {
        Self {
            conditions: Conditions::default(),
            ..self.clone()
        }
    }
}
