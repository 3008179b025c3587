//! Fields of what drives one leg besides its actuator: orifices, strut-shortening cylinder, motor, switches.
use gearswing_units::Quantity;

use super::FieldWords;
use super::words::Group;

pub(super) const DRIVE: &[FieldWords] = &[
    FieldWords::text(
        "legs[].shared_drive",
        "Drive shared with other legs",
        "name of the shared drive",
        "Where one cylinder, shaft or central bellcrank moves several legs: the same name for each of them. The drive is the actuator of the first; the two pins of each of the others say where its rod pushes, and its bore, rod and lengths do not count.",
    )
    .of(Group::Actuator)
    .if_empty("an actuator of its own"),
    FieldWords::number(
        "legs[].drive_ratio",
        Quantity::Ratio,
        "Movement for that of the drive",
        "movement for that of the drive",
        "On a shared drive: how far the rod of this leg moves for each inch that the drive moves. 1 where both move alike.",
    )
    .of(Group::Actuator)
    .if_empty("1, both move alike"),
    FieldWords::number(
        "legs[].drive.orifice_up.hole_m",
        Quantity::Hole,
        "Orifice up, hole",
        "hole of the orifice up",
        "Hole through which the fluid enters the actuator while the leg goes up; measure it with a drill shank.",
    )
    .of(Group::Lines)
    .if_empty("an open line"),
    FieldWords::number(
        "legs[].drive.orifice_up.discharge",
        Quantity::Ratio,
        "Orifice up, discharge coefficient",
        "discharge coefficient of the orifice up",
        "0.62 for a drilled hole with sharp edges, 0.8 for a short tube, 0.95 and more for a rounded inlet.",
    )
    .of(Group::Lines)
    .if_empty("0.62, a sharp edge"),
    FieldWords::number(
        "legs[].drive.orifice_down.hole_m",
        Quantity::Hole,
        "Orifice down, hole",
        "hole of the orifice down",
        "Hole of the restrictor in the up line through which the fluid leaves while the leg comes down.",
    )
    .of(Group::Lines)
    .if_empty("the return orifice of the fall, or an open line"),
    FieldWords::number(
        "legs[].drive.orifice_down.discharge",
        Quantity::Ratio,
        "Orifice down, discharge coefficient",
        "discharge coefficient of the orifice down",
        "0.62 for a drilled hole with sharp edges, 0.8 for a short tube, 0.95 and more for a rounded inlet.",
    )
    .of(Group::Lines)
    .if_empty("0.62, a sharp edge"),
    FieldWords::number(
        "legs[].drive.stage_valve_pa",
        Quantity::Pressure,
        "Stage valve opens at",
        "opening pressure of the stage valve",
        "Gauge pressure at which the valve before the leg's second stage opens: it holds the swing back until the strut has shortened, and the strut until the leg is down.",
    )
    .of(Group::Lines)
    .if_empty("no stage valve"),
    FieldWords::number(
        "legs[].drive.jack.area_m2",
        Quantity::Area,
        "Strut-shortening cylinder, area",
        "area of the strut-shortening cylinder",
        "Area on which the fluid works to shorten the strut before the swing.",
    )
    .of(Group::Lines)
    .if_empty("the strut takes no fluid"),
    FieldWords::number(
        "legs[].drive.jack.shorten_pa",
        Quantity::Pressure,
        "Strut-shortening cylinder, to shorten",
        "pressure that shortens the strut",
        "Gauge pressure that draws the strut in against its gas and its weight, read on a gauge.",
    )
    .of(Group::Lines),
    FieldWords::number(
        "legs[].drive.jack.lengthen_pa",
        Quantity::Pressure,
        "Strut-shortening cylinder, to lengthen",
        "pressure that lets the strut out",
        "Gauge pressure that lets the strut out again. 0 where its gas and weight push it out.",
    )
    .of(Group::Lines)
    .if_empty("none, 0"),
    FieldWords::number(
        "legs[].drive.electric.free_speed_m_s",
        Quantity::StrokeSpeed,
        "Free speed",
        "free speed of the electric actuator",
        "Speed of the rod without load at the rated voltage, from the maker or by stopwatch.",
    )
    .of(Group::Motor),
    FieldWords::number(
        "legs[].drive.electric.stall_force_n",
        Quantity::Force,
        "Stall force",
        "stall force of the electric actuator",
        "Force that stops it at the rated voltage, from the maker's curve.",
    )
    .of(Group::Motor),
    FieldWords::number(
        "legs[].drive.electric.motor_v",
        Quantity::Voltage,
        "Rated voltage",
        "rated voltage of the electric actuator",
        "Voltage at its motor for which speed and force hold.",
    )
    .of(Group::Motor),
    FieldWords::number(
        "legs[].drive.electric.idle_a",
        Quantity::Current,
        "Current without load",
        "current of the electric actuator without load",
        "Current while it runs without load.",
    )
    .of(Group::Motor),
    FieldWords::number(
        "legs[].drive.electric.locked_a",
        Quantity::Current,
        "Stall current",
        "stall current of the electric actuator",
        "Current at the stall force, from the maker's curve.",
    )
    .of(Group::Motor),
    FieldWords::number(
        "legs[].drive.electric.back_drive_n",
        Quantity::Force,
        "Driven back by",
        "force that drives the electric actuator back",
        "Force at its rod that drives it back without power, from the maker or with a spring scale, power off.",
    )
    .of(Group::Motor)
    .if_empty("not known, as of a screw that holds"),
    FieldWords::number(
        "legs[].drive.switches.shortened_at",
        Quantity::Travel,
        "Strut-shortened switch closes",
        "place of the strut-shortened switch",
        "Share of the strut's shortening at which its switch closes.",
    )
    .of(Group::Switches)
    .if_empty("fully shortened"),
    FieldWords::number(
        "legs[].drive.switches.up_at_travel",
        Quantity::Travel,
        "Up-limit switch closes",
        "place of the up switch",
        "Travel at which the up-limit switch closes, watched on the jacks.",
    )
    .of(Group::Switches)
    .if_empty("all the way up"),
    FieldWords::number(
        "legs[].drive.switches.down_at_travel",
        Quantity::Travel,
        "Down-lock switch closes",
        "place of the down switch",
        "Travel at which the down-lock switch closes. 0 means only with the lock engaged, as it should be.",
    )
    .of(Group::Switches)
    .if_empty("with the lock engaged"),
    FieldWords::number(
        "legs[].drive.start_travel",
        Quantity::Travel,
        "Starts at",
        "travel where the leg starts",
        "Where the leg stands when the gear is selected up, for a swing that was stopped half-way.",
    )
    .of(Group::Switches)
    .if_empty("down and locked"),
];
