//! Equilibrium of every body on its own: linear, one unknown drive, all reactions.
use nalgebra::{Matrix3, Vector3};

use super::{BodyLoads, Loads};
use crate::kinematics::{Linkage, Pose, quarter};
use crate::model::{AttachTo, Brace, Leg, Point, Vector};
use crate::result::Reactions;

/// What keeps the balance and is worked out with the reactions.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(crate) enum Unknown {
    /// The thrust of the actuator [N].
    Thrust,
    /// The acceleration of the common parameter, the thrust being given: each body resists with a
    /// couple of its inertia [kg·m2 times its rate] about leg, upper link and lower link.
    Acceleration([f64; 3]),
}

/// Solution of the free bodies.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct FreeBodies {
    /// Actuator thrust that holds the leg [N]: positive pushes the pins apart.
    pub thrust: f64,
    /// Joint forces.
    pub reactions: Reactions,
}

/// Moment of `force` at `at` about `about` [N·m], counter-clockwise positive.
fn moment(at: Point, about: Point, force: Vector) -> f64 {
    (at - about).perp(&force)
}

/// The balance of one pose, ready for any loads.
#[derive(Clone, Copy, Debug)]
pub(crate) struct Balance<'a> {
    leg: &'a Leg,
    pub(crate) pose: &'a Pose,
    trunnion: Point,
    unknown: Unknown,
    /// Direction A0 to A1.
    axis: Vector,
    /// Direction in which the strut shortens, and dc/dφ [m].
    slide: (Vector, f64),
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
        let trunnion = linkage.trunnion();
        let axis = (pose.actuator_attach - leg.actuator.mount) / pose.actuator_length;
        let ratio = if pose.rates.swing == 0.0 {
            0.0
        } else {
            pose.rates.slide / pose.rates.swing
        };
        let at = pose.actuator_attach;
        let solver = match (&leg.brace, pose.knee, pose.brace_attach) {
            (Brace::Folding(brace), Some(knee), Some(attach)) => {
                let pivot = brace.airframe_pivot;
                let (a_upper, a_lower) = (knee - pivot, knee - attach);
                let arm = attach - trunnion;
                let drive = match unknown {
                    Unknown::Acceleration([on_leg, upper, lower]) => [-upper, -lower, -on_leg],
                    Unknown::Thrust => match leg.actuator.attach_to {
                        AttachTo::Leg => [0.0, 0.0, moment(at, trunnion, axis)],
                        AttachTo::UpperLink => [moment(at, pivot, axis), 0.0, 0.0],
                        AttachTo::LowerLink => [0.0, moment(at, attach, axis), arm.perp(&axis)],
                    },
                };
                // rows: upper about B0 (knee force reversed), lower about B1, leg about P
                let matrix = Matrix3::new(
                    a_upper.y, -a_upper.x, drive[0], -a_lower.y, a_lower.x, drive[1], -arm.y,
                    arm.x, drive[2],
                );
                Solver::Folding {
                    columns: inverse_columns(&matrix)?,
                }
            }
            _ => {
                let arm = match unknown {
                    Unknown::Thrust => moment(at, trunnion, axis),
                    Unknown::Acceleration([on_leg, ..]) => -on_leg,
                };
                if arm == 0.0 {
                    return None;
                }
                Solver::Single { arm }
            }
        };
        Some(Self {
            leg,
            pose,
            trunnion,
            unknown,
            axis,
            slide: (pose.turn(linkage.slide_direction()), ratio),
            solver,
        })
    }

    /// Solves for these loads and further ones; `thrust` [N] is the given thrust where it is not the
    /// unknown. A strut shortened by the swing hands the load along it to the leg's drive as a couple.
    pub(crate) fn solve(&self, loads: &Loads, more: &BodyLoads, thrust: f64) -> FreeBodies {
        let given = match self.unknown {
            Unknown::Thrust => 0.0,
            Unknown::Acceleration(_) => thrust,
        };
        let (trunnion, pose) = (self.trunnion, self.pose);
        let at = pose.actuator_attach;
        let half = loads.actuator_half;
        let s = &loads.springs;
        let sliding = loads.wheel.1 + s.sliding.force + more.sliding.force;
        let on_leg = loads.body.1 + loads.leg_air.1 + s.leg.force + more.leg.force + sliding;
        let leg_moment = moment(loads.body.0, trunnion, loads.body.1)
            + moment(loads.wheel.0, trunnion, loads.wheel.1)
            + moment(loads.leg_air.0, trunnion, loads.leg_air.1)
            + self.slide.0.dot(&sliding) * self.slide.1
            + s.leg.moment
            + more.leg.moment
            + s.sliding.moment
            + more.sliding.moment;
        // a couple on the actuator is carried by forces across it at its pins
        let across = quarter(self.axis) * ((s.actuator + more.actuator) / pose.actuator_length);
        let push = self.axis * given + half + across;
        match (&self.leg.brace, pose.knee, pose.brace_attach, &self.solver) {
            (
                Brace::Folding(brace),
                Some(knee),
                Some(attach),
                Solver::Folding { columns: [x, y, z] },
            ) => {
                let pivot = brace.airframe_pivot;
                let carries = |on: AttachTo| f64::from(u8::from(self.leg.actuator.attach_to == on));
                let (on_upper, on_lower) =
                    (carries(AttachTo::UpperLink), carries(AttachTo::LowerLink));
                let by_leg = carries(AttachTo::Leg);
                let upper_force = s.upper.force + more.upper.force;
                let lower_force = loads.lower_half * 2.0 + s.lower.force + more.lower.force;
                let passed_on = lower_force + push * on_lower;
                let right = [
                    moment(knee, pivot, loads.upper_half)
                        + on_upper * moment(at, pivot, push)
                        + s.upper.about(trunnion, pivot)
                        + more.upper.about(trunnion, pivot),
                    moment(knee, attach, loads.lower_half)
                        + on_lower * moment(at, attach, push)
                        + s.lower.about(trunnion, attach)
                        + more.lower.about(trunnion, attach),
                    leg_moment
                        + (attach - trunnion).perp(&passed_on)
                        + by_leg * moment(at, trunnion, push),
                ];
                let unknown = -(x * right[0] + y * right[1] + z * right[2]);
                let (thrust, push) = self.driven(unknown.z, given, push);
                let knee_force = Vector::new(unknown.x, unknown.y);
                let attach_force = knee_force + lower_force + push * on_lower;
                FreeBodies {
                    thrust,
                    reactions: Reactions {
                        trunnion: -(on_leg + attach_force + push * by_leg),
                        brace_pivot: Some(
                            knee_force - loads.upper_half * 2.0 - upper_force - push * on_upper,
                        ),
                        knee: Some(knee_force),
                        brace_attach: Some(attach_force),
                        mount: push - half * 2.0,
                        actuator_attach: push,
                    },
                }
            }
            _ => {
                // a telescopic brace carries nothing along itself while it slides, and a couple on
                // it by forces across it
                let attach = match (&self.leg.brace, pose.brace_attach) {
                    (Brace::Sliding(brace), Some(attach)) => {
                        let span = attach - brace.airframe_pivot;
                        let couple = (s.brace + more.brace) / span.norm_squared();
                        Some((attach, loads.upper_half + quarter(span) * couple))
                    }
                    _ => None,
                };
                let load = leg_moment
                    + attach.map_or(0.0, |(at, force)| moment(at, trunnion, force))
                    + moment(at, trunnion, push);
                let drive = match self.solver {
                    Solver::Single { arm } => -load / arm,
                    Solver::Folding { .. } => 0.0,
                };
                let (thrust, push) = self.driven(drive, given, push);
                let attach_force = attach.map(|(_, force)| force);
                FreeBodies {
                    thrust,
                    reactions: Reactions {
                        trunnion: -(on_leg + attach_force.unwrap_or_default() + push),
                        brace_pivot: attach_force.map(|force| force - loads.upper_half * 2.0),
                        knee: None,
                        brace_attach: attach_force,
                        mount: push - half * 2.0,
                        actuator_attach: push,
                    },
                }
            }
        }
    }

    fn driven(&self, drive: f64, given: f64, push: Vector) -> (f64, Vector) {
        match self.unknown {
            Unknown::Thrust => (drive, push + self.axis * drive),
            Unknown::Acceleration(_) => (given, push),
        }
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
    Some([bc / determinant, ca / determinant, ab / determinant])
}
