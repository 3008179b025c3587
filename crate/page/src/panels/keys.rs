//! Keys of the fixed selects' options, both ways.

use gearswing_app::state::{Speed, Theme};
use gearswing_app::words::{header, transport};
use gearswing_app::{AirspeedUnit, MetricPressure, UnitChoice, UnitSystem};

/// Options of the units: key, system, metric pressure.
pub(super) const UNITS: [(&str, UnitSystem, MetricPressure); 3] = [
    ("in", UnitSystem::Inch, MetricPressure::Bar),
    ("mm-bar", UnitSystem::Metric, MetricPressure::Bar),
    ("mm-mpa", UnitSystem::Metric, MetricPressure::Megapascal),
];

/// Options of the theme.
pub(super) const THEMES: [(&str, &str, Theme); 3] = [
    ("system", header::THEME_SYSTEM, Theme::System),
    ("light", header::THEME_LIGHT, Theme::Light),
    ("dark", header::THEME_DARK, Theme::Dark),
];

/// Options of the speed.
pub(super) const SPEEDS: [(&str, &str, Speed); 3] = [
    ("slow", transport::SLOW, Speed::Slow),
    ("normal", transport::NORMAL, Speed::Normal),
    ("fast", transport::FAST, Speed::Fast),
];

/// Options of the way.
pub(super) const WAYS: [(&str, &str, bool); 2] = [
    ("up", transport::WAY_UP, false),
    ("down", transport::WAY_DOWN, true),
];

/// Units of a key, on top of what is chosen otherwise.
pub(crate) fn units_of(key: &str, now: UnitChoice) -> Option<UnitChoice> {
    let found = UNITS.iter().find(|option| option.0 == key)?;
    let mut choice = now;
    choice.system = found.1;
    choice.metric_pressure = found.2;
    Some(choice)
}

/// Key of units.
pub(super) fn units_key(units: UnitChoice) -> &'static str {
    match (units.system, units.metric_pressure) {
        (UnitSystem::Inch, _) => "in",
        (UnitSystem::Metric, MetricPressure::Bar) => "mm-bar",
        (UnitSystem::Metric, MetricPressure::Megapascal) => "mm-mpa",
    }
}

/// Options of the airspeed's unit.
pub(super) const AIRSPEEDS: [(&str, &str, AirspeedUnit); 3] = [
    ("kt", "kt", AirspeedUnit::Knot),
    ("mph", "mph", AirspeedUnit::MilePerHour),
    ("km/h", "km/h", AirspeedUnit::KilometrePerHour),
];

/// Units with the airspeed's unit of a key, on top of what is chosen otherwise.
pub(crate) fn airspeed_of(key: &str, now: UnitChoice) -> Option<UnitChoice> {
    let found = AIRSPEEDS.iter().find(|option| option.0 == key)?;
    let mut choice = now;
    choice.airspeed = found.2;
    Some(choice)
}

/// Theme of a key.
pub(crate) fn theme_of(key: &str) -> Option<Theme> {
    THEMES
        .iter()
        .find(|option| option.0 == key)
        .map(|option| option.2)
}

/// Speed of a key.
pub(crate) fn speed_of(key: &str) -> Option<Speed> {
    SPEEDS
        .iter()
        .find(|option| option.0 == key)
        .map(|option| option.2)
}

/// Whether the way of a key is that down.
pub(crate) fn way_of(key: &str) -> Option<bool> {
    WAYS.iter()
        .find(|option| option.0 == key)
        .map(|option| option.2)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn every_unit_option_comes_back() {
        for (key, _, _) in UNITS {
            let units = units_of(key, UnitChoice::default());
            assert_eq!(units.map(units_key), Some(key));
        }
        assert_eq!(units_of("ell", UnitChoice::default()), None);
    }
}
