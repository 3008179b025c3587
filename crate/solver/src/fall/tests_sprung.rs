//! Falls with springs and rubbing pins: what they give and take; estimated inertias.
use std::f64::consts::FRAC_PI_2;

use super::fall_of;
use super::inertia::Inertias;
use super::way::{FallWay, INERTIA};
use crate::kinematics::Linkage;
use crate::model::*;
use crate::result::{Fall, FallOutcome, InertiaBasis};
use crate::statics::STANDARD_GRAVITY;
use gearswing_samples::leg::{leg, pins_of_leg};

fn fall(leg: &Leg) -> Fall {
    let linkage = Linkage::new(leg);
    fall_of(
        leg,
        &linkage,
        &Fluid::default(),
        &Conditions::default(),
        1.5,
    )
    .unwrap()
}

/// What the springs store at both ends (½·k·x², ½·k·θ² − M₀·θ) is what they give.
#[test]
fn energy_balances_with_springs() {
    let mut leg = leg();
    leg.actuator.seal_friction = Some(3.0);
    assert_eq!(fall(&leg).energy.springs, 0.0);
    let end = |body, x, y| SpringEnd {
        body,
        point: Point::new(x, y),
    };
    let kinds = [
        SpringKind::Linear(LinearSpring {
            first: end(Body::Airframe, 0.3, 0.3),
            second: end(Body::Leg, 0.1, -0.3),
            rate: 120.0,
            set: SpringSet::FreeLength { length: 0.2 },
            acts: Acts::Both,
        }),
        SpringKind::Torsion(TorsionSpring {
            joint: SpringJoint::Knee,
            rate: 2.0,
            moment_at_down: 1.0,
        }),
    ];
    for kind in kinds {
        leg.springs = vec![Spring {
            name: String::new(),
            kind,
        }];
        let sprung = fall(&leg);
        assert!(sprung.energy.springs != 0.0);
        assert!(sprung.energy.residual.abs() < 1e-6, "{sprung:?}");
    }
}

#[test]
fn rubbing_pins_slow_the_fall() {
    let mut leg = leg();
    leg.actuator.seal_friction = Some(3.0);
    let free = fall(&leg);
    let pin = Pin::rubbing(0.005, 0.1);
    leg.pins = pins_of_leg(pin);
    let rubbing = fall(&leg);
    assert!(rubbing.energy.friction > free.energy.friction);
    assert!(rubbing.energy.residual.abs() < 1e-4, "{rubbing:?}");
    let (FallOutcome::ReachesLock(slow), FallOutcome::ReachesLock(fast)) =
        (&rubbing.outcome, &free.outcome)
    else {
        panic!("{rubbing:?}");
    };
    assert!(slow.time > fast.time);
    assert!(rubbing.seal_friction_limit.unwrap() < free.seal_friction_limit.unwrap());
    // far beyond five times the friction, the pins alone
    assert_eq!(rubbing.friction_factor, None);
    assert_eq!(rubbing.friction_factor_tried, Some(5.0));
    assert!(free.friction_factor.unwrap() > 5.0);
    // what stops it on its seals alone is no more than half of that with such pins
    leg.actuator.seal_friction = Some(0.5 * rubbing.seal_friction_limit.unwrap());
    leg.actuator.seal_break_out = leg.actuator.seal_friction;
    let factor = fall(&leg).friction_factor.unwrap();
    assert!(1.0 < factor && factor < 2.0, "{factor}");
}

/// Source: rectangle about its center, m·(a² + b²)/12; rod about its end, any table.
#[test]
fn estimated_inertias_are_those_of_plate_and_rod() {
    let mut leg = leg();
    leg.body.mass = 6.0;
    leg.body.centre = Point::new(0.0, -0.3);
    let rod = Inertias::of(&leg);
    assert!((rod.body + 6.0 * 0.09 - 6.0 * 0.36 / 3.0).abs() < 1e-12);
    let corner = |x, y| Point::new(x, y);
    leg.body.outline = vec![
        corner(0.1, -0.6),
        corner(0.1, 0.0),
        corner(0.02, 0.0),
        corner(0.02, -0.6),
    ];
    let plate = Inertias::of(&leg);
    assert!((plate.body - 6.0 * (0.08 * 0.08 + 0.36) / 12.0).abs() < 1e-12);
    assert_eq!(plate.basis, InertiaBasis::UniformPlate);
}

/// Links whose mass was left at nothing leave nothing that moves at the straight knee: the fall is
/// followed all the same, with an orifice and without, and its energies balance.
#[test]
fn links_without_mass_fall() {
    for mass in [0.0, 1e-6] {
        for orifice in [None, Some(2e-3), Some(1e-3)] {
            let mut leg = leg();
            leg.actuator.mass = mass;
            leg.actuator.seal_friction = Some(1.0);
            leg.fall.return_orifice = orifice;
            if let Brace::Folding(brace) = &mut leg.brace {
                brace.upper.mass = mass;
                brace.lower.mass = mass;
            }
            let found = fall(&leg);
            let energy = found.energy;
            println!("{mass} {orifice:?} {:?} {energy:?}", found.outcome);
            assert!(!matches!(found.outcome, FallOutcome::NotFollowed { .. }));
            assert!(energy.residual.abs() < 1e-3, "{energy:?}");
            assert!(energy.motion.is_finite() && energy.orifice.is_finite());
        }
    }
}

/// A wheel let go at the level of its trunnion: the arm pulls with 3·m·g·sin α at α below, so that a
/// pin with little friction takes 3·μ·r·m·g on the way down.
///
/// Source: tension of a pendulum let go level, any text on mechanics.
#[test]
fn pin_carries_what_the_motion_adds() {
    let (friction, radius) = (1e-3, 5e-3);
    for swing_up in [FRAC_PI_2, -FRAC_PI_2] {
        let mut leg = super::tests::pendulum(swing_up);
        leg.pins.trunnion = Pin::rubbing(radius, friction);
        let found = fall(&leg);
        let wanted = 3.0 * friction * radius * leg.wheel.mass * STANDARD_GRAVITY;
        let energy = &found.energy;
        assert!(
            (energy.friction - wanted).abs() < 1e-4 * wanted,
            "{} {wanted}",
            energy.friction
        );
        assert!(energy.residual.abs() < 1e-8, "{energy:?}");
    }
}

/// Forces of inertia at a speed work with half the slope of the inertia (Lagrange's equation, any text
/// on the dynamics of machinery), for every kind of leg.
#[test]
fn forces_of_speed_agree_with_the_slope_of_the_inertia() {
    let mut compared = 0;
    for leg in gearswing_samples::leg::kinds() {
        let linkage = Linkage::new(&leg);
        let Some(track) = FallWay::new(&leg, &linkage, &Conditions::default()) else {
            continue;
        };
        let inertias = Inertias::of(&leg);
        let knots = track.table.knots();
        for (node, &x) in track.nodes.iter().zip(knots).skip(8).step_by(5) {
            let pose = linkage.pose(node.place.progress).unwrap();
            let at_speed = inertias.against_speed(&leg, &linkage, &pose);
            let half_slope = at_speed.power(&leg, &linkage, &pose);
            let slope = track.table.slopes_at(x)[INERTIA];
            let size = track.at(x)[INERTIA] + slope.abs();
            assert!(
                (half_slope - 0.5 * slope).abs() < 1e-4 * size,
                "{:?} {half_slope} {}",
                node.place,
                0.5 * slope
            );
            compared += 1;
        }
    }
    assert!(compared > 300, "{compared}");
}
