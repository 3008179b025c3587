//! Friction of the pins of a leg that moves by itself.
use super::balance::{Balance, Unknown};
use super::friction::{PinLoads, Pinned};
use super::pin_set::PinSet;
use super::warm::Warm;
use super::{BodyLoads, Loads};
use crate::kinematics::{Linkage, Pose};
use crate::model::{Joint, Leg};
use crate::result::Motion;

/// The pins of a leg that moves by itself, at one pose, ready for any speed and thrust.
///
/// They carry what Newton and Euler's equations of all parts ask for: outside loads, the thrust of
/// the actuator, and the inertia of what all of these and the friction leave to accelerate (any text
/// on the dynamics of machinery).
#[derive(Clone, Copy, Debug)]
pub(crate) struct MovingPins<'a> {
    pinned: Pinned<'a>,
    /// Loads of the pins without friction: at rest,
    at_rest: PinLoads,
    /// for one unit of the square of the speed along the common parameter,
    by_speed: PinLoads,
    /// for one newton of thrust,
    by_thrust: PinLoads,
    /// for one pascal of dynamic pressure.
    by_air: PinLoads,
}

/// In which state of its motion the pins of a leg are looked at.
#[derive(Clone, Copy, Debug)]
pub(crate) struct InMotion {
    /// Square of the speed along the common parameter.
    pub(crate) speed_squared: f64,
    /// Thrust (N), positive pushing the actuator's pins apart.
    pub(crate) thrust: f64,
    /// Dynamic pressure (Pa).
    pub(crate) dynamic_pressure: f64,
    /// So many times the friction given (ratio).
    pub(crate) factor: f64,
}

impl<'a> MovingPins<'a> {
    /// Outside loads: in still air, and those of one pascal of dynamic pressure. Then what all parts
    /// resist with: to one unit of acceleration of the common parameter, and at one unit of its speed.
    ///
    /// `None` where nothing resists the acceleration.
    pub(crate) fn new(
        set: &'a PinSet,
        leg: &Leg,
        linkage: &Linkage,
        pose: &Pose,
        [loads, air]: [&Loads; 2],
        [acceleration, speed]: [&Loads; 2],
    ) -> Option<Self> {
        let balance = Balance::new(leg, linkage, pose, Unknown::Acceleration(acceleration))?;
        let solved =
            |loads, thrust| PinLoads::of(&balance.solve(loads, &BodyLoads::default(), thrust));
        Some(Self {
            pinned: Pinned::new(set, leg, linkage, &balance),
            at_rest: solved(loads, 0.0),
            by_speed: solved(speed, 0.0),
            by_thrust: solved(&Loads::default(), 1.0),
            by_air: solved(air, 0.0),
        })
    }

    /// Friction of all pins against the motion [N·m per unit of the common parameter], never below 0.
    ///
    /// # Errors
    /// The pin that binds: see [`super::NoForce`].
    pub(crate) fn friction(
        &self,
        motion: Motion,
        at: &InMotion,
        warm: Option<&mut Warm>,
    ) -> Result<f64, Joint> {
        let mut still = self.at_rest;
        still.add(&self.by_speed, at.speed_squared);
        still.add(&self.by_thrust, at.thrust);
        still.add(&self.by_air, at.dynamic_pressure);
        let power = self.pinned.power_times(at.factor, &still, motion, warm)?;
        Ok(-power)
    }
}
