//! The gear against time: pressures, flows, currents, where every leg is and what its switches say.
use serde::{Deserialize, Serialize};

use super::SupplyError;
use super::{LoadCase, Place};
use crate::model::{Direction, Joint, MovingPart};

/// Up and down again.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct Cycle {
    /// The load case: level on jacks, or attitude and air as set.
    pub case: LoadCase,
    /// From down, or where the file says the legs stand, to up; absent with `up_error`.
    pub up: Option<Run>,
    /// Why the way up could not be followed.
    pub up_error: Option<SupplyError>,
    /// Down from up, as if the gear had come up, on a better supply if need be; a leg that something
    /// stops from the place where its way up ends. Absent where a leg cannot be driven at all, or
    /// with `down_error`.
    pub down: Option<Run>,
    /// Why the way down could not be followed.
    pub down_error: Option<SupplyError>,
}

impl Cycle {
    /// The run in one direction.
    #[must_use]
    pub fn run(&self, direction: Direction) -> Option<&Run> {
        match direction {
            Direction::Up => self.up.as_ref(),
            Direction::Down => self.down.as_ref(),
        }
    }

    /// Why there is no run in one direction.
    #[must_use]
    pub fn error(&self, direction: Direction) -> Option<&SupplyError> {
        match direction {
            Direction::Up => self.up_error.as_ref(),
            Direction::Down => self.down_error.as_ref(),
        }
    }
}

/// The gear in one direction.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct Run {
    /// Which way.
    pub direction: Direction,
    /// How it ended.
    pub end: RunEnd,
    /// Time from the selection to where no leg moves any more, or the pump is stopped (s).
    #[serde(rename = "time_s")]
    pub time: f64,
    /// What happened, in order, the filling of an accumulator after the legs included.
    pub events: Vec<RunEvent>,
    /// The course of it, with the filling of an accumulator after the legs.
    pub samples: Vec<Sample>,
    /// What went through the manifold.
    pub fluid: FluidBudget,
    /// What it took.
    pub energy: EnergyBudget,
    /// Largest current (A); absent without a motor.
    #[serde(rename = "largest_current_a")]
    pub largest_current: Option<f64>,
    /// Breaker; absent where no rating is given or there is no motor.
    pub breaker: Option<Breaker>,
    /// Legs that stalled, the one that lacks most first.
    pub stalls: Vec<Stall>,
    /// Most that the source makes against stopped legs (Pa); force is each leg's own with electric
    /// actuators.
    #[serde(rename = "largest_pressure_pa")]
    pub largest_pressure: Option<f64>,
    /// Strokes of the hand pump (ratio); absent without one.
    pub strokes: Option<f64>,
    /// What the pump does after the legs to fill the accumulator again; absent where it does nothing.
    pub refill: Option<Refill>,
}

impl Run {
    /// The course of it as long as legs move, without the filling of an accumulator afterward.
    #[must_use]
    pub fn moving(&self) -> &[Sample] {
        let count = self
            .samples
            .partition_point(|sample| sample.time <= self.time);
        self.samples.split_at(count).0
    }
}

/// How a pump fills an accumulator again when the legs stand at their ends.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct Refill {
    /// Time from the selection to where its switch stops the pump, or from where on it only runs on (s).
    #[serde(rename = "time_s")]
    pub time: f64,
    /// Gauge pressure at the manifold then (Pa).
    #[serde(rename = "pressure_pa")]
    pub pressure: f64,
    /// Taken from the battery meanwhile, part of `energy.battery_j`; 0 without one (J).
    #[serde(rename = "battery_j")]
    pub battery: f64,
}

/// How a run ended.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[serde(rename_all = "snake_case")]
pub enum RunEnd {
    /// Every leg at the end of its way.
    Complete,
    /// Every limit switch closed before every leg was at the end of its way.
    SwitchedOff,
    /// The pressure switch stopped the pump before every leg was at the end of its way.
    PressureSwitch,
    /// Nothing moves any more.
    Stalled,
}

