//! Fields of what was seen on the jacks.
use gearswing_units::Quantity;

use super::FieldWords;
use super::words::{ChoiceWords, Group, option};

const HOW_FAR: &[ChoiceWords] = &[
    option(
        "none",
        "No stop seen",
        "The leg goes all the way, or nothing was noted.",
    ),
    option(
        "travel",
        "Share of travel",
        "Estimated by eye: 0 % is down and locked, 100 % is up.",
    ),
    option(
        "angle",
        "Angle swung",
        "Read with an inclinometer on the leg, from down and locked.",
    ),
    option(
        "actuator_pins",
        "Actuator, pin to pin",
        "Measured with a tape between the actuator's two pins.",
    ),
    option(
        "axle_from",
        "Axle from a fixed place",
        "Measured with a tape from the axle's center to a fixed place in the plane of the leg.",
    ),
];

const SELECTED: &[ChoiceWords] = &[
    option("up", "Up", "Retracting."),
    option("down", "Down", "Extending."),
];

const PUMP: &[ChoiceWords] = &[
    option(
        "not_noticed",
        "Not noticed",
        "It says nothing for or against anything.",
    ),
    option(
        "running",
        "Ran on",
        "Pump or motor ran on while the leg stood.",
    ),
    option(
        "stopped",
        "Had stopped",
        "Pump or motor had stopped when the leg stood.",
    ),
];

pub(super) const SEEN: &[FieldWords] = &[
    FieldWords::choice(
        "legs[].seen_stop",
        HOW_FAR,
        "How far it came, by",
        "how far the leg came",
        "A leg that stopped short on the jacks: how you know where it stood. Keep clear of the leg while there is pressure or voltage on it.",
    )
    .of(Group::Seen),
    FieldWords::choice(
        "legs[].seen_stop.selected",
        SELECTED,
        "Gear selected",
        "selected direction",
        "Which way the leg was going.",
    )
    .of(Group::Seen),
    FieldWords::number(
        "legs[].seen_stop.how_far.travel.travel",
        Quantity::Travel,
        "Travel where it stood",
        "travel seen",
        "0 % is down and locked, 100 % is up.",
    )
    .of(Group::Seen)
    .if_empty("to be entered"),
    FieldWords::number(
        "legs[].seen_stop.how_far.travel.travel_within",
        Quantity::Travel,
        "Travel is right within",
        "uncertainty of the travel seen",
        "The ± figure that you are 95 % sure of.",
    )
    .of(Group::Seen),
    FieldWords::number(
        "legs[].seen_stop.how_far.angle.angle_rad",
        Quantity::Angle,
        "Angle where it stood",
        "angle seen",
        "From down and locked, read on the leg.",
    )
    .of(Group::Seen)
    .if_empty("to be entered"),
    FieldWords::number(
        "legs[].seen_stop.how_far.angle.angle_within_rad",
        Quantity::Angle,
        "Angle is right within",
        "uncertainty of the angle seen",
        "The ± figure that you are 95 % sure of.",
    )
    .of(Group::Seen),
    FieldWords::number(
        "legs[].seen_stop.how_far.actuator_pins.pins_apart_m",
        Quantity::Length,
        "Pin to pin where it stood",
        "actuator length seen",
        "Between the centers of the actuator's pins, with the pressure off.",
    )
    .of(Group::Seen)
    .if_empty("to be entered"),
    FieldWords::number(
        "legs[].seen_stop.how_far.actuator_pins.pins_within_m",
        Quantity::Length,
        "Pin to pin is right within",
        "uncertainty of the actuator length seen",
        "The ± figure that you are 95 % sure of.",
    )
    .of(Group::Seen),
    FieldWords::point(
        "legs[].seen_stop.how_far.axle_from.from_m",
        "Fixed place",
        "fixed place measured from",
        "A place on the airframe that is in the drawing too, as a rivet line or the corner of a rib.",
    )
    .of(Group::Seen),
    FieldWords::number(
        "legs[].seen_stop.how_far.axle_from.axle_apart_m",
        Quantity::Length,
        "Axle from there",
        "distance of the axle seen",
        "From the fixed place to the center of the axle.",
    )
    .of(Group::Seen)
    .if_empty("to be entered"),
    FieldWords::number(
        "legs[].seen_stop.how_far.axle_from.axle_within_m",
        Quantity::Length,
        "Distance is right within",
        "uncertainty of the distance seen",
        "The ± figure that you are 95 % sure of.",
    )
    .of(Group::Seen),
    FieldWords::choice(
        "legs[].seen_stop.pump",
        PUMP,
        "Pump or motor",
        "what the pump did",
        "Whether it could be heard while the leg stood.",
    )
    .of(Group::Seen),
    FieldWords::number(
        "legs[].seen_stop.gauge_pa",
        Quantity::Pressure,
        "Gauge read",
        "pressure read",
        "Gauge pressure at the manifold while the leg stood.",
    )
    .of(Group::Seen)
    .if_empty("not read"),
    FieldWords::number(
        "legs[].seen_stop.gauge_within_pa",
        Quantity::Pressure,
        "Gauge is right within",
        "uncertainty of the pressure read",
        "The ± figure that you are 95 % sure of; 50 psi for a shop gauge (common practice).",
    )
    .of(Group::Seen),
    FieldWords::number(
        "legs[].seen_stop.posts_v",
        Quantity::Voltage,
        "Voltage at the battery",
        "voltage read",
        "At the battery's posts while the leg stood.",
    )
    .of(Group::Seen)
    .if_empty("not read"),
    FieldWords::number(
        "legs[].seen_stop.posts_within_v",
        Quantity::Voltage,
        "Voltage is right within",
        "uncertainty of the voltage read",
        "The ± figure that you are 95 % sure of; 0.2 V for a hand meter (common practice).",
    )
    .of(Group::Seen),
    FieldWords::number(
        "legs[].seen_stop.drawing_within_m",
        Quantity::Length,
        "The drawing agrees within",
        "uncertainty of the drawing",
        "How well clearances and lengths of this file agree with the airplane; 1/8 in for a tape in a wheel well (common practice).",
    )
    .of(Group::Seen),
    FieldWords::number(
        "legs[].seen_stop.forces_within",
        Quantity::Travel,
        "Forces are right within",
        "uncertainty of the forces",
        "How well the forces and pressures worked out from this file are known, as a share of the most that the source makes; 10 % for weights and friction as estimated (common practice).",
    )
    .of(Group::Seen),
];
