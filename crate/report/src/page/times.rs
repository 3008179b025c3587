//! The gear against time.
use gearswing_units::{Quantity, UnitChoice};

/// Name of the part of the page.
pub const TITLE: &str = "Against time";

/// Name of the charts of a run.
#[must_use]
pub fn run_title(down: bool) -> &'static str {
    if down {
        "The gear down against time"
    } else {
        "The gear up against time"
    }
}

/// The run is not worked out yet.
pub const COMING: &str = "The gear against time is being worked out.";

/// It was given up.
pub const GIVEN_UP: &str = "Working out the gear against time was given up.";

/// Shows the run up: label and what it does.
pub const UP: (&str, &str) = ("Up", "show the gear coming up");

/// Shows the run down: label and what it does.
pub const DOWN: (&str, &str) = ("Down", "show the gear going down");

/// What playing a run does.
pub const PLAY_HINT: &str = "all legs in their own time";

/// On the press for the other case: the one that is not shown.
#[must_use]
pub fn other_case(on_jacks: bool) -> &'static str {
    if on_jacks { "As set" } else { "Level on jacks" }
}

/// What it does.
pub const OTHER_CASE_HINT: &str = "work the times out for the other case";

/// The sentence of the case, and for a run down what it starts from.
#[must_use]
pub fn case_line(case: &str, down: Option<&str>) -> String {
    match down {
        Some(title) => format!("{case} {title}."),
        None => case.to_owned(),
    }
}

/// Title of the chart of the legs' travel.
pub const TRAVEL: &str = "Travel";

/// Title of the chart of the pressure.
pub const PRESSURE: &str = "Pressure at the manifold";

/// Title of the chart of the flow.
pub const FLOW: &str = "Flow of the pump";

/// Title of the chart of the current.
pub const CURRENT: &str = "Current";

/// Title of the chart of the voltage.
pub const VOLTAGE: &str = "Voltage at the battery";

/// On the line of the relief valve.
pub const RELIEF: &str = "relief";

/// On the line of the pressure switch.
pub const PRESSURE_SWITCH: &str = "pressure switch";

/// On the line of the breaker.
pub const BREAKER: &str = "breaker";

/// Title of the rows of switches.
pub const SWITCHES: &str = "Switches, line = closed";

/// A switch of a leg.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Switch {
    /// The strut is shortened.
    Shortened,
    /// The leg is down.
    Down,
    /// The leg is up.
    Up,
}

/// A switch of a leg, beside its row.
#[must_use]
pub fn switch_words(switch: Switch) -> &'static str {
    match switch {
        Switch::Shortened => "shortened",
        Switch::Down => "down",
        Switch::Up => "up",
    }
}

/// Name of the axis of time.
#[must_use]
pub fn time_axis() -> String {
    let unit = Quantity::Time.unit_label(UnitChoice::INCH);
    format!("time since the gear was selected, {unit}")
}
