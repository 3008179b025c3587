//! The result of one leg.
use std::sync::Arc;

use serde::{Deserialize, Serialize};

use super::{Clearance, Fall, Finding, Force, Lock, Phase, Station, WayDown};
use crate::model::{Point, View};

/// Everything the solver says of one leg.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct LegResult {
    /// Name of the leg.
    pub name: String,
    /// Plane of its swing.
    pub view: View,
    /// Swing from down to up (rad).
    #[serde(rename = "swing_up_rad")]
    pub swing_up: f64,
    /// The three answers, in the order clears, driven, locks.
    pub findings: Vec<Finding>,
    /// Why the leg stops before up, all causes, the first to bite first; empty = it comes up.
    pub jams: Vec<Jam>,
    /// Passing the straight line out of an over-center lock.
    pub excursion: Option<Excursion>,
    /// Toggles and dead points on the way.
    pub events: Vec<MechanismEvent>,
    /// Clearances.
    pub clearance: Clearance,
    /// Actuator force and pressure.
    pub force: Force,
    /// Down lock.
    pub lock: Lock,
    /// Fall without pressure from up to the lock; absent when the leg does not come up.
    pub fall: Option<Fall>,
    /// The way down without the normal power; absent when the leg does not come up.
    pub way_down: Option<WayDown>,
    /// The path from down and locked to up, or to the first jam. Two stations more stand beside each
    /// row of a table of shortening, where the load jumps.
    pub stations: Arc<Vec<Station>>,
}

/// A place of the path, to which an answer points.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct Place {
    /// Part of the path.
    pub phase: Phase,
    /// Place on the path, as in [`Station::progress`] (ratio).
    pub progress: f64,
    /// Travel (ratio).
    pub travel: f64,
    /// Swing (rad).
    #[serde(rename = "swing_rad")]
    pub swing: f64,
}

/// The leg cannot go on: something cannot close or reaches its end.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct Jam {
    /// Where it stops.
    pub place: Place,
    /// Why.
    pub cause: JamCause,
}

/// Why a leg stops.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[serde(rename_all = "snake_case")]
pub enum JamCause {
    /// The two brace links stretched out are too short: B0–B1 would be longer than both together.
    BraceTooShort {
        /// Both links together (m).
        #[serde(rename = "reach_m")]
        reach: f64,
        /// Largest B0–B1 that the rest of the swing needs (m).
        #[serde(rename = "span_m")]
        span: f64,
    },
    /// The folded brace is too long: B0–B1 would be shorter than the difference of its links.
    BraceTooLong {
        /// Difference of the links (m).
        #[serde(rename = "least_m")]
        least: f64,
        /// Smallest B0–B1 that the rest of the swing needs (m).
        #[serde(rename = "span_m")]
        span: f64,
    },
    /// Telescoping brace would be longer than its extended length.
    SlidingBraceEndsLong {
        /// Extended length (m).
        #[serde(rename = "longest_m")]
        longest: f64,
        /// Longest that the swing needs (m).
        #[serde(rename = "asked_m")]
        asked: f64,
    },
    /// Telescoping brace would be shorter than its retracted length.
    SlidingBraceEndsShort {
        /// Retracted length (m).
        #[serde(rename = "shortest_m")]
        shortest: f64,
        /// Shortest that the swing needs (m).
        #[serde(rename = "asked_m")]
        asked: f64,
    },
    /// Actuator would be longer than its extended length.
    ActuatorEndsLong {
        /// Extended length (m).
        #[serde(rename = "longest_m")]
        longest: f64,
        /// Longest that the swing needs (m).
        #[serde(rename = "asked_m")]
        asked: f64,
    },
    /// Actuator would be shorter than its retracted length.
    ActuatorEndsShort {
        /// Retracted length (m).
        #[serde(rename = "shortest_m")]
        shortest: f64,
        /// Shortest that the swing needs (m).
        #[serde(rename = "asked_m")]
        asked: f64,
    },
}

impl JamCause {
    /// By how much the part misses (m), always positive.
    #[must_use]
    pub fn miss(&self) -> f64 {
        match *self {
            Self::BraceTooShort { reach, span } => span - reach,
            Self::BraceTooLong { least, span } => least - span,
            Self::SlidingBraceEndsLong { longest, asked }
            | Self::ActuatorEndsLong { longest, asked } => asked - longest,
            Self::SlidingBraceEndsShort { shortest, asked }
            | Self::ActuatorEndsShort { shortest, asked } => shortest - asked,
        }
    }
}

/// How far the leg moves past down while an over-center knee passes the straight line.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct Excursion {
    /// Swing at the straight pose, signed as φ (rad).
    #[serde(rename = "swing_rad")]
    pub swing: f64,
    /// Path of the axle (m).
    #[serde(rename = "at_axle_m")]
    pub at_axle: f64,
    /// What the user says a stop allows (m).
    #[serde(rename = "allowed_m")]
    pub allowed: Option<f64>,
}

/// A place where the mechanism has a singular pose.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct MechanismEvent {
    /// Where.
    pub place: Place,
    /// What.
    pub kind: MechanismEventKind,
    /// A point to mark in the drawing (m).
    #[serde(rename = "point_m")]
    #[cfg_attr(feature = "schema", schemars(with = "[f64; 2]"))]
    pub point: Point,
}

/// Kind of a singular pose.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[serde(rename_all = "snake_case")]
pub enum MechanismEventKind {
    /// The brace links stand in one straight line, stretched out.
    KneeStraight,
    /// The brace links lie on each other.
    KneeFolded,
    /// The actuator has no arm: its length turns back, no actuator force moves the leg.
    ActuatorDeadPoint,
}
