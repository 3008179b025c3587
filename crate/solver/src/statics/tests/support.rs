//! Legs and springs of every kind.
use crate::model::*;
use gearswing_samples::leg as sample;

pub(super) fn windy() -> Conditions {
    Conditions {
        load_factor: 1.7,
        pitch: 0.1,
        bank: -0.2,
        airspeed: 50.0,
        sideslip: 0.15,
        air_density: 1.1,
        ..Conditions::default()
    }
}

/// Legs of every kind, without springs and with.
pub(super) fn legs() -> Vec<Leg> {
    let mut legs = sample::kinds();
    let plain = legs.len();
    for at in 0..plain {
        let mut leg = legs[at].clone();
        leg.springs = springs(&leg);
        legs.push(leg);
    }
    legs
}

/// Springs between all pairs of bodies of a leg, and at each of its joints.
pub(super) fn springs(leg: &Leg) -> Vec<Spring> {
    let end = |body, x, y| SpringEnd {
        body,
        point: Point::new(x, y),
    };
    let folds = matches!(leg.brace, Brace::Folding(_));
    let mut ends = vec![
        end(Body::Airframe, 0.31, 0.12),
        end(Body::Leg, 0.02, -0.33),
        end(Body::SlidingStrut, -0.03, -0.65),
    ];
    let mut joints = vec![SpringJoint::Trunnion];
    if folds {
        ends.push(end(Body::UpperLink, 0.35, -0.06));
        ends.push(end(Body::LowerLink, 0.13, -0.30));
        joints.push(SpringJoint::Knee);
    }
    if leg.brace != Brace::None {
        joints.extend([SpringJoint::BracePivot, SpringJoint::LegAttach]);
    }
    let mut springs = Vec::new();
    for (i, first) in ends.iter().enumerate() {
        for (j, second) in ends.iter().enumerate().skip(i + 1) {
            let rate = 900.0 + 130.0 * (i + 2 * j) as f64;
            springs.push(SpringKind::Linear(LinearSpring {
                first: *first,
                second: *second,
                rate,
                set: if j % 2 == 0 {
                    SpringSet::FreeLength { length: 0.2 }
                } else {
                    SpringSet::ForceAtDown { force: 140.0 }
                },
                acts: [Acts::Both, Acts::Pulls, Acts::Pushes][(i + j) % 3],
            }));
        }
    }
    springs.push(SpringKind::Gas(GasSpring {
        first: ends[0],
        second: ends[1],
        shortest: 0.05,
        longest: 1.5,
        force_longest: 220.0,
        force_shortest: 700.0,
        law: GasLaw::Polytropic { exponent: 1.3 },
    }));
    springs.extend(joints.into_iter().enumerate().map(|(i, joint)| {
        SpringKind::Torsion(TorsionSpring {
            joint,
            rate: 7.0 + i as f64,
            moment_at_down: -3.0 + 4.0 * i as f64,
        })
    }));
    springs
        .into_iter()
        .map(|kind| Spring {
            name: String::new(),
            kind,
        })
        .collect()
}

/// Pins of 6 mm with friction coefficient `friction`.
pub(super) fn pins(friction: f64) -> Pins {
    let pin = Pin::rubbing(0.006, friction);
    Pins {
        trunnion: Pin {
            radius: Some(0.02),
            ..pin
        },
        ..Pins::alike(pin)
    }
}
