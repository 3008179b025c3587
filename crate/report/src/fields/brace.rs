//! Fields of the drag or side brace.
use gearswing_units::Quantity;

use super::words::{Group, option};
use super::{ChoiceWords, FieldWords};

const KINDS: &[ChoiceWords] = &[
    option(
        "none",
        "No brace",
        "The actuator or a separate lock holds the leg.",
    ),
    option(
        "folding",
        "Folding brace",
        "Two links with a knee, the center hinge, between them.",
    ),
    option(
        "sliding",
        "Telescoping brace",
        "One brace that slides in itself and latches at gear down.",
    ),
];

const FOLDS: &[ChoiceWords] = &[
    option(
        "through_centre",
        "Back through center",
        "Over center when down: the knee comes back through the straight line and folds to the other side.",
    ),
    option(
        "same_side",
        "Keeps folding the same way",
        "Not over center: the knee keeps folding the same way, from the side where it stands at gear down; another lock holds it.",
    ),
];

const UNLOCKED_BY: &[ChoiceWords] = &[
    option(
        "actuator",
        "Retract actuator",
        "The retract actuator itself brings the knee back through the straight line.",
    ),
    option(
        "separate",
        "Separate unlock device",
        "An unlock actuator, hook or cable does it; its force is not worked out here.",
    ),
];

const PIVOT: &str = "Center of the brace pivot on the airframe, from the same datum, gear down.";
const ATTACH: &str =
    "Center of the pin that joins the brace to the leg, from the same datum, gear down.";
const THICKNESS: &str = "Depth across it as drawn, at its widest.";
const MASS: &str = "Weigh it off the airplane; half is taken at each pin.";

pub(super) const BRACE: &[FieldWords] = &[
    FieldWords::choice(
        "legs[].brace",
        KINDS,
        "Kind of brace",
        "kind of brace",
        "What keeps the leg from folding when it is down.",
    )
    .of(Group::Brace),
    FieldWords::point(
        "legs[].brace.folding.airframe_pivot_m",
        "Brace pivot B0",
        "brace pivot B0",
        PIVOT,
    )
    .of(Group::Brace),
    FieldWords::point(
        "legs[].brace.folding.knee_m",
        "Knee K",
        "knee K",
        "Center of the pin between the two links (the center hinge of the brace), gear down and locked. A small error moves the over-center offset as much: measure the offset with a straightedge from pin to pin as a check.",
    )
    .of(Group::Brace),
    FieldWords::point(
        "legs[].brace.folding.leg_attach_m",
        "Brace attach B1",
        "brace attach B1",
        ATTACH,
    )
    .of(Group::Brace),
    FieldWords::choice(
        "legs[].brace.folding.folds",
        FOLDS,
        "Knee folds",
        "way the knee folds",
        "Which way the knee goes when the leg comes up. Watch it once on jacks.",
    )
    .of(Group::Brace),
    FieldWords::choice(
        "legs[].brace.folding.unlocked_by",
        UNLOCKED_BY,
        "Unlocked by",
        "unlocking of the knee",
        "What takes an over-center knee back through the straight line.",
    )
    .of(Group::Brace)
    .if_empty("the retract actuator"),
    FieldWords::number(
        "legs[].brace.folding.excursion_allowed_m",
        Quantity::Length,
        "Overtravel past down",
        "overtravel past down, at the axle",
        "How far the axle can move past down before a stop holds it: the leg does so while the knee passes the straight line. Push the unlocked leg by hand on jacks and measure.",
    )
    .of(Group::Brace)
    .if_empty("no stop is given"),
    FieldWords::number(
        "legs[].brace.folding.upper.thickness_m",
        Quantity::Length,
        "Upper link thickness",
        "thickness of the upper brace link",
        THICKNESS,
    )
    .of(Group::Brace),
    FieldWords::number(
        "legs[].brace.folding.upper.mass_kg",
        Quantity::Mass,
        "Upper link mass",
        "mass of the upper brace link",
        MASS,
    )
    .of(Group::Brace)
    .if_empty("taken as weightless"),
    FieldWords::number(
        "legs[].brace.folding.lower.thickness_m",
        Quantity::Length,
        "Lower link thickness",
        "thickness of the lower brace link",
        THICKNESS,
    )
    .of(Group::Brace),
    FieldWords::number(
        "legs[].brace.folding.lower.mass_kg",
        Quantity::Mass,
        "Lower link mass",
        "mass of the lower brace link",
        MASS,
    )
    .of(Group::Brace)
    .if_empty("taken as weightless"),
    FieldWords::point(
        "legs[].brace.sliding.airframe_pivot_m",
        "Brace pivot B0",
        "brace pivot B0",
        PIVOT,
    )
    .of(Group::Brace),
    FieldWords::point(
        "legs[].brace.sliding.leg_attach_m",
        "Brace attach B1",
        "brace attach B1",
        ATTACH,
    )
    .of(Group::Brace),
    FieldWords::number(
        "legs[].brace.sliding.shortest_m",
        Quantity::Length,
        "Retracted length",
        "retracted length of the brace",
        "Pin to pin, pushed fully together.",
    )
    .of(Group::Brace),
    FieldWords::number(
        "legs[].brace.sliding.longest_m",
        Quantity::Length,
        "Extended length",
        "extended length of the brace",
        "Pin to pin, pulled fully out.",
    )
    .of(Group::Brace),
    FieldWords::number(
        "legs[].brace.sliding.thickness_m",
        Quantity::Length,
        "Thickness",
        "thickness of the brace",
        THICKNESS,
    )
    .of(Group::Brace),
    FieldWords::number(
        "legs[].brace.sliding.mass_kg",
        Quantity::Mass,
        "Mass",
        "mass of the brace",
        MASS,
    )
    .of(Group::Brace)
    .if_empty("taken as weightless"),
];
