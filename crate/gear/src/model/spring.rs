//! Springs: linear, gas and torsion.
use serde::{Deserialize, Serialize};

use super::Point;

/// A spring on the leg.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[serde(deny_unknown_fields)]
pub struct Spring {
    /// Name, as "Down-lock spring".
    pub name: String,
    /// What it is and where it acts.
    pub kind: SpringKind,
}

/// Kind of a spring.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[serde(rename_all = "snake_case")]
pub enum SpringKind {
    /// Coil spring or cord between two points: force in proportion to its stretch.
    Linear(LinearSpring),
    /// Gas spring between two points: it only pushes.
    Gas(GasSpring),
    /// Coil about a joint: moment in proportion to the turn.
    Torsion(TorsionSpring),
}

/// A body to which a spring is fixed.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[serde(rename_all = "snake_case")]
pub enum Body {
    /// Airframe.
    Airframe,
    /// Upper leg.
    Leg,
    /// What slides with the axle.
    SlidingStrut,
    /// Upper link of a folding brace.
    UpperLink,
    /// Lower link of a folding brace.
    LowerLink,
}

/// One end of a spring.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[serde(deny_unknown_fields)]
pub struct SpringEnd {
    /// Body that carries it.
    pub body: Body,
    /// Where, at gear down (m).
    #[serde(rename = "point_m")]
    #[cfg_attr(feature = "schema", schemars(with = "[f64; 2]"))]
    pub point: Point,
}

/// Linear spring (Hooke): pull = rate × (length − free length).
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[serde(deny_unknown_fields)]
pub struct LinearSpring {
    /// One end.
    pub first: SpringEnd,
    /// The other end.
    pub second: SpringEnd,
    /// Rate (N/m).
    #[serde(rename = "rate_n_m")]
    pub rate: f64,
    /// What fixes its force at gear down.
    pub set: SpringSet,
    /// Whether it pulls, pushes or both.
    #[serde(default, skip_serializing_if = "Acts::is_both")]
    pub acts: Acts,
}

/// What fixes the force of a linear spring.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[serde(rename_all = "snake_case")]
pub enum SpringSet {
    /// Its length without load.
    FreeLength {
        /// Free length, end to end (m).
        #[serde(rename = "length_m")]
        length: f64,
    },
    /// Its force at gear down.
    ForceAtDown {
        /// Force, pull positive (N).
        #[serde(rename = "force_n")]
        force: f64,
    },
}

/// In which directions a linear spring acts.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[serde(rename_all = "snake_case")]
pub enum Acts {
    /// It pulls and pushes.
    #[default]
    Both,
    /// It only pulls: slack below its free length (hooked coil, cord).
    Pulls,
    /// It only pushes: loose above its free length (coil between seats).
    Pushes,
}

impl Acts {
    fn is_both(&self) -> bool {
        matches!(self, Self::Both)
    }
}

/// Gas spring: its push at both ends of its stroke and the law between them.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[serde(deny_unknown_fields)]
pub struct GasSpring {
    /// One end.
    pub first: SpringEnd,
    /// The other end.
    pub second: SpringEnd,
    /// Compressed length, end to end (m).
    #[serde(rename = "shortest_m")]
    pub shortest: f64,
    /// Extended length, end to end (m).
    #[serde(rename = "longest_m")]
    pub longest: f64,
    /// Push at its extended length (N).
    #[serde(rename = "force_longest_n")]
    pub force_longest: f64,
    /// Push at its compressed length (N), not below that at the extended length.
    #[serde(rename = "force_shortest_n")]
    pub force_shortest: f64,
    /// Law between the ends.
    #[serde(default, skip_serializing_if = "GasLaw::is_linear")]
    pub law: GasLaw,
}

/// How the push of a gas spring goes from end to end.
#[derive(Clone, Copy, Debug, Default, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[serde(rename_all = "snake_case")]
pub enum GasLaw {
    /// A straight line.
    #[default]
    Linear,
    /// p·Vⁿ constant.
    Polytropic {
        /// Exponent n (ratio): 1 for slow, 1.4 for fast movement of air or nitrogen.
        exponent: f64,
    },
}

impl GasLaw {
    fn is_linear(&self) -> bool {
        matches!(self, Self::Linear)
    }
}

/// Torsion spring at a joint: moment = moment at down − rate × turn since down.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[serde(deny_unknown_fields)]
pub struct TorsionSpring {
    /// Joint.
    pub joint: SpringJoint,
    /// Rate (N·m/rad).
    #[serde(rename = "rate_n_m_rad")]
    pub rate: f64,
    /// Moment at gear down, counter-clockwise positive (N·m), on the part that
    /// [`SpringJoint`] names first.
    #[serde(rename = "moment_at_down_n_m")]
    pub moment_at_down: f64,
}

/// Joint of a torsion spring.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[serde(rename_all = "snake_case")]
pub enum SpringJoint {
    /// Leg against the airframe.
    Trunnion,
    /// Upper link or telescoping brace against the airframe.
    BracePivot,
    /// Lower link against the upper link.
    Knee,
    /// Lower link or telescoping brace against the leg.
    LegAttach,
}
