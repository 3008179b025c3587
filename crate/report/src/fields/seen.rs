//! Fields of what was seen on the jacks.

use super::words::option;
use super::{ChoiceWords, FieldWords};

const HOW_FAR_OPTIONS: &[ChoiceWords] = &[
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

const SELECTED_OPTIONS: &[ChoiceWords] = &[
    option("up", "Up", "Retracting."),
    option("down", "Down", "Extending."),
];

const PUMP_OPTIONS: &[ChoiceWords] = &[
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

pub(super) const SEEN_STOP: FieldWords = FieldWords::new(
    "How far it came, by",
    "how far the leg came",
    "A leg that stopped short on the jacks: how you know where it stood. Keep clear of the leg while there is pressure or voltage on it.",
)
.choices(HOW_FAR_OPTIONS);
pub(super) const SEEN_SELECTED: FieldWords = FieldWords::new(
    "Gear selected",
    "selected direction",
    "Which way the leg was going.",
)
.choices(SELECTED_OPTIONS);
pub(super) const SEEN_TRAVEL: FieldWords = FieldWords::new(
    "Travel where it stood",
    "travel seen",
    "0 % is down and locked, 100 % is up.",
)
.if_empty("to be entered");
pub(super) const SEEN_TRAVEL_WITHIN: FieldWords = FieldWords::new(
    "Travel is right within",
    "uncertainty of the travel seen",
    "The ± figure that you are 95 % sure of.",
);
pub(super) const SEEN_ANGLE: FieldWords = FieldWords::new(
    "Angle where it stood",
    "angle seen",
    "From down and locked, read on the leg.",
)
.if_empty("to be entered");
pub(super) const SEEN_ANGLE_WITHIN: FieldWords = FieldWords::new(
    "Angle is right within",
    "uncertainty of the angle seen",
    "The ± figure that you are 95 % sure of.",
);
pub(super) const SEEN_PINS_APART: FieldWords = FieldWords::new(
    "Pin to pin where it stood",
    "actuator length seen",
    "Between the centers of the actuator's pins, with the pressure off.",
)
.if_empty("to be entered");
pub(super) const SEEN_PINS_WITHIN: FieldWords = FieldWords::new(
    "Pin to pin is right within",
    "uncertainty of the actuator length seen",
    "The ± figure that you are 95 % sure of.",
);
pub(super) const SEEN_FROM: FieldWords = FieldWords::new(
    "Fixed place",
    "fixed place measured from",
    "A place on the airframe that is in the drawing too, as a rivet line or the corner of a rib.",
);
pub(super) const SEEN_AXLE_APART: FieldWords = FieldWords::new(
    "Axle from there",
    "distance of the axle seen",
    "From the fixed place to the center of the axle.",
)
.if_empty("to be entered");
pub(super) const SEEN_AXLE_WITHIN: FieldWords = FieldWords::new(
    "Distance is right within",
    "uncertainty of the distance seen",
    "The ± figure that you are 95 % sure of.",
);
pub(super) const SEEN_PUMP: FieldWords = FieldWords::new(
    "Pump or motor",
    "what the pump did",
    "Whether it could be heard while the leg stood.",
)
.choices(PUMP_OPTIONS);
pub(super) const SEEN_GAUGE: FieldWords = FieldWords::new(
    "Gauge read",
    "pressure read",
    "Gauge pressure at the manifold while the leg stood.",
)
.if_empty("not read");
pub(super) const SEEN_GAUGE_WITHIN: FieldWords = FieldWords::new(
    "Gauge is right within",
    "uncertainty of the pressure read",
    "The ± figure that you are 95 % sure of; 50 psi for a shop gauge (common practice).",
);
pub(super) const SEEN_POSTS: FieldWords = FieldWords::new(
    "Voltage at the battery",
    "voltage read",
    "At the battery's posts while the leg stood.",
)
.if_empty("not read");
pub(super) const SEEN_POSTS_WITHIN: FieldWords = FieldWords::new(
    "Voltage is right within",
    "uncertainty of the voltage read",
    "The ± figure that you are 95 % sure of; 0.2 V for a hand meter (common practice).",
);
pub(super) const SEEN_DRAWING_WITHIN: FieldWords = FieldWords::new(
    "The drawing agrees within",
    "uncertainty of the drawing",
    "How well clearances and lengths of this file agree with the airplane; 1/8 in for a tape in a wheel well (common practice).",
);
pub(super) const SEEN_FORCES_WITHIN: FieldWords = FieldWords::new(
    "Forces are right within",
    "uncertainty of the forces",
    "How well the forces and pressures worked out from this file are known, as a share of the most that the source makes; 10 % for weights and friction as estimated (common practice).",
);
