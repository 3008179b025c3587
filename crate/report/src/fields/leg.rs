//! Fields of the leg, its body and its drag areas.
use gearswing_units::Quantity;

use super::words::{Group, option};
use super::{ChoiceWords, FieldWords};

const VIEWS: &[ChoiceWords] = &[
    option(
        "side",
        "Side view",
        "Seen from the airplane's left, right is aft: the leg folds forward or aft and the wheel is seen as a disc.",
    ),
    option(
        "front",
        "Front view",
        "Seen from ahead, right is the left wing: the leg folds inboard or outboard and the wheel is seen edge on.",
    ),
];

pub(super) const LEG: &[FieldWords] = &[
    FieldWords::text(
        "legs[].name",
        "Name",
        "name of the leg",
        "What you call this leg, as Nose or Right main.",
    )
    .of(Group::Leg),
    FieldWords::choice(
        "legs[].view",
        VIEWS,
        "View",
        "view",
        "The plane in which the leg swings, and from where it is drawn.",
    )
    .of(Group::Leg),
    FieldWords::point(
        "legs[].trunnion_m",
        "Trunnion P",
        "trunnion P",
        "Center of the pivot on which the whole leg turns. Measure from the datum you use for all points, gear down, airplane level on jacks.",
    )
    .of(Group::Leg),
    FieldWords::number(
        "legs[].swing_up_rad",
        Quantity::Angle,
        "Swing to up",
        "swing to up",
        "Angle the leg turns from down and locked to up, counter-clockwise positive as drawn. Hold an inclinometer on the leg at both ends and take the difference.",
    )
    .of(Group::Leg),
    FieldWords::number(
        "legs[].body.mass_kg",
        Quantity::Mass,
        "Mass",
        "mass of the leg",
        "The upper leg without wheel and sliding parts: weigh it off the airplane, or take the maker's weight.",
    )
    .of(Group::Leg),
    FieldWords::point(
        "legs[].body.centre_m",
        "Center of mass",
        "center of mass of the leg",
        "Balance the bare leg on an edge and mark the place, or take halfway down the casting as a start.",
    )
    .of(Group::Leg),
    FieldWords::point(
        "legs[].body.outline_m[]",
        "Outline",
        "outline of the leg",
        "Corners of the upper leg seen in this view, gear down, in order round it; a plumb line and a square against the datum will do.",
    )
    .of(Group::Leg)
    .if_empty("the leg's own clearance is not checked"),
];

pub(super) const AIR: &[FieldWords] = &[
    FieldWords::number(
        "legs[].air.wheel_drag_area_m2",
        Quantity::DragArea,
        "Wheel",
        "drag area of the wheel",
        "Drag coefficient times diameter times width of the tire. 0.25 to 0.3 is a usual coefficient for a bare wheel (from memory: replace it with a figure of your own). The air load acts at the axle.",
    )
    .of(Group::Air)
    .if_empty("no air load on the wheel"),
    FieldWords::number(
        "legs[].air.leg_drag_area_m2",
        Quantity::DragArea,
        "Leg",
        "drag area of the leg",
        "Drag coefficient times length times thickness of the leg. 1.2 is a usual coefficient for a round strut (from memory: replace it with a figure of your own). The air load acts halfway down.",
    )
    .of(Group::Air)
    .if_empty("no air load on the leg"),
];
