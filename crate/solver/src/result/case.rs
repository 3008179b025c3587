//! Load cases side by side, and the largest load of each joint over all of them.
use serde::{Deserialize, Serialize};

use super::{ForcePeak, Place, Verdict};
use crate::model::{Direction, Joint};

/// Which way the leg moves.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[serde(rename_all = "snake_case")]
pub enum Motion {
    /// Toward up.
    Retract,
    /// Toward down.
    Extend,
}

impl Motion {
    /// The way that is selected for it.
    #[must_use]
    pub fn direction(self) -> Direction {
        match self {
            Self::Retract => Direction::Up,
            Self::Extend => Direction::Down,
        }
    }

    /// +1 toward up, −1 toward down (ratio).
    #[must_use]
    pub fn sign(self) -> f64 {
        match self {
            Self::Retract => 1.0,
            Self::Extend => -1.0,
        }
    }
}

impl From<Direction> for Motion {
    fn from(selected: Direction) -> Self {
        match selected {
            Direction::Up => Self::Retract,
            Direction::Down => Self::Extend,
        }
    }
}

/// A load case.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[serde(rename_all = "snake_case")]
pub enum LoadCase {
    /// The attitude, load factor and air that the gear file sets.
    AsSet,
    /// Level on jacks, no wind.
    OnJacks,
    /// Level flight at 1 g, at the speed at which the gear is moved.
    LevelFlight,
    /// Climb at that speed: the weight turned by the pitch.
    Climb,
    /// Level turn at that speed: the load factor acts straight down in the airplane.
    Turn,
    /// 14 CFR 23.729(a)(1) before amendment 23-64: air load at 1.6 VS1 with flaps up, at the load
    /// factor of flaps extended. Inertia and brake torque, which it names too, are not in it.
    AirLoad,
}

impl LoadCase {
    /// Every case, in the order in which they are told.
    pub const ALL: [Self; 6] = [
        Self::AsSet,
        Self::OnJacks,
        Self::LevelFlight,
        Self::Climb,
        Self::Turn,
        Self::AirLoad,
    ];

    /// Whether it lasts: on the jacks or in straight flight, not at the load factor of a turn.
    #[must_use]
    pub fn is_steady(self) -> bool {
        match self {
            Self::AsSet | Self::OnJacks | Self::LevelFlight | Self::Climb => true,
            Self::Turn | Self::AirLoad => false,
        }
    }

    /// How an answer stands by what is left over and what is to be left in this case alone, as shares. A leg
    /// that only lags while the load factor is high moves on when it is low again: that is no plain Yes, and
    /// no No.
    #[must_use]
    pub fn verdict(self, left: f64, wanted: f64) -> Verdict {
        match Verdict::of_margin(left, wanted) {
            Verdict::Bad if !self.is_steady() => Verdict::Marginal,
            verdict => verdict,
        }
    }
}

/// What a case still needs.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[serde(rename_all = "snake_case")]
pub enum MissingInput {
    /// `conditions.gear_speed_m_s`.
    GearSpeed,
    /// `conditions.stall_speed_m_s`.
    StallSpeed,
    /// A drag area of this leg.
    DragArea,
}

/// One case and how it came out.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct CaseForce {
    /// The case.
    pub case: LoadCase,
    /// Its outcome.
    pub outcome: CaseOutcome,
}

/// How a case came out.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[serde(rename_all = "snake_case")]
#[allow(
    clippy::large_enum_variant,
    reason = "six a leg, nearly all of the large variant"
)]
pub enum CaseOutcome {
    /// Worked out.
    Worked {
        /// Load factor (ratio).
        load_factor: f64,
        /// Dynamic pressure (Pa).
        #[serde(rename = "dynamic_pressure_pa")]
        dynamic_pressure: f64,
        /// Place that has the least margin to retract.
        retract: Option<ForcePeak>,
        /// Place that has the least margin to extend.
        extend: Option<ForcePeak>,
        /// First place on the way up where the pressure does not suffice.
        stalls_at: Option<Place>,
        /// First place on the way where the pins bind.
        binds_at: Option<Bind>,
    },
    /// Not worked out.
    Missing {
        /// What it needs.
        needs: MissingInput,
    },
}

impl CaseForce {
    /// The motion that has the lesser margin, and where; `None` when not worked out.
    #[must_use]
    pub fn hardest(&self) -> Option<(Motion, ForcePeak)> {
        let CaseOutcome::Worked {
            retract, extend, ..
        } = self.outcome
        else {
            return None;
        };
        let retract = retract.map(|peak| (Motion::Retract, peak));
        let extend = extend.map(|peak| (Motion::Extend, peak));
        match (retract, extend) {
            (Some(up), Some(down)) if down.1.is_harder_than(&up.1) => Some(down),
            (up, down) => up.or(down),
        }
    }

    /// The pressure of the motion that has the lesser margin (Pa); `None` when not worked out.
    #[must_use]
    pub fn pressure(&self) -> Option<f64> {
        self.hardest().map(|(_, peak)| peak.pressure)
    }
}

/// Place where the pins bind.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct Bind {
    /// First such place on the way up.
    pub place: Place,
    /// Motion that it stops.
    pub motion: Motion,
    /// Pin whose friction takes most.
    pub joint: Joint,
}

/// Largest load of a joint over the stroke, both motions and all cases worked out.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct JointLoad {
    /// Joint.
    pub joint: Joint,
    /// Load (N).
    #[serde(rename = "load_n")]
    pub load: f64,
    /// Where.
    pub place: Place,
    /// In which motion.
    pub motion: Motion,
    /// In which case.
    pub case: LoadCase,
}
