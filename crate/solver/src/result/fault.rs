//! A fault of a model: which part, which number, and what would be valid.
use serde::{Deserialize, Serialize};
use thiserror::Error;

use super::ClearanceError;

/// One fault.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct Fault {
    /// Leg, as index; absent for the gear as a whole.
    pub leg: Option<usize>,
    /// Field in the gear file, as `legs[1].actuator.rod_m`; its key ends in its unit.
    pub path: String,
    /// What is wrong.
    pub kind: FaultKind,
}

/// What is wrong with a field. All numbers are in the field's own SI unit.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[serde(rename_all = "snake_case")]
pub enum FaultKind {
    /// Not a finite number.
    NotFinite,
    /// Outside of what is allowed.
    OutOfRange {
        /// The number.
        value: f64,
        /// Least allowed.
        min: f64,
        /// Largest allowed.
        max: f64,
    },
    /// Must be smaller than another field's number.
    NotBelow {
        /// The number.
        value: f64,
        /// The other field.
        other: String,
        /// Its number.
        limit: f64,
    },
    /// Two joints coincide.
    Coincident {
        /// The other joint's field.
        other: String,
        /// Their distance (m).
        #[serde(rename = "distance_m")]
        distance: f64,
        /// The least distance allowed (m).
        #[serde(rename = "least_m")]
        least: f64,
    },
    /// A part's length at gear down is outside of its end lengths.
    LengthAtDown {
        /// Length at gear down (m).
        #[serde(rename = "length_m")]
        length: f64,
        /// Retracted (m).
        #[serde(rename = "shortest_m")]
        shortest: f64,
        /// Extended (m).
        #[serde(rename = "longest_m")]
        longest: f64,
    },
    /// A gas spring would be shorter or longer than it can be, somewhere on the way.
    LengthOnTheWay {
        /// Its length at the worst place (m).
        #[serde(rename = "length_m")]
        length: f64,
        /// Travel there (ratio).
        travel: f64,
        /// Retracted (m).
        #[serde(rename = "shortest_m")]
        shortest: f64,
        /// Extended (m).
        #[serde(rename = "longest_m")]
        longest: f64,
    },
    /// Both ends of a spring are fixed to one body: it can do nothing.
    SameBody,
    /// The joint of a torsion spring does not exist on this leg.
    NoSuchJoint,
    /// An outline crosses itself.
    SelfCrossing {
        /// First edge, counted from 1.
        edge: usize,
        /// The edge that it crosses.
        other_edge: usize,
    },
    /// An outline with too few points.
    TooFewPoints {
        /// Number of points.
        count: usize,
        /// Needed.
        needed: usize,
    },
    /// An outline with more points than the solver takes.
    TooMany {
        /// Number of points, rows or legs.
        count: usize,
        /// Allowed.
        allowed: usize,
    },
    /// Two neighboring points of an outline coincide.
    RepeatedPoint {
        /// Point, counted from 1.
        point: usize,
    },
    /// A closed outline without area.
    NoArea,
    /// Rows of a table whose travel does not rise.
    NotRising {
        /// Row, counted from 1.
        row: usize,
    },
    /// A leg cannot stand where it is said to stand: the linkage does not come so far.
    NotReached {
        /// Travel to which it comes (ratio).
        reaches: f64,
    },
    /// There is no leg.
    NoLegs,
    /// Actuator or spring is attached to a link of a brace that does not fold.
    NeedsFoldingBrace,
    /// The knee of an over-center brace can never come straight: the leg never reaches that far.
    CannotStraighten {
        /// Both links together (m).
        #[serde(rename = "reach_m")]
        reach: f64,
        /// Largest B0–B1 in the leg's circle (m).
        #[serde(rename = "largest_span_m")]
        largest_span: f64,
    },
    /// On its way to the straight line the knee comes into one line with trunnion and brace attach,
    /// where the leg could turn either way.
    StraightensPastDeadPoint,
    /// The knee stands on the straight line: it is not over center and no side is given.
    KneeOnLine,
    /// Figures that the chosen source needs are not there.
    Missing,
    /// The clearance of the leg could not be certified: never to be read as "clear".
    Unresolved {
        /// What failed, of which part and where.
        error: ClearanceError,
    },
}

/// All faults of a model, at least one.
#[derive(Clone, Debug, PartialEq, Error, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[error("{} fault(s) in the model", .0.len())]
pub struct Faults(pub Vec<Fault>);

impl Faults {
    /// A clearance that could not be certified, as a fault of the leg's well.
    pub(crate) fn unresolved(leg: usize, error: ClearanceError) -> Self {
        Self(vec![Fault {
            leg: Some(leg),
            path: format!("legs[{leg}].well"),
            kind: FaultKind::Unresolved { error },
        }])
    }
}
