//! Clearances: signed distances, positive free, negative the depth of contact.
use std::cmp::Ordering;

use serde::{Deserialize, Serialize};

use super::Place;
use crate::model::{MovingPart, Point};

/// Size of the tire for which a clearance holds.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize)]
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
    /// The tire against its own leg, brace and actuator: one row for each part that is checked, new
    /// before grown.
    pub own: Vec<OwnClearance>,
    /// Parts of the leg against which the tire is not checked, and why.
    pub own_not_checked: Vec<OwnNotChecked>,
    /// Room along the trunnion axis.
    pub room: Room,
    /// What skews of trunnion and wheel take off the clearances of the wheel.
    pub skew: SkewLosses,
    /// Clearance of the wheel to each obstacle over the path, for the screen.
    pub curves: Vec<ClearanceCurve>,
    /// Outline swept by the grown wheel, as polylines to draw (m).
    #[serde(skip)]
    pub wheel_envelope: Vec<Vec<Point>>,
    /// Outline swept by the other parts of the leg, as polylines to draw (m).
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
    /// Bound on the error of `tightest.clearance` (m): the true minimum is not lower by more.
    #[serde(rename = "certified_to_m")]
    pub certified_to: f64,
    /// What the skews given have taken off `tightest.clearance` (m); 0 for all but the wheel.
    #[serde(rename = "less_for_skew_m")]
    pub less_for_skew: f64,
    /// What is required.
    pub requirement: Requirement,
    /// First contact on the way up; absent when it clears.
    pub first_contact: Option<Contact>,
}

/// Order in which clearances govern, each with its spare (m): contact before what clears; the deepest contact,
/// and what has the least spare of the others, first.
#[must_use]
pub fn governing_order(a: (f64, f64), b: (f64, f64)) -> Ordering {
    let key = |(clearance, spare): (f64, f64)| {
        let clears = clearance > 0.0;
        (clears, if clears { spare } else { clearance })
    };
    let (a, b) = (key(a), key(b));
    a.0.cmp(&b.0).then(a.1.total_cmp(&b.1))
}

impl Clearance {
    /// Whether anything touches on the way: the well, the tire its own leg, or what stands along the
    /// trunnion.
    #[must_use]
    pub fn touches(&self) -> bool {
        self.pairs.iter().any(|pair| pair.first_contact.is_some())
            || self.own.iter().any(|own| own.first_contact.is_some())
            || self.room.rows.iter().any(|room| room.clearance <= 0.0)
    }
}

impl PairClearance {
    /// Clearance less requirement (m); negative = too little.
    #[must_use]
    pub fn spare(&self) -> f64 {
        self.tightest.clearance - self.requirement.clearance
    }
}

/// Clearance of the tire to one part of its own leg over the whole path.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct OwnClearance {
    /// Part of the leg, its brace or actuator.
    pub part: MovingPart,
    /// Tire size.
    pub tire: TireState,
    /// The least clearance on the path; `on_part_m` is on the tire, `on_obstacle_m` on the part.
    pub tightest: Tightest,
    /// Bound on the error of `tightest.clearance` (m): the true minimum is not lower by more.
    #[serde(rename = "certified_to_m")]
    pub certified_to: f64,
    /// What the skew of the wheel has taken off `tightest.clearance` (m).
    #[serde(rename = "less_for_skew_m")]
    pub less_for_skew: f64,
    /// What is required.
    pub requirement: Requirement,
    /// First contact on the way up; absent when it clears.
    pub first_contact: Option<Contact>,
}

impl OwnClearance {
    /// Clearance less requirement (m); negative = too little.
    #[must_use]
    pub fn spare(&self) -> f64 {
        self.tightest.clearance - self.requirement.clearance
    }
}

/// A part of the leg against which the tire is not checked.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct OwnNotChecked {
    /// The part.
    pub part: MovingPart,
    /// Why.
    pub why: NotChecked,
}

/// Why a tire is not checked against a part of its own leg.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[serde(rename_all = "snake_case")]
pub enum NotChecked {
    /// In a side view it stands beside the wheel.
    BesideWheel,
    /// The file leaves it out.
    LeftOut,
    /// It has no outline.
    NoOutline,
    /// Whether it touches could not be resolved: the answer is then no plain Yes.
    Unresolved,
}

