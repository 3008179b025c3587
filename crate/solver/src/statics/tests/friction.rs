//! Friction of the pins: closed forms, agreement of both solutions, directions, self-locking.
use super::super::*;
use super::{legs, pins, windy};
use crate::fall::inertia::Inertias;
use crate::kinematics::{Linkage, Pose, Sweep};
use crate::model::*;
use crate::result::{Motion, StationForce};
use gearswing_samples::leg as sample;

const SUPPLY: Supply = Supply::constant(7e6);

/// A level bar on a fulcrum: the weight W hangs at `b` on one side, the actuator pulls straight
/// down at `a` on the other side, from a mount `long` below.
pub(super) fn bar(a: f64, b: f64, long: f64) -> Leg {
    let mut leg = sample::leg();
    leg.brace = Brace::None;
    leg.view = View::Side;
    leg.swing_up = 0.5;
    leg.body.mass = 0.0;
    leg.strut.axle = Point::new(b, 0.0);
    leg.strut.axis_bottom = Point::new(b, 0.0);
    leg.strut.axis_top = Point::new(0.0, 0.0);
    leg.wheel.mass = 100.0;
    leg.actuator.attach_to = AttachTo::Leg;
    leg.actuator.attach = Point::new(-a, 0.0);
    leg.actuator.mount = Point::new(-a, -long);
    leg.actuator.mass = 0.0;
    leg.actuator.seal_friction = Some(0.0);
    leg
}

fn at_down(leg: &Leg) -> Result<StationForce, NoForce> {
    let linkage = Linkage::new(leg);
    let pose = linkage.pose(0.0).unwrap();
    let g = gravity(leg.view, &Conditions::default());
    force_at(leg, &SUPPLY, &linkage, &pose, [g, Vector::zeros()])
}

fn pin(radius: f64, friction: f64) -> Pin {
    Pin::rubbing(radius, friction)
}

/// Lever with a rubbing fulcrum: T·a = W·b ± f·(T + W), f = μ·r the radius of the friction circle
/// (friction circle: any statics text; M = μ·r·R of a dry journal bearing).
#[test]
fn bar_on_a_rubbing_fulcrum() {
    let (a, b) = (0.2, 0.5);
    let weight = 100.0 * STANDARD_GRAVITY;
    for friction in [0.0, 0.05, 0.2, 1.0] {
        let mut leg = bar(a, b, 0.4);
        leg.pins.trunnion = pin(0.03, friction);
        let force = at_down(&leg).unwrap();
        let f = 0.03 * friction;
        let (raise, lower) = (weight * (b + f) / (a - f), weight * (b - f) / (a + f));
        assert!(
            (force.retract_effort.unwrap() - raise).abs() < 1e-10 * raise,
            "{force:?}"
        );
        assert!(
            (-force.extend_effort.unwrap() - lower).abs() < 1e-10 * lower,
            "{force:?}"
        );
        let pull = force.retract_reactions.unwrap().mount.y;
        assert!((pull + raise).abs() < 1e-10 * raise, "{pull}");
        let fulcrum = force.extend_reactions.unwrap().trunnion.y;
        assert!(
            (fulcrum - weight - lower).abs() < 1e-10 * lower,
            "{fulcrum}"
        );
    }
}

/// Friction at fulcrum and rod end: the rod's pull runs from the center of its free pin to the
/// tangent of the friction circle at the other, so that it leans by V/T = k/ℓ with k = f₂/√(1 − (f₂/ℓ)²);
/// T(a − k) = W·b + f₁·√((T·k/ℓ)² + (T + W)²), a quadratic in T.
#[test]
fn bar_with_friction_at_both_pins() {
    let (a, b, long) = (0.2, 0.5, 0.4);
    let w = 100.0 * STANDARD_GRAVITY;
    let (f1, f2) = (0.03 * 0.15, 0.01 * 0.25);
    let mut leg = bar(a, b, long);
    leg.pins.trunnion = pin(0.03, 0.15);
    leg.pins.actuator_attach = pin(0.01, 0.25);
    let force = at_down(&leg).unwrap();
    let k = f2 / (1.0 - (f2 / long) * (f2 / long)).sqrt();
    let lean = k / long;
    // (T(a − k) − W·b)² = f₁²·((T·lean)² + (T + W)²)
    let e = a - k;
    let qa = e * e - f1 * f1 * (lean * lean + 1.0);
    let qb = -2.0 * e * w * b - 2.0 * f1 * f1 * w;
    let qc = w * w * (b * b - f1 * f1);
    let thrust = (-qb + (qb * qb - 4.0 * qa * qc).sqrt()) / (2.0 * qa);
    assert!(
        (force.retract_effort.unwrap() - thrust).abs() < 1e-10 * thrust,
        "{force:?} {thrust}"
    );
    let side = force.retract_reactions.unwrap().actuator_attach.x;
    assert!((side.abs() - thrust * lean).abs() < 1e-9 * thrust, "{side}");
}

/// A pull whose arm is no larger than the radius of the friction circle moves nothing; the weight
/// still comes down by itself, and that motion keeps its own result.
#[test]
fn arm_within_the_friction_circle_binds_one_motion_only() {
    for (arm, binds) in [(0.0301, false), (0.0299, true), (0.002, true)] {
        let mut leg = bar(arm, 0.5, 0.4);
        leg.pins.trunnion = pin(0.03, 1.0);
        let force = at_down(&leg).unwrap();
        assert_eq!(
            force.retract_binds,
            binds.then_some(Joint::Trunnion),
            "{arm}"
        );
        assert_eq!(force.extend_binds, None);
        assert_eq!(force.retract_effort.is_none(), binds);
        assert_eq!(force.needed(Motion::Retract).is_none(), binds);
        assert_eq!(force.reactions_in(Motion::Retract).is_none(), binds);
        // lowering: T·a = W·b − f·(T + W), from the closed form above
        let weight = 100.0 * STANDARD_GRAVITY;
        let lower = weight * (0.5 - 0.03) / (arm + 0.03);
        let extend = force.extend_effort.unwrap();
        assert!((-extend - lower).abs() < 1e-9 * lower, "{extend} {lower}");
        if !binds {
            assert!(force.retract_effort.unwrap() > 0.0);
        }
    }
}

