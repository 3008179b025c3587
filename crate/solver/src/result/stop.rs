//! What may explain a stop that was seen on the jacks.
use serde::{Deserialize, Serialize};

use super::{JamCause, Place, TireState};
use crate::model::{Joint, MovingPart};

/// Explanations of one stop, weighed.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct StopExplained {
    /// Where the leg stood, by what was measured.
    pub place: Place,
    /// It stood there within this much travel, two standard uncertainties (ratio).
    pub travel_within: f64,
    /// Explanations: those that fit first, those ruled out last, each by its score.
    pub explanations: Vec<Explanation>,
    /// Whether what was seen tells the first explanation from the second.
    pub told_apart: bool,
    /// The next check; absent when fewer than two explanations are left, or none of the checks
    /// tells the best two apart.
    pub next_check: Option<NextCheck>,
    /// Most that the source makes by the file, a switch apart.
    pub makes: Demand,
    /// Resting (open-circuit) voltage at the battery's posts by the file (V); absent without a battery.
    #[serde(rename = "rest_voltage_v")]
    pub rest_voltage: Option<f64>,
}

/// One explanation and how well it fits.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct Explanation {
    /// What may have stopped the leg.
    pub cause: StopCause,
    /// How well it fits.
    pub fit: Fit,
    /// Each thing seen against what this explanation needs.
    pub readings: Vec<ReadingFit>,
    /// The current then passes the breaker's rating: it may have tripped, and the gauge says nothing of
    /// it, nor, unless the pump had stopped, do volts and pump.
    pub may_trip: bool,
    /// Sum of the squares of all `off` (ratio).
    #[cfg_attr(feature = "schema", schemars(with = "Option<f64>"))]
    pub chi_squared: f64,
    /// How many numbers were chosen so that it fits (ratio).
    pub fitted: usize,
    /// `chi_squared` and two for each number fitted (Akaike's criterion with known errors); the
    /// least is the best (ratio).
    #[cfg_attr(feature = "schema", schemars(with = "Option<f64>"))]
    pub score: f64,
}

impl Explanation {
    /// How many of the things seen could have spoken against it (ratio).
    #[must_use]
    pub fn tests(&self) -> usize {
        self.readings
            .iter()
            .filter(|reading| !reading.is_chosen())
            .count()
    }
}

/// How well an explanation fits, by the reading that fits worst.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[serde(rename_all = "snake_case")]
pub enum Fit {
    /// Nothing is off by more than two standard uncertainties.
    Fits,
    /// Something is off by two to three.
    Doubtful,
    /// Something is off by more than three.
    RuledOut,
}

/// What may have stopped a leg.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[serde(rename_all = "snake_case")]
pub enum StopCause {
    /// A part of the leg touches the structure.
    Touches {
        /// Obstacle, as index into the leg's well.
        obstacle: usize,
        /// Moving part.
        part: MovingPart,
        /// Tire size, for the wheel only.
        tire: Option<TireState>,
        /// Clearance in the drawing where the leg stood; negative = they overlap (m).
        #[serde(rename = "clearance_m")]
        clearance: f64,
    },
    /// The strut did not shorten all the way, and a part of the leg touches for it.
    StrutLong {
        /// Shortening that is missing (m).
        #[serde(rename = "missing_m")]
        missing: f64,
        /// Shortening in the file (m).
        #[serde(rename = "amount_m")]
        amount: f64,
        /// What is touched, as index into the leg's well.
        obstacle: usize,
        /// Moving part.
        part: MovingPart,
        /// Tire size, for the wheel only.
        tire: Option<TireState>,
    },
    /// The leg needs more than the source of the file makes.
    ForceShort {
        /// What it needs.
        needed: Demand,
        /// What the source makes.
        available: Demand,
    },
    /// The battery gives less than the file says.
    BatteryLow {
        /// Open-circuit voltage that stalls the leg there (V).
        #[serde(rename = "open_circuit_v")]
        open_circuit: f64,
        /// Whether less does so too: the leg has not left where it began.
        or_less: bool,
        /// The file's (V).
        #[serde(rename = "file_v")]
        file: f64,
    },
    /// Wires, relay, switch or ground lose more than the file says.
    BadContact {
        /// Resistance on top of the file's that stalls the leg there (Ω).
        #[serde(rename = "extra_ohm")]
        extra: f64,
    },
    /// The pump, its relief valve or the supply gives out at less than the file says.
    SourceWeak {
        /// At which the leg stalls there.
        gives: Demand,
        /// Whether less does so too: the leg has not left where it began.
        or_less: bool,
        /// The file's.
        file: Demand,
    },
    /// The same extra friction all the way.
    Friction {
        /// Extra actuator force that stalls the leg there (N).
        #[serde(rename = "extra_thrust_n")]
        extra_thrust: f64,
        /// Whether it may be more: the leg has not left where it began.
        or_more: bool,
        /// The same as a moment about the trunnion (N·m); absent where the actuator has no arm.
        #[serde(rename = "extra_moment_n_m")]
        extra_moment: Option<f64>,
        /// Factor on the friction of all pins of the file that does the same (ratio); absent where none
        /// rubs or no factor up to ten does.
        pin_factor: Option<f64>,
    },
    /// Something holds it there that is not in the drawing: a hose, a wire, a burr in a joint.
    HeldThere {
        /// Actuator force that it takes up at the least (N).
        #[serde(rename = "thrust_n")]
        thrust: f64,
    },
    /// The pins bind there, by the file.
    Binds {
        /// Pin whose friction takes most.
        joint: Joint,
    },
    /// It stands at the end of its own way, and nothing has stopped the pump.
    AtItsEnd,
    /// Its strut has not done its stroke, which the swing waits for.
    StrutStays {
        /// What the strut-shortening cylinder needs by the file.
        needed: Demand,
    },
    /// The battery's own resistance is higher than in the file.
    BatteryResists {
        /// Resistance on top of the file's that stalls the leg there (Ω).
        #[serde(rename = "extra_ohm")]
        extra: f64,
    },
    /// The actuator is at the end of its travel.
    ActuatorEnds {
        /// Stroke that the file has left where the leg stood (m).
        #[serde(rename = "left_m")]
        left: f64,
    },
    /// The linkage goes no further, by the file.
    Jams {
        /// Why.
        cause: JamCause,
    },
    /// The limit switch of the leg closes early and stops the pump.
    SwitchEarly {
        /// Travel at which it closes at the latest (ratio).
        travel: f64,
        /// The file's (ratio).
        #[serde(rename = "file_travel")]
        file: f64,
    },
    /// The pressure switch stops the pump early.
    PressureSwitchLow {
        /// Gauge pressure at which it stops the pump (Pa).
        #[serde(rename = "opens_pa")]
        opens: f64,
        /// The file's (Pa).
        #[serde(rename = "file_pa")]
        file: f64,
    },
}

