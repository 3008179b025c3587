//! One pose of a leg and its rates.
use crate::model::{Point, Vector};
use crate::result::Place;

/// Where everything is at one place of the path.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Pose {
    /// Where on the path.
    pub place: Place,
    /// Cosine of the swing [1].
    pub cos: f64,
    /// Sine of the swing [1].
    pub sin: f64,
    /// Shortening of the strut [m].
    pub shortening: f64,
    /// Axle W [m].
    pub axle: Point,
    /// Knee K of a folding brace [m].
    pub knee: Option<Point>,
    /// Brace attach B1 on the leg [m].
    pub brace_attach: Option<Point>,
    /// Actuator attach A1 [m].
    pub actuator_attach: Point,
    /// Actuator length pin to pin [m].
    pub actuator_length: f64,
    /// Rates along the path, towards up.
    pub rates: Rates,
}

impl Pose {
    /// Turns a vector fixed in the leg at gear down into this pose.
    #[must_use]
    pub fn turn(&self, local: Vector) -> Vector {
        Vector::new(
            self.cos * local.x - self.sin * local.y,
            self.sin * local.x + self.cos * local.y,
        )
    }
}

/// Velocities of one pose per unit of a common, unnamed parameter that rises towards up.
///
/// They stay finite at every toggle: only their ratios mean anything, as dℓ/dφ =
/// `actuator / swing`.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Rates {
    /// Leg about the trunnion, dφ [rad].
    pub swing: f64,
    /// Upper link about B0 [rad].
    pub upper: f64,
    /// Lower link [rad].
    pub lower: f64,
    /// Shortening of the strut, dc [m].
    pub slide: f64,
    /// Actuator length, dℓ [m].
    pub actuator: f64,
}