/// Something that happened.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct RunEvent {
    /// When (s).
    #[serde(rename = "time_s")]
    pub time: f64,
    /// Leg, as index; absent for the supply.
    pub leg: Option<usize>,
    /// What.
    pub kind: RunEventKind,
    /// Where that leg was.
    pub place: Option<Place>,
    /// Pressure at the manifold just before (Pa); absent with electric actuators.
    #[serde(rename = "pressure_pa")]
    pub pressure: Option<f64>,
}

/// Kinds of events.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[serde(rename_all = "snake_case")]
pub enum RunEventKind {
    /// The gear is selected.
    Selected,
    /// The strut is fully shortened or let out.
    StrutDone,
    /// The swing is at its end.
    SwingDone,
    /// The leg came to where its parts or its actuator let it go no further.
    Blocked,
    /// From here on its load pulls the leg ahead of the fluid: behind its orifice nothing is left of the
    /// pressure, and the leg is faster than told.
    FluidLags,
    /// The leg touches its well, by the drawing, and is taken to stop there.
    Touches,
    /// The leg stopped: its load is more than the source can carry.
    Stalled,
    /// The strut-shortened switch closes.
    ShortenedMade,
    /// The strut-shortened switch opens.
    ShortenedOpen,
    /// The up-limit switch closes.
    UpMade,
    /// The up-limit switch opens.
    UpOpen,
    /// The down-lock switch closes.
    DownMade,
    /// The down-lock switch opens.
    DownOpen,
    /// The relief valve opens.
    ReliefOpen,
    /// The relief valve closes.
    ReliefClosed,
    /// The current passes the breaker's rating.
    BreakerPassed,
    /// The pressure switch stops the pump.
    PressureSwitch,
    /// The position switches stop the pump.
    SwitchesStop,
    /// The accumulator has no fluid left.
    AccumulatorEmpty,
    /// The pump has filled the accumulator.
    AccumulatorFull,
    /// The pressure switch never opens: the pump runs on against the stopped legs.
    RunsOn,
}

/// What the indication of a leg shows, by the usual rule (common practice): down and locked only while
/// its down-lock switch is closed, up only while its up-limit switch is closed, in transit otherwise.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[serde(rename_all = "snake_case")]
pub enum Indication {
    /// Down and locked.
    DownAndLocked,
    /// In transit.
    InTransit,
    /// Up.
    Up,
}

/// Everything at one instant.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct Sample {
    /// When (s).
    #[serde(rename = "time_s")]
    pub time: f64,
    /// Gauge pressure at the manifold (Pa).
    #[serde(rename = "pressure_pa")]
    pub pressure: Option<f64>,
    /// Flow out of the pump (m3/s).
    #[serde(rename = "flow_m3_s")]
    pub flow: Option<f64>,
    /// Current from the battery (A).
    #[serde(rename = "current_a")]
    pub current: Option<f64>,
    /// Voltage at the battery's posts (V).
    #[serde(rename = "bus_voltage_v")]
    pub bus_voltage: Option<f64>,
    /// The legs, in the order of the file.
    pub legs: Vec<LegSample>,
}

/// One leg at one instant.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct LegSample {
    /// Where it is.
    pub place: Place,
    /// Strut shortening as a share of the whole (ratio).
    pub shortened_share: f64,
    /// Whether the strut-shortened switch is closed.
    pub shortened: bool,
    /// Whether the up-limit switch is closed.
    pub up: bool,
    /// Whether the down-lock switch is closed.
    pub down: bool,
    /// What is shown for it.
    pub indication: Indication,
}

