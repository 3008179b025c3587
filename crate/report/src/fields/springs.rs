//! Fields of springs and pins.
use gearswing_units::Quantity;

use super::words::{Group, option};
use super::{ChoiceWords, FieldWords};

const KINDS: &[ChoiceWords] = &[
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

const BODIES: &[ChoiceWords] = &[
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

const ACTS: &[ChoiceWords] = &[
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

const SETS: &[ChoiceWords] = &[
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

const LAWS: &[ChoiceWords] = &[
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

const JOINTS: &[ChoiceWords] = &[
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

const fn end(pattern: &'static str, label: &'static str, name: &'static str) -> FieldWords {
    FieldWords::point(pattern, label, name, END).of(Group::Springs)
}

const fn on(pattern: &'static str, label: &'static str, name: &'static str) -> FieldWords {
    FieldWords::choice(pattern, BODIES, label, name, BODY).of(Group::Springs)
}

const fn spring(
    pattern: &'static str,
    quantity: Quantity,
    label: &'static str,
    name: &'static str,
    help: &'static str,
) -> FieldWords {
    FieldWords::number(pattern, quantity, label, name, help).of(Group::Springs)
}

const fn choice(
    pattern: &'static str,
    choices: &'static [ChoiceWords],
    label: &'static str,
    name: &'static str,
    help: &'static str,
) -> FieldWords {
    FieldWords::choice(pattern, choices, label, name, help).of(Group::Springs)
}

pub(super) const SPRINGS: &[FieldWords] = &[
    FieldWords::text(
        "legs[].springs[].name",
        "Name",
        "name of a spring",
        "What you call this spring, as Down-lock spring.",
    )
    .of(Group::Springs),
    choice(
        "legs[].springs[].kind",
        KINDS,
        "Kind",
        "kind of spring",
        "Coil or cord, gas spring, or torsion spring.",
    ),
    on(
        "legs[].springs[].kind.linear.first.body",
        "First end on",
        "part at the first end",
    ),
    end(
        "legs[].springs[].kind.linear.first.point_m",
        "First end",
        "first end",
    ),
    on(
        "legs[].springs[].kind.linear.second.body",
        "Second end on",
        "part at the second end",
    ),
    end(
        "legs[].springs[].kind.linear.second.point_m",
        "Second end",
        "second end",
    ),
    spring(
        "legs[].springs[].kind.linear.rate_n_m",
        Quantity::Stiffness,
        "Rate",
        "rate",
        "Hang two weights on it and divide the difference of the weights by that of the lengths.",
    ),
    choice(
        "legs[].springs[].kind.linear.set",
        SETS,
        "Known by",
        "what the spring is known by",
        "Its free length, or its force with the gear down.",
    ),
    spring(
        "legs[].springs[].kind.linear.set.free_length.length_m",
        Quantity::Length,
        "Free length",
        "free length",
        "Length between its ends without load, unhooked; for a coil wound tight, where its straight line of force would begin.",
    ),
    spring(
        "legs[].springs[].kind.linear.set.force_at_down.force_n",
        Quantity::Force,
        "Force with the gear down",
        "force with the gear down",
        "With a spring scale at one hook, gear down and held. A pull is positive, a push negative.",
    ),
    choice(
        "legs[].springs[].kind.linear.acts",
        ACTS,
        "Works",
        "direction in which the spring works",
        "Whether it can push, pull or both.",
    )
    .if_empty("pulls and pushes"),
    on(
        "legs[].springs[].kind.gas.first.body",
        "First end on",
        "part at the first end",
    ),
    end(
        "legs[].springs[].kind.gas.first.point_m",
        "First end",
        "first end",
    ),
    on(
        "legs[].springs[].kind.gas.second.body",
        "Second end on",
        "part at the second end",
    ),
    end(
        "legs[].springs[].kind.gas.second.point_m",
        "Second end",
        "second end",
    ),
    spring(
        "legs[].springs[].kind.gas.shortest_m",
        Quantity::Length,
        "Compressed length",
        "compressed length",
        "Between its ends, pushed fully together, from its maker's data.",
    ),
    spring(
        "legs[].springs[].kind.gas.longest_m",
        Quantity::Length,
        "Extended length",
        "extended length",
        "Between its ends, pulled fully apart.",
    ),
    spring(
        "legs[].springs[].kind.gas.force_longest_n",
        Quantity::Force,
        "Push extended",
        "push extended",
        "Its push at the extended length, from its data plate or with a scale.",
    ),
    spring(
        "legs[].springs[].kind.gas.force_shortest_n",
        Quantity::Force,
        "Push compressed",
        "push compressed",
        "Its push at the compressed length; not less than extended.",
    ),
    choice(
        "legs[].springs[].kind.gas.law",
        LAWS,
        "Between the ends",
        "law of the gas spring",
        "How the push goes from one end to the other.",
    )
    .if_empty("a straight line"),
    spring(
        "legs[].springs[].kind.gas.law.polytropic.exponent",
        Quantity::Ratio,
        "Exponent n",
        "exponent of the gas law",
        "1 when it moves slowly, 1.4 for air or nitrogen when it moves fast.",
    ),
    choice(
        "legs[].springs[].kind.torsion.joint",
        JOINTS,
        "Joint",
        "joint of the torsion spring",
        "The joint about which it is wound; its moment is that on the part named first.",
    ),
    spring(
        "legs[].springs[].kind.torsion.rate_n_m_rad",
        Quantity::TorsionalStiffness,
        "Rate",
        "rate",
        "Moment for each unit of turn, from its maker's data or with a scale on an arm at two angles.",
    ),
    spring(
        "legs[].springs[].kind.torsion.moment_at_down_n_m",
        Quantity::Moment,
        "Moment with the gear down",
        "moment with the gear down",
        "Counter-clockwise as drawn is positive, on the part that the joint names first.",
    ),
];

const RADIUS: &str = "Half the diameter on which it turns: pin, bolt or ball.";
const FRICTION: &str = "0.1 to 0.2 for greased steel in bronze, more when dry (common practice); 0.02 or less for ball bearings.";

const COUPLE: &str = "Friction that stays the same whatever the pin carries: a tight bushing, a brake that drags. Measured by spring scale at the axle, the rest disconnected: couple = scale force × arm. It counts beside radius and friction.";

const fn radius(pattern: &'static str, label: &'static str, name: &'static str) -> FieldWords {
    FieldWords::number(pattern, Quantity::Length, label, name, RADIUS)
        .of(Group::Pins)
        .if_empty("not known, counted as none")
}

const fn friction(pattern: &'static str, label: &'static str, name: &'static str) -> FieldWords {
    FieldWords::number(pattern, Quantity::Ratio, label, name, FRICTION)
        .of(Group::Pins)
        .if_empty("not known, counted as none")
}

const fn couple(pattern: &'static str, label: &'static str, name: &'static str) -> FieldWords {
    FieldWords::number(pattern, Quantity::Moment, label, name, COUPLE)
        .of(Group::Pins)
        .if_empty("not known, counted as none")
}

pub(super) const PINS: &[FieldWords] = &[
    radius(
        "legs[].pins.trunnion.radius_m",
        "Trunnion radius",
        "radius of the trunnion pin",
    ),
    friction(
        "legs[].pins.trunnion.friction",
        "Trunnion friction",
        "friction of the trunnion pin",
    ),
    couple(
        "legs[].pins.trunnion.couple_n_m",
        "Trunnion couple",
        "friction couple of the trunnion pin",
    ),
    radius(
        "legs[].pins.brace_pivot.radius_m",
        "Brace pivot radius",
        "radius of the brace pivot",
    ),
    friction(
        "legs[].pins.brace_pivot.friction",
        "Brace pivot friction",
        "friction of the brace pivot",
    ),
    couple(
        "legs[].pins.brace_pivot.couple_n_m",
        "Brace pivot couple",
        "friction couple of the brace pivot",
    ),
    radius(
        "legs[].pins.knee.radius_m",
        "Knee radius",
        "radius of the knee pin",
    ),
    friction(
        "legs[].pins.knee.friction",
        "Knee friction",
        "friction of the knee pin",
    ),
    couple(
        "legs[].pins.knee.couple_n_m",
        "Knee couple",
        "friction couple of the knee pin",
    ),
    radius(
        "legs[].pins.leg_attach.radius_m",
        "Brace attach radius",
        "radius of the brace attach pin",
    ),
    friction(
        "legs[].pins.leg_attach.friction",
        "Brace attach friction",
        "friction of the brace attach pin",
    ),
    couple(
        "legs[].pins.leg_attach.couple_n_m",
        "Brace attach couple",
        "friction couple of the brace attach pin",
    ),
    radius(
        "legs[].pins.actuator_mount.radius_m",
        "Actuator mount radius",
        "radius of the actuator mount pin",
    ),
    friction(
        "legs[].pins.actuator_mount.friction",
        "Actuator mount friction",
        "friction of the actuator mount pin",
    ),
    couple(
        "legs[].pins.actuator_mount.couple_n_m",
        "Actuator mount couple",
        "friction couple of the actuator mount pin",
    ),
    radius(
        "legs[].pins.actuator_attach.radius_m",
        "Actuator attach radius",
        "radius of the actuator attach pin",
    ),
    friction(
        "legs[].pins.actuator_attach.friction",
        "Actuator attach friction",
        "friction of the actuator attach pin",
    ),
    couple(
        "legs[].pins.actuator_attach.couple_n_m",
        "Actuator attach couple",
        "friction couple of the actuator attach pin",
    ),
];
