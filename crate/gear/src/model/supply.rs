//! What moves the gear: a constant pressure, a pump on a motor or by hand, or electric actuators.
use serde::{Deserialize, Serialize};

use super::{Direction, Leg, is_zero};

/// The supply of the whole gear.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[serde(deny_unknown_fields)]
pub struct Supply {
    /// Gauge pressure available at the actuators on the weakest supply (Pa): what it can hold
    /// against a stopped actuator.
    #[serde(rename = "available_pressure_pa")]
    pub available_pressure: f64,
    /// Gauge back pressure on the return side (Pa).
    #[serde(rename = "return_pressure_pa", default)]
    pub return_pressure: f64,
    /// Share of the available pressure that must be left over at the worst place (ratio); absent = by
    /// what is known of friction: [`DEFAULT_MARGIN_WANTED`], or [`MARGIN_WITHOUT_FRICTION`] for a
    /// leg none of whose friction is given.
    #[serde(rename = "margin_wanted", skip_serializing_if = "Option::is_none")]
    pub margin_wanted: Option<f64>,
    /// What makes the pressure, for times and flows.
    #[serde(default, skip_serializing_if = "Source::is_constant")]
    pub source: Source,
    /// Battery, wires and breaker of an electric source.
    #[serde(default, skip_serializing_if = "Battery::is_default")]
    pub battery: Battery,
    /// Accumulator at the manifold. With a constant pressure as the source it is all there is:
    /// nothing fills it again.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub accumulator: Option<Accumulator>,
    /// Gauge pressure at which a switch stops the pump (Pa); absent = the position switches stop
    /// it.
    #[serde(
        rename = "pressure_switch_pa",
        default,
        skip_serializing_if = "Option::is_none"
    )]
    pub pressure_switch: Option<f64>,
    /// The available pressure while the gear goes down, where it differs (Pa); absent = the same.
    #[serde(
        rename = "available_down_pa",
        default,
        skip_serializing_if = "Option::is_none"
    )]
    pub available_down: Option<f64>,
    /// The relief valve of a motor pump while the gear goes down, where it differs (Pa); absent = the
    /// same.
    #[serde(
        rename = "relief_down_pa",
        default,
        skip_serializing_if = "Option::is_none"
    )]
    pub relief_down: Option<f64>,
    /// The pressure switch while the gear goes down, where it differs (Pa); absent = the same.
    #[serde(
        rename = "pressure_switch_down_pa",
        default,
        skip_serializing_if = "Option::is_none"
    )]
    pub pressure_switch_down: Option<f64>,
}

impl Supply {
    /// The supply as it is while the gear goes this way: with what differs on the way down in its
    /// place.
    #[must_use]
    pub fn going(&self, way: Direction) -> Self {
        if way == Direction::Up {
            return *self;
        }
        let mut down = *self;
        down.available_pressure = self.available_down.unwrap_or(self.available_pressure);
        down.pressure_switch = self.pressure_switch_down.or(self.pressure_switch);
        if let (Source::MotorPump(pump), Some(relief)) = (&mut down.source, self.relief_down) {
            pump.relief_pressure = relief;
        }
        down
    }

    /// Gauge pressure at which a switch stops the pump (Pa); absent where there is no pump to stop.
    #[must_use]
    pub fn pump_switch(&self) -> Option<f64> {
        self.pressure_switch
            .filter(|_| matches!(self.source, Source::MotorPump(_) | Source::HandPump(_)))
    }

    /// Share of the available pressure that must be left over at the worst place of a leg (ratio): as given,
    /// or by whether any of its friction is.
    #[must_use]
    pub fn required_margin(&self, leg: &Leg) -> f64 {
        let by_friction = if leg.friction_typed(&self.source).any() {
            DEFAULT_MARGIN_WANTED
        } else {
            MARGIN_WITHOUT_FRICTION
        };
        self.margin_wanted.unwrap_or(by_friction)
    }

    /// A constant pressure (Pa) that returns freely to the tank, everything else by default.
    #[must_use]
    pub const fn constant(available_pressure: f64) -> Self {
        Self {
            available_pressure,
            return_pressure: 0.0,
            margin_wanted: None,
            source: Source::ConstantPressure,
            battery: Battery::FRESH,
            accumulator: None,
            pressure_switch: None,
            available_down: None,
            relief_down: None,
            pressure_switch_down: None,
        }
    }
}

/// Default of [`Supply::margin_wanted`] (ratio): hydraulic cylinders lose 5–10 % of their force to
/// friction (common practice, no published source).
pub const DEFAULT_MARGIN_WANTED: f64 = 0.10;

/// Default of [`Supply::margin_wanted`] for a leg none of whose friction is given (ratio): this program's
/// own figure. The one printed ratio of a pack's relief valve to its pressure switch is 1.33, which
/// leaves a quarter.
pub const MARGIN_WITHOUT_FRICTION: f64 = 0.25;

/// Default of [`Battery::internal_resistance`] (Ω): 25–35 Ah aircraft batteries have 5 to 15 mΩ,
/// two to three times as much at −20 °C (common practice).
pub const DEFAULT_INTERNAL_RESISTANCE: f64 = 0.010;

fn is_default<T: Default + PartialEq>(value: &T) -> bool {
    *value == T::default()
}

fn is_full(charge: &f64) -> bool {
    *charge == 1.0
}

fn is_default_resistance(value: &f64) -> bool {
    *value == DEFAULT_INTERNAL_RESISTANCE
}

