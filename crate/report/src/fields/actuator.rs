//! Fields of the retract actuator.
use gearswing_units::Quantity;

use super::words::{Group, option};
use super::{ChoiceWords, FieldWords};
use crate::published;

const ATTACH_TO: &[ChoiceWords] = &[
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

const BODY_AT: &[ChoiceWords] = &[
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

pub(super) const ACTUATOR: &[FieldWords] = &[
    FieldWords::point(
        "legs[].actuator.mount_m",
        "Actuator mount A0",
        "actuator mount A0",
        "Center of the actuator's pin on the airframe, from the same datum.",
    )
    .of(Group::Actuator),
    FieldWords::point(
        "legs[].actuator.attach_m",
        "Actuator attach A1",
        "actuator attach A1",
        "Center of the actuator's pin on the part it drives, gear down, from the same datum.",
    )
    .of(Group::Actuator),
    FieldWords::choice(
        "legs[].actuator.attach_to",
        ATTACH_TO,
        "Drives",
        "part that the actuator drives",
        "The part to which the actuator's moving end is pinned.",
    )
    .of(Group::Actuator),
    FieldWords::number(
        "legs[].actuator.bore_m",
        Quantity::Length,
        "Bore",
        "actuator bore",
        "Inside diameter of the barrel, from its data plate or maker's data; a bore gauge when it is apart.",
    )
    .of(Group::Actuator),
    FieldWords::number(
        "legs[].actuator.rod_m",
        Quantity::Length,
        "Rod diameter",
        "actuator rod diameter",
        "Diameter of the polished rod, with a caliper.",
    )
    .of(Group::Actuator),
    FieldWords::number(
        "legs[].actuator.shortest_m",
        Quantity::Length,
        "Retracted length",
        "retracted length of the actuator",
        published::RETRACTED_LENGTH,
    )
    .of(Group::Actuator),
    FieldWords::number(
        "legs[].actuator.longest_m",
        Quantity::Length,
        "Extended length",
        "extended length of the actuator",
        published::EXTENDED_LENGTH,
    )
    .of(Group::Actuator),
    FieldWords::number(
        "legs[].actuator.body_diameter_m",
        Quantity::Length,
        "Barrel diameter",
        "actuator barrel diameter",
        "Outside diameter of the barrel, fittings included where they may touch.",
    )
    .of(Group::Actuator),
    FieldWords::number(
        "legs[].actuator.body_length_m",
        Quantity::Length,
        "Barrel length",
        "actuator barrel length",
        "From the barrel's own pin to the gland where the rod comes out.",
    )
    .of(Group::Actuator),
    FieldWords::choice(
        "legs[].actuator.body_at",
        BODY_AT,
        "Barrel is pinned to",
        "end that carries the actuator barrel",
        "The end at which the barrel sits; it sweeps more room than the rod.",
    )
    .of(Group::Actuator)
    .if_empty("the airframe"),
    FieldWords::number(
        "legs[].actuator.mass_kg",
        Quantity::Mass,
        "Mass",
        "mass of the actuator",
        "Weigh it full of fluid; half is taken at each pin.",
    )
    .of(Group::Actuator)
    .if_empty("taken as weightless"),
    FieldWords::number(
        "legs[].actuator.seal_friction_n",
        Quantity::Force,
        "Seal friction",
        "seal friction of the actuator",
        "Force that keeps the rod moving by hand or spring scale, lines open; put in 0 only where it is measured as none. Cylinders lose 5 to 10 % of their force to it (common practice).",
    )
    .of(Group::Actuator)
    .if_empty("not known, counted as none"),
    FieldWords::number(
        "legs[].actuator.seal_break_out_n",
        Quantity::Force,
        "Break-out friction of the seals",
        "break-out friction of the seals",
        "Force that starts the rod by spring scale, lines open, after it has stood for a day. Twice the running friction is from memory; a printed limit for cylinders is three times.",
    )
    .of(Group::Actuator)
    .if_empty("twice the seal friction, from memory"),
];
