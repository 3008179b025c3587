//! Fields of springs and pins.

use super::words::option;
use super::{ChoiceWords, FieldWords};

const KINDS_OPTIONS: &[ChoiceWords] = &[
    option(
        "linear",
        "Coil or cord",
        "Its pull grows in proportion to its stretch: coil spring, rubber cord.",
    ),
    option(
        "gas",
        "Gas spring",
        "A closed gas cylinder that pushes its ends apart.",
    ),
    option(
        "torsion",
        "Torsion spring",
        "A coil about a joint that turns its two parts against each other.",
    ),
];

const BODIES_OPTIONS: &[ChoiceWords] = &[
    option("airframe", "Airframe", "It stays where it is."),
    option("leg", "Upper leg", "It turns with the leg."),
    option("sliding_strut", "Lower strut", "It slides with the axle."),
    option(
        "upper_link",
        "Upper brace link",
        "It goes with the upper link of a folding brace.",
    ),
    option(
        "lower_link",
        "Lower brace link",
        "It goes with the lower link of a folding brace.",
    ),
];

const ACTS_OPTIONS: &[ChoiceWords] = &[
    option("both", "Pulls and pushes", "It works both ways."),
    option(
        "pulls",
        "Pulls only",
        "It hangs slack below its free length: hooked coil, cord.",
    ),
    option(
        "pushes",
        "Pushes only",
        "It sits loose above its free length: coil between seats.",
    ),
];

const SETS_OPTIONS: &[ChoiceWords] = &[
    option(
        "free_length",
        "Free length",
        "Its length without load is known.",
    ),
    option(
        "force_at_down",
        "Force with the gear down",
        "Its force with the gear down was measured.",
    ),
];

const LAWS_OPTIONS: &[ChoiceWords] = &[
    option(
        "linear",
        "Straight line",
        "The push goes in a straight line from end to end.",
    ),
    option(
        "polytropic",
        "Gas law",
        "Pressure times volume to the power n stays the same.",
    ),
];

const JOINTS_OPTIONS: &[ChoiceWords] = &[
    option("trunnion", "Trunnion", "The leg against the airframe."),
    option(
        "brace_pivot",
        "Brace pivot",
        "The upper link or telescoping brace against the airframe.",
    ),
    option("knee", "Knee", "The lower link against the upper link."),
    option(
        "leg_attach",
        "Brace attach",
        "The lower link or telescoping brace against the leg.",
    ),
];

const BODY: &str = "The part to which this end is fixed.";
const END: &str = "Center of its hook, eye or ball, gear down, from the same datum.";

pub(super) const SPRING_NAME: FieldWords = FieldWords::new(
    "Name",
    "name of a spring",
    "What you call this spring, as Down-lock spring.",
);
pub(super) const SPRING_TYPE: FieldWords = FieldWords::new(
    "Kind",
    "kind of spring",
    "Coil or cord, gas spring, or torsion spring.",
)
.choices(KINDS_OPTIONS);
pub(super) const LINEAR_FIRST_BODY: FieldWords =
    FieldWords::new("First end on", "part at the first end", BODY).choices(BODIES_OPTIONS);
pub(super) const LINEAR_FIRST_POINT: FieldWords = FieldWords::new("First end", "first end", END);
pub(super) const LINEAR_SECOND_BODY: FieldWords =
    FieldWords::new("Second end on", "part at the second end", BODY).choices(BODIES_OPTIONS);
pub(super) const LINEAR_SECOND_POINT: FieldWords = FieldWords::new("Second end", "second end", END);
pub(super) const SPRING_RATE: FieldWords = FieldWords::new(
    "Rate",
    "rate",
    "Hang two weights on it and divide the difference of the weights by that of the lengths.",
);
pub(super) const SPRING_SET: FieldWords = FieldWords::new(
    "Known by",
    "what the spring is known by",
    "Its free length, or its force with the gear down.",
)
.choices(SETS_OPTIONS);
pub(super) const FREE_LENGTH: FieldWords = FieldWords::new(
    "Free length",
    "free length",
    "Length between its ends without load, unhooked; for a coil wound tight, where its straight line of force would begin.",
);
pub(super) const FORCE_AT_DOWN: FieldWords = FieldWords::new(
    "Force with the gear down",
    "force with the gear down",
    "With a spring scale at one hook, gear down and held. A pull is positive, a push negative.",
);
pub(super) const SPRING_ACTS: FieldWords = FieldWords::new(
    "Works",
    "direction in which the spring works",
    "Whether it can push, pull or both.",
)
.choices(ACTS_OPTIONS)
.if_empty("pulls and pushes");
pub(super) const GAS_FIRST_BODY: FieldWords =
    FieldWords::new("First end on", "part at the first end", BODY).choices(BODIES_OPTIONS);
pub(super) const GAS_FIRST_POINT: FieldWords = FieldWords::new("First end", "first end", END);
pub(super) const GAS_SECOND_BODY: FieldWords =
    FieldWords::new("Second end on", "part at the second end", BODY).choices(BODIES_OPTIONS);
