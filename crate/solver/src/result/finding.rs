//! The three answers for a leg, as data: sentences are made elsewhere.
use serde::Serialize;

use super::{JamCause, LoadCase, Motion, Place};
use crate::model::Joint;

/// The questions, in this order.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[serde(rename_all = "snake_case")]
pub enum Question {
    /// Does it clear?
    Clears,
    /// Can it be driven?
    Driven,
    /// Will it lock?
    Locks,
}

/// How an answer stands.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[serde(rename_all = "snake_case")]
pub enum Verdict {
    /// Yes.
    Good,
    /// Yes, but with less than is required.
    Marginal,
    /// No.
    Bad,
    /// Not shown: the model cannot say; it needs a look at the airplane.
    NotShown,
}

impl Verdict {
    /// How much an answer asks to be looked at first (ratio): No, marginal, not shown, Yes.
    #[must_use]
    pub fn gravity(self) -> u8 {
        match self {
            Self::Bad => 3,
            Self::Marginal => 2,
            Self::NotShown => 1,
            Self::Good => 0,
        }
    }

    /// The worse of two.
    #[must_use]
    pub fn or_worse(self, other: Self) -> Self {
        if other.gravity() > self.gravity() {
            other
        } else {
            self
        }
    }

    /// How an answer stands by what is left over and what is to be left, as shares.
    #[must_use]
    pub fn of_margin(left: f64, wanted: f64) -> Self {
        if left < 0.0 {
            Self::Bad
        } else if left < wanted {
            Self::Marginal
        } else {
            Self::Good
        }
    }
}

/// One answer.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct Finding {
    /// What is asked.
    pub question: Question,
    /// How it stands.
    pub verdict: Verdict,
    /// Number, margin and what it is about.
    pub detail: FindingDetail,
    /// Where to look; absent when there is no such place.
    pub place: Option<Place>,
    /// What the answer rests on, the governing one first.
    pub assumptions: Vec<Assumption>,
    /// Cautions that belong to it.
    pub cautions: Vec<Caution>,
}

/// Number, margin and subject of an answer.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[serde(rename_all = "snake_case")]
pub enum FindingDetail {
    /// Something stops the leg before up.
    Jammed {
        /// Why.
        cause: JamCause,
    },
    /// The tightest pair of the well: contact, nearer than required, or clear, as the verdict says.
    Tightest {
        /// Row in `clearance.pairs`.
        pair: usize,
        /// Clearance (m); negative = interference.
        #[serde(rename = "clearance_m")]
        clearance: f64,
        /// Clearance less requirement (m).
        #[serde(rename = "spare_m")]
        spare: f64,
    },
    /// The tire against its own leg, brace or actuator: contact, too near, or clear, as the verdict
    /// says.
    OwnTightest {
        /// Row in `clearance.own`.
        row: usize,
        /// Clearance (m); negative = depth of contact.
        #[serde(rename = "clearance_m")]
        clearance: f64,
        /// Clearance less requirement (m).
        #[serde(rename = "spare_m")]
        spare: f64,
    },
    /// The room along the trunnion axis: contact, too near, or clear, as the verdict says.
    RoomTightest {
        /// Row in `clearance.room.rows`.
        row: usize,
        /// Clearance (m); negative = interference.
        #[serde(rename = "clearance_m")]
        clearance: f64,
        /// Clearance less requirement (m).
        #[serde(rename = "spare_m")]
        spare: f64,
    },
    /// There is nothing in the well to check against.
    NothingInWell,
    /// Pressure needed at the worst place, of both motions and all load cases, against the pressure
    /// available.
    Pressure {
        /// The case that needs it.
        case: LoadCase,
        /// The motion that needs it.
        motion: Motion,
        /// Needed (Pa).
        #[serde(rename = "needed_pa")]
        needed: f64,
        /// Available (Pa).
        #[serde(rename = "available_pa")]
        available: f64,
        /// (available − needed)/available (ratio).
        margin: f64,
        /// Margin that is required (ratio).
        required: f64,
        /// Load on the actuator mount there (N).
        #[serde(rename = "mount_load_n")]
        mount_load: f64,
    },
    /// Another leg on the same drive is moved by nothing at a place, and with it the drive.
    PartnerStands {
        /// That leg, by index.
        leg: usize,
    },
    /// The actuator loses its arm on the way: no actuator force moves the leg there.
    DeadPoint,
    /// The pins bind on the way: no actuator force moves the leg there.
    Binds {
        /// Pin whose friction takes most.
        joint: Joint,
        /// Motion that it stops.
        motion: Motion,
        /// Case in which they bind.
        case: LoadCase,
    },
    /// The retract actuator cannot bring the knee back through the straight line.
    CannotUnlock,
    /// The strut-shortening cylinder needs no less than what is available.
    StrutJack {
        /// Needed, one way or the other (Pa).
        #[serde(rename = "needed_pa")]
        needed: f64,
        /// Available (Pa).
        #[serde(rename = "available_pa")]
        available: f64,
    },
    /// The stage valve before the swing opens at no less than what is available.
    StageValve {
        /// Pressure at which it opens (Pa).
        #[serde(rename = "opens_pa")]
        opens: f64,
        /// Available (Pa).
        #[serde(rename = "available_pa")]
        available: f64,
    },
    /// Over-center knee: offset and what loads do to it.
    OverCentre {
        /// Offset over center (m).
        #[serde(rename = "offset_m")]
        offset: f64,
        /// Push into the stop for each newton of ground load at the axle (ratio).
        ground_into_lock: f64,
        /// Push that takes the knee off its stop against the dead weight (N).
        #[serde(rename = "knee_push_n")]
        knee_push: f64,
    },
    /// The knee stands short of center, or folds on: geometry does not lock it.
    NotOverCentre {
        /// Offset over center (m), zero or negative.
        #[serde(rename = "offset_m")]
        offset: f64,
    },
    /// The leg needs more overtravel past down than its stop allows.
    ExcursionStopped {
        /// Excursion at the axle (m).
        #[serde(rename = "at_axle_m")]
        at_axle: f64,
        /// Allowed (m).
        #[serde(rename = "allowed_m")]
        allowed: f64,
    },
    /// Telescoping brace: how far it is from its end length at down.
    SlidingBrace {
        /// Distance from the nearer end length (m).
        #[serde(rename = "end_gap_m")]
        end_gap: f64,
    },
    /// No brace: the geometry holds nothing.
    NoBrace,
}

