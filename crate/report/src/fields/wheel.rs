//! Fields of wheel and tire.

use super::words::option;
use super::{ChoiceWords, FieldWords};
use crate::published;

const BASIS_OPTIONS: &[ChoiceWords] = &[
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

const GROWN_OPTIONS: &[ChoiceWords] = &[
    option("by_rule", "By the growth rule", published::GROWTH_RULE),
    option(
        "given",
        "Own figure",
        "Measured on a tire grown in service, or the maker's largest size in service.",
    ),
];

pub(super) const WHEEL_MASS: FieldWords = FieldWords::new(
    "Mass",
    "mass of the wheel",
    "Wheel, tire, tube, brake and all that slides with the axle, weighed together.",
);
pub(super) const WHEEL_LEAN: FieldWords = FieldWords::new(
    "Lean",
    "lean of the wheel",
    "Front view only: how far the wheel leans from upright at gear down, counter-clockwise positive. Inclinometer across the rim.",
)
.if_empty("the wheel stands upright");
pub(super) const TIRE_SIZE: FieldWords =
    FieldWords::new("Size", "tire size", published::TIRE_SIZE).if_empty("no size given");
pub(super) const TIRE_DIAMETER: FieldWords = FieldWords::new(
    "Overall diameter",
    "overall diameter of the tire",
    published::TIRE_DIAMETER,
);
pub(super) const TIRE_WIDTH: FieldWords = FieldWords::new(
    "Section width",
    "section width of the tire",
    "Widest place from side wall to side wall at full pressure, with a caliper or between two squares.",
);
pub(super) const TIRE_SHOULDER: FieldWords = FieldWords::new(
    "Shoulder radius",
    "shoulder radius of the tire",
    "Roundness between tread and side wall in section: match it with a radius gauge or a coin. Half the width for a fully round tire; a smaller figure is the safe side: newer tires are squarer.",
);
pub(super) const TIRE_RIM: FieldWords = FieldWords::new(
    "Rim diameter",
    "rim diameter",
    "Diameter where the bead sits: the last number of the tire size, in inches.",
);
pub(super) const TIRE_BASIS: FieldWords = FieldWords::new(
    "Size is from",
    "origin of the tire size",
    "Where diameter and width come from; the answers say so.",
)
.choices(BASIS_OPTIONS)
.if_empty("not stated");
pub(super) const TIRE_GROWN: FieldWords = FieldWords::new(
    "Grown size",
    "grown size of the tire",
    "The largest the tire gets in service: it stretches in the first days and with use.",
)
.choices(GROWN_OPTIONS)
.if_empty("by the growth rule, formula from memory");
pub(super) const TIRE_GROWN_DIAMETER: FieldWords = FieldWords::new(
    "Grown diameter",
    "grown diameter of the tire",
    "Overall diameter in service, from the maker's data or measured as for the new tire.",
);
pub(super) const TIRE_GROWN_WIDTH: FieldWords = FieldWords::new(
    "Grown width",
    "grown width of the tire",
    "Section width in service, from the maker's data or measured as for the new tire.",
);
pub(super) const TIRE_GROWN_BASIS: FieldWords = FieldWords::new(
    "Grown size is from",
    "origin of the grown size",
    "Where the grown size comes from; the answers say so.",
)
.choices(BASIS_OPTIONS)
.if_empty("not stated");
