//! The kinds of numbers that fields hold: what they are called, their units, and what an example looks like.

use crate::choice::{UnitChoice, UnitSystem, UnknownKey};
use crate::exact::Decimal;
use crate::unit::{Unit, shown_unit, units_of};
use std::str::FromStr;

/// What a number measures. The SI unit of each is given; that is what goes in and out of this crate.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum Quantity {
    /// Length or position (m).
    Length,
    /// Diameter of a small hole (m).
    Hole,
    /// Pitch of a thread (m).
    Pitch,
    /// Angle (rad).
    Angle,
    /// Mass (kg).
    Mass,
    /// Force (N).
    Force,
    /// Pressure (Pa).
    Pressure,
    /// Small area, such as a piston's (m²).
    Area,
    /// Drag area, coefficient × frontal area (m²).
    DragArea,
    /// Volume (m³).
    Volume,
    /// Airspeed (m/s).
    Speed,
    /// Speed of a moving part, such as a piston (m/s).
    StrokeSpeed,
    /// Rate of turn (rad/s).
    AngularSpeed,
    /// Density (kg/m³).
    Density,
    /// Plain number, such as a friction coefficient (ratio).
    Ratio,
    /// Travel or another share, 0 to 1 inside, shown and typed in percent (ratio).
    Travel,
    /// Whole number of things (ratio).
    Count,
    /// Load factor, weight in multiples of itself (ratio).
    LoadFactor,
    /// Moment of a force (N·m).
    Moment,
    /// Time (s).
    Time,
    /// Spring rate (N/m).
    Stiffness,
    /// Torsion spring rate (N·m/rad).
    TorsionalStiffness,
    /// Moment of inertia (kg·m²).
    Inertia,
    /// Volume flow (m³/s).
    Flow,
    /// Voltage (V).
    Voltage,
    /// Current (A).
    Current,
    /// Resistance (Ω).
    Resistance,
    /// Energy (J).
    Energy,
}

