//! Structure around the retracting leg.
use serde::{Deserialize, Serialize};

use super::Point;

/// A named piece of structure in the plane of the swing.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[serde(deny_unknown_fields)]
pub struct Obstacle {
    /// Name, as "Outboard rib".
    pub name: String,
    /// Its shape.
    pub shape: Shape,
    /// Required clearance here by the user, for every moving part (m); absent = the gear's rule.
    #[serde(
        rename = "required_clearance_m",
        default,
        skip_serializing_if = "Option::is_none"
    )]
    pub required_clearance: Option<f64>,
    /// Moving parts not checked against this obstacle (as the brace on the spar it is bolted to).
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub ignores: Vec<MovingPart>,
}

/// Shape of an obstacle.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[serde(rename_all = "snake_case")]
pub enum Shape {
    /// Closed polygon, solid inside.
    Solid {
        /// Corners in either direction, not repeated at the end (m).
        #[serde(rename = "points_m")]
        #[cfg_attr(feature = "schema", schemars(with = "Vec<[f64; 2]>"))]
        points: Vec<Point>,
    },
    /// Open polyline whose free side is to the left of its direction.
    Surface {
        /// Points in order (m).
        #[serde(rename = "points_m")]
        #[cfg_attr(feature = "schema", schemars(with = "Vec<[f64; 2]>"))]
        points: Vec<Point>,
    },
}

impl Shape {
    /// The corners (m).
    #[must_use]
    pub fn points(&self) -> &[Point] {
        match self {
            Self::Solid { points } | Self::Surface { points } => points,
        }
    }

    /// The corners, to be moved (m).
    pub fn points_mut(&mut self) -> &mut Vec<Point> {
        match self {
            Self::Solid { points } | Self::Surface { points } => points,
        }
    }

    /// Whether the polyline is closed.
    #[must_use]
    pub fn is_closed(&self) -> bool {
        matches!(self, Self::Solid { .. })
    }
}

/// A part that moves in the swing and has an outline.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash, PartialOrd, Ord, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[serde(rename_all = "snake_case")]
pub enum MovingPart {
    /// Wheel with its tire.
    Wheel,
    /// Upper leg.
    LegBody,
    /// What slides with the axle.
    SlidingStrut,
    /// Upper link of a folding brace.
    UpperLink,
    /// Lower link of a folding brace.
    LowerLink,
    /// Arm of a brace link that carries the actuator's attach point off the link's line.
    LinkArm,
    /// Telescoping brace.
    SlidingBrace,
    /// Actuator barrel.
    ActuatorBody,
    /// Actuator rod.
    ActuatorRod,
}
