//! Drag or side brace of a leg.
use serde::{Deserialize, Serialize};

use super::{Point, is_zero};

/// How the leg is braced.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[serde(rename_all = "snake_case")]
pub enum Brace {
    /// No brace: actuator or another lock holds the leg.
    None,
    /// Two links and a knee.
    Folding(FoldingBrace),
    /// Telescoping brace.
    Sliding(SlidingBrace),
}

/// Folding brace: upper link B0–K, lower link K–B1.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[serde(deny_unknown_fields)]
pub struct FoldingBrace {
    /// Airframe pivot B0 of the upper link (m).
    #[serde(rename = "airframe_pivot_m")]
    #[cfg_attr(feature = "schema", schemars(with = "[f64; 2]"))]
    pub airframe_pivot: Point,
    /// Knee K at gear down and locked; it fixes the assembly branch (m).
    #[serde(rename = "knee_m")]
    #[cfg_attr(feature = "schema", schemars(with = "[f64; 2]"))]
    pub knee: Point,
    /// Attach point B1 on the leg (m).
    #[serde(rename = "leg_attach_m")]
    #[cfg_attr(feature = "schema", schemars(with = "[f64; 2]"))]
    pub leg_attach: Point,
    /// Which way the knee folds.
    pub folds: Folds,
    /// What takes the knee back through the straight line.
    #[serde(default)]
    pub unlocked_by: UnlockedBy,
    /// How the place of the knee is told to people; the places stand here either way.
    #[serde(default, skip_serializing_if = "KneeGiven::is_default")]
    pub knee_given: KneeGiven,
    /// How far the leg may swing past down while the knee passes the line, at the axle (m);
    /// absent = no stop is given.
    #[serde(
        rename = "excursion_allowed_m",
        default,
        skip_serializing_if = "Option::is_none"
    )]
    pub excursion_allowed: Option<f64>,
    /// Upper link.
    pub upper: Link,
    /// Lower link.
    pub lower: Link,
}

impl FoldingBrace {
    /// The knee as it is measured: upper link and lower link from pin to pin, and how far the knee stands off the line
    /// of the brace's ends (m), to either side.
    #[must_use]
    pub fn measured(&self) -> [f64; 3] {
        let line = self.leg_attach - self.airframe_pivot;
        let to_knee = self.knee - self.airframe_pivot;
        let length = line.norm();
        let offset = if length > 0.0 {
            (line.perp(&to_knee) / length).abs()
        } else {
            0.0
        };
        [to_knee.norm(), (self.leg_attach - self.knee).norm(), offset]
    }
}

/// How the place of the knee is told.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[serde(rename_all = "snake_case")]
pub enum KneeGiven {
    /// By the places of knee and attach point.
    #[default]
    Points,
    /// As it is measured: both links from pin to pin, and how far the knee stands off the line of the brace's ends.
    Measured,
}

impl KneeGiven {
    fn is_default(&self) -> bool {
        *self == Self::default()
    }
}

/// Which way the knee of a folding brace goes on retraction.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[serde(rename_all = "snake_case")]
pub enum Folds {
    /// Over center when down: it comes back through the straight line and folds to the other side.
    ThroughCentre,
    /// It keeps folding the same way (not over center); another lock holds it.
    SameSide,
}

/// What takes an over-center knee back through the straight line.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[serde(rename_all = "snake_case")]
pub enum UnlockedBy {
    /// The retract actuator itself.
    #[default]
    Actuator,
    /// A separate unlock device (actuator, hook, cable); its force is not worked out. It takes the
    /// knee as far beyond the straight line as it locks before it, and by 1° at least; from there on
    /// the actuator carries the leg.
    Separate,
}

/// One link of a folding brace.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[serde(deny_unknown_fields)]
pub struct Link {
    /// Thickness in the plane of the swing (m); its outline is a bar with round ends.
    #[serde(rename = "thickness_m")]
    pub thickness: f64,
    /// Mass, half at each pin (kg).
    #[serde(rename = "mass_kg", default, skip_serializing_if = "is_zero")]
    pub mass: f64,
}

/// Telescoping brace B0–B1, latched at gear down.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[serde(deny_unknown_fields)]
pub struct SlidingBrace {
    /// Airframe pivot B0 (m).
    #[serde(rename = "airframe_pivot_m")]
    #[cfg_attr(feature = "schema", schemars(with = "[f64; 2]"))]
    pub airframe_pivot: Point,
    /// Attach point B1 on the leg (m).
    #[serde(rename = "leg_attach_m")]
    #[cfg_attr(feature = "schema", schemars(with = "[f64; 2]"))]
    pub leg_attach: Point,
    /// Retracted length, pin to pin (m).
    #[serde(rename = "shortest_m")]
    pub shortest: f64,
    /// Extended length, pin to pin (m).
    #[serde(rename = "longest_m")]
    pub longest: f64,
    /// Thickness in the plane of the swing (m).
    #[serde(rename = "thickness_m")]
    pub thickness: f64,
    /// Mass, half at each pin (kg).
    #[serde(rename = "mass_kg", default, skip_serializing_if = "is_zero")]
    pub mass: f64,
}
