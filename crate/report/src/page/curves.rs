//! The charts of a leg.
use gearswing_gear::model::MovingPart;
use gearswing_solver::result::{DrivenBy, ForcePeak, Motion, PairClearance, TireState};
use gearswing_units::{Quantity, UnitChoice, format, format_signed};

use super::names::part_words;
use crate::cases::motion_verb;
use crate::subject::{drive_quantity, obstacle_words};

/// Title of the chart of clearances.
pub const CLEARANCE: &str = "Clearance";

/// How its lines are told apart.
pub const CLEARANCE_KEY: &str = "line: new tire, dashes: grown tire, dots: other parts";

/// How the two motions are told apart in one chart.
pub const MOTIONS_KEY: &str = "as set; line: to retract, dots: to extend";

/// Title of the chart of the actuator's force.
pub const ACTUATOR_FORCE: &str = "Actuator force";

/// Title of the chart of the pins' loads.
pub const PINS: &str = "Load of the pins, retracting";

/// The case that it holds for.
pub const PINS_KEY: &str = "in the case as set";

/// Title of the chart of the transmission angle.
pub const TRANSMISSION: &str = "Transmission angle at the knee";

/// Title of the chart of the actuator's moment arm.
pub const MOMENT_ARM: &str = "Moment arm of the actuator on the leg";

/// On the line of the state compared with.
pub const BEFORE: &str = "before";

/// On the line of what is available.
pub const AVAILABLE: &str = "available";

/// Where a clearance is below zero.
pub const CONTACT: &str = "contact";

/// Where the curves end since the leg does.
pub const LEG_STOPS: &str = "the leg stops here";

/// Beside the part of the axis that comes before the swing.
pub const BEFORE_SWING: &str = "before the swing";

/// Name of the axis of travel, in full where it has room.
#[must_use]
pub fn travel_axis(wide: bool) -> &'static str {
    if wide {
        "travel, % (0 down, 100 up)"
    } else {
        "travel, %"
    }
}

/// On the line of a motion.
#[must_use]
pub fn motion_line(motion: Motion) -> &'static str {
    match motion {
        Motion::Retract => "to retract",
        Motion::Extend => "to extend",
    }
}

/// Name of the curve of what is needed, where there is little room.
#[must_use]
pub fn needed_short(driven_by: DrivenBy) -> &'static str {
    match driven_by {
        DrivenBy::Fluid => "Pressure",
        DrivenBy::Electricity => "Force",
    }
}

/// Of what the curve of a clearance within the leg is.
#[must_use]
pub fn own_leg(part: MovingPart) -> String {
    format!("to its {}", part_words(part, None))
}

/// Name of the curve of the knee.
pub const KNEE: &str = "Knee";

/// From where its angle counts.
pub const FROM_STRAIGHT: &str = "from straight";

/// A number of the axis of travel; `unit`: with its sign.
#[must_use]
pub fn travel_tick(percent: i32, unit: bool) -> String {
    if unit {
        format!("{percent} %")
    } else {
        percent.to_string()
    }
}

/// Title of the chart of what is needed.
#[must_use]
pub fn needed(driven_by: DrivenBy) -> &'static str {
    match driven_by {
        DrivenBy::Fluid => "Pressure needed",
        DrivenBy::Electricity => "Actuator force needed",
    }
}

/// On the line of the other parts at a piece of structure.
#[must_use]
pub fn parts_line(obstacle: &str) -> String {
    format!("parts: {obstacle}")
}

/// On the line of what is required.
#[must_use]
pub fn required_line(part: MovingPart, tire: Option<TireState>) -> String {
    format!("required, {}", part_words(part, tire))
}

/// Name of the charts.
#[must_use]
pub fn over_travel(leg: &str) -> String {
    format!("{leg} over travel")
}

/// The clearance of a part to a piece of structure over the path.
#[must_use]
pub fn clearance_sentence(pair: &PairClearance, units: UnitChoice) -> String {
    let tightest = pair.tightest;
    format!(
        "{} to {}: at the tightest {}, at {} of travel (required: {}).",
        part_words(pair.part, pair.tire),
        obstacle_words(&pair.obstacle_name, pair.obstacle),
        format_signed(Quantity::Length, units, tightest.clearance),
        format(Quantity::Travel, units, tightest.place.travel),
        format(Quantity::Length, units, pair.requirement.clearance)
    )
}

/// The most that a motion needs, and what is available (Pa; N with an electric actuator).
#[must_use]
pub fn need_sentence(
    driven_by: DrivenBy,
    motion: Motion,
    peak: &ForcePeak,
    available: f64,
    units: UnitChoice,
) -> String {
    let quantity = drive_quantity(driven_by);
    let what = match driven_by {
        DrivenBy::Fluid => "pressure",
        DrivenBy::Electricity => "force",
    };
    let motion = motion_verb(motion);
    if peak.pressure <= 0.0 {
        return format!("No {what} is needed to {motion}.");
    }
    format!(
        "Most {what} needed to {motion}: {} at {} of travel; available: {}.",
        format(quantity, units, peak.pressure),
        format(Quantity::Travel, units, peak.place.travel),
        format(quantity, units, available)
    )
}
