//! Fields of the shock strut.

use super::words::option;
use super::{ChoiceWords, FieldWords};

const SHORTENING_OPTIONS: &[ChoiceWords] = &[
    option(
        "none",
        "Stays extended",
        "The strut keeps its full length on the way up.",
    ),
    option(
        "before_swing",
        "Shortens before the swing",
        "The strut is drawn in first, and only then the leg swings.",
    ),
    option(
        "with_travel",
        "Shortens with the swing",
        "A rod or cam draws the strut in as the leg swings: give the amount at several places.",
    ),
];

pub(super) const AXLE: FieldWords = FieldWords::new(
    "Axle W",
    "axle W",
    "Center of the wheel with the strut fully extended: on jacks, wheel off the ground.",
);
pub(super) const AXIS_BOTTOM: FieldWords = FieldWords::new(
    "Strut axis, lower point",
    "lower point of the strut axis",
    "Any point on the center line of the sliding tube, near its lower end.",
);
pub(super) const AXIS_TOP: FieldWords = FieldWords::new(
    "Strut axis, upper point",
    "upper point of the strut axis",
    "Any point on the same center line, near its upper end. The axle slides toward it as the strut shortens.",
);
pub(super) const SLIDING_OUTLINE: FieldWords = FieldWords::new(
    "Outline of the sliding part",
    "outline of the sliding part of the strut",
    "Corners of the lower tube and fork seen in this view, strut extended, gear down, in order round it.",
)
.if_empty("the sliding part's own clearance is not checked");
pub(super) const SHORTENING: FieldWords = FieldWords::new(
    "Shortening",
    "shortening of the strut",
    "Whether the strut gets shorter on the way up, and when. Watch it once on jacks.",
)
.choices(SHORTENING_OPTIONS)
.if_empty("the strut stays extended");
pub(super) const SHORTENING_AMOUNT: FieldWords = FieldWords::new(
    "Shortened by",
    "shortening before the swing",
    "Difference of the strut's length, extended and drawn in, measured along its tube on jacks.",
);
pub(super) const ROW_TRAVEL: FieldWords = FieldWords::new(
    "At travel",
    "travel in the shortening table",
    "Place of the swing for this row: 0 % down, 100 % up. Rows rise.",
);
pub(super) const ROW_AMOUNT: FieldWords = FieldWords::new(
    "Shortened by",
    "shortening in the table",
    "How much shorter the strut is at this place than extended, measured along its tube on jacks.",
);
