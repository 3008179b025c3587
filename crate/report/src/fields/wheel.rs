//! Fields of wheel and tire. The previous tire has the same fields as the fitted one.
use gearswing_units::Quantity;

use super::words::{Group, option};
use super::{ChoiceWords, FieldWords};
use crate::published;

const BASIS: &[ChoiceWords] = &[
    option(
        "measured",
        "Measured",
        "Measured on the fitted tire at full pressure, best a day or two after the first inflation.",
    ),
    option(
        "maker",
        "Tire maker's data",
        "From the tire maker's data for this very tire.",
    ),
    option(
        "table",
        "Size table",
        "From the table that comes with this program; each row says where it is from.",
    ),
    option(
        "unstated",
        "Not stated",
        "Typed in without saying where it is from.",
    ),
];

const GROWN: &[ChoiceWords] = &[
    option("by_rule", "By the growth rule", published::GROWTH_RULE),
    option(
        "given",
        "Own figure",
        "Measured on a tire grown in service, or the maker's largest size in service.",
    ),
];

pub(super) const WHEEL: &[FieldWords] = &[
    FieldWords::number(
        "legs[].wheel.mass_kg",
        Quantity::Mass,
        "Mass",
        "mass of the wheel",
        "Wheel, tire, tube, brake and all that slides with the axle, weighed together.",
    )
    .of(Group::Wheel),
    FieldWords::number(
        "legs[].wheel.lean_rad",
        Quantity::Angle,
        "Lean",
        "lean of the wheel",
        "Front view only: how far the wheel leans from upright at gear down, counter-clockwise positive. Inclinometer across the rim.",
    )
    .of(Group::Wheel)
    .if_empty("the wheel stands upright"),
    FieldWords::text(
        "legs[].wheel.tire.size",
        "Size",
        "tire size",
        published::TIRE_SIZE,
    )
    .of(Group::Wheel)
    .if_empty("no size given"),
    FieldWords::number(
        "legs[].wheel.tire.diameter_m",
        Quantity::Length,
        "Overall diameter",
        "overall diameter of the tire",
        "At full pressure, wheel off the ground: wrap a tape round the tread and divide by 3.1416.",
    )
    .of(Group::Wheel),
    FieldWords::number(
        "legs[].wheel.tire.width_m",
        Quantity::Length,
        "Section width",
        "section width of the tire",
        "Widest place from side wall to side wall at full pressure, with a caliper or between two squares.",
    )
    .of(Group::Wheel),
    FieldWords::number(
        "legs[].wheel.tire.shoulder_radius_m",
        Quantity::Length,
        "Shoulder radius",
        "shoulder radius of the tire",
        "Roundness between tread and side wall in section: match it with a radius gauge or a coin. Half the width for a fully round tire; a smaller figure is the safe side: newer tires are squarer.",
    )
    .of(Group::Wheel),
    FieldWords::number(
        "legs[].wheel.tire.rim_diameter_m",
        Quantity::Length,
        "Rim diameter",
        "rim diameter",
        "Diameter where the bead sits: the last number of the tire size, in inches.",
    )
    .of(Group::Wheel),
    FieldWords::choice(
        "legs[].wheel.tire.basis",
        BASIS,
        "Size is from",
        "origin of the tire size",
        "Where diameter and width come from; the answers say so.",
    )
    .of(Group::Wheel)
    .if_empty("not stated"),
    FieldWords::choice(
        "legs[].wheel.tire.grown",
        GROWN,
        "Grown size",
        "grown size of the tire",
        "The largest the tire gets in service: it stretches in the first days and with use.",
    )
    .of(Group::Wheel)
    .if_empty("by the growth rule, formula from memory"),
    FieldWords::number(
        "legs[].wheel.tire.grown.given.diameter_m",
        Quantity::Length,
        "Grown diameter",
        "grown diameter of the tire",
        "Overall diameter in service, from the maker's data or measured as for the new tire.",
    )
    .of(Group::Wheel),
    FieldWords::number(
        "legs[].wheel.tire.grown.given.width_m",
        Quantity::Length,
        "Grown width",
        "grown width of the tire",
        "Section width in service, from the maker's data or measured as for the new tire.",
    )
    .of(Group::Wheel),
    FieldWords::choice(
        "legs[].wheel.tire.grown.given.basis",
        BASIS,
        "Grown size is from",
        "origin of the grown size",
        "Where the grown size comes from; the answers say so.",
    )
    .of(Group::Wheel)
    .if_empty("not stated"),
];