fn each_pose(leg: &Leg, stations: usize, mut check: impl FnMut(&Linkage, &Pose, [Vector; 2])) {
    let conditions = windy();
    let linkage = Linkage::new(leg);
    let case = [gravity(leg.view, &conditions), wind(leg.view, &conditions)];
    for pose in &Sweep::new(leg, &linkage, stations).poses {
        if pose.rates.actuator.abs() > 1e-2 {
            check(&linkage, pose, case);
        }
    }
}

/// The thrust of the free bodies with friction is the thrust of virtual work with it.
#[test]
fn virtual_work_agrees_with_free_bodies_that_rub() {
    let mut compared = 0;
    for mut leg in legs() {
        leg.pins = pins(0.12);
        leg.actuator.seal_friction = Some(0.0);
        each_pose(&leg, 41, |linkage, pose, case| {
            let Ok(force) = force_at(&leg, &SUPPLY, linkage, pose, case) else {
                return;
            };
            let axis = (pose.actuator_attach - leg.actuator.mount) / pose.actuator_length;
            let half = case[0] * (0.5 * leg.actuator.mass);
            for motion in [Motion::Retract, Motion::Extend] {
                let Some((_, effort)) = force.needed(motion) else {
                    continue;
                };
                let by_work = effort * motion.sign() * pose.rates.actuator.signum();
                let on_rod = force.reactions_in(motion).unwrap().actuator_attach - half;
                let by_bodies = on_rod.dot(&axis);
                let size = on_rod.norm() + force.reactions_in(motion).unwrap().trunnion.norm();
                assert!(
                    (by_work - by_bodies).abs() < 1e-9 * size,
                    "{motion:?} {by_work} {by_bodies} {:?}",
                    pose.place
                );
                compared += 1;
            }
        });
    }
    assert!(compared > 2000, "{compared}");
}

/// More friction never helps, whichever way the leg moves, and no friction is the frictionless leg.
#[test]
fn effort_rises_with_friction_in_both_motions() {
    let mut compared = 0;
    for leg in legs() {
        each_pose(&leg, 13, |linkage, pose, case| {
            let mut last: Option<StationForce> = None;
            for friction in [0.0, 0.02, 0.05, 0.1, 0.2, 0.4] {
                let mut leg = leg.clone();
                leg.pins = pins(friction);
                let force = match force_at(&leg, &SUPPLY, linkage, pose, case) {
                    Ok(force) => force,
                    Err(_) => return,
                };
                if friction == 0.0 {
                    assert_eq!(Some(force.reactions), force.retract_reactions);
                    assert_eq!(Some(force.reactions), force.extend_reactions);
                }
                if let Some(last) = last {
                    let slack = 1e-9 * (force.holding.abs() + 1.0);
                    for motion in [Motion::Retract, Motion::Extend] {
                        let (now, before) = (force.needed(motion), last.needed(motion));
                        // once bound, bound for good
                        assert!(before.is_some() || now.is_none());
                        if let (Some((_, now)), Some((_, before))) = (now, before) {
                            assert!(now >= before - slack);
                            compared += 1;
                        }
                    }
                }
                last = Some(force);
            }
        });
    }
    assert!(compared > 2000, "{compared}");
}

/// At the thrust that just moves the leg nothing is left over to accelerate it: both ways to the
/// friction agree.
#[test]
fn friction_of_an_accelerating_leg_meets_that_of_a_steady_one() {
    let mut compared = 0;
    for mut leg in legs() {
        leg.pins = pins(0.1);
        leg.actuator.seal_friction = Some(0.0);
        let inertias = Inertias::of(&leg);
        each_pose(&leg, 13, |linkage, pose, case| {
            let Ok(force) = force_at(&leg, &SUPPLY, linkage, pose, case) else {
                return;
            };
            let loads = Loads::new(&leg, linkage, pose, case[0], case[1]);
            let driving = loads.power(&leg, linkage, pose);
            let against = inertias.against_acceleration(&leg, linkage, pose);
            let at_speed = inertias.against_speed(&leg, linkage, pose);
            let set = PinSet::of(&leg);
            let moving = MovingPins::new(
                &set,
                &leg,
                linkage,
                pose,
                [&loads, &Loads::default()],
                [&against, &at_speed],
            )
            .unwrap();
            for motion in [Motion::Retract, Motion::Extend] {
                let Some((_, effort)) = force.needed(motion) else {
                    continue;
                };
                let thrust = effort * motion.sign() * pose.rates.actuator.signum();
                let friction = moving
                    .friction(
                        motion,
                        &InMotion {
                            speed_squared: 0.0,
                            thrust,
                            dynamic_pressure: 0.0,
                            factor: 1.0,
                        },
                        None,
                    )
                    .unwrap();
                assert!(friction >= 0.0);
                let left = driving - friction * motion.sign() + thrust * pose.rates.actuator;
                let size = driving.abs() + friction.abs() + loads.wheel.1.norm();
                assert!(left.abs() < 1e-8 * size, "{motion:?} {left} of {size}");
                compared += 1;
            }
        });
    }
    assert!(compared > 500, "{compared}");
}
