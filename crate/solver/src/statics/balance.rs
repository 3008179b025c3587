//! Equilibrium of every body on its own: linear, one unknown drive, all reactions.
use nalgebra::{Matrix3, Vector3};

use super::friction::PinLoads;
use super::gathered::{Amounts, Bodies, Gathered};
use super::{BodyLoads, Loads};
use crate::kinematics::{Linkage, Pose};
use crate::model::{Leg, Vector};
use crate::result::Reactions;

/// What keeps the balance and is worked out with the reactions.
#[derive(Clone, Copy, Debug)]
pub(crate) enum Unknown<'a> {
    /// The thrust of the actuator (N).
    Thrust,
    /// The acceleration of the common parameter, the thrust being given: these are the forces with
    /// which all parts resist one of it.
    Acceleration(&'a Loads),
}

/// Solution of the free bodies.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct FreeBodies {
    /// Actuator thrust that holds the leg (N): positive pushes the pins apart.
    pub thrust: f64,
    /// Joint forces.
    pub reactions: Reactions,
}

/// The balance of one pose, ready for any loads.
#[derive(Clone, Copy, Debug)]
pub(crate) struct Balance<'a> {
    bodies: Bodies<'a>,
    /// What one of the unknown does.
    unit: Gathered,
    thrust_is_given: bool,
    solver: Solver,
}

#[derive(Clone, Copy, Debug)]
enum Solver {
    Folding { columns: [Vector3<f64>; 3] },
    Single { arm: f64 },
}

impl<'a> Balance<'a> {
    /// `None` at a dead point, where no finite drive holds the leg.
    pub(crate) fn new(
        leg: &'a Leg,
        linkage: &Linkage,
        pose: &'a Pose,
        unknown: Unknown,
    ) -> Option<Self> {
        let mut balance = Self {
            bodies: Bodies::new(leg, linkage, pose),
            unit: Gathered::default(),
            thrust_is_given: false,
            solver: Solver::Single { arm: 0.0 },
        };
        let bodies = &balance.bodies;
        match unknown {
            Unknown::Thrust => bodies.pass_on(&mut balance.unit, 1.0),
            Unknown::Acceleration(inertia) => {
                balance.unit = bodies.gather(inertia, &BodyLoads::default(), 0.0);
                balance.thrust_is_given = true;
            }
        }
        let [on_upper, on_lower, on_leg] = balance.unit.moments;
        balance.solver = match bodies.links {
            Some([upper, lower]) => {
                let arm = bodies.attach;
                // rows: upper about B0 (knee force reversed), lower about B1, leg about P
                let matrix = Matrix3::new(
                    upper.y, -upper.x, on_upper, -lower.y, lower.x, on_lower, -arm.y, arm.x, on_leg,
                );
                Solver::Folding {
                    columns: inverse_columns(&matrix)?,
                }
            }
            None => {
                if on_leg == 0.0 {
                    return None;
                }
                Solver::Single { arm: on_leg }
            }
        };
        Some(balance)
    }

