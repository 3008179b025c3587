//! Fields of what drives one leg besides its actuator: orifices, strut-shortening cylinder, motor, switches.

use super::FieldWords;

pub(super) const SHARED_DRIVE: FieldWords = FieldWords::new(
    "Drive shared with other legs",
    "name of the shared drive",
    "Where one cylinder, shaft or central bellcrank moves several legs: the same name for each of them. The drive is the actuator of the first; the two pins of each of the others say where its rod pushes, and its bore, rod and lengths do not count.",
)
.if_empty("an actuator of its own");
pub(super) const DRIVE_RATIO: FieldWords = FieldWords::new(
    "Movement for that of the drive",
    "movement for that of the drive",
    "On a shared drive: how far the rod of this leg moves for each inch that the drive moves. 1 where both move alike.",
)
.if_empty("1, both move alike");
pub(super) const ORIFICE_UP: FieldWords = FieldWords::new(
    "Orifice up, hole",
    "hole of the orifice up",
    "Hole through which the fluid enters the actuator while the leg goes up; measure it with a drill shank.",
)
.if_empty("an open line");
pub(super) const DISCHARGE_UP: FieldWords = FieldWords::new(
    "Orifice up, discharge coefficient",
    "discharge coefficient of the orifice up",
    "0.62 for a drilled hole with sharp edges, 0.8 for a short tube, 0.95 and more for a rounded inlet.",
)
.if_empty("0.62, a sharp edge");
pub(super) const ORIFICE_DOWN: FieldWords = FieldWords::new(
    "Orifice down, hole",
    "hole of the orifice down",
    "Hole of the restrictor in the up line through which the fluid leaves while the leg comes down.",
)
.if_empty("the return orifice of the fall, or an open line");
pub(super) const DISCHARGE_DOWN: FieldWords = FieldWords::new(
    "Orifice down, discharge coefficient",
    "discharge coefficient of the orifice down",
    "0.62 for a drilled hole with sharp edges, 0.8 for a short tube, 0.95 and more for a rounded inlet.",
)
.if_empty("0.62, a sharp edge");
pub(super) const STAGE_VALVE: FieldWords = FieldWords::new(
    "Stage valve opens at",
    "opening pressure of the stage valve",
    "Gauge pressure at which the valve before the leg's second stage opens: it holds the swing back until the strut has shortened, and the strut until the leg is down.",
)
.if_empty("no stage valve");
pub(super) const JACK_AREA: FieldWords = FieldWords::new(
    "Strut-shortening cylinder, area",
    "area of the strut-shortening cylinder",
    "Area on which the fluid works to shorten the strut before the swing.",
)
.if_empty("the strut takes no fluid");
pub(super) const SHORTEN_PRESSURE: FieldWords = FieldWords::new(
    "Strut-shortening cylinder, to shorten",
    "pressure that shortens the strut",
    "Gauge pressure that draws the strut in against its gas and its weight, read on a gauge.",
);
pub(super) const LENGTHEN_PRESSURE: FieldWords = FieldWords::new(
    "Strut-shortening cylinder, to lengthen",
    "pressure that lets the strut out",
    "Gauge pressure that lets the strut out again. 0 where its gas and weight push it out.",
)
.if_empty("none, 0");
pub(super) const FREE_SPEED: FieldWords = FieldWords::new(
    "Free speed",
    "free speed of the electric actuator",
    "Speed of the rod without load at the rated voltage, from the maker or by stopwatch.",
);
pub(super) const STALL_FORCE: FieldWords = FieldWords::new(
    "Stall force",
    "stall force of the electric actuator",
    "Force that stops it at the rated voltage, from the maker's curve.",
);
pub(super) const MOTOR_VOLTAGE: FieldWords = FieldWords::new(
    "Rated voltage",
    "rated voltage of the electric actuator",
    "Voltage at its motor for which speed and force hold.",
);
pub(super) const MOTOR_IDLE_CURRENT: FieldWords = FieldWords::new(
    "Current without load",
    "current of the electric actuator without load",
    "Current while it runs without load.",
);
pub(super) const LOCKED_CURRENT: FieldWords = FieldWords::new(
    "Stall current",
    "stall current of the electric actuator",
    "Current at the stall force, from the maker's curve.",
);
pub(super) const BACK_DRIVE: FieldWords = FieldWords::new(
    "Driven back by",
    "force that drives the electric actuator back",
    "Force at its rod that drives it back without power, from the maker or with a spring scale, power off.",
)
.if_empty("not known, as of a screw that holds");
pub(super) const SHORTENED_SWITCH: FieldWords = FieldWords::new(
    "Strut-shortened switch closes",
    "place of the strut-shortened switch",
    "Share of the strut's shortening at which its switch closes.",
)
.if_empty("fully shortened");
pub(super) const UP_SWITCH: FieldWords = FieldWords::new(
    "Up-limit switch closes",
    "place of the up switch",
    "Travel at which the up-limit switch closes, watched on the jacks.",
)
.if_empty("all the way up");
pub(super) const DOWN_SWITCH: FieldWords = FieldWords::new(
    "Down-lock switch closes",
    "place of the down switch",
    "Travel at which the down-lock switch closes. 0 means only with the lock engaged, as it should be.",
)
.if_empty("with the lock engaged");
pub(super) const START_TRAVEL: FieldWords = FieldWords::new(
    "Starts at",
    "travel where the leg starts",
    "Where the leg stands when the gear is selected up, for a swing that was stopped half-way.",
)
.if_empty("down and locked");
