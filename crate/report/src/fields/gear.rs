//! Fields of the gear as a whole: file, attitude and air, required clearances.
use gearswing_units::Quantity;

use super::words::{Group, option};
use super::{ChoiceWords, FieldWords};
use crate::published;

pub(super) const FILE: &[FieldWords] = &[
    FieldWords::text(
        "name",
        "Name",
        "name of the gear file",
        "What you call this gear; it names the file and the link.",
    )
    .of(Group::File),
    FieldWords::text(
        "note",
        "Note",
        "note",
        "Anything worth keeping: where the figures were taken, by whom, on which day.",
    )
    .of(Group::File)
    .if_empty("no note"),
];

pub(super) const CONDITIONS: &[FieldWords] = &[
    FieldWords::number(
        "conditions.load_factor",
        Quantity::LoadFactor,
        "Load factor",
        "load factor",
        "Every weight is multiplied by it. 1 on jacks and in level flight, more in a pull-up or turn.",
    )
    .of(Group::Conditions),
    FieldWords::number(
        "conditions.pitch_rad",
        Quantity::Angle,
        "Pitch",
        "pitch attitude",
        "Nose up is positive. 0 with the airplane level on jacks; check with a level on the leveling points.",
    )
    .of(Group::Conditions),
    FieldWords::number(
        "conditions.bank_rad",
        Quantity::Angle,
        "Bank",
        "bank",
        "Right wing down is positive. 0 with the airplane level on jacks.",
    )
    .of(Group::Conditions),
    FieldWords::number(
        "conditions.airspeed_m_s",
        Quantity::Speed,
        "Airspeed",
        "true airspeed",
        "True airspeed while the gear moves; 0 on jacks. The flight manual's gear operating speed is indicated: convert it for height.",
    )
    .of(Group::Conditions),
    FieldWords::number(
        "conditions.sideslip_rad",
        Quantity::Angle,
        "Sideslip",
        "sideslip",
        "Wind from the right of the nose is positive. 0 in straight flight. It is what blows on a leg that folds sideways.",
    )
    .of(Group::Conditions),
    FieldWords::number(
        "conditions.air_density_kg_m3",
        Quantity::Density,
        "Air density",
        "air density",
        "1.225 kg/m³ (0.00238 slug/ft³) at sea level in the standard atmosphere; less higher up or when hot.",
    )
    .of(Group::Conditions),
    FieldWords::number(
        "conditions.gear_speed_m_s",
        Quantity::Speed,
        "Gear operating speed",
        "gear operating speed",
        "Highest calibrated airspeed at which the gear is moved, from the flight manual; for the load cases in flight.",
    )
    .of(Group::Conditions)
    .if_empty("no load cases in flight for a leg with drag areas"),
    FieldWords::number(
        "conditions.stall_speed_m_s",
        Quantity::Speed,
        "Stall speed VS1",
        "stall speed VS1",
        "Calibrated stall speed with flaps up, from the flight manual or your flight test; the air-load case flies 1.6 times as fast.",
    )
    .of(Group::Conditions)
    .if_empty("no air-load case"),
    FieldWords::number(
        "conditions.climb_pitch_rad",
        Quantity::Angle,
        "Pitch in the climb",
        "pitch in the climb",
        "Nose up is positive; for the climb among the load cases. The 10° taken without a figure is common practice.",
    )
    .of(Group::Conditions)
    .if_empty("10°, common practice"),
    FieldWords::number(
        "conditions.turn_load_factor",
        Quantity::LoadFactor,
        "Load factor in the turn",
        "load factor in the turn",
        "For the turn and the air-load case. The 2 taken without a figure is the limit with flaps extended of 14 CFR 23.345(a) before amendment 23-64 (from memory: replace it with your own; for amateur-built and older types the rule is guidance).",
    )
    .of(Group::Conditions)
    .if_empty("2, from memory"),
];

pub(super) const CLEARANCE: &[FieldWords] = &[
    FieldWords::number(
        "clearance_rule.tire_new_m",
        Quantity::Length,
        "New tire",
        "required clearance at the new tire",
        published::TIRE_CLEARANCES_PRINTED,
    )
    .of(Group::Clearance)
    .if_empty("a common-practice figure"),
    FieldWords::number(
        "clearance_rule.tire_grown_m",
        Quantity::Length,
        "Grown tire",
        "required clearance at the grown tire",
        "Least clearance from the tire at its largest size in service to any structure, from the maker's data where it gives one.",
    )
    .of(Group::Clearance)
    .if_empty("a common-practice figure"),
    FieldWords::number(
        "clearance_rule.parts_m",
        Quantity::Length,
        "Other parts",
        "required clearance at other moving parts",
        published::PART_CLEARANCES_PRINTED,
    )
    .of(Group::Clearance)
    .if_empty("a common-practice figure"),
];

const WAYS_DOWN: &[ChoiceWords] = &[
    option(
        "free_fall",
        "Free fall",
        "Each leg falls by itself once it is let go.",
    ),
    option("hand_pump", "Hand pump", "A pump worked by hand."),
    option(
        "stored_gas",
        "Stored gas",
        "A bottle of gas that blows the legs down.",
    ),
    option(
        "hand_crank",
        "Hand crank or lever",
        "Cranked or levered down by hand.",
    ),
    option("none_given", "None given", "No other way down is known."),
];

pub(super) const EMERGENCY: &[FieldWords] = &[
    FieldWords::choice(
        "emergency_way",
        WAYS_DOWN,
        "Way down without power",
        "way down without the normal power",
        "How the gear is let down when its normal power fails, from the emergency extension procedure. \"Will it lock?\" is answered for this way.",
    )
    .of(Group::Supply)
    .if_empty("a hand pump where that is the source, else free fall"),
    FieldWords::number(
        "emergency_pump_pa",
        Quantity::Pressure,
        "Pressure of the emergency hand pump",
        "largest pressure of the emergency hand pump",
        "Largest gauge pressure against which the handle can still be worked, or its relief setting, where a hand pump is the way down but not the source.",
    )
    .of(Group::Supply)
    .if_empty("not known"),
    FieldWords::number(
        "friction_times_required",
        Quantity::Ratio,
        "Friction to fall against",
        "how many times its friction a leg must fall against",
        "A leg must free-fall to its lock against so many times its friction. 1.5 is this program's own figure: friction that was measured on a warm day is higher on a cold one.",
    )
    .of(Group::Supply)
    .if_empty("1.5, our own figure"),
];

pub(super) const FLUID: &[FieldWords] = &[
    FieldWords::number(
        "fluid.density_kg_m3",
        Quantity::Density,
        "Fluid density",
        "density of the hydraulic fluid",
        "860 kg/m³ (1.67 slug/ft³) for red mineral fluid to MIL-PRF-5606 at 20 °C, 838 kg/m³ (1.63 slug/ft³) to MIL-PRF-83282 (public property fits); less when it is warm.",
    )
    .of(Group::Supply)
    .if_empty("860 kg/m³, red mineral fluid"),
];
