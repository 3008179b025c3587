//! Random springs and pins.
use gearswing_gear::model::{
    Acts, Body, GasLaw, GasSpring, LinearSpring, Pin, Pins, Spring, SpringEnd, SpringJoint,
    SpringKind, SpringSet, TorsionSpring,
};
use proptest::collection::vec;
use proptest::option;
use proptest::prelude::*;
use proptest::sample::select;

use crate::arbitrary::{number, point, text};

fn spring_end() -> impl Strategy<Value = SpringEnd> {
    let body = select(vec![
        Body::Airframe,
        Body::Leg,
        Body::SlidingStrut,
        Body::UpperLink,
        Body::LowerLink,
    ]);
    (body, point()).prop_map(|(body, point)| SpringEnd { body, point })
}

pub(crate) fn spring() -> impl Strategy<Value = Spring> {
    let set = prop_oneof![
        number().prop_map(|length| SpringSet::FreeLength { length }),
        number().prop_map(|force| SpringSet::ForceAtDown { force }),
    ];
    let acts = select(vec![Acts::Both, Acts::Pulls, Acts::Pushes]);
    let linear = (spring_end(), spring_end(), number(), set, acts).prop_map(
        |(first, second, rate, set, acts)| {
            SpringKind::Linear(LinearSpring {
                first,
                second,
                rate,
                set,
                acts,
            })
        },
    );
    let law = prop_oneof![
        Just(GasLaw::Linear),
        number().prop_map(|exponent| GasLaw::Polytropic { exponent }),
    ];
    let gas =
        (spring_end(), spring_end(), vec(number(), 4), law).prop_map(|(first, second, n, law)| {
            SpringKind::Gas(GasSpring {
                first,
                second,
                shortest: n[0],
                longest: n[1],
                force_longest: n[2],
                force_shortest: n[3],
                law,
            })
        });
    let joint = select(vec![
        SpringJoint::Trunnion,
        SpringJoint::BracePivot,
        SpringJoint::Knee,
        SpringJoint::LegAttach,
    ]);
    let torsion = (joint, number(), number()).prop_map(|(joint, rate, moment_at_down)| {
        SpringKind::Torsion(TorsionSpring {
            joint,
            rate,
            moment_at_down,
        })
    });
    (text(), prop_oneof![linear, gas, torsion]).prop_map(|(name, kind)| Spring { name, kind })
}

pub(crate) fn pins() -> impl Strategy<Value = Pins> {
    vec(option::of(number()), 18).prop_map(|n| {
        let pin = |at: usize| Pin {
            radius: n[at],
            friction: n[at + 1],
            couple: n[at + 2],
        };
        Pins {
            trunnion: pin(0),
            brace_pivot: pin(3),
            knee: pin(6),
            leg_attach: pin(9),
            actuator_mount: pin(12),
            actuator_attach: pin(15),
        }
    })
}
