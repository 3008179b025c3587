//! Fields of the structure around the leg.
use gearswing_units::Quantity;

use super::words::{Group, option};
use super::{ChoiceWords, FieldWords};

const SHAPES: &[ChoiceWords] = &[
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

const PARTS: &[ChoiceWords] = &[
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

pub(super) const WELL: &[FieldWords] = &[
    FieldWords::text(
        "legs[].well[].name",
        "Name",
        "name of a piece of structure",
        "What you call this piece, as Outboard rib.",
    )
    .of(Group::Well),
    FieldWords::choice(
        "legs[].well[].shape",
        SHAPES,
        "Shape",
        "shape of a piece of structure",
        "Whether it is a solid piece or a skin with one free side.",
    )
    .of(Group::Well),
    FieldWords::point(
        "legs[].well[].shape.solid.points_m[]",
        "Corner",
        "corner",
        CORNERS,
    )
    .of(Group::Well),
    FieldWords::point(
        "legs[].well[].shape.surface.points_m[]",
        "Point",
        "point",
        CORNERS,
    )
    .of(Group::Well),
    FieldWords::number(
        "legs[].well[].required_clearance_m",
        Quantity::Length,
        "Required clearance",
        "required clearance at this piece",
        "Least clearance of every moving part from this piece, from the maker's data where it gives one.",
    )
    .of(Group::Well)
    .if_empty("the figure for the whole gear"),
    FieldWords::set(
        "legs[].well[].ignores[]",
        PARTS,
        "Not checked",
        "parts not checked against this piece",
        "Parts that are bolted to this piece or pass beside the drawn plane.",
    )
    .of(Group::Well)
    .if_empty("every part is checked"),
];
