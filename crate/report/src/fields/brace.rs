//! Fields of the drag or side brace.

use super::words::option;
use super::{ChoiceWords, FieldWords};

const KINDS_OPTIONS: &[ChoiceWords] = &[
    option(
        "none",
        "No brace",
        "The actuator or a separate lock holds the leg.",
    ),
    option(
        "folding",
        "Folding brace",
        "Two links with a knee, the center hinge, between them.",
    ),
    option(
        "sliding",
        "Telescoping brace",
        "One brace that slides in itself and latches at gear down.",
    ),
];

const FOLDS_OPTIONS: &[ChoiceWords] = &[
    option(
        "through_centre",
        "Back through center",
        "Over center when down: the knee comes back through the straight line and folds to the other side.",
    ),
    option(
        "same_side",
        "Keeps folding the same way",
        "Not over center: the knee keeps folding the same way, from the side where it stands at gear down; another lock holds it.",
    ),
];

const UNLOCKED_BY_OPTIONS: &[ChoiceWords] = &[
    option(
        "actuator",
        "Retract actuator",
        "The retract actuator itself brings the knee back through the straight line.",
    ),
    option(
        "separate",
        "Separate unlock device",
        "An unlock actuator, hook or cable does it; its force is not worked out here.",
    ),
];

const KNEE_GIVEN_OPTIONS: &[ChoiceWords] = &[
    option(
        "points",
        "By its place",
        "Where the knee and the pin on the leg are.",
    ),
    option(
        "measured",
        "By its links",
        "Both links from pin to pin, and how far the knee stands off the line of the end pins.",
    ),
];

const PIVOT: &str = "Center of the brace pivot on the airframe, from the same datum, gear down.";
const ATTACH: &str =
    "Center of the pin that joins the brace to the leg, from the same datum, gear down.";
const THICKNESS: &str = "Depth across it as drawn, at its widest.";
const MASS: &str = "Weigh it off the airplane; half is taken at each pin.";

pub(super) const BRACE_TYPE: FieldWords = FieldWords::new(
    "Kind of brace",
    "kind of brace",
    "What keeps the leg from folding when it is down.",
)
.choices(KINDS_OPTIONS);
pub(super) const BRACE_PIVOT: FieldWords =
    FieldWords::new("Brace pivot B0", "brace pivot B0", PIVOT);
pub(super) const KNEE: FieldWords = FieldWords::new(
    "Knee K",
    "knee K",
    "Center of the pin between the two links (the center hinge of the brace), gear down and locked. A small error moves the over-center offset as much: measure the offset with a straightedge from pin to pin as a check.",
);
pub(super) const BRACE_ATTACH: FieldWords =
    FieldWords::new("Brace attach B1", "brace attach B1", ATTACH);
pub(super) const FOLDS: FieldWords = FieldWords::new(
    "Knee folds",
    "way the knee folds",
    "Which way the knee goes when the leg comes up. Watch it once on jacks.",
)
.choices(FOLDS_OPTIONS);
pub(super) const UNLOCKED_BY: FieldWords = FieldWords::new(
    "Unlocked by",
    "unlocking of the knee",
    "What takes an over-center knee back through the straight line.",
)
.choices(UNLOCKED_BY_OPTIONS)
.if_empty("the retract actuator");
pub(super) const KNEE_GIVEN: FieldWords = FieldWords::new(
    "Knee put in",
    "way the knee is put in",
    "Take what you can measure; the numbers of the other way follow.",
)
.choices(KNEE_GIVEN_OPTIONS)
.if_empty("by its place");
pub(super) const EXCURSION_ALLOWED: FieldWords = FieldWords::new(
    "Overtravel past down",
    "overtravel past down, at the axle",
    "How far the axle can move past down before a stop holds it: the leg does so while the knee passes the straight line. Push the unlocked leg by hand on jacks and measure.",
)
.if_empty("no stop is given");
pub(super) const UPPER_THICKNESS: FieldWords = FieldWords::new(
    "Upper link thickness",
    "thickness of the upper brace link",
    THICKNESS,
);
pub(super) const UPPER_MASS: FieldWords =
    FieldWords::new("Upper link mass", "mass of the upper brace link", MASS)
        .if_empty("taken as weightless");
pub(super) const LOWER_THICKNESS: FieldWords = FieldWords::new(
    "Lower link thickness",
    "thickness of the lower brace link",
    THICKNESS,
);
pub(super) const LOWER_MASS: FieldWords =
    FieldWords::new("Lower link mass", "mass of the lower brace link", MASS)
        .if_empty("taken as weightless");
pub(super) const SLIDING_PIVOT: FieldWords =
    FieldWords::new("Brace pivot B0", "brace pivot B0", PIVOT);
pub(super) const SLIDING_ATTACH: FieldWords =
    FieldWords::new("Brace attach B1", "brace attach B1", ATTACH);
pub(super) const SLIDING_SHORTEST: FieldWords = FieldWords::new(
    "Retracted length",
    "retracted length of the brace",
    "Pin to pin, pushed fully together.",
);
pub(super) const SLIDING_LONGEST: FieldWords = FieldWords::new(
    "Extended length",
    "extended length of the brace",
    "Pin to pin, pulled fully out.",
);
pub(super) const SLIDING_THICKNESS: FieldWords =
    FieldWords::new("Thickness", "thickness of the brace", THICKNESS);
pub(super) const SLIDING_MASS: FieldWords =
    FieldWords::new("Mass", "mass of the brace", MASS).if_empty("taken as weightless");
