//! One row of the stations table: where everything is and what it takes, at one place of the path.
use serde::{Deserialize, Serialize};

use super::Motion;
use crate::model::{Joint, Point, Vector};

/// Part of the way from down and locked to up.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[serde(rename_all = "snake_case")]
pub enum Phase {
    /// The strut shortens, the leg stands still.
    Shorten,
    /// The knee comes back through the straight line.
    Unlock,
    /// The leg swings.
    Swing,
}

/// Where everything is at one place of the path.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct Station {
    /// Part of the path.
    pub phase: Phase,
    /// Place on the path (ratio): the swing runs 0 … 1, earlier phases lie below 0, one unit each.
    pub progress: f64,
    /// Swing φ from down and locked, counter-clockwise positive (rad).
    #[serde(rename = "swing_rad")]
    pub swing: f64,
    /// Travel τ = φ/φ_up (ratio); a little below 0 while an over-center knee passes the line.
    pub travel: f64,
    /// Shortening of the strut (m).
    #[serde(rename = "shortening_m")]
    pub shortening: f64,
    /// Axle W (m).
    #[serde(rename = "axle_m")]
    #[cfg_attr(feature = "schema", schemars(with = "[f64; 2]"))]
    pub axle: Point,
    /// Knee K of a folding brace (m).
    #[serde(rename = "knee_m")]
    #[cfg_attr(feature = "schema", schemars(with = "Option<[f64; 2]>"))]
    pub knee: Option<Point>,
    /// Brace attach B1 on the leg (m).
    #[serde(rename = "brace_attach_m")]
    #[cfg_attr(feature = "schema", schemars(with = "Option<[f64; 2]>"))]
    pub brace_attach: Option<Point>,
    /// Actuator attach A1 (m).
    #[serde(rename = "actuator_attach_m")]
    #[cfg_attr(feature = "schema", schemars(with = "[f64; 2]"))]
    pub actuator_attach: Point,
    /// Actuator length pin to pin (m).
    #[serde(rename = "actuator_length_m")]
    pub actuator_length: f64,
    /// dℓ/dφ, the moment arm of the actuator on the leg (m/rad): positive when the actuator
    /// lengthens counter-clockwise; absent at a dead point of the leg.
    #[serde(rename = "moment_arm_m")]
    pub moment_arm: Option<f64>,
    /// Angle at the knee away from the straight line, 0 straight (rad); negative on the lock side.
    #[serde(rename = "fold_rad")]
    pub fold: Option<f64>,
    /// Transmission angle at the knee between the two links, 0 … π/2 (rad); 0 is a toggle.
    #[serde(rename = "transmission_rad")]
    pub transmission: Option<f64>,
    /// Force and pressure; absent where no finite actuator force moves the leg (dead point, pins that
    /// bind), where a separate device moves the knee, and while the strut shortens.
    pub force: Option<StationForce>,
}

/// Actuator force, pressures and reactions at one place. Where a motion begins, from down up and from up
/// down, its friction is that of seals and pins that have stood.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct StationForce {
    /// Actuator force that holds the leg still without friction (N): positive pushes the pins
    /// apart.
    #[serde(rename = "holding_n")]
    pub holding: f64,
    /// Actuator force that fluid or motor must make to retract, pin and seal friction included (N): positive in
    /// the retracting direction of the stroke.
    #[serde(rename = "retract_effort_n")]
    pub retract_effort: Option<f64>,
    /// Actuator force that fluid or motor must make to extend, pin and seal friction included (N): positive in the
    /// extending direction of the stroke; negative: the leg falls against the fluid.
    #[serde(rename = "extend_effort_n")]
    pub extend_effort: Option<f64>,
    /// Gauge pressure needed to retract, against the back pressure (Pa); with an electric drive the force that it
    /// must make (N); never below 0.
    #[serde(rename = "retract_pressure_pa")]
    pub retract_pressure: Option<f64>,
    /// Gauge pressure needed to extend, against the back pressure (Pa); with an electric drive the force that it
    /// must make (N); never below 0.
    #[serde(rename = "extend_pressure_pa")]
    pub extend_pressure: Option<f64>,
    /// Joint and mount forces while the leg is held still, without friction.
    pub reactions: Reactions,
    /// Joint and mount forces while it retracts, with pin friction.
    pub retract_reactions: Option<Reactions>,
    /// Joint and mount forces while it extends, with pin friction.
    pub extend_reactions: Option<Reactions>,
    /// Pin that binds while it retracts: actuator force, pressure and reactions of that motion are absent.
    pub retract_binds: Option<Joint>,
    /// Pin that binds while it extends.
    pub extend_binds: Option<Joint>,
}

impl StationForce {
    /// Joint and mount forces in one motion; `None` where it binds.
    #[must_use]
    pub fn reactions_in(&self, motion: Motion) -> Option<&Reactions> {
        match motion {
            Motion::Retract => self.retract_reactions.as_ref(),
            Motion::Extend => self.extend_reactions.as_ref(),
        }
    }

    /// Pressure (Pa) and effort (N) in one motion; `None` where it binds.
    #[must_use]
    pub fn needed(&self, motion: Motion) -> Option<(f64, f64)> {
        match motion {
            Motion::Retract => self.retract_pressure.zip(self.retract_effort),
            Motion::Extend => self.extend_pressure.zip(self.extend_effort),
        }
    }
}

/// Forces in the joints (N); each acts on the part named second.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct Reactions {
    /// Airframe on leg at the trunnion (N).
    #[serde(rename = "trunnion_n")]
    #[cfg_attr(feature = "schema", schemars(with = "[f64; 2]"))]
    pub trunnion: Vector,
    /// Airframe on upper link (or telescoping brace) at B0 (N).
    #[serde(rename = "brace_pivot_n")]
    #[cfg_attr(feature = "schema", schemars(with = "Option<[f64; 2]>"))]
    pub brace_pivot: Option<Vector>,
    /// Upper link on lower link at the knee (N).
    #[serde(rename = "knee_n")]
    #[cfg_attr(feature = "schema", schemars(with = "Option<[f64; 2]>"))]
    pub knee: Option<Vector>,
    /// Brace on leg at B1 (N).
    #[serde(rename = "brace_attach_n")]
    #[cfg_attr(feature = "schema", schemars(with = "Option<[f64; 2]>"))]
    pub brace_attach: Option<Vector>,
    /// Airframe on actuator at A0 (N).
    #[serde(rename = "mount_n")]
    #[cfg_attr(feature = "schema", schemars(with = "[f64; 2]"))]
    pub mount: Vector,
    /// Actuator on the part that it drives, at A1 (N).
    #[serde(rename = "actuator_attach_n")]
    #[cfg_attr(feature = "schema", schemars(with = "[f64; 2]"))]
    pub actuator_attach: Vector,
}