    pub(crate) fn pose(&self) -> &'a Pose {
        self.bodies.pose
    }

    /// Solves for these loads and further ones; `thrust` (N) is the given thrust where it is not the
    /// unknown.
    pub(crate) fn solve(&self, loads: &Loads, more: &BodyLoads, thrust: f64) -> FreeBodies {
        let given = if self.thrust_is_given { thrust } else { 0.0 };
        let mut pins = PinLoads::default();
        let mut on = self.bodies.gather(loads, more, given);
        self.solved(&mut on, given, &mut pins);
        FreeBodies {
            thrust: pins.thrust,
            reactions: pins.reactions(&self.bodies.leg.brace),
        }
    }

    /// Solves for forces and couples on the bodies alone, and no thrust.
    pub(super) fn solve_on(&self, bodies: &BodyLoads) -> PinLoads {
        let mut pins = PinLoads::default();
        self.put_on(bodies, &mut pins);
        pins
    }

    /// As [`Self::solve_on`], into loads that stand elsewhere.
    pub(super) fn put_on(&self, bodies: &BodyLoads, pins: &mut PinLoads) {
        self.solved(&mut self.bodies.gather_on(bodies), 0.0, pins);
    }

    /// Solves for an even pull on these amounts, and no thrust.
    pub(super) fn put_even(&self, of: &Amounts, pull: Vector, pins: &mut PinLoads) {
        self.solved(&mut self.bodies.gather_even(of, pull), 0.0, pins);
    }

    /// Solves for loads gathered on the bodies, to which what the unknown does is added.
    fn solved(&self, on: &mut Gathered, given: f64, pins: &mut PinLoads) {
        let [upper, lower, leg] = on.moments;
        let (knee, drive) = match &self.solver {
            Solver::Folding { columns: [x, y, z] } => {
                let found = -(x * upper + y * lower + z * leg);
                (found.xy(), found.z)
            }
            Solver::Single { arm } => (Vector::zeros(), -leg / arm),
        };
        on.add_forces(&self.unit, drive);
        let carries = self.bodies.carries;
        // the upper link's place is that of a telescopic brace
        let brace = knee + on.brace_end;
        let attach = brace + on.lower + on.push * carries.lower;
        pins.loads = [
            -(on.leg + attach + on.push * carries.leg),
            brace - on.upper - on.push * carries.upper,
            knee,
            attach,
            on.push - on.actuator,
            on.push,
        ];
        pins.thrust = if self.thrust_is_given { given } else { drive };
    }
}

/// Solves the free bodies at one pose, without friction. `None` at a dead point, where no finite
/// thrust holds the leg.
///
/// Unknown are the force at the knee and the thrust; the moment equations of upper link about B0,
/// lower link about B1 and leg about P give them, force balances give the rest.
#[must_use]
pub fn free_bodies(leg: &Leg, linkage: &Linkage, pose: &Pose, loads: &Loads) -> Option<FreeBodies> {
    let balance = Balance::new(leg, linkage, pose, Unknown::Thrust)?;
    Some(balance.solve(loads, &BodyLoads::default(), 0.0))
}

/// Columns of the inverse (Cramer's rule with scaled rows); `None` where the determinant vanishes
/// against its rows.
fn inverse_columns(matrix: &Matrix3<f64>) -> Option<[Vector3<f64>; 3]> {
    let [a, b, c]: [Vector3<f64>; 3] = [0, 1, 2].map(|row| matrix.row(row).transpose());
    let (bc, ca, ab) = (b.cross(&c), c.cross(&a), a.cross(&b));
    let determinant = a.dot(&bc);
    let scale = a.norm() * b.norm() * c.norm();
    if determinant.abs() <= 1e-13 * scale || !determinant.is_finite() {
        return None;
    }
    let inverse = 1.0 / determinant;
    Some([bc * inverse, ca * inverse, ab * inverse])
}

#[cfg(test)]
mod tests {
    use super::*;

    /// Equations multiplied by numbers of their own have the same solution (linear algebra): whether there is
    /// one does not depend on their units.
    #[test]
    fn a_dead_point_is_no_matter_of_scale() {
        let sound = Matrix3::new(2.0, 1.0, 0.0, 1.0, 3.0, 1.0, 0.0, 1.0, 4.0);
        let flat = Matrix3::new(1.0, 2.0, 3.0, 2.0, 4.0, 6.0, 0.0, 1.0, 1.0);
        let right = Vector3::new(1.0, -2.0, 0.5);
        let solved = sound.lu().solve(&right).unwrap();
        for scales in [[1.0, 1.0, 1.0], [1e8, 1e8, 1e-8], [1e-9, 1e6, 1e3]] {
            let rows = Matrix3::from_diagonal(&Vector3::from(scales));
            assert!(inverse_columns(&(rows * flat)).is_none(), "{scales:?}");
            let columns = inverse_columns(&(rows * sound)).unwrap();
            let found = Matrix3::from_columns(&columns) * rows * right;
            assert!((found - solved).norm() < 1e-12, "{scales:?}: {found}");
        }
    }
}