impl Quantity {
    /// Every quantity.
    pub const ALL: &'static [Self] = &[
        Self::Length,
        Self::Hole,
        Self::Pitch,
        Self::Angle,
        Self::Mass,
        Self::Force,
        Self::Pressure,
        Self::Area,
        Self::DragArea,
        Self::Volume,
        Self::Speed,
        Self::StrokeSpeed,
        Self::AngularSpeed,
        Self::Density,
        Self::Ratio,
        Self::Travel,
        Self::Count,
        Self::LoadFactor,
        Self::Moment,
        Self::Time,
        Self::Stiffness,
        Self::TorsionalStiffness,
        Self::Inertia,
        Self::Flow,
        Self::Voltage,
        Self::Current,
        Self::Resistance,
        Self::Energy,
    ];

    /// The name in plain words, also the key to store it under: `length`, `drag area`.
    #[must_use]
    pub fn as_str(self) -> &'static str {
        match self {
            Self::Length => "length",
            Self::Hole => "diameter of a hole",
            Self::Pitch => "pitch of a thread",
            Self::Angle => "angle",
            Self::Mass => "mass",
            Self::Force => "force",
            Self::Pressure => "pressure",
            Self::Area => "area",
            Self::DragArea => "drag area",
            Self::Volume => "volume",
            Self::Speed => "airspeed",
            Self::StrokeSpeed => "speed of a part",
            Self::AngularSpeed => "rate of turn",
            Self::Density => "density",
            Self::Ratio => "plain number",
            Self::Travel => "travel in percent",
            Self::Count => "whole number",
            Self::LoadFactor => "load factor",
            Self::Moment => "moment",
            Self::Time => "time",
            Self::Stiffness => "spring rate",
            Self::TorsionalStiffness => "torsion spring rate",
            Self::Inertia => "moment of inertia",
            Self::Flow => "flow",
            Self::Voltage => "voltage",
            Self::Current => "current",
            Self::Resistance => "resistance",
            Self::Energy => "energy",
        }
    }

    /// The unit in which `choice` shows this quantity.
    #[must_use]
    pub fn unit(self, choice: UnitChoice) -> &'static Unit {
        shown_unit(self, choice)
    }

    /// The shown unit's symbol, such as `in` or `in-lb`; empty for plain numbers.
    #[must_use]
    pub fn unit_label(self, choice: UnitChoice) -> &'static str {
        self.unit(choice).symbol()
    }

    /// The SI value in the shown unit. For curves and axes; it may be off in the last place, so text that is
    /// to be read back comes from [`crate::format_exact`].
    #[must_use]
    pub fn from_si(self, choice: UnitChoice, si: f64) -> f64 {
        self.unit(choice).from_si(si)
    }

    /// The SI value of a number in the shown unit, rounded once: the number's shortest decimal is taken at its
    /// word, so that 0.1 gives what [`crate::parse`] gives for `0.1`. Not finite in, not finite out.
    #[must_use]
    pub fn to_si(self, choice: UnitChoice, value: f64) -> f64 {
        if !value.is_finite() {
            return value;
        }
        Decimal::shortest(value)
            .value()
            .times(self.unit(choice).factor)
            .to_f64()
    }

    /// A text that [`crate::parse`] takes, to show what may be typed.
    #[must_use]
    pub fn example(self, choice: UnitChoice) -> &'static str {
        let inch = choice.system == UnitSystem::Inch;
        let pick = |if_inch, if_metric| if inch { if_inch } else { if_metric };
        match self {
            Self::Length => pick("1 3/8 in", "35.5 mm"),
            Self::Hole => pick("0.040 in", "1 mm"),
            Self::Pitch => pick("1/28 in", "1 mm"),
            Self::Angle => "12.5°",
            Self::Mass => pick("9 lb", "4 kg"),
            Self::Force => pick("9 lb", "40 N"),
            Self::Pressure => pick("1200 psi", "82 bar"),
            Self::Area => pick("1.2 in²", "7.9 cm²"),
            Self::DragArea => pick("0.8 ft²", "0.07 m²"),
            Self::Volume => pick("15 in³", "250 cm³"),
            Self::Speed => "100 kt",
            Self::StrokeSpeed => pick("1.5 in/s", "40 mm/s"),
            Self::AngularSpeed => "20 deg/s",
            Self::Density => pick("0.00238 slug/ft³", "1.225 kg/m³"),
            Self::Ratio => "0.12",
            Self::Travel => "30 %",
            Self::Count => "2",
            Self::LoadFactor => "1.5",
            Self::Moment => pick("150 in-lb", "17 N·m"),
            Self::Time => "6.5 s",
            Self::Stiffness => pick("20 lb/in", "3.5 N/mm"),
            Self::TorsionalStiffness => pick("2 in-lb/deg", "0.2 N·m/deg"),
            Self::Inertia => pick("300 lb·in²", "0.09 kg·m²"),
            Self::Flow => pick("0.5 gal/min", "2 L/min"),
            Self::Voltage => "14 V",
            Self::Current => "35 A",
            Self::Resistance => "0.02 Ω",
            Self::Energy => "2.5 Wh",
        }
    }

    /// The units that may be typed, as a short list for a message: `in, ft, mm, cm or m`; plain numbers take
    /// `no unit`.
    #[must_use]
    pub fn known_units(self) -> String {
        let named = |unit: &Unit| match unit.symbol() {
            "" => "no unit",
            symbol => symbol,
        };
        let symbols: Vec<_> = units_of(self).iter().map(named).collect();
        match symbols.split_last() {
            Some((last, [])) => (*last).into(),
            Some((last, rest)) => format!("{} or {last}", rest.join(", ")),
            None => String::new(),
        }
    }
}

impl FromStr for Quantity {
    type Err = UnknownKey;

    fn from_str(key: &str) -> Result<Self, UnknownKey> {
        let found = Self::ALL
            .iter()
            .copied()
            .find(|quantity| quantity.as_str() == key);
        found.ok_or_else(|| UnknownKey {
            key: key.into(),
            known: "the names of quantities, such as length",
        })
    }
}
