//! Numbers worked out from the fields.
use gearswing_solver::{LEAST_OVER_CENTRE, PRINTED_OVER_CENTER};
use gearswing_units::{Quantity, UnitChoice, format};

use crate::published::{GROWTH_RULE, OVER_CENTER_LENGTH, OVER_CENTER_PRINTED};

/// A number that is worked out from the fields, shown beside them.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Worked {
    /// Trunnion to axle.
    Axle,
    /// The same, which makes the whole leg larger or smaller.
    Size,
    /// Diameter of the grown tire by the rule.
    GrownDiameter,
    /// Its width.
    GrownWidth,
    /// Side clearance of tire handbooks.
    SideAllowance,
    /// Length of the upper link.
    UpperLink,
    /// Length of the lower link.
    LowerLink,
    /// Knee past the straight line.
    OverCenter,
    /// The range of that which manuals print.
    OverCenterPrinted,
    /// Length of a telescoping brace at gear down.
    BraceDown,
    /// Length of the actuator at gear down.
    ActuatorDown,
    /// Its length at the end of the way up.
    ActuatorEnd,
    /// Its stroke.
    Stroke,
    /// Its areas.
    Areas,
    /// Time of a free fall.
    FallTime,
    /// Speed of the axle in it.
    FallSpeed,
    /// Least moment in it.
    FallMoment,
    /// Least push at the knee in it.
    FallPush,
    /// Friction that would stop it.
    FallFriction,
}

/// Label of a number, and what it is or how to check it.
#[must_use]
pub fn worked_words(worked: Worked) -> (&'static str, &'static str) {
    const FROM_PINS: &str = "Worked out from the pins: check it with a tape.";
    const MEASURED: &str = "Of the pins as they stand. Type what you measured: the knee goes there, and the lower link's pin on the leg goes along the brace to where the links close.";
    const LET_GO: &str = "Without power or pressure, let go at up.";
    match worked {
        Worked::Axle => (
            "Trunnion to axle",
            "Worked out with the strut extended: check it with a tape.",
        ),
        Worked::Size => (
            "Size of the leg, trunnion to axle",
            "Typed, it makes the whole leg larger or smaller about its trunnion: pins, outlines, lengths and the well; tire, bores, rods, thicknesses, weights and the force of springs stay. For a starter: put its size in first, then its points.",
        ),
        Worked::GrownDiameter => ("Grown diameter, by the rule", GROWTH_RULE),
        Worked::GrownWidth => ("Grown width, by the rule", GROWTH_RULE),
        Worked::SideAllowance => (
            "Side clearance in tire handbooks",
            "What tire handbooks leave beside a tire, from memory and not confirmed. For information: no answer rests on it, and the clearances required here are those of the gear and of each piece.",
        ),
        Worked::UpperLink => ("Upper link, pin to pin", MEASURED),
        Worked::LowerLink => ("Lower link, pin to pin", OVER_CENTER_LENGTH),
        Worked::OverCenter => (
            "Knee off the line",
            "From the straight line between the brace's end pins to the middle of the knee pin, gear down: over center where the knee has gone through the line. Measure it with a straightedge. Typed, it moves the knee, and the lower link's pin on the leg along the brace to where the links close.",
        ),
        Worked::OverCenterPrinted => ("Printed for light airplanes", OVER_CENTER_PRINTED),
        Worked::BraceDown => ("Length at gear down", FROM_PINS),
        Worked::ActuatorDown => (
            "Length at gear down",
            "Pin to pin, worked out from the points: check it with a tape.",
        ),
        Worked::ActuatorEnd => (
            "Length at the end of the way up",
            "Pin to pin with the gear up, or where it stops.",
        ),
        Worked::Stroke => ("Stroke used", "Difference of the lengths from down to up."),
        Worked::Areas => (
            "Areas: full bore, and bore less rod",
            "Force is pressure times area; pulling has the rod's area less.",
        ),
        Worked::FallTime => ("Free-falls to down and locked in", LET_GO),
        Worked::FallSpeed => ("Fastest axle on the way", LET_GO),
        Worked::FallMoment => (
            "Least moment on the way",
            "About the trunnion, toward down, friction taken off; negative: only speed carries it on.",
        ),
        Worked::FallPush => (
            "Least push at the knee",
            "Into the lock while the knee is nearly straight; negative: only speed or a spring takes it over.",
        ),
        Worked::FallFriction => (
            "Friction of the actuator that stops it short",
            "All else as given: compare it with a spring scale on the rod, lines open, power off.",
        ),
    }
}

/// The range that manuals print for the knee past the straight line, and whether an offset (m) stands
/// out of it.
#[must_use]
pub fn printed_over_center(units: UnitChoice, offset: f64) -> String {
    let (least, most) = PRINTED_OVER_CENTER;
    let flag = if (0.0..LEAST_OVER_CENTRE).contains(&offset) {
        ": yours is less"
    } else if offset > most {
        ": yours is more"
    } else {
        ""
    };
    let length = |si| format(Quantity::Length, units, si);
    format!("{} to {}{flag}", length(least), length(most))
}
