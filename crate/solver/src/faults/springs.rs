//! Relations of springs.
use super::FaultKind;
use super::visit::Visit;
use crate::field::Field;
use crate::kinematics::{END_TOLERANCE, Linkage, Sweep, placed};
use crate::model::{Body, Brace, Leg, SpringEnd, SpringJoint, SpringKind};

/// Stations of the swing at which the length of a gas spring is looked at.
const STATIONS: usize = 361;

/// The two ends of a kind of spring: body and point of the first, and of the second.
const LINEAR: [[Field; 2]; 2] = [
    [Field::LinearFirstBody, Field::LinearFirstPoint],
    [Field::LinearSecondBody, Field::LinearSecondPoint],
];
const GAS: [[Field; 2]; 2] = [
    [Field::GasFirstBody, Field::GasFirstPoint],
    [Field::GasSecondBody, Field::GasSecondPoint],
];

pub(super) fn visit(v: &mut Visit<'_>, leg: &Leg) {
    if !v.count(
        Field::SpringName,
        format_args!("springs"),
        leg.springs.len(),
    ) {
        return;
    }
    for (i, spring) in leg.springs.iter().enumerate() {
        match &spring.kind {
            SpringKind::Linear(s) => ends(v, leg, i, LINEAR, [&s.first, &s.second]),
            SpringKind::Gas(s) => {
                ends(v, leg, i, GAS, [&s.first, &s.second]);
                v.below(
                    v.entry(Field::GasShortest, i),
                    v.entry(Field::GasLongest, i),
                );
                v.not_above(
                    v.entry(Field::GasForceLongest, i),
                    v.entry(Field::GasForceShortest, i),
                );
            }
            SpringKind::Torsion(s) => {
                let exists = match (s.joint, &leg.brace) {
                    (SpringJoint::Trunnion, _) | (_, Brace::Folding(_)) => true,
                    (SpringJoint::Knee, _) | (_, Brace::None) => false,
                    (SpringJoint::BracePivot | SpringJoint::LegAttach, Brace::Sliding(_)) => true,
                };
                if !exists {
                    v.fault(v.entry(Field::TorsionJoint, i), FaultKind::NoSuchJoint);
                }
            }
        }
    }
}

fn ends(
    v: &mut Visit<'_>,
    leg: &Leg,
    at: usize,
    fields: [[Field; 2]; 2],
    [first, second]: [&SpringEnd; 2],
) {
    let [[_, first_point], [second_body, second_point]] = fields;
    let mut all_exist = true;
    for ([body, _], end) in fields.into_iter().zip([first, second]) {
        let on_link = matches!(end.body, Body::UpperLink | Body::LowerLink);
        if on_link && !matches!(leg.brace, Brace::Folding(_)) {
            v.fault(v.entry(body, at), FaultKind::NeedsFoldingBrace);
            all_exist = false;
        }
    }
    if first.body == second.body {
        v.fault(v.entry(second_body, at), FaultKind::SameBody);
    } else if all_exist {
        v.apart(v.entry(second_point, at), v.entry(first_point, at));
    }
}

/// Lengths of the gas springs over the whole path of a leg that is otherwise sound.
pub(super) fn on_the_way(v: &mut Visit<'_>, leg: &Leg) {
    let is_gas = |kind: &SpringKind| matches!(kind, SpringKind::Gas(_));
    if !leg.springs.iter().any(|spring| is_gas(&spring.kind)) {
        return;
    }
    let linkage = Linkage::new(leg);
    let poses = Sweep::new(leg, &linkage, STATIONS).poses;
    for (i, spring) in leg.springs.iter().enumerate() {
        let SpringKind::Gas(s) = &spring.kind else {
            continue;
        };
        let worst = |bound: f64, below: bool| {
            poses
                .iter()
                .map(|pose| {
                    let a = placed(leg, &linkage, pose, &s.first);
                    let b = placed(leg, &linkage, pose, &s.second);
                    let length = (b - a).norm();
                    let past = if below {
                        bound - length
                    } else {
                        length - bound
                    };
                    (past, length, pose.place.travel)
                })
                .max_by(|a, b| a.0.total_cmp(&b.0))
                .filter(|worst| worst.0 > END_TOLERANCE)
        };
        for (field, bound, below) in [
            (Field::GasShortest, s.shortest, true),
            (Field::GasLongest, s.longest, false),
        ] {
            if let Some((_, length, travel)) = worst(bound, below) {
                v.fault(
                    v.entry(field, i),
                    FaultKind::LengthOnTheWay {
                        length,
                        travel,
                        shortest: s.shortest,
                        longest: s.longest,
                    },
                );
            }
        }
    }
}
