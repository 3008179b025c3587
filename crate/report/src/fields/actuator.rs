//! Fields of the retract actuator.

use super::words::option;
use super::{ChoiceWords, FieldWords};
use crate::published;

const ATTACH_TO_OPTIONS: &[ChoiceWords] = &[
    option("leg", "Leg", "It drives the leg itself."),
    option(
        "upper_link",
        "Upper brace link",
        "It drives the upper link of a folding brace.",
    ),
    option(
        "lower_link",
        "Lower brace link",
        "It drives the lower link of a folding brace.",
    ),
];

const BODY_AT_OPTIONS: &[ChoiceWords] = &[
    option(
        "airframe",
        "Airframe",
        "The barrel is pinned to the airframe, the rod to the moving part.",
    ),
    option(
        "moving",
        "Moving part",
        "The barrel is pinned to the moving part, the rod to the airframe.",
    ),
];

pub(super) const ACTUATOR_MOUNT: FieldWords = FieldWords::new(
    "Actuator mount A0",
    "actuator mount A0",
    "Center of the actuator's pin on the airframe, from the same datum.",
);
pub(super) const ACTUATOR_ATTACH: FieldWords = FieldWords::new(
    "Actuator attach A1",
    "actuator attach A1",
    "Center of the actuator's pin on the part it drives, gear down, from the same datum.",
);
pub(super) const ATTACH_TO: FieldWords = FieldWords::new(
    "Drives",
    "part that the actuator drives",
    "The part to which the actuator's moving end is pinned.",
)
.choices(ATTACH_TO_OPTIONS);
pub(super) const BORE: FieldWords = FieldWords::new(
    "Bore",
    "actuator bore",
    "Inside diameter of the barrel, from its data plate or maker's data; a bore gauge when it is apart.",
);
pub(super) const ROD: FieldWords = FieldWords::new(
    "Rod diameter",
    "actuator rod diameter",
    "Diameter of the polished rod, with a caliper.",
);
pub(super) const RETRACTED_LENGTH: FieldWords = FieldWords::new(
    "Retracted length",
    "retracted length of the actuator",
    published::RETRACTED_LENGTH,
);
pub(super) const EXTENDED_LENGTH: FieldWords = FieldWords::new(
    "Extended length",
    "extended length of the actuator",
    published::EXTENDED_LENGTH,
);
pub(super) const BARREL_DIAMETER: FieldWords = FieldWords::new(
    "Barrel diameter",
    "actuator barrel diameter",
    "Outside diameter of the barrel, fittings included where they may touch.",
);
pub(super) const BARREL_LENGTH: FieldWords = FieldWords::new(
    "Barrel length",
    "actuator barrel length",
    "From the barrel's own pin to the gland where the rod comes out.",
);
pub(super) const BARREL_AT: FieldWords = FieldWords::new(
    "Barrel is pinned to",
    "end that carries the actuator barrel",
    "The end at which the barrel sits; it sweeps more room than the rod.",
)
.choices(BODY_AT_OPTIONS)
.if_empty("the airframe");
pub(super) const ACTUATOR_MASS: FieldWords = FieldWords::new(
    "Mass",
    "mass of the actuator",
    "Weigh it full of fluid; half is taken at each pin.",
)
.if_empty("taken as weightless");
pub(super) const SEAL_FRICTION: FieldWords = FieldWords::new(
    "Seal friction",
    "seal friction of the actuator",
    "Force that keeps the rod moving by hand or spring scale, lines open; put in 0 only where it is measured as none. Cylinders lose 5 to 10 % of their force to it (common practice).",
)
.if_empty("not known, counted as none");
pub(super) const SEAL_BREAK_OUT: FieldWords = FieldWords::new(
    "Break-out friction of the seals",
    "break-out friction of the seals",
    "Force that starts the rod by spring scale, lines open, after it has stood for a day. Twice the running friction is from memory; a printed limit for cylinders is three times.",
)
.if_empty("twice the seal friction, from memory");
pub(super) const ROD_END_PITCH: FieldWords = FieldWords::new(
    "Rod end, length a turn",
    "length that a turn of the rod end adds",
    "Pitch of its thread: 1/28 in for 28 threads per inch. Measure over ten threads. After any turn the thread must cover the witness hole of the rod end, and the jam nut is locked as the maker says (common practice).",
)
.if_empty("not known");