pub(super) const GAS_SECOND_POINT: FieldWords = FieldWords::new("Second end", "second end", END);
pub(super) const GAS_SHORTEST: FieldWords = FieldWords::new(
    "Compressed length",
    "compressed length",
    "Between its ends, pushed fully together, from its maker's data.",
);
pub(super) const GAS_LONGEST: FieldWords = FieldWords::new(
    "Extended length",
    "extended length",
    "Between its ends, pulled fully apart.",
);
pub(super) const GAS_FORCE_LONGEST: FieldWords = FieldWords::new(
    "Push extended",
    "push extended",
    "Its push at the extended length, from its data plate or with a scale.",
);
pub(super) const GAS_FORCE_SHORTEST: FieldWords = FieldWords::new(
    "Push compressed",
    "push compressed",
    "Its push at the compressed length; not less than extended.",
);
pub(super) const GAS_SPRING_LAW: FieldWords = FieldWords::new(
    "Between the ends",
    "law of the gas spring",
    "How the push goes from one end to the other.",
)
.choices(LAWS_OPTIONS)
.if_empty("a straight line");
pub(super) const GAS_SPRING_EXPONENT: FieldWords = FieldWords::new(
    "Exponent n",
    "exponent of the gas law",
    "1 when it moves slowly, 1.4 for air or nitrogen when it moves fast.",
);
pub(super) const TORSION_JOINT: FieldWords = FieldWords::new(
    "Joint",
    "joint of the torsion spring",
    "The joint about which it is wound; its moment is that on the part named first.",
)
.choices(JOINTS_OPTIONS);
pub(super) const TORSION_RATE: FieldWords = FieldWords::new(
    "Rate",
    "rate",
    "Moment for each unit of turn, from its maker's data or with a scale on an arm at two angles.",
);
pub(super) const TORSION_MOMENT: FieldWords = FieldWords::new(
    "Moment with the gear down",
    "moment with the gear down",
    "Counter-clockwise as drawn is positive, on the part that the joint names first.",
);

/// What an empty one counts as.
const UNKNOWN: &str = "not known, counted as none";
const RADIUS: &str = "Half the diameter on which it turns: pin, bolt or ball.";
const FRICTION: &str = "0.1 to 0.2 for greased steel in bronze, more when dry (common practice); 0.02 or less for ball bearings.";

const COUPLE: &str = "Friction that stays the same whatever the pin carries: a tight bushing, a brake that drags. Measured by spring scale at the axle, the rest disconnected: couple = scale force × arm. It counts beside radius and friction.";

pub(super) const TRUNNION_PIN_RADIUS: FieldWords =
    FieldWords::new("Trunnion radius", "radius of the trunnion pin", RADIUS).if_empty(UNKNOWN);
pub(super) const TRUNNION_PIN_FRICTION: FieldWords = FieldWords::new(
    "Trunnion friction",
    "friction of the trunnion pin",
    FRICTION,
)
.if_empty(UNKNOWN);
pub(super) const TRUNNION_PIN_COUPLE: FieldWords = FieldWords::new(
    "Trunnion couple",
    "friction couple of the trunnion pin",
    COUPLE,
)
.if_empty(UNKNOWN);
pub(super) const BRACE_PIVOT_PIN_RADIUS: FieldWords =
    FieldWords::new("Brace pivot radius", "radius of the brace pivot", RADIUS).if_empty(UNKNOWN);
pub(super) const BRACE_PIVOT_PIN_FRICTION: FieldWords = FieldWords::new(
    "Brace pivot friction",
    "friction of the brace pivot",
    FRICTION,
)
.if_empty(UNKNOWN);
pub(super) const BRACE_PIVOT_PIN_COUPLE: FieldWords = FieldWords::new(
    "Brace pivot couple",
    "friction couple of the brace pivot",
    COUPLE,
)
.if_empty(UNKNOWN);
pub(super) const KNEE_PIN_RADIUS: FieldWords =
    FieldWords::new("Knee radius", "radius of the knee pin", RADIUS).if_empty(UNKNOWN);
pub(super) const KNEE_PIN_FRICTION: FieldWords =
    FieldWords::new("Knee friction", "friction of the knee pin", FRICTION).if_empty(UNKNOWN);
pub(super) const KNEE_PIN_COUPLE: FieldWords =
    FieldWords::new("Knee couple", "friction couple of the knee pin", COUPLE).if_empty(UNKNOWN);
pub(super) const BRACE_ATTACH_PIN_RADIUS: FieldWords = FieldWords::new(
    "Brace attach radius",
    "radius of the brace attach pin",
    RADIUS,
)
.if_empty(UNKNOWN);
pub(super) const BRACE_ATTACH_PIN_FRICTION: FieldWords = FieldWords::new(
    "Brace attach friction",
    "friction of the brace attach pin",
    FRICTION,
)
.if_empty(UNKNOWN);
pub(super) const BRACE_ATTACH_PIN_COUPLE: FieldWords = FieldWords::new(
    "Brace attach couple",
    "friction couple of the brace attach pin",
    COUPLE,
)
.if_empty(UNKNOWN);
pub(super) const MOUNT_PIN_RADIUS: FieldWords = FieldWords::new(
    "Actuator mount radius",
    "radius of the actuator mount pin",
    RADIUS,
)
.if_empty(UNKNOWN);
pub(super) const MOUNT_PIN_FRICTION: FieldWords = FieldWords::new(
    "Actuator mount friction",
    "friction of the actuator mount pin",
    FRICTION,
)
.if_empty(UNKNOWN);
pub(super) const MOUNT_PIN_COUPLE: FieldWords = FieldWords::new(
    "Actuator mount couple",
    "friction couple of the actuator mount pin",
    COUPLE,
)
.if_empty(UNKNOWN);
pub(super) const ATTACH_PIN_RADIUS: FieldWords = FieldWords::new(
    "Actuator attach radius",
    "radius of the actuator attach pin",
    RADIUS,
)
.if_empty(UNKNOWN);
pub(super) const ATTACH_PIN_FRICTION: FieldWords = FieldWords::new(
    "Actuator attach friction",
    "friction of the actuator attach pin",
    FRICTION,
)
.if_empty(UNKNOWN);
pub(super) const ATTACH_PIN_COUPLE: FieldWords = FieldWords::new(
    "Actuator attach couple",
    "friction couple of the actuator attach pin",
    COUPLE,
)
.if_empty(UNKNOWN);
