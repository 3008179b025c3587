//! Fields of the structure around the leg.

use super::words::option;
use super::{ChoiceWords, FieldWords};

const SHAPES_OPTIONS: &[ChoiceWords] = &[
    option(
        "solid",
        "Solid",
        "A closed outline, solid inside: spar, rib, bay box, hose bundle.",
    ),
    option(
        "surface",
        "Surface",
        "An open line whose free side is on the left as you go along it: skin, well liner.",
    ),
];

const PARTS_OPTIONS: &[ChoiceWords] = &[
    option("wheel", "Wheel and tire", "Not checked against this piece."),
    option("leg_body", "Upper leg", "Not checked against this piece."),
    option(
        "sliding_strut",
        "Lower strut",
        "Not checked against this piece.",
    ),
    option(
        "upper_link",
        "Upper brace link",
        "Not checked against this piece.",
    ),
    option(
        "lower_link",
        "Lower brace link",
        "Not checked against this piece.",
    ),
    option(
        "link_arm",
        "Arm of the brace link",
        "Not checked against this piece.",
    ),
    option(
        "sliding_brace",
        "Telescoping brace",
        "Not checked against this piece.",
    ),
    option(
        "actuator_body",
        "Actuator barrel",
        "Not checked against this piece.",
    ),
    option(
        "actuator_rod",
        "Actuator rod",
        "Not checked against this piece.",
    ),
];

const CORNERS: &str = "Points in order, from the same datum, in the plane of the swing. Measure the nearest faces: rivet tails, clips and hoses count.";

pub(super) const OBSTACLE_NAME: FieldWords = FieldWords::new(
    "Name",
    "name of a piece of structure",
    "What you call this piece, as Outboard rib.",
);
pub(super) const OBSTACLE_SHAPE: FieldWords = FieldWords::new(
    "Shape",
    "shape of a piece of structure",
    "Whether it is a solid piece or a skin with one free side.",
)
.choices(SHAPES_OPTIONS);
pub(super) const SOLID_POINTS: FieldWords = FieldWords::new("Corner", "corner", CORNERS);
pub(super) const SURFACE_POINTS: FieldWords = FieldWords::new("Point", "point", CORNERS);
pub(super) const REQUIRED_CLEARANCE: FieldWords = FieldWords::new(
    "Required clearance",
    "required clearance at this piece",
    "Least clearance of every moving part from this piece, from the maker's data where it gives one.",
)
.if_empty("the figure for the whole gear");
pub(super) const IGNORES: FieldWords = FieldWords::new(
    "Not checked",
    "parts not checked against this piece",
    "Parts that are bolted to this piece or pass beside the drawn plane.",
)
.choices(PARTS_OPTIONS)
.if_empty("every part is checked");
