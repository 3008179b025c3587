//! Fields of the supply: pressure, pump, battery.
use gearswing_units::Quantity;

use super::words::{Group, option};
use super::{ChoiceWords, FieldWords};

const SOURCES: &[ChoiceWords] = &[
    option(
        "constant_pressure",
        "Constant pressure",
        "The available pressure, whatever flows: times follow where every leg has its orifice.",
    ),
    option(
        "motor_pump",
        "Pump on a DC motor",
        "A power pack on the battery.",
    ),
    option(
        "hand_pump",
        "Hand pump",
        "Pumped at a steady beat until the handle is too heavy.",
    ),
    option(
        "electric_actuators",
        "Electric actuators",
        "Each leg is driven by its own electric actuator, without fluid.",
    ),
];

const BATTERY_KINDS: &[ChoiceWords] = &[
    option("flooded", "Flooded", "Lead-acid with liquid acid."),
    option(
        "glass_mat",
        "AGM",
        "Sealed lead-acid, the acid held in a glass mat (recombinant).",
    ),
];

const BATTERY_SIZES: &[ChoiceWords] = &[
    option("12_v", "12 V", "Six lead-acid cells."),
    option("24_v", "24 V", "Twelve lead-acid cells."),
];

pub(super) const SUPPLY: &[FieldWords] = &[
    FieldWords::number(
        "supply.available_pressure_pa",
        Quantity::Pressure,
        "Available pressure",
        "available pressure",
        "Gauge pressure the supply still gives with the actuator stopped: read it on a gauge at the actuator line, or take the relief valve setting from the maker's data.",
    )
    .of(Group::Supply),
    FieldWords::number(
        "supply.return_pressure_pa",
        Quantity::Pressure,
        "Return pressure",
        "return pressure",
        "Gauge back pressure in the return line while the gear moves, from a gauge in that line. 0 when it runs freely to the tank.",
    )
    .of(Group::Supply)
    .if_empty("no back pressure"),
    FieldWords::number(
        "supply.margin_wanted",
        Quantity::Travel,
        "Required margin",
        "required margin of pressure",
        "Share of the available pressure that must be left over at the hardest place. Without a figure 10 % is required (common practice), and 25 % of a leg none of whose friction is given (this program's own figure).",
    )
    .of(Group::Supply)
    .if_empty("10 %, or 25 % while no friction is given"),
    FieldWords::choice(
        "supply.source",
        SOURCES,
        "Source",
        "source of the supply",
        "What makes the pressure or the force. Times are worked out for a pump, for electric actuators, for an accumulator, and where every leg has its orifice.",
    )
    .of(Group::Supply)
    .if_empty("a constant pressure"),
    FieldWords::number(
        "supply.source.motor_pump.free_flow_m3_s",
        Quantity::Flow,
        "Free flow",
        "free flow of the pump",
        "Flow without pressure at the rated voltage, from the pump maker; or time how long it takes to fill a can of known size with the line open.",
    )
    .of(Group::Supply),
    FieldWords::number(
        "supply.source.motor_pump.rated_v",
        Quantity::Voltage,
        "Rated voltage",
        "rated voltage of the pump motor",
        "Voltage at the motor for which free flow and stall pressure hold.",
    )
    .of(Group::Supply),
    FieldWords::number(
        "supply.source.motor_pump.stall_pressure_pa",
        Quantity::Pressure,
        "Stall pressure",
        "stall pressure of the pump",
        "Pressure that stops the motor at its rated voltage, relief valve out of play. From two points of the maker's curve, drawn on as a straight line to no flow.",
    )
    .of(Group::Supply),
    FieldWords::number(
        "supply.source.motor_pump.idle_a",
        Quantity::Current,
        "Current without load",
        "current of the pump without load",
        "Current with the line open, by a clamp meter on the battery cable.",
    )
    .of(Group::Supply),
    FieldWords::number(
        "supply.source.motor_pump.stall_a",
        Quantity::Current,
        "Stall current",
        "stall current of the pump",
        "Current at the stall pressure, drawn on from a reading under load; do not stall the motor to read it.",
    )
    .of(Group::Supply),
    FieldWords::number(
        "supply.source.motor_pump.relief_pressure_pa",
        Quantity::Pressure,
        "Relief valve",
        "relief pressure of the pump",
        "Gauge pressure at which the relief valve of the power pack opens, from its data plate or on a gauge with the legs stopped.",
    )
    .of(Group::Supply),
    FieldWords::number(
        "supply.source.hand_pump.stroke_volume_m3",
        Quantity::Volume,
        "Fluid of one stroke",
        "fluid of one hand pump stroke",
        "Fluid that one full stroke of the handle moves; pump ten strokes into a measuring can and divide.",
    )
    .of(Group::Supply),
    FieldWords::number(
        "supply.source.hand_pump.stroke_time_s",
        Quantity::Time,
        "Time of one stroke",
        "time of one hand pump stroke",
        "60 over the strokes in a minute that somebody keeps up in the seat: 40 a minute is 1.5 s.",
    )
    .of(Group::Supply),
    FieldWords::number(
        "supply.source.hand_pump.largest_pressure_pa",
        Quantity::Pressure,
        "Largest pressure",
        "largest hand pump pressure",
        "Gauge pressure at which the handle is too heavy for the person who has to work it.",
    )
    .of(Group::Supply),
    FieldWords::number(
        "supply.pressure_switch_pa",
        Quantity::Pressure,
        "Pressure switch",
        "pressure switch of the pump",
        "Gauge pressure at which a switch stops the pump.",
    )
    .of(Group::Supply)
    .if_empty("the limit switches stop the pump"),
    FieldWords::number(
        "supply.available_down_pa",
        Quantity::Pressure,
        "Available pressure, down",
        "available pressure on the way down",
        "Gauge pressure the supply still gives while the gear goes down, where it differs: many packs have a lower relief valve for down.",
    )
    .of(Group::Supply)
    .if_empty("as on the way up"),
    FieldWords::number(
        "supply.relief_down_pa",
        Quantity::Pressure,
        "Relief valve, down",
        "relief pressure on the way down",
        "Gauge pressure at which the relief valve of the down side opens, from the maker's data of the pump.",
    )
    .of(Group::Supply)
    .if_empty("as on the way up"),
    FieldWords::number(
        "supply.pressure_switch_down_pa",
        Quantity::Pressure,
        "Pressure switch, down",
        "pressure switch of the pump on the way down",
        "Gauge pressure at which the switch of the down side stops the pump.",
    )
    .of(Group::Supply)
    .if_empty("as on the way up"),
    FieldWords::choice(
        "supply.battery.kind",
        BATTERY_KINDS,
        "Battery",
        "kind of battery",
        "It sets the resting voltage by charge.",
    )
    .of(Group::Battery)
    .if_empty("flooded"),
    FieldWords::choice(
        "supply.battery.size",
        BATTERY_SIZES,
        "Nominal voltage",
        "nominal voltage of the battery",
        "From its label.",
    )
    .of(Group::Battery)
    .if_empty("12 V"),
    FieldWords::number(
        "supply.battery.charge",
        Quantity::Travel,
        "Charge",
        "charge of the battery",
        "State of charge; the resting voltage follows by a rule of thumb for 25 °C. Measure the voltage instead where you can.",
    )
    .of(Group::Battery)
    .if_empty("fully charged"),
    FieldWords::number(
        "supply.battery.open_circuit_v",
        Quantity::Voltage,
        "Resting (open-circuit) voltage",
        "resting (open-circuit) voltage of the battery",
        "Measured after hours of rest with everything off; it takes the place of the charge. With ground power on, its voltage.",
    )
    .of(Group::Battery)
    .if_empty("by charge"),
    FieldWords::number(
        "supply.battery.internal_ohm",
        Quantity::Resistance,
        "Internal resistance",
        "internal resistance of the battery",
        "Drop of voltage over rise of current when a known load is switched on. 5 to 15 mΩ for a sound battery of 25 to 35 Ah, two to three times as much at −20 °C (common practice).",
    )
    .of(Group::Battery)
    .if_empty("10 mΩ, common practice"),
    FieldWords::number(
        "supply.battery.wires_ohm",
        Quantity::Resistance,
        "Wires and relay",
        "resistance of wires and relay",
        "Voltage lost between battery and motor, both wires, while it runs, over its current.",
    )
    .of(Group::Battery)
    .if_empty("none"),
    FieldWords::number(
        "supply.battery.breaker_a",
        Quantity::Current,
        "Breaker",
        "rating of the breaker",
        "The figure on the breaker or fuse of the motor.",
    )
    .of(Group::Battery)
    .if_empty("not checked"),
    FieldWords::number(
        "supply.accumulator.gas_volume_m3",
        Quantity::Volume,
        "Gas volume",
        "gas volume of the accumulator",
        "Volume of the gas with no fluid in it, from its data plate. With a constant pressure as the source the accumulator is all there is: nothing fills it again.",
    )
    .of(Group::Accumulator)
    .if_empty("no accumulator"),
    FieldWords::number(
        "supply.accumulator.precharge_pa",
        Quantity::Pressure,
        "Precharge",
        "precharge of the accumulator",
        "Gauge pressure of the gas with the fluid let off, by the maker's procedure.",
    )
    .of(Group::Accumulator),
    FieldWords::number(
        "supply.accumulator.charged_pa",
        Quantity::Pressure,
        "Charged to",
        "charged pressure of the accumulator",
        "Gauge pressure in it when the gear is selected.",
    )
    .of(Group::Accumulator),
    FieldWords::number(
        "supply.accumulator.exponent",
        Quantity::Ratio,
        "Exponent of the gas",
        "exponent of the accumulator's gas",
        "1.4 for nitrogen in a swing of some seconds, 1 for one so slow that the gas keeps its temperature.",
    )
    .of(Group::Accumulator)
    .if_empty("1.4, nitrogen without heat exchange"),
];
