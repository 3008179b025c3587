//! Fields of the supply: pressure, pump, battery.

use super::words::option;
use super::{ChoiceWords, FieldWords};

const SOURCES_OPTIONS: &[ChoiceWords] = &[
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

const BATTERY_KINDS_OPTIONS: &[ChoiceWords] = &[
    option("flooded", "Flooded", "Lead-acid with liquid acid."),
    option(
        "glass_mat",
        "AGM",
        "Sealed lead-acid, the acid held in a glass mat (recombinant).",
    ),
];

const BATTERY_SIZES_OPTIONS: &[ChoiceWords] = &[
    option("12_v", "12 V", "Six lead-acid cells."),
    option("24_v", "24 V", "Twelve lead-acid cells."),
];

pub(super) const AVAILABLE_PRESSURE: FieldWords = FieldWords::new(
    "Available pressure",
    "available pressure",
    "Gauge pressure the supply still gives with the actuator stopped: read it on a gauge at the actuator line, or take the relief valve setting from the maker's data.",
);
pub(super) const RETURN_PRESSURE: FieldWords = FieldWords::new(
    "Return pressure",
    "return pressure",
    "Gauge back pressure in the return line while the gear moves, from a gauge in that line. 0 when it runs freely to the tank.",
)
.if_empty("no back pressure");
pub(super) const MARGIN_WANTED: FieldWords = FieldWords::new(
    "Required margin",
    "required margin of pressure",
    "Share of the available pressure that must be left over at the hardest place. Without a figure 10 % is required (common practice), and 25 % of a leg none of whose friction is given (this program's own figure).",
)
.if_empty("10 %, or 25 % while no friction is given");
pub(super) const SUPPLY_SOURCE: FieldWords = FieldWords::new(
    "Source",
    "source of the supply",
    "What makes the pressure or the force. Times are worked out for a pump, for electric actuators, for an accumulator, and where every leg has its orifice.",
)
.choices(SOURCES_OPTIONS)
.if_empty("a constant pressure");
pub(super) const PUMP_FREE_FLOW: FieldWords = FieldWords::new(
    "Free flow",
    "free flow of the pump",
    "Flow without pressure at the rated voltage, from the pump maker; or time how long it takes to fill a can of known size with the line open.",
);
pub(super) const PUMP_RATED_VOLTAGE: FieldWords = FieldWords::new(
    "Rated voltage",
    "rated voltage of the pump motor",
    "Voltage at the motor for which free flow and stall pressure hold.",
);
pub(super) const PUMP_STALL_PRESSURE: FieldWords = FieldWords::new(
    "Stall pressure",
    "stall pressure of the pump",
    "Pressure that stops the motor at its rated voltage, relief valve out of play. From two points of the maker's curve, drawn on as a straight line to no flow.",
);
pub(super) const PUMP_IDLE_CURRENT: FieldWords = FieldWords::new(
    "Current without load",
    "current of the pump without load",
    "Current with the line open, by a clamp meter on the battery cable.",
);
pub(super) const PUMP_STALL_CURRENT: FieldWords = FieldWords::new(
    "Stall current",
    "stall current of the pump",
    "Current at the stall pressure, drawn on from a reading under load; do not stall the motor to read it.",
);
pub(super) const RELIEF_PRESSURE: FieldWords = FieldWords::new(
    "Relief valve",
    "relief pressure of the pump",
    "Gauge pressure at which the relief valve of the power pack opens, from its data plate or on a gauge with the legs stopped.",
);
pub(super) const STROKE_VOLUME: FieldWords = FieldWords::new(
    "Fluid of one stroke",
    "fluid of one hand pump stroke",
    "Fluid that one full stroke of the handle moves; pump ten strokes into a measuring can and divide.",
);
pub(super) const STROKE_TIME: FieldWords = FieldWords::new(
    "Time of one stroke",
    "time of one hand pump stroke",
    "60 over the strokes in a minute that somebody keeps up in the seat: 40 a minute is 1.5 s.",
);
pub(super) const HAND_PUMP_PRESSURE: FieldWords = FieldWords::new(
    "Largest pressure",
    "largest hand pump pressure",
    "Gauge pressure at which the handle is too heavy for the person who has to work it.",
);
pub(super) const PRESSURE_SWITCH: FieldWords = FieldWords::new(
    "Pressure switch",
    "pressure switch of the pump",
    "Gauge pressure at which a switch stops the pump.",
)
.if_empty("the limit switches stop the pump");
pub(super) const AVAILABLE_DOWN: FieldWords = FieldWords::new(
    "Available pressure, down",
    "available pressure on the way down",
    "Gauge pressure the supply still gives while the gear goes down, where it differs: many packs have a lower relief valve for down.",
)
.if_empty("as on the way up");
pub(super) const RELIEF_DOWN: FieldWords = FieldWords::new(
    "Relief valve, down",
    "relief pressure on the way down",
    "Gauge pressure at which the relief valve of the down side opens, from the maker's data of the pump.",
)
.if_empty("as on the way up");
pub(super) const PRESSURE_SWITCH_DOWN: FieldWords = FieldWords::new(
    "Pressure switch, down",
    "pressure switch of the pump on the way down",
    "Gauge pressure at which the switch of the down side stops the pump.",
)
.if_empty("as on the way up");
pub(super) const BATTERY_TYPE: FieldWords = FieldWords::new(
    "Battery",
    "kind of battery",
    "It sets the resting voltage by charge.",
)
.choices(BATTERY_KINDS_OPTIONS)
.if_empty("flooded");
pub(super) const BATTERY_VOLTAGE: FieldWords = FieldWords::new(
    "Nominal voltage",
    "nominal voltage of the battery",
    "From its label.",
)
.choices(BATTERY_SIZES_OPTIONS)
.if_empty("12 V");
pub(super) const BATTERY_CHARGE: FieldWords = FieldWords::new(
    "Charge",
    "charge of the battery",
    "State of charge; the resting voltage follows by a rule of thumb for 25 °C. Measure the voltage instead where you can.",
)
.if_empty("fully charged");
pub(super) const OPEN_CIRCUIT_VOLTAGE: FieldWords = FieldWords::new(
    "Resting (open-circuit) voltage",
    "resting (open-circuit) voltage of the battery",
    "Measured after hours of rest with everything off; it takes the place of the charge. With ground power on, its voltage.",
)
.if_empty("by charge");
pub(super) const INTERNAL_RESISTANCE: FieldWords = FieldWords::new(
    "Internal resistance",
    "internal resistance of the battery",
    "Drop of voltage over rise of current when a known load is switched on. 5 to 15 mΩ for a sound battery of 25 to 35 Ah, two to three times as much at −20 °C (common practice).",
)
.if_empty("10 mΩ, common practice");
pub(super) const WIRE_RESISTANCE: FieldWords = FieldWords::new(
    "Wires and relay",
    "resistance of wires and relay",
    "Voltage lost between battery and motor, both wires, while it runs, over its current.",
)
.if_empty("none");
pub(super) const BREAKER_RATING: FieldWords = FieldWords::new(
    "Breaker",
    "rating of the breaker",
    "The figure on the breaker or fuse of the motor.",
)
.if_empty("not checked");
pub(super) const GAS_VOLUME: FieldWords = FieldWords::new(
    "Gas volume",
    "gas volume of the accumulator",
    "Volume of the gas with no fluid in it, from its data plate. With a constant pressure as the source the accumulator is all there is: nothing fills it again.",
)
.if_empty("no accumulator");
pub(super) const PRECHARGE: FieldWords = FieldWords::new(
    "Precharge",
    "precharge of the accumulator",
    "Gauge pressure of the gas with the fluid let off, by the maker's procedure.",
);
pub(super) const CHARGED_PRESSURE: FieldWords = FieldWords::new(
    "Charged to",
    "charged pressure of the accumulator",
    "Gauge pressure in it when the gear is selected.",
);
pub(super) const GAS_EXPONENT: FieldWords = FieldWords::new(
    "Exponent of the gas",
    "exponent of the accumulator's gas",
    "1.4 for nitrogen in a swing of some seconds, 1 for one so slow that the gas keeps its temperature.",
)
.if_empty("1.4, nitrogen without heat exchange");