/// Fluid of a run: pumped + drawn + out of the accumulator = swept + relieved (m3).
#[derive(Clone, Copy, Debug, Default, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct FluidBudget {
    /// Out of the pump (m3).
    #[serde(rename = "pumped_m3")]
    pub pumped: f64,
    /// Drawn from the return line by legs that run ahead of the pump (m3).
    #[serde(rename = "drawn_m3")]
    pub drawn: f64,
    /// Out of the accumulator, less what was pumped into it (m3).
    #[serde(rename = "accumulator_m3")]
    pub accumulator: f64,
    /// Into the cylinders (m3).
    #[serde(rename = "swept_m3")]
    pub swept: f64,
    /// Through the relief valve (m3).
    #[serde(rename = "relieved_m3")]
    pub relieved: f64,
}

/// Energy of a run (J).
#[derive(Clone, Copy, Debug, Default, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct EnergyBudget {
    /// Taken from the battery, its own resistance included; 0 without one (J).
    #[serde(rename = "battery_j")]
    pub battery: f64,
    /// Lost in the battery's own resistance and the wires (J).
    #[serde(rename = "wires_j")]
    pub wires: f64,
    /// Given to the fluid by pump, hand or pressure source, or to the rods by electric actuators; without
    /// what fluid drawn from the return line brings along (J).
    #[serde(rename = "given_j")]
    pub given: f64,
    /// Given by the gas of the accumulator (J).
    #[serde(rename = "accumulator_j")]
    pub accumulator: f64,
    /// Given to the loads: pressure needed over the fluid, seals, back pressure and stage valves
    /// included (J).
    #[serde(rename = "loads_j")]
    pub loads: f64,
    /// Lost in orifices and lines (J).
    #[serde(rename = "lines_j")]
    pub lines: f64,
    /// Lost over the relief valve (J).
    #[serde(rename = "relief_j")]
    pub relief: f64,
}

/// The breaker against the largest current.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct Breaker {
    /// Its rating (A).
    #[serde(rename = "rating_a")]
    pub rating: f64,
    /// Whether the current passes it; how soon it trips is not worked out.
    pub passed: bool,
}

/// A leg that stalled, and what would free it.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct Stall {
    /// Leg, as index.
    pub leg: usize,
    /// Where it stands.
    pub place: Place,
    /// Why.
    pub cause: StallCause,
}

/// Why a leg stands.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[serde(rename_all = "snake_case")]
pub enum StallCause {
    /// It needs more pressure than the source makes.
    Pressure {
        /// Most needed for the rest of its travel (Pa).
        #[serde(rename = "needed_pa")]
        needed: f64,
        /// Most that the source makes (Pa).
        #[serde(rename = "available_pa")]
        available: f64,
        /// Actuator force that is too much (N); absent where its stage valve needs the pressure.
        #[serde(rename = "thrust_over_n")]
        thrust_over: Option<f64>,
        /// Open-circuit voltage that the battery lacks (V); absent where volts alone do not free it.
        #[serde(rename = "volts_short_v")]
        volts_short: Option<f64>,
        /// Whether the relief valve opens below what is needed.
        relief_too_low: bool,
        /// Whether the pressure switch stops the pump below what is needed.
        switch_too_low: bool,
    },
    /// It needs more force than its electric actuator makes.
    Force {
        /// Most needed for the rest of its travel (N).
        #[serde(rename = "needed_n")]
        needed: f64,
        /// Most that the actuator makes on this bus while all that stand push on it (N).
        #[serde(rename = "available_n")]
        available: f64,
        /// Open-circuit voltage that the battery lacks for this leg to move on while the others that
        /// stand push too (V).
        #[serde(rename = "volts_short_v")]
        volts_short: f64,
    },
    /// A part touches the well, by the drawing.
    Touches {
        /// What touches; the tire as fitted new.
        part: MovingPart,
        /// What is touched, as index into the leg's well.
        obstacle: usize,
    },
    /// The tire, as fitted new, touches a part of its own leg, by the drawing.
    TouchesItself {
        /// What it touches.
        part: MovingPart,
    },
    /// Its parts or its actuator let it go no further: no pressure frees it.
    EndOfWay,
    /// Its pins bind there: friction grows with the actuator force faster than the force itself, and no
    /// pressure frees it.
    Binds {
        /// The pin that takes most.
        joint: Joint,
    },
}
