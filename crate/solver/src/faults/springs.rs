//! Faults of springs and pins.
use super::visit::Visit;
use super::{FaultKind, ranges};
use crate::kinematics::{END_TOLERANCE, Linkage, Sweep};
use crate::model::{
    Body, Brace, GasLaw, GasSpring, Leg, SpringEnd, SpringJoint, SpringKind, SpringSet,
};
use crate::statics::placed;

/// Stations of the swing at which the length of a gas spring is looked at.
const STATIONS: usize = 361;

pub(super) fn visit(v: &mut Visit, leg: &Leg) {
    for (name, pin) in [
        ("trunnion", leg.pins.trunnion),
        ("brace_pivot", leg.pins.brace_pivot),
        ("knee", leg.pins.knee),
        ("leg_attach", leg.pins.leg_attach),
        ("actuator_mount", leg.pins.actuator_mount),
        ("actuator_attach", leg.pins.actuator_attach),
    ] {
        v.option(
            format_args!("pins.{name}.radius_m"),
            pin.radius,
            ranges::PIN_RADIUS,
        );
        v.option(
            format_args!("pins.{name}.friction"),
            pin.friction,
            ranges::FRICTION_COEFFICIENT,
        );
        v.option(
            format_args!("pins.{name}.couple_n_m"),
            pin.couple,
            ranges::PIN_COUPLE,
        );
    }
    if !v.count(format_args!("springs"), leg.springs.len()) {
        return;
    }
    for (i, spring) in leg.springs.iter().enumerate() {
        match &spring.kind {
            SpringKind::Linear(s) => {
                let at = format!("springs[{i}].kind.linear");
                ends(v, leg, &at, [&s.first, &s.second]);
                v.number(format_args!("{at}.rate_n_m"), s.rate, ranges::SPRING_RATE);
                match s.set {
                    SpringSet::FreeLength { length } => {
                        let path = format_args!("{at}.set.free_length.length_m");
                        v.number(path, length, ranges::SIZE);
                    }
                    SpringSet::ForceAtDown { force } => {
                        let path = format_args!("{at}.set.force_at_down.force_n");
                        v.number(path, force, ranges::SPRING_FORCE);
                    }
                }
            }
            SpringKind::Gas(s) => gas(v, leg, &format!("springs[{i}].kind.gas"), s),
            SpringKind::Torsion(s) => {
                let at = format!("springs[{i}].kind.torsion");
                v.number(
                    format_args!("{at}.rate_n_m_rad"),
                    s.rate,
                    ranges::TORSION_RATE,
                );
                v.number(
                    format_args!("{at}.moment_at_down_n_m"),
                    s.moment_at_down,
                    ranges::MOMENT,
                );
                let exists = match (s.joint, &leg.brace) {
                    (SpringJoint::Trunnion, _) | (_, Brace::Folding(_)) => true,
                    (SpringJoint::Knee, _) | (_, Brace::None) => false,
                    (SpringJoint::BracePivot | SpringJoint::LegAttach, Brace::Sliding(_)) => true,
                };
                if !exists {
                    v.fault(format_args!("{at}.joint"), FaultKind::NoSuchJoint);
                }
            }
        }
    }
}

fn ends(v: &mut Visit, leg: &Leg, at: &str, [first, second]: [&SpringEnd; 2]) -> bool {
    let mut sound = true;
    for (name, end) in [("first", first), ("second", second)] {
        sound &= v.point(format_args!("{at}.{name}.point_m"), end.point);
        let on_link = matches!(end.body, Body::UpperLink | Body::LowerLink);
        if on_link && !matches!(leg.brace, Brace::Folding(_)) {
            let path = format_args!("{at}.{name}.body");
            v.fault(path, FaultKind::NeedsFoldingBrace);
            sound = false;
        }
    }
    if first.body == second.body {
        v.fault(format_args!("{at}.second.body"), FaultKind::SameBody);
        return false;
    }
    if sound {
        v.apart(
            &format!("{at}.second.point_m"),
            second.point,
            &format!("{at}.first.point_m"),
            first.point,
        );
    }
    sound
}

fn gas(v: &mut Visit, leg: &Leg, at: &str, s: &GasSpring) {
    ends(v, leg, at, [&s.first, &s.second]);
    let short = v.number(format_args!("{at}.shortest_m"), s.shortest, ranges::SIZE);
    let long = v.number(format_args!("{at}.longest_m"), s.longest, ranges::SIZE);
    if short && long {
        v.below(
            &format!("{at}.shortest_m"),
            s.shortest,
            &format!("{at}.longest_m"),
            s.longest,
        );
    }
    let weak = v.number(
        format_args!("{at}.force_longest_n"),
        s.force_longest,
        ranges::GAS_FORCE,
    );
    let strong = v.number(
        format_args!("{at}.force_shortest_n"),
        s.force_shortest,
        ranges::GAS_FORCE,
    );
    if weak && strong && s.force_longest > s.force_shortest {
        v.below(
            &format!("{at}.force_longest_n"),
            s.force_longest,
            &format!("{at}.force_shortest_n"),
            s.force_shortest,
        );
    }
    if let GasLaw::Polytropic { exponent } = s.law {
        let path = format_args!("{at}.law.polytropic.exponent");
        v.number(path, exponent, ranges::EXPONENT);
    }
}

/// Lengths of the gas springs over the whole path of a leg that is otherwise sound.
pub(super) fn on_the_way(v: &mut Visit, leg: &Leg) {
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
        for (key, bound, below) in [
            ("shortest_m", s.shortest, true),
            ("longest_m", s.longest, false),
        ] {
            if let Some((_, length, travel)) = worst(bound, below) {
                v.fault(
                    format_args!("springs[{i}].kind.gas.{key}"),
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
