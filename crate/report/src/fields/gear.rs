//! Fields of the gear as a whole: file, attitude and air, required clearances.

use super::words::option;
use super::{ChoiceWords, FieldWords};
use crate::published;

pub(super) const GEAR_NAME: FieldWords = FieldWords::new(
    "Name",
    "name of the gear file",
    "What you call this gear; it names the file and the link.",
);
pub(super) const GEAR_NOTE: FieldWords = FieldWords::new(
    "Note",
    "note",
    "Anything worth keeping: where the figures were taken, by whom, on which day.",
)
.if_empty("no note");

pub(super) const LOAD_FACTOR: FieldWords = FieldWords::new(
    "Load factor",
    "load factor",
    "Every weight is multiplied by it. 1 on jacks and in level flight, more in a pull-up or turn.",
);
pub(super) const PITCH: FieldWords = FieldWords::new(
    "Pitch",
    "pitch attitude",
    "Nose up is positive. 0 with the airplane level on jacks; check with a level on the leveling points.",
);
pub(super) const BANK: FieldWords = FieldWords::new(
    "Bank",
    "bank",
    "Right wing down is positive. 0 with the airplane level on jacks.",
);
pub(super) const AIRSPEED: FieldWords = FieldWords::new(
    "Airspeed",
    "true airspeed",
    "True airspeed while the gear moves; 0 on jacks. The flight manual's gear operating speed is indicated: convert it for height.",
);
pub(super) const SIDESLIP: FieldWords = FieldWords::new(
    "Sideslip",
    "sideslip",
    "Wind from the right of the nose is positive. 0 in straight flight. It is what blows on a leg that folds sideways.",
);
pub(super) const AIR_DENSITY: FieldWords = FieldWords::new(
    "Air density",
    "air density",
    "1.225 kg/m³ (0.00238 slug/ft³) at sea level in the standard atmosphere; less higher up or when hot.",
);
pub(super) const GEAR_SPEED: FieldWords = FieldWords::new(
    "Gear operating speed",
    "gear operating speed",
    "Highest calibrated airspeed at which the gear is moved, from the flight manual; for the load cases in flight.",
)
.if_empty("no load cases in flight for a leg with drag areas");
pub(super) const STALL_SPEED: FieldWords = FieldWords::new(
    "Stall speed VS1",
    "stall speed VS1",
    "Calibrated stall speed with flaps up, from the flight manual or your flight test; the air-load case flies 1.6 times as fast.",
)
.if_empty("no air-load case");
pub(super) const CLIMB_PITCH: FieldWords = FieldWords::new(
    "Pitch in the climb",
    "pitch in the climb",
    "Nose up is positive; for the climb among the load cases. The 10° taken without a figure is common practice.",
)
.if_empty("10°, common practice");
pub(super) const TURN_LOAD_FACTOR: FieldWords = FieldWords::new(
    "Load factor in the turn",
    "load factor in the turn",
    "For the turn and the air-load case. The 2 taken without a figure is the limit with flaps extended of 14 CFR 23.345(a) before amendment 23-64 (from memory: replace it with your own; for amateur-built and older types the rule is guidance).",
)
.if_empty("2, from memory");

pub(super) const CLEARANCE_NEW: FieldWords = FieldWords::new(
    "New tire",
    "required clearance at the new tire",
    published::TIRE_CLEARANCES_PRINTED,
)
.if_empty("a common-practice figure");
pub(super) const CLEARANCE_GROWN: FieldWords = FieldWords::new(
    "Grown tire",
    "required clearance at the grown tire",
    "Least clearance from the tire at its largest size in service to any structure, from the maker's data where it gives one.",
)
.if_empty("a common-practice figure");
pub(super) const CLEARANCE_PARTS: FieldWords = FieldWords::new(
    "Other parts",
    "required clearance at other moving parts",
    published::PART_CLEARANCES_PRINTED,
)
.if_empty("a common-practice figure");

const POINTS_FROM_OPTIONS: &[ChoiceWords] = &[
    option(
        "airplane",
        "The airplane's axes",
        "x to the left wing in a front view, aft in a side view; y up.",
    ),
    option(
        "trunnion",
        "The trunnion of their leg",
        "Inboard in a front view, aft in a side view, and up. The trunnion itself is told in the airplane's axes.",
    ),
];
const WAYS_DOWN_OPTIONS: &[ChoiceWords] = &[
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

pub(super) const POINTS_FROM: FieldWords = FieldWords::new(
    "Points are told from",
    "from where points are told",
    "From the trunnion of their leg, as a tape or a square measures them; or from the airplane's axes, as stations and butt lines are. Figures that were put in stay what they are.",
)
.choices(POINTS_FROM_OPTIONS);
pub(super) const EMERGENCY_WAY: FieldWords = FieldWords::new(
    "Way down without power",
    "way down without the normal power",
    "How the gear is let down when its normal power fails, from the emergency extension procedure. \"Will it lock?\" is answered for this way.",
)
.choices(WAYS_DOWN_OPTIONS)
.if_empty("a hand pump where that is the source, else free fall");
pub(super) const EMERGENCY_PUMP: FieldWords = FieldWords::new(
    "Pressure of the emergency hand pump",
    "largest pressure of the emergency hand pump",
    "Largest gauge pressure against which the handle can still be worked, or its relief setting, where a hand pump is the way down but not the source.",
)
.if_empty("not known");
pub(super) const FRICTION_TIMES_REQUIRED: FieldWords = FieldWords::new(
    "Friction to fall against",
    "how many times its friction a leg must fall against",
    "A leg must free-fall to its lock against so many times its friction. 1.5 is this program's own figure: friction that was measured on a warm day is higher on a cold one.",
)
.if_empty("1.5, our own figure");

pub(super) const FLUID_DENSITY: FieldWords = FieldWords::new(
    "Fluid density",
    "density of the hydraulic fluid",
    "860 kg/m³ (1.67 slug/ft³) for red mineral fluid to MIL-PRF-5606 at 20 °C, 838 kg/m³ (1.63 slug/ft³) to MIL-PRF-83282 (public property fits); less when it is warm.",
)
.if_empty("860 kg/m³, red mineral fluid");
