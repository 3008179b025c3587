//! Which units a person wants to see, with text keys so that others can store the choice.

use std::fmt;
use std::str::FromStr;

/// A key that names no choice of units.
#[derive(Clone, Debug, PartialEq, Eq, thiserror::Error)]
#[error("“{key}” is no choice of units; known: {known}")]
pub struct UnknownKey {
    /// The key as given.
    pub key: String,
    /// The keys that would do.
    pub known: &'static str,
}

/// The system of units shown, and taken for a number typed without a unit.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Hash)]
pub enum UnitSystem {
    /// Inch, pound, psi.
    #[default]
    Inch,
    /// Millimeter, newton and kilogram, bar or MPa.
    Metric,
}

/// The pressure unit of the metric system.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Hash)]
pub enum MetricPressure {
    /// bar, 100 000 Pa.
    #[default]
    Bar,
    /// MPa, 1 000 000 Pa.
    Megapascal,
}

/// The airspeed unit; knots are common in both systems, so it is chosen on its own.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Hash)]
pub enum AirspeedUnit {
    /// Nautical miles an hour.
    #[default]
    Knot,
    /// Statute miles an hour.
    MilePerHour,
    /// Kilometers an hour.
    KilometrePerHour,
}

macro_rules! keyed {
    ($kind:ty, $known:literal, $($variant:path => $key:literal),+) => {
        impl $kind {
            /// Every choice, in the order to offer them.
            pub const ALL: &'static [Self] = &[$($variant),+];

            /// The key to store this choice under.
            #[must_use]
            pub fn as_str(self) -> &'static str {
                match self { $($variant => $key),+ }
            }
        }

        impl FromStr for $kind {
            type Err = UnknownKey;

            fn from_str(key: &str) -> Result<Self, UnknownKey> {
                match key {
                    $($key => Ok($variant),)+
                    _ => Err(UnknownKey { key: key.into(), known: $known }),
                }
            }
        }
    };
}

keyed!(UnitSystem, "inch, metric", Self::Inch => "inch", Self::Metric => "metric");
keyed!(MetricPressure, "bar, mpa", Self::Bar => "bar", Self::Megapascal => "mpa");
keyed!(AirspeedUnit, "kt, mph, km/h",
    Self::Knot => "kt", Self::MilePerHour => "mph", Self::KilometrePerHour => "km/h");

/// All unit choices of a person. `Default` is inch, pound, psi, knots, degrees.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Hash)]
pub struct UnitChoice {
    /// Inch or metric.
    pub system: UnitSystem,
    /// The pressure unit when the system is metric; kept, but without effect, when it is inch.
    pub metric_pressure: MetricPressure,
    /// The airspeed unit.
    pub airspeed: AirspeedUnit,
}

impl UnitChoice {
    /// Inch, pound, psi, knots.
    pub const INCH: Self = Self {
        system: UnitSystem::Inch,
        metric_pressure: MetricPressure::Bar,
        airspeed: AirspeedUnit::Knot,
    };

    /// Millimeter, newton and kilogram, bar, knots.
    pub const METRIC: Self = Self {
        system: UnitSystem::Metric,
        ..Self::INCH
    };

    /// The same choice in the other system.
    #[must_use]
    pub fn other_system(self) -> Self {
        let system = match self.system {
            UnitSystem::Inch => UnitSystem::Metric,
            UnitSystem::Metric => UnitSystem::Inch,
        };
        Self { system, ..self }
    }
}

/// The whole choice as one key, for example `inch bar kt`.
impl fmt::Display for UnitChoice {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let (pressure, airspeed) = (self.metric_pressure.as_str(), self.airspeed.as_str());
        write!(f, "{} {pressure} {airspeed}", self.system.as_str())
    }
}

/// Reads what `Display` writes.
impl FromStr for UnitChoice {
    type Err = UnknownKey;

    fn from_str(key: &str) -> Result<Self, UnknownKey> {
        let wrong = || UnknownKey {
            key: key.into(),
            known: "system, metric pressure and airspeed keys, parted by spaces",
        };
        let mut parts = key.split(' ');
        let mut next = || parts.next().ok_or_else(wrong);
        let choice = Self {
            system: next()?.parse()?,
            metric_pressure: next()?.parse()?,
            airspeed: next()?.parse()?,
        };
        if parts.next().is_some() {
            Err(wrong())
        } else {
            Ok(choice)
        }
    }
}
