//! Clearances: signed distances, positive free, negative the depth of contact.
use serde::Serialize;

use super::Place;
use crate::model::{MovingPart, Point};

/// Size of the tire for which a clearance holds.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[serde(rename_all = "snake_case")]
pub enum TireState {
    /// As fitted new.
    New,
    /// Largest in service.
    Grown,
}

/// Clearances of one leg.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct Clearance {
    /// One row for each obstacle and moving part (the wheel twice: new and grown), in the order of
    /// the well, then of [`MovingPart`], new before grown. Ignored pairs have no row.
    pub pairs: Vec<PairClearance>,
    /// Row of the deepest contact; without contact, of the least spare (clearance less
    /// requirement); absent when nothing is checked.
    pub governing: Option<usize>,
    /// Clearance of the wheel to each obstacle over the path, for the screen.
    pub curves: Vec<ClearanceCurve>,
    /// Outline swept by the grown wheel, as polylines to draw [m].
    #[serde(skip)]
    pub wheel_envelope: Vec<Vec<Point>>,
    /// Outline swept by the other parts of the leg, as polylines to draw [m].
    #[serde(skip)]
    pub leg_envelope: Vec<Vec<Point>>,
}

/// Clearance of one moving part to one obstacle over the whole path.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct PairClearance {
    /// Obstacle, as index into the leg's well.
    pub obstacle: usize,
    /// Its name.
    pub obstacle_name: String,
    /// Moving part.
    pub part: MovingPart,
    /// Tire size, for the wheel only.
    pub tire: Option<TireState>,
    /// The least clearance on the path.
    pub tightest: Tightest,
    /// Bound on the error of `tightest.clearance` [m]: the true minimum is not lower by more.
    #[serde(rename = "certified_to_m")]
    pub certified_to: f64,
    /// What is required.
    pub requirement: Requirement,
    /// First contact on the way up; absent when it clears.
    pub first_contact: Option<Contact>,
}

impl PairClearance {
    /// Clearance less requirement [m]; negative = too little.
    #[must_use]
    pub fn spare(&self) -> f64 {
        self.tightest.clearance - self.requirement.clearance
    }
}

/// The tightest place of a pair.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct Tightest {
    /// Signed clearance [m]; negative = interference.
    #[serde(rename = "clearance_m")]
    pub clearance: f64,
    /// Where on the path.
    pub place: Place,
    /// Nearest (or deepest) point of the moving part [m].
    #[serde(rename = "on_part_m")]
    #[cfg_attr(feature = "schema", schemars(with = "[f64; 2]"))]
    pub on_part: Point,
    /// Nearest point of the obstacle [m].
    #[serde(rename = "on_obstacle_m")]
    #[cfg_attr(feature = "schema", schemars(with = "[f64; 2]"))]
    pub on_obstacle: Point,
}

/// First contact of a pair on the way up.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct Contact {
    /// Last place known to be free.
    pub place: Place,
    /// Width of the bracket: contact begins within this much swing after `place` [rad].
    #[serde(rename = "bracket_rad")]
    pub bracket: f64,
    /// Where it touches [m].
    #[serde(rename = "point_m")]
    #[cfg_attr(feature = "schema", schemars(with = "[f64; 2]"))]
    pub point: Point,
}

/// Required clearance.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct Requirement {
    /// Required clearance [m].
    #[serde(rename = "clearance_m")]
    pub clearance: f64,
    /// Whose figure it is.
    pub basis: RequirementBasis,
}

/// Whose clearance figure governs.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[serde(rename_all = "snake_case")]
pub enum RequirementBasis {
    /// The user's figure for this obstacle.
    Obstacle,
    /// The user's figure for the whole gear.
    Gear,
    /// The built-in default, common practice.
    CommonPractice,
}

/// Clearance to one obstacle over the path, for drawing.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct ClearanceCurve {
    /// Obstacle, as index into the leg's well.
    pub obstacle: usize,
    /// Tire size; absent = the nearest of the other moving parts.
    pub tire: Option<TireState>,
    /// Points in path order, the minimum among them.
    pub points: Vec<CurvePoint>,
}

/// One point of a clearance curve.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct CurvePoint {
    /// Place on the path [1].
    pub progress: f64,
    /// Travel [1].
    pub travel: f64,
    /// Signed clearance [m]; where the part is farther than the curve's reach this is a lower
    /// bound and `beyond` is set.
    #[serde(rename = "clearance_m")]
    pub clearance: f64,
    /// The clearance is at least this much, not worked out further.
    pub beyond: bool,
}
