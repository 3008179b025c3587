//! Equilibrium of every body on its own: an independent way to the thrust, and all reactions.
use nalgebra::{Matrix3, Vector3};

use super::Loads;
use crate::kinematics::{Linkage, Pose};
use crate::model::{AttachTo, Brace, Leg, Point, Vector};
use crate::result::Reactions;

/// Thrust and reactions from the equilibrium of leg, links and actuator.
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

/// Solves the free bodies at one pose, without friction. `None` at a dead point, where no finite
/// thrust holds the leg.
///
/// Unknown are the force at the knee and the thrust; the moment equations of upper link about B0,
/// lower link about B1 and leg about P give them, force balances give the rest. A strut shortened
/// by the swing hands the axle's load along the strut to the leg's drive as a couple.
#[must_use]
pub fn free_bodies(leg: &Leg, linkage: &Linkage, pose: &Pose, loads: &Loads) -> Option<FreeBodies> {
    let trunnion = linkage.trunnion();
    let axis = (pose.actuator_attach - leg.actuator.mount) / pose.actuator_length;
    let half = loads.actuator_half;
    let on_leg = loads.body.1 + loads.wheel.1 + loads.leg_air.1;
    let slide_ratio = if pose.rates.swing == 0.0 {
        0.0
    } else {
        pose.rates.slide / pose.rates.swing
    };
    let leg_moment = moment(loads.body.0, trunnion, loads.body.1)
        + moment(loads.wheel.0, trunnion, loads.wheel.1)
        + moment(loads.leg_air.0, trunnion, loads.leg_air.1)
        + pose.turn(linkage.slide_direction()).dot(&loads.wheel.1) * slide_ratio;
    let carried = |on: AttachTo| {
        if leg.actuator.attach_to == on {
            1.0
        } else {
            0.0
        }
    };
    match (&leg.brace, pose.knee, pose.brace_attach) {
        (Brace::Folding(brace), Some(knee), Some(attach)) => {
            let pivot = brace.airframe_pivot;
            let (on_upper, on_lower) = (carried(AttachTo::UpperLink), carried(AttachTo::LowerLink));
            let carried_by_leg = carried(AttachTo::Leg);
            let (a_upper, a_lower) = (knee - pivot, knee - attach);
            let arm = attach - trunnion;
            let at = pose.actuator_attach;
            // rows: upper about B0 (knee force reversed), lower about B1, leg about P
            let matrix = Matrix3::new(
                a_upper.y,
                -a_upper.x,
                on_upper * moment(at, pivot, axis),
                -a_lower.y,
                a_lower.x,
                on_lower * moment(at, attach, axis),
                -arm.y,
                arm.x,
                on_lower * arm.perp(&axis) + carried_by_leg * moment(at, trunnion, axis),
            );
            let passed_on = loads.lower_half * 2.0 + half * on_lower;
            let right = -Vector3::new(
                moment(knee, pivot, loads.upper_half) + on_upper * moment(at, pivot, half),
                moment(knee, attach, loads.lower_half) + on_lower * moment(at, attach, half),
                leg_moment + arm.perp(&passed_on) + carried_by_leg * moment(at, trunnion, half),
            );
            let unknown = solve3(&matrix, &right)?;
            let (knee_force, thrust) = (Vector::new(unknown.x, unknown.y), unknown.z);
            let push = axis * thrust + half;
            let attach_force = knee_force + loads.lower_half * 2.0 + push * on_lower;
            Some(FreeBodies {
                thrust,
                reactions: Reactions {
                    trunnion: -(on_leg + attach_force + push * carried_by_leg),
                    brace_pivot: Some(knee_force - loads.upper_half * 2.0 - push * on_upper),
                    knee: Some(knee_force),
                    brace_attach: Some(attach_force),
                    mount: axis * thrust - half,
                },
            })
        }
        _ => {
            // a telescopic brace carries nothing along itself while it slides
            let attach_force = pose.brace_attach.map(|_| loads.upper_half);
            let brace_moment = pose
                .brace_attach
                .map_or(0.0, |attach| moment(attach, trunnion, loads.upper_half));
            let arm = moment(pose.actuator_attach, trunnion, axis);
            if arm == 0.0 {
                return None;
            }
            let load = leg_moment + brace_moment + moment(pose.actuator_attach, trunnion, half);
            let thrust = -load / arm;
            let push = axis * thrust + half;
            Some(FreeBodies {
                thrust,
                reactions: Reactions {
                    trunnion: -(on_leg + attach_force.unwrap_or_default() + push),
                    brace_pivot: attach_force.map(|force| -force),
                    knee: None,
                    brace_attach: attach_force,
                    mount: axis * thrust - half,
                },
            })
        }
    }
}

/// Cramer's rule with scaled rows; `None` where the determinant vanishes against its rows.
fn solve3(matrix: &Matrix3<f64>, right: &Vector3<f64>) -> Option<Vector3<f64>> {
    let rows: [Vector3<f64>; 3] = [
        matrix.row(0).transpose(),
        matrix.row(1).transpose(),
        matrix.row(2).transpose(),
    ];
    let [a, b, c] = rows;
    let (bc, ca, ab) = (b.cross(&c), c.cross(&a), a.cross(&b));
    let determinant = a.dot(&bc);
    let scale = a.norm() * b.norm() * c.norm();
    if determinant.abs() <= 1e-13 * scale || !determinant.is_finite() {
        return None;
    }
    Some((bc * right.x + ca * right.y + ab * right.z) / determinant)
}
