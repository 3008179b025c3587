//! Fields of the leg, its body and its drag areas.

use super::words::option;
use super::{ChoiceWords, FieldWords};

const OWN_LEG_OPTIONS: &[ChoiceWords] = &[
    option(
        "by_view",
        "By the view",
        "Front view: checked against the leg, its brace and its actuator. Side view: not checked, for they stand beside the wheel.",
    ),
    option(
        "all",
        "All of them",
        "Leg, brace and actuator lie in the plane of the wheel. In a side view the sliding part is left out: it holds the axle.",
    ),
    option(
        "leg",
        "The leg only",
        "Brace and actuator pass ahead of, behind or beside the tire.",
    ),
    option(
        "brace",
        "Brace and actuator only",
        "The leg stands ahead of, behind or beside the tire, as with a trailing arm.",
    ),
    option(
        "none",
        "None",
        "All of them pass beside the tire: you have looked at it.",
    ),
];

const VIEWS_OPTIONS: &[ChoiceWords] = &[
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

pub(super) const LEG_NAME: FieldWords = FieldWords::new(
    "Name",
    "name of the leg",
    "What you call this leg, as Nose or Right main.",
);
pub(super) const VIEW: FieldWords = FieldWords::new(
    "View",
    "view",
    "The plane in which the leg swings, and from where it is drawn. It is the one square to the trunnion.",
)
.choices(VIEWS_OPTIONS);
pub(super) const TRUNNION_SKEW: FieldWords = FieldWords::new(
    "Trunnion off square",
    "angle of the trunnion off square to the drawing",
    "Angle between the trunnion and a line square to the drawn plane, the larger of what you see from above and from the side: straightedge along both bearings, against the center line and the level. 0 = square. What it can cost is then taken off the tire's clearances.",
)
.if_empty("not measured");
pub(super) const WHEEL_SKEW: FieldWords = FieldWords::new(
    "Wheel off square",
    "angle of the wheel off square to the drawing",
    "Front view: how far the wheel toes in or out, gear down. Side view: how far the axle is from square to the drawing. Straightedge across the rim. 0 = square.",
)
.if_empty("not measured");
pub(super) const ROOM_NEAR: FieldWords = FieldWords::new(
    "Room ahead (side view: left)",
    "room ahead of the tire, or to its left",
    "Front view: from the middle of the tire forward to the nearest thing anywhere on its way; side view: to the left. Straightedge across the well, tire half-way; then near up and near down.",
)
.if_empty("not measured: the answer says how far the tire reaches");
pub(super) const ROOM_FAR: FieldWords = FieldWords::new(
    "Room behind (side view: right)",
    "room behind the tire, or to its right",
    "The same on the other side: behind in a front view, to the right in a side view.",
)
.if_empty("not measured: the answer says how far the tire reaches");
pub(super) const OWN_LEG: FieldWords = FieldWords::new(
    "Tire against its own leg",
    "what of its own leg the tire is checked against",
    "Which parts of the leg stand in the plane of the wheel, where the tire could touch them. Hub, axle and brake within the rim are never counted against the leg.",
)
.choices(OWN_LEG_OPTIONS)
.if_empty("by the view");
pub(super) const TRUNNION: FieldWords = FieldWords::new(
    "Trunnion P",
    "trunnion P",
    "Center of the pivot on which the whole leg turns. Measure from the datum you use for all points, gear down, airplane level on jacks.",
);
pub(super) const SWING_UP: FieldWords = FieldWords::new(
    "Swing to up",
    "swing to up",
    "Angle the leg turns from down and locked to up, without a sign: the drawing shows which way, and “Swing it the other way” turns it. Hold an inclinometer on the leg at both ends and take the difference.",
);
pub(super) const BODY_MASS: FieldWords = FieldWords::new(
    "Mass",
    "mass of the leg",
    "The upper leg without wheel and sliding parts: weigh it off the airplane, or take the maker's weight.",
);
pub(super) const BODY_CENTER: FieldWords = FieldWords::new(
    "Center of mass",
    "center of mass of the leg",
    "Balance the bare leg on an edge and mark the place, or take halfway down the casting as a start.",
);
pub(super) const BODY_OUTLINE: FieldWords = FieldWords::new(
    "Outline",
    "outline of the leg",
    "Corners of the upper leg seen in this view, gear down, in order round it; a plumb line and a square against the datum will do.",
)
.if_empty("the leg's own clearance is not checked");

pub(super) const WHEEL_DRAG_AREA: FieldWords = FieldWords::new(
    "Wheel",
    "drag area of the wheel",
    "Drag coefficient times diameter times width of the tire. 0.25 to 0.3 is a usual coefficient for a bare wheel (from memory: replace it with a figure of your own). The air load acts at the axle.",
)
.if_empty("no air load on the wheel");
pub(super) const LEG_DRAG_AREA: FieldWords = FieldWords::new(
    "Leg",
    "drag area of the leg",
    "Drag coefficient times length times thickness of the leg. 1.2 is a usual coefficient for a round strut (from memory: replace it with a figure of your own). The air load acts halfway down.",
)
.if_empty("no air load on the leg");