/// What makes the pressure or the force.
#[derive(Clone, Copy, Debug, Default, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[serde(rename_all = "snake_case")]
pub enum Source {
    /// The available pressure at any flow, as from an accumulator or a test rig.
    #[default]
    ConstantPressure,
    /// A pump on a DC motor.
    MotorPump(MotorPump),
    /// A pump worked by hand.
    HandPump(HandPump),
    /// An electric linear actuator on each leg, no fluid.
    ElectricActuators,
}

impl Source {
    /// Whether it is the plain pressure of the force answers.
    #[must_use]
    pub fn is_constant(&self) -> bool {
        matches!(self, Self::ConstantPressure)
    }
}

/// Pump on a DC motor: flow Q = Q0·(V/Vn) − (Q0/Ps)·p, current linear in pressure.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[serde(deny_unknown_fields)]
pub struct MotorPump {
    /// Flow Q0 at the rated voltage without pressure (m3/s).
    #[serde(rename = "free_flow_m3_s")]
    pub free_flow: f64,
    /// Voltage Vn at the motor for which flow and stall pressure hold (V).
    #[serde(rename = "rated_v")]
    pub rated_voltage: f64,
    /// Gauge pressure Ps that stops the motor at the rated voltage (Pa).
    #[serde(rename = "stall_pressure_pa")]
    pub stall_pressure: f64,
    /// Current without pressure (A).
    #[serde(rename = "idle_a")]
    pub no_load_current: f64,
    /// Current at the stall pressure (A).
    #[serde(rename = "stall_a")]
    pub stall_current: f64,
    /// Gauge pressure at which the relief valve opens (Pa).
    #[serde(rename = "relief_pressure_pa")]
    pub relief_pressure: f64,
}

/// Pump worked by hand at a steady beat until the handle is too heavy.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[serde(deny_unknown_fields)]
pub struct HandPump {
    /// Fluid moved by one stroke (m3).
    #[serde(rename = "stroke_volume_m3")]
    pub stroke_volume: f64,
    /// Time of one stroke (s): 60 over the strokes in a minute.
    #[serde(rename = "stroke_time_s")]
    pub stroke_time: f64,
    /// Largest gauge pressure that the handle can be worked against (Pa).
    #[serde(rename = "largest_pressure_pa")]
    pub largest_pressure: f64,
}

/// Gas under pressure behind a bladder or piston, with a valve that keeps it in when the fluid is
/// used up: p·V^n constant, absolute pressures.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[serde(deny_unknown_fields)]
pub struct Accumulator {
    /// Volume of the gas without fluid (m3).
    #[serde(rename = "gas_volume_m3")]
    pub gas_volume: f64,
    /// Gauge pressure of the gas without fluid (Pa).
    #[serde(rename = "precharge_pa")]
    pub precharge: f64,
    /// Gauge pressure when the gear is selected (Pa).
    #[serde(rename = "charged_pa")]
    pub charged: f64,
    /// Polytropic exponent n (ratio).
    #[serde(
        default = "default_exponent",
        skip_serializing_if = "is_default_exponent"
    )]
    pub exponent: f64,
}

/// Default of [`Accumulator::exponent`] (ratio): nitrogen that takes up no heat in some seconds,
/// cp/cv = 1.4 (textbook).
pub const DEFAULT_EXPONENT: f64 = 1.4;

fn default_exponent() -> f64 {
    DEFAULT_EXPONENT
}

fn is_default_exponent(value: &f64) -> bool {
    *value == DEFAULT_EXPONENT
}

/// Battery, wires and breaker between it and the motor.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[serde(deny_unknown_fields, default)]
pub struct Battery {
    /// Kind of cell.
    #[serde(skip_serializing_if = "is_default")]
    pub kind: BatteryKind,
    /// Nominal voltage.
    #[serde(skip_serializing_if = "is_default")]
    pub size: BatterySize,
    /// State of charge, 0 empty … 1 full (ratio).
    #[serde(skip_serializing_if = "is_full")]
    pub charge: f64,
    /// Measured open-circuit voltage, in place of the one by charge (V).
    #[serde(rename = "open_circuit_v", skip_serializing_if = "Option::is_none")]
    pub open_circuit_voltage: Option<f64>,
    /// Internal resistance (Ω).
    #[serde(rename = "internal_ohm", skip_serializing_if = "is_default_resistance")]
    pub internal_resistance: f64,
    /// Resistance of wires, relay and ground, there and back (Ω).
    #[serde(rename = "wires_ohm", skip_serializing_if = "is_zero")]
    pub wire_resistance: f64,
    /// Rating of the breaker or fuse (A); absent = not checked.
    #[serde(rename = "breaker_a", skip_serializing_if = "Option::is_none")]
    pub breaker_rating: Option<f64>,
}

impl Default for Battery {
    fn default() -> Self {
        Self::FRESH
    }
}

impl Battery {
    /// Full, 12 V, flooded, no loss in the wires.
    pub const FRESH: Self = Self {
        kind: BatteryKind::Flooded,
        size: BatterySize::Volt12,
        charge: 1.0,
        open_circuit_voltage: None,
        internal_resistance: DEFAULT_INTERNAL_RESISTANCE,
        wire_resistance: 0.0,
        breaker_rating: None,
    };

    fn is_default(&self) -> bool {
        *self == Self::default()
    }
}

/// Kind of lead-acid battery.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[serde(rename_all = "snake_case")]
pub enum BatteryKind {
    /// Liquid acid.
    #[default]
    Flooded,
    /// AGM: acid held in a glass mat (recombinant).
    GlassMat,
}

/// Nominal voltage of a battery.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub enum BatterySize {
    /// Six cells.
    #[default]
    #[serde(rename = "12_v")]
    Volt12,
    /// Twelve cells.
    #[serde(rename = "24_v")]
    Volt24,
}
