//! The top of the page.
use gearswing_units::{MetricPressure, UnitSystem};

use crate::name::name_words;

/// Title of the browser's tab: the gear's name and the program's.
#[must_use]
pub fn tab_title(gear: &str) -> String {
    let name = name_words(gear);
    if name.is_empty() {
        "Gearswing".to_owned()
    } else {
        format!("{name} – Gearswing")
    }
}

/// Where the work that is shown stands.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Keeping {
    /// The browser does not store it.
    Refused,
    /// It is on its way to the disk.
    UnderWay,
    /// It is on the disk.
    Kept,
    /// It is the demo, which is not stored.
    Demo,
    /// It came with a link and is not stored yet.
    Link,
}

/// Where the work stands, beside the name of the file.
#[must_use]
pub fn keeping_words(keeping: Keeping) -> &'static str {
    match keeping {
        Keeping::Refused => "Not kept by this browser: export it",
        Keeping::UnderWay => "Being kept …",
        Keeping::Kept => "Kept in this browser",
        Keeping::Demo => "The demo; kept as a file once you change it",
        Keeping::Link => "Sent to you; not kept yet",
    }
}

/// On the switch that compares with the previous tire; `size` is that of the selected leg, empty where
/// it is not given, absent where that leg has none.
#[must_use]
pub fn compare_words(comparing: bool, size: Option<&str>) -> String {
    match (comparing, size) {
        (false, Some(size)) if !size.trim().is_empty() => {
            format!("Compare with the previous tire, {}", name_words(size))
        }
        (false, _) => "Compare with the previous tire".to_owned(),
        (true, None) => "Comparing; this leg has the same tire as before".to_owned(),
        (true, Some(_)) => "Comparing with the previous tire".to_owned(),
    }
}

/// A choice of units.
#[must_use]
pub fn units_words(system: UnitSystem, pressure: MetricPressure) -> &'static str {
    match (system, pressure) {
        (UnitSystem::Inch, _) => "in, lb, psi",
        (UnitSystem::Metric, MetricPressure::Bar) => "mm, N, bar",
        (UnitSystem::Metric, MetricPressure::Megapascal) => "mm, N, MPa",
    }
}

/// Theme: as the person's system has it.
pub const THEME_SYSTEM: &str = "As the system";

/// Theme: light.
pub const THEME_LIGHT: &str = "Light";

/// Theme: dark.
pub const THEME_DARK: &str = "Dark";

/// Takes a notice away.
pub const CLOSE: &str = "Close";

/// The same in full.
pub const CLOSE_NOTICE: &str = "Close this message";