/// What an answer rests on.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[serde(rename_all = "snake_case")]
pub enum Assumption {
    /// The grown tire follows the growth rule: its formula is from memory, and it reproduces printed
    /// grown sizes.
    GrowthRuleFromMemory,
    /// The tire's size is a row of the size table that is quoted from memory.
    TireSizeFromMemory,
    /// The tire's size is a row of the size table that is printed in a data book, read in a copy.
    TireSizePublished,
    /// Measured tire.
    TireMeasured,
    /// The tire maker's figure.
    TireMaker,
    /// A tire figure without a stated origin.
    TireUnstated,
    /// Required clearance is the built-in default, common practice.
    ClearanceCommonPractice,
    /// Required clearance is the user's figure.
    ClearanceUser,
    /// Margin required is the built-in figure for a leg none of whose friction is given.
    MarginWithoutFriction,
    /// Required margin of pressure is the built-in default, common practice.
    MarginCommonPractice,
    /// A pump with an accumulator counts up to the pressure at which its switch stops it, though one that
    /// starts it again only lower can leave less.
    PumpUpToItsSwitch,
    /// Required margin of pressure is the user's figure.
    MarginUser,
    /// No pin friction, no springs.
    NoPinFriction,
    /// The pin friction and springs that the leg has are counted.
    FrictionAndSprings,
    /// In a front view air loads act only with sideslip.
    FrontViewAir,
    /// A separate device unlocks the knee; its force is not worked out.
    SeparateUnlock,
    /// Dead weight only: no springs, no pressure.
    DeadWeightOnly,
    /// The fall is worked out with an actuator that has no pressure on either side; springs and pin
    /// friction count as far as they are given.
    FallWithoutPressure,
    /// How many times its friction a leg must fall against is this program's own figure.
    FrictionTimesOwn,
    /// What friction that has stood takes more than running friction is quoted from memory.
    BreakOutFromMemory,
    /// The fall is of this leg alone, though others on the same drive move with it.
    FallsAlone,
    /// The drive that this leg names is named by no other: it counts as driving alone.
    AloneOnDrive,
    /// The moment of inertia of the upper leg is an estimate.
    InertiaEstimated,
    /// Dead weight and the springs that the leg has: no pressure.
    WeightAndSprings,
    /// The latch or lock itself is not modeled.
    LatchNotModelled,
    /// It counts as if what touches on the way were cleared.
    ContactCleared,
    /// The least over-center offset is this program's own, just below those that maintenance manuals of
    /// light airplanes print.
    OverCentreCommonPractice,
}

/// Cautions that belong to an answer.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[serde(rename_all = "snake_case")]
pub enum Caution {
    /// Keep hands and heads out of the arc; jacks locked, tail supported, selector dead.
    MovingLeg,
    /// Hydraulic pressure.
    Pressure,
    /// A trimmed structure needs the maker's approval.
    Trimming,
    /// A larger tire needs the approval of the kit or type maker.
    TireApproval,
    /// A leg that is not locked can fold on the jacks or on the ground.
    Unlocked,
    /// Load on a mount is to be checked by the maker's data.
    MountStrength,
}
