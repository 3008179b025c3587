//! Fields of the shock strut.
use gearswing_units::Quantity;

use super::words::{Group, option};
use super::{ChoiceWords, FieldWords};

const SHORTENING: &[ChoiceWords] = &[
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

pub(super) const STRUT: &[FieldWords] = &[
    FieldWords::point(
        "legs[].strut.axle_m",
        "Axle W",
        "axle W",
        "Center of the wheel with the strut fully extended: on jacks, wheel off the ground.",
    )
    .of(Group::Strut),
    FieldWords::point(
        "legs[].strut.axis_bottom_m",
        "Strut axis, lower point",
        "lower point of the strut axis",
        "Any point on the center line of the sliding tube, near its lower end.",
    )
    .of(Group::Strut),
    FieldWords::point(
        "legs[].strut.axis_top_m",
        "Strut axis, upper point",
        "upper point of the strut axis",
        "Any point on the same center line, near its upper end. The axle slides toward it as the strut shortens.",
    )
    .of(Group::Strut),
    FieldWords::point(
        "legs[].strut.sliding_outline_m[]",
        "Outline of the sliding part",
        "outline of the sliding part of the strut",
        "Corners of the lower tube and fork seen in this view, strut extended, gear down, in order round it.",
    )
    .of(Group::Strut)
    .if_empty("the sliding part's own clearance is not checked"),
    FieldWords::choice(
        "legs[].strut.shortening",
        SHORTENING,
        "Shortening",
        "shortening of the strut",
        "Whether the strut gets shorter on the way up, and when. Watch it once on jacks.",
    )
    .of(Group::Strut)
    .if_empty("the strut stays extended"),
    FieldWords::number(
        "legs[].strut.shortening.before_swing.amount_m",
        Quantity::Length,
        "Shortened by",
        "shortening before the swing",
        "Difference of the strut's length, extended and drawn in, measured along its tube on jacks.",
    )
    .of(Group::Strut),
    FieldWords::number(
        "legs[].strut.shortening.with_travel.table[].travel",
        Quantity::Travel,
        "At travel",
        "travel in the shortening table",
        "Place of the swing for this row: 0 % down, 100 % up. Rows rise.",
    )
    .of(Group::Strut),
    FieldWords::number(
        "legs[].strut.shortening.with_travel.table[].amount_m",
        Quantity::Length,
        "Shortened by",
        "shortening in the table",
        "How much shorter the strut is at this place than extended, measured along its tube on jacks.",
    )
    .of(Group::Strut),
];
