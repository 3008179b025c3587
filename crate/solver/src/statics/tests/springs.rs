//! Spring laws against the texts, and their energy over a stroke.
use super::super::*;
use super::{legs, springs_of};
use crate::kinematics::{Linkage, Pose, Sweep};
use crate::model::*;

fn end(body: Body, x: f64, y: f64) -> SpringEnd {
    SpringEnd {
        body,
        point: Point::new(x, y),
    }
}

/// Hooke's law, F = k·x: 25 lb/in stretched by 2 in pulls 50 lb; here in SI.
#[test]
fn linear_spring_follows_hooke() {
    let mut spring = LinearSpring {
        first: end(Body::Airframe, 0.0, 0.0),
        second: end(Body::Leg, 0.3, 0.0),
        rate: 2000.0,
        set: SpringSet::FreeLength { length: 0.25 },
        acts: Acts::Both,
    };
    assert!((linear_pull(&spring, 0.30) - 100.0).abs() < 1e-9);
    assert!((linear_pull(&spring, 0.20) + 100.0).abs() < 1e-9);
    // the same spring, given by its pull at gear down
    spring.set = SpringSet::ForceAtDown { force: 100.0 };
    assert!((linear_pull(&spring, 0.20) + 100.0).abs() < 1e-9);
    spring.acts = Acts::Pulls;
    assert_eq!(linear_pull(&spring, 0.20), 0.0);
    spring.acts = Acts::Pushes;
    assert_eq!(linear_pull(&spring, 0.30), 0.0);
    assert!(linear_pull(&spring, 0.20) < 0.0);
}

/// p·Vⁿ constant (any thermodynamics text), a piston of 1 cm² over 30 cm³ at its longest, moved in
/// by 20 cm: 10 cm³ are left.
#[test]
fn gas_spring_follows_the_polytropic_law() {
    for n in [1.0, 1.25, 1.4, 5.0 / 3.0] {
        let law = |volume: f64| 300.0 * (30e-6 / volume).powf(n);
        let spring = GasSpring {
            first: end(Body::Airframe, 0.0, 0.0),
            second: end(Body::Leg, 0.5, 0.0),
            shortest: 0.3,
            longest: 0.5,
            force_longest: 300.0,
            force_shortest: law(10e-6),
            law: GasLaw::Polytropic { exponent: n },
        };
        for inward in [0.0, 0.03, 0.1, 0.17, 0.2] {
            let push = gas_push(&spring, 0.5 - inward);
            let expected = law(30e-6 - 1e-4 * inward);
            assert!(
                (push - expected).abs() < 1e-9 * expected,
                "{n} {push} {expected}"
            );
        }
        let straight = GasSpring {
            law: GasLaw::Linear,
            ..spring
        };
        let middle = 0.5 * (300.0 + law(10e-6));
        assert!((gas_push(&straight, 0.4) - middle).abs() < 1e-9 * middle);
    }
}

/// Energy stored in a spring (J), from the texts: ½·k·x², ∫p dV of a polytrope, ½·k·θ² − M₀·θ.
fn stored(leg: &Leg, linkage: &Linkage, pose: &Pose, kind: &SpringKind) -> f64 {
    let length = |a: &SpringEnd, b: &SpringEnd| {
        (placed(leg, linkage, pose, b) - placed(leg, linkage, pose, a)).norm()
    };
    match kind {
        SpringKind::Linear(s) => {
            let pull = linear_pull(s, length(&s.first, &s.second));
            0.5 * pull * pull / s.rate
        }
        SpringKind::Gas(s) => {
            let GasLaw::Polytropic { exponent: n } = s.law else {
                panic!()
            };
            let least = (s.force_longest / s.force_shortest).powf(1.0 / n);
            let share = (s.longest - length(&s.first, &s.second)) / (s.longest - s.shortest);
            let v = 1.0 - (1.0 - least) * share;
            s.force_longest * (s.longest - s.shortest) / (1.0 - least) * (v.powf(1.0 - n) - 1.0)
                / (n - 1.0)
        }
        SpringKind::Torsion(s) => {
            let (Brace::Folding(b), Some(knee), Some(attach)) =
                (&leg.brace, pose.knee, pose.brace_attach)
            else {
                panic!()
            };
            let angle = |v: Vector, from: Vector| from.perp(&v).atan2(from.dot(&v));
            let upper = angle(knee - b.airframe_pivot, b.knee - b.airframe_pivot);
            let lower = angle(attach - knee, b.leg_attach - b.knee);
            let turn = match s.joint {
                SpringJoint::Trunnion => pose.place.swing,
                SpringJoint::BracePivot => upper,
                SpringJoint::Knee => lower - upper,
                SpringJoint::LegAttach => lower - pose.place.swing,
            };
            0.5 * s.rate * turn * turn - s.moment_at_down * turn
        }
    }
}

/// Generalized force of each spring, summed over the path (trapezoids over 4,000 stations), is the
/// energy it gives off (work–energy theorem).
#[test]
fn springs_give_off_what_they_store() {
    let mut checked = 0;
    for mut leg in legs() {
        if !matches!(leg.brace, Brace::Folding(_)) || !leg.springs.is_empty() {
            continue;
        }
        for spring in springs_of(&leg) {
            leg.springs = vec![spring.clone()];
            let linkage = Linkage::new(&leg);
            let mut sweep = Sweep::new(&leg, &linkage, 4001);
            // a shortening table ends at up: its slope is none there
            sweep.poses.pop();
            let mut work = 0.0;
            let mut gross = 0.0;
            for pair in sweep.poses.windows(2) {
                // per swing, well away from the straight knee where the leg stands still
                if pair[0].place.travel < 0.05 {
                    continue;
                }
                let moment = |pose: &Pose| {
                    spring_loads(&leg, &linkage, pose).power(&leg, &linkage, pose)
                        / pose.rates.swing
                };
                let step = 0.5
                    * (moment(&pair[0]) + moment(&pair[1]))
                    * (pair[1].place.swing - pair[0].place.swing);
                work += step;
                gross += step.abs();
            }
            let first = sweep.poses.iter().find(|p| p.place.travel >= 0.05).unwrap();
            let last = sweep.poses.last().unwrap();
            let lost = stored(&leg, &linkage, first, &spring.kind)
                - stored(&leg, &linkage, last, &spring.kind);
            let told = spring_energy(&leg, &linkage, first) - spring_energy(&leg, &linkage, last);
            assert!(
                (told - lost).abs() < 1e-9 * gross + 1e-12,
                "{:?}: {told} {lost}",
                spring.kind
            );
            assert!(
                (work - lost).abs() < 2e-6 * gross + 1e-9,
                "{:?}: {work} {lost}",
                spring.kind
            );
            checked += 1;
        }
    }
    assert!(checked > 100, "{checked}");
}