/// What a leg needs or a source makes.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[serde(rename_all = "snake_case")]
pub enum Demand {
    /// Gauge pressure at the manifold (Pa).
    #[serde(rename = "pressure_pa")]
    Pressure(f64),
    /// Force of an electric actuator (N).
    #[serde(rename = "force_n")]
    Force(f64),
}

/// One thing seen against what an explanation needs; `off` is the difference in standard
/// uncertainties, those of reading and model together (ratio); null where it is beyond all
/// bounds.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[serde(rename_all = "snake_case")]
pub enum ReadingFit {
    /// How far the leg came.
    HowFar {
        /// Travel at which this explanation stops the leg (ratio); absent where a number was chosen so
        /// that it stops there.
        #[serde(rename = "asked_travel")]
        asked: Option<f64>,
        /// Travel seen (ratio).
        #[serde(rename = "seen_travel")]
        seen: f64,
        /// Difference; with what lies on the way there and should have stopped the leg earlier.
        #[cfg_attr(feature = "schema", schemars(with = "Option<f64>"))]
        off: f64,
    },
    /// Gauge pressure.
    Pressure {
        /// What the explanation needs (Pa).
        #[serde(rename = "asked_pa")]
        asked: f64,
        /// Seen (Pa).
        #[serde(rename = "seen_pa")]
        seen: f64,
        /// Difference.
        #[cfg_attr(feature = "schema", schemars(with = "Option<f64>"))]
        off: f64,
    },
    /// Voltage at the battery's posts.
    Voltage {
        /// What the explanation needs (V).
        #[serde(rename = "asked_v")]
        asked: f64,
        /// Seen (V).
        #[serde(rename = "seen_v")]
        seen: f64,
        /// Difference.
        #[cfg_attr(feature = "schema", schemars(with = "Option<f64>"))]
        off: f64,
    },
    /// Whether the pump ran on.
    Pump {
        /// It should.
        asked: bool,
        /// It did.
        seen: bool,
        /// 0, or what one wrong look in a hundred weighs.
        #[cfg_attr(feature = "schema", schemars(with = "Option<f64>"))]
        off: f64,
    },
}

impl ReadingFit {
    /// Difference in standard uncertainties (ratio).
    #[must_use]
    pub fn off(&self) -> f64 {
        match *self {
            Self::HowFar { off, .. }
            | Self::Pressure { off, .. }
            | Self::Voltage { off, .. }
            | Self::Pump { off, .. } => off,
        }
    }

    /// Whether a number was chosen so that this fits.
    #[must_use]
    pub fn is_chosen(&self) -> bool {
        matches!(self, Self::HowFar { asked: None, off, .. } if *off == 0.0)
    }
}

/// A check on the jacks that tells the best two explanations apart.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct NextCheck {
    /// What to look at or read.
    pub check: Check,
    /// What is found if the first explanation holds.
    pub if_first: Finds,
    /// Index of the other explanation.
    pub second: usize,
    /// What is found if that one holds.
    pub if_second: Finds,
}

/// Checks, the cheapest first (order by common practice).
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[serde(rename_all = "snake_case")]
pub enum Check {
    /// Listen whether the pump runs on.
    PumpRuns,
    /// Look whether the breaker has tripped.
    Breaker,
    /// Look for contact with a lamp and a strip of paper.
    Contact,
    /// Measure how far the strut has shortened.
    StrutLength,
    /// Read the resting (open-circuit) voltage at the battery's posts.
    RestVolts,
    /// Read the gauge at the manifold.
    Gauge,
    /// Read the gauge at the instant at which a switch stops the pump.
    CutOut,
    /// Read the voltage at the battery's posts.
    Posts,
    /// Read the voltage at the motor.
    MotorVolts,
    /// Try the end switch with a meter.
    EndSwitch,
    /// Swing again on a full battery or ground power.
    FullBattery,
    /// Measure how much stroke the actuator has left.
    StrokeLeft,
    /// With the pressure off and the actuator taken off the leg, swing it by hand.
    ByHand,
    /// The same over its whole way: does it drag all the way?
    DragsAll,
}

/// What a check finds.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[serde(rename_all = "snake_case")]
pub enum Finds {
    /// Yes.
    Yes,
    /// No.
    No,
    /// About this gauge pressure (Pa).
    #[serde(rename = "pressure_pa")]
    Pressure(f64),
    /// About this voltage (V).
    #[serde(rename = "voltage_v")]
    Voltage(f64),
    /// About this length (m).
    #[serde(rename = "length_m")]
    Length(f64),
}