/// Room along the trunnion axis.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct Room {
    /// How far the new tire reaches along the trunnion from its middle, as drawn (m).
    #[serde(rename = "reach_new_m")]
    pub reach_new: f64,
    /// The same for the grown tire (m).
    #[serde(rename = "reach_grown_m")]
    pub reach_grown: f64,
    /// One row for each room that is given, near before far, new before grown.
    pub rows: Vec<RoomClearance>,
}

/// Clearance of the tire along the trunnion axis, on one side.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct RoomClearance {
    /// Side.
    pub side: RoomSide,
    /// Tire size.
    pub tire: TireState,
    /// Room given, from the middle of the tire (m).
    #[serde(rename = "room_m")]
    pub room: f64,
    /// Clearance left (m); negative = interference.
    #[serde(rename = "clearance_m")]
    pub clearance: f64,
    /// What the skews given have taken off it (m).
    #[serde(rename = "less_for_skew_m")]
    pub less_for_skew: f64,
    /// What is required.
    pub requirement: Requirement,
}

impl RoomClearance {
    /// Clearance less requirement (m); negative = too little.
    #[must_use]
    pub fn spare(&self) -> f64 {
        self.clearance - self.requirement.clearance
    }
}

/// Side of the drawn plane.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[serde(rename_all = "snake_case")]
pub enum RoomSide {
    /// The viewer's: ahead in a front view, left in a side view.
    Near,
    /// The other: behind in a front view, right in a side view.
    Far,
}

/// What skews of trunnion and wheel take off the clearances of the wheel.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct SkewLosses {
    /// Skew of the trunnion given (rad); absent = not measured.
    #[serde(rename = "trunnion_rad")]
    pub trunnion: Option<f64>,
    /// Skew of the wheel given (rad); absent = not measured.
    #[serde(rename = "wheel_rad")]
    pub wheel: Option<f64>,
    /// Taken off for the new tire.
    pub new: SkewLoss,
    /// Taken off for the grown tire.
    pub grown: SkewLoss,
    /// What a skew of 3° that is not measured would take off the grown tire beyond that: of the
    /// trunnion, or of the wheel where the trunnion's is given; absent where both are given.
    pub told: Option<SkewLoss>,
}

/// The most that skews take off clearances of the wheel.
#[derive(Clone, Copy, Debug, Default, PartialEq, Serialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct SkewLoss {
    /// Off those to the well (m).
    #[serde(rename = "to_well_m")]
    pub to_well: f64,
    /// Off the room along the trunnion (m).
    #[serde(rename = "along_trunnion_m")]
    pub along_trunnion: f64,
    /// Off those to the wheel's own leg (m).
    #[serde(rename = "to_own_leg_m")]
    pub to_own_leg: f64,
}

/// The tightest place of a pair.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct Tightest {
    /// Signed clearance (m); negative = interference.
    #[serde(rename = "clearance_m")]
    pub clearance: f64,
    /// Where on the path.
    pub place: Place,
    /// Nearest (or deepest) point of the moving part (m).
    #[serde(rename = "on_part_m")]
    #[cfg_attr(feature = "schema", schemars(with = "[f64; 2]"))]
    pub on_part: Point,
    /// Nearest point of the obstacle (m).
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
    /// Width of the bracket: contact begins within this much swing after `place` (rad).
    #[serde(rename = "bracket_rad")]
    pub bracket: f64,
    /// Where it touches (m).
    #[serde(rename = "point_m")]
    #[cfg_attr(feature = "schema", schemars(with = "[f64; 2]"))]
    pub point: Point,
}

/// Required clearance.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct Requirement {
    /// Required clearance (m).
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
    /// Place on the path (ratio).
    pub progress: f64,
    /// Travel (ratio).
    pub travel: f64,
    /// Signed clearance (m); where the part is farther than the curve's reach this is a lower
    /// bound and `beyond` is set.
    #[serde(rename = "clearance_m")]
    pub clearance: f64,
    /// The clearance is at least this much, not worked out further.
    pub beyond: bool,
}
