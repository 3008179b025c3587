//! Single poses against hand calculations: a lever with tight pins, loads that an acceleration asks for, work of gas
//! springs. Source of the laws: statics of rigid bodies, d'Alembert's principle and Boyle's law, in any text on
//! mechanics.
use super::super::balance::{Balance, Unknown};
use super::super::*;
use super::friction::bar;
use crate::fall::inertia::Inertias;
use crate::kinematics::Linkage;
use crate::model::*;
use crate::result::StationForce;
use gearswing_samples::leg as sample;

fn at_down(leg: &Leg) -> Result<StationForce, NoForce> {
    let linkage = Linkage::new(leg);
    let pose = linkage.pose(0.0).unwrap();
    let g = gravity(leg.view, &Conditions::default());
    force_at(
        leg,
        &Supply::constant(7e6),
        &linkage,
        &pose,
        [g, Vector::zeros()],
    )
}

/// A lever with a couple at its fulcrum: the pull times its arm is the weight times its own, and the couple with or
/// against it.
#[test]
fn the_pull_carries_the_couple_of_a_tight_pin() {
    let (a, b, w) = (0.2, 0.5, 100.0 * STANDARD_GRAVITY);
    let mut leg = bar(a, b, 0.4);
    leg.pins.trunnion = Pin {
        couple: Some(50.0),
        ..Pin::default()
    };
    let force = at_down(&leg).unwrap();
    for (effort, reactions, pull) in [
        (
            force.retract_effort,
            force.retract_reactions,
            (w * b + 50.0) / a,
        ),
        (
            force.extend_effort.map(|e| -e),
            force.extend_reactions,
            (w * b - 50.0) / a,
        ),
    ] {
        assert!((effort.unwrap() - pull).abs() < 1e-9 * pull);
        assert!(
            (reactions.unwrap().mount.y + pull).abs() < 1e-9 * pull,
            "{reactions:?} {pull}"
        );
    }
}

/// A knee between links without weight carries nothing, and takes nothing for friction.
#[test]
fn a_pin_without_load_does_not_rub() {
    let mut leg = sample::leg();
    if let Brace::Folding(brace) = &mut leg.brace {
        (brace.upper.mass, brace.lower.mass) = (0.0, 0.0);
    }
    leg.actuator.attach_to = AttachTo::Leg;
    leg.actuator.attach = Point::new(-0.1, -0.15);
    let linkage = Linkage::new(&leg);
    let pose = linkage.pose(0.5).unwrap();
    let g = gravity(leg.view, &Conditions::default());
    let supply = Supply::constant(7e6);
    let free = force_at(&leg, &supply, &linkage, &pose, [g, Vector::zeros()]).unwrap();
    leg.pins.knee = Pin::rubbing(0.01, 0.2);
    let rubs = force_at(&leg, &supply, &linkage, &pose, [g, Vector::zeros()]).unwrap();
    assert_eq!(rubs.reactions.knee.unwrap().norm(), 0.0);
    assert!((rubs.retract_effort.unwrap() - free.retract_effort.unwrap()).abs() < 1e-9);
}

/// d'Alembert: parts that are each pushed as their own acceleration asks need no pin to come along.
#[test]
fn loads_that_are_what_an_acceleration_asks_for_load_no_pin() {
    let leg = sample::leg();
    let linkage = Linkage::new(&leg);
    let pose = linkage.pose(0.5).unwrap();
    let l = Inertias::of(&leg).against_acceleration(&leg, &linkage, &pose);
    let balance = Balance::new(&leg, &linkage, &pose, Unknown::Acceleration(&l)).unwrap();
    let n = |(p, f): (Point, Vector)| (p, -f);
    let w = |w: Wrench| Wrench {
        force: -w.force,
        moment: -w.moment,
    };
    let s = l.springs;
    let reversed = Loads {
        body: n(l.body),
        wheel: n(l.wheel),
        leg_air: n(l.leg_air),
        upper: l.upper.map(|f| -f),
        lower: l.lower.map(|f| -f),
        actuator: l.actuator.map(|f| -f),
        springs: BodyLoads {
            leg: w(s.leg),
            sliding: w(s.sliding),
            upper: w(s.upper),
            lower: w(s.lower),
            brace: -s.brace,
            actuator: -s.actuator,
        },
    };
    let r = balance
        .solve(&reversed, &BodyLoads::default(), 0.0)
        .reactions;
    for load in [
        Some(r.trunnion),
        r.brace_pivot,
        r.knee,
        r.brace_attach,
        Some(r.mount),
        Some(r.actuator_attach),
    ] {
        assert!(load.unwrap().norm() < 1e-9, "{r:?}");
    }
}

/// An arm shorter than the friction circle moves nothing, either way.
#[test]
fn a_tight_pin_on_a_short_arm_binds_both_ways() {
    let mut leg = bar(0.02, 0.5, 0.4);
    leg.wheel.mass = 0.0;
    leg.pins.trunnion = Pin {
        couple: Some(0.5),
        ..Pin::rubbing(0.03, 1.0)
    };
    let (retract, extend) = (Joint::Trunnion, Joint::Trunnion);
    assert_eq!(
        at_down(&leg).unwrap_err(),
        NoForce::Binds { retract, extend }
    );
}

/// Boyle: 300 N at rest on 0.2 m to 900 N, pressed in by 0.1 m, stores 90 J times the logarithm of 1.5; with a force
/// that rises evenly, 45 J.
#[test]
fn work_of_a_gas_spring() {
    let end = |body, x| SpringEnd {
        body,
        point: Point::new(x, -0.1),
    };
    for (law, wanted) in [
        (GasLaw::Polytropic { exponent: 1.0 }, 90.0 * 1.5_f64.ln()),
        (GasLaw::Linear, 45.0),
    ] {
        let mut leg = sample::leg();
        leg.springs = vec![Spring {
            name: String::new(),
            kind: SpringKind::Gas(GasSpring {
                first: end(Body::Airframe, 0.0),
                second: end(Body::Leg, 0.4),
                shortest: 0.3,
                longest: 0.5,
                force_longest: 300.0,
                force_shortest: 900.0,
                law,
            }),
        }];
        let linkage = Linkage::new(&leg);
        let pose = linkage.pose(linkage.path().start()).unwrap();
        let found = spring_energy(&leg, &linkage, &pose);
        assert!((found - wanted).abs() < 1e-6, "{found} {wanted}");
    }
}

/// Its moment is the slope of what it stores, by differences.
#[test]
fn a_torsion_spring_at_a_sliding_brace_gives_off_what_it_stores() {
    let mut checked = 0;
    for mut leg in sample::kinds() {
        if !matches!(leg.brace, Brace::Sliding(_)) {
            continue;
        }
        leg.springs = vec![Spring {
            name: String::new(),
            kind: SpringKind::Torsion(TorsionSpring {
                joint: SpringJoint::LegAttach,
                rate: 8.0,
                moment_at_down: 3.0,
            }),
        }];
        let linkage = Linkage::new(&leg);
        let at = |p: f64| linkage.pose(p).unwrap();
        let (a, pose, b) = (at(0.5 - 1e-5), at(0.5), at(0.5 + 1e-5));
        let energy = |pose| spring_energy(&leg, &linkage, pose);
        let given = (energy(&a) - energy(&b)) / (b.place.swing - a.place.swing);
        let moment =
            spring_loads(&leg, &linkage, &pose).power(&leg, &linkage, &pose) / pose.rates.swing;
        assert!((moment - given).abs() < 1e-5, "{moment} {given}");
        checked += 1;
    }
    assert!(checked > 0);
}
