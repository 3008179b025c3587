//! Random springs and rubbing pins.
use gearswing_gear::model::*;

use crate::Draw;

/// The same gear with a linear, a gas and a torsion spring on its leg, and with six rubbing pins.
#[must_use]
pub fn with_springs_and_pins(gear: &Gear, draw: &mut Draw) -> Gear {
    let mut gear = gear.clone();
    for leg in &mut gear.legs {
        leg.springs = ["linear", "gas", "torsion"]
            .map(|name| Spring {
                name: name.into(),
                kind: match name {
                    "linear" => linear(leg, draw),
                    "gas" => gas(leg, draw),
                    _ => torsion(leg, draw),
                },
            })
            .into();
        for pin in leg.pins.all_mut() {
            *pin = Pin::rubbing(draw.between(0.004, 0.01), draw.between(0.02, 0.15));
        }
    }
    gear
}

/// One end on the airframe or on the leg, the other on any other body.
fn ends(leg: &Leg, d: &mut Draw) -> [SpringEnd; 2] {
    let mut bodies = vec![Body::Airframe, Body::Leg, Body::SlidingStrut];
    if matches!(leg.brace, Brace::Folding(_)) {
        bodies.extend([Body::UpperLink, Body::LowerLink]);
    }
    let first = d.below(2);
    let second = (first + 1 + d.below(bodies.len() - 1)) % bodies.len();
    [first, second].map(|at| {
        let aside = Vector::new(d.between(-0.4, 0.4), d.between(-0.5, 0.3));
        SpringEnd {
            body: bodies[at],
            point: leg.trunnion + aside,
        }
    })
}

fn linear(leg: &Leg, d: &mut Draw) -> SpringKind {
    let [first, second] = ends(leg, d);
    SpringKind::Linear(LinearSpring {
        first,
        second,
        rate: d.between(0.0, 3000.0),
        set: if d.either() {
            SpringSet::FreeLength {
                length: d.between(0.05, 0.5),
            }
        } else {
            SpringSet::ForceAtDown {
                force: d.between(-200.0, 400.0),
            }
        },
        acts: d.one_of(&[Acts::Both, Acts::Pulls, Acts::Pushes]),
    })
}

fn gas(leg: &Leg, d: &mut Draw) -> SpringKind {
    let [first, second] = ends(leg, d);
    let force_longest = d.between(50.0, 400.0);
    SpringKind::Gas(GasSpring {
        first,
        second,
        shortest: 0.005,
        longest: 2.9,
        force_longest,
        force_shortest: force_longest * d.between(1.0, 3.0),
        law: if d.either() {
            GasLaw::Linear
        } else {
            GasLaw::Polytropic {
                exponent: d.between(1.0, 1.4),
            }
        },
    })
}

fn torsion(leg: &Leg, d: &mut Draw) -> SpringKind {
    let joints: &[SpringJoint] = match leg.brace {
        Brace::None => &[SpringJoint::Trunnion],
        Brace::Sliding(_) => &[
            SpringJoint::Trunnion,
            SpringJoint::BracePivot,
            SpringJoint::LegAttach,
        ],
        Brace::Folding(_) => &[
            SpringJoint::Trunnion,
            SpringJoint::BracePivot,
            SpringJoint::Knee,
            SpringJoint::LegAttach,
        ],
    };
    SpringKind::Torsion(TorsionSpring {
        joint: d.one_of(joints),
        rate: d.between(0.0, 30.0),
        moment_at_down: d.between(-60.0, 60.0),
    })
}
