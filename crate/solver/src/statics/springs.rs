//! Forces of the springs at a pose.
use super::body_loads::{BodyLoads, Wrench};
use crate::kinematics::{Linkage, Pose, placed};
use crate::model::{
    Acts, Body, Brace, GasLaw, GasSpring, Leg, LinearSpring, Spring, SpringEnd, SpringJoint,
    SpringKind, SpringSet, TorsionSpring, Vector,
};

/// Length end to end at gear down (m).
fn length_at_down(first: &SpringEnd, second: &SpringEnd) -> f64 {
    (second.point - first.point).norm()
}

/// Pull of a linear spring of this length (N): Hooke, F = k·(ℓ − ℓ₀); negative pushes.
#[must_use]
pub fn linear_pull(spring: &LinearSpring, length: f64) -> f64 {
    let pull = match spring.set {
        SpringSet::FreeLength { length: free } => spring.rate * (length - free),
        SpringSet::ForceAtDown { force } => {
            force + spring.rate * (length - length_at_down(&spring.first, &spring.second))
        }
    };
    match spring.acts {
        Acts::Both => pull,
        Acts::Pulls => pull.max(0.0),
        Acts::Pushes => pull.min(0.0),
    }
}

/// Push of a gas spring of this length (N).
///
/// Polytropic, p·Vⁿ constant (any thermodynamics text), the push taken in proportion to the
/// pressure: with both end forces given, the volume at the shortest length is (F₁/F₂)^(1/n) of that
/// at the longest, and falls in proportion to the stroke. Lengths outside of the ends are a fault
/// and are held at the ends here.
#[must_use]
pub fn gas_push(spring: &GasSpring, length: f64) -> f64 {
    let stroke = spring.longest - spring.shortest;
    let share = ((spring.longest - length) / stroke).clamp(0.0, 1.0);
    match spring.law {
        GasLaw::Linear => {
            spring.force_longest + share * (spring.force_shortest - spring.force_longest)
        }
        GasLaw::Polytropic { exponent } => {
            let least = (spring.force_longest / spring.force_shortest).powf(1.0 / exponent);
            spring.force_longest * (1.0 - (1.0 - least) * share).powf(-exponent)
        }
    }
}

/// Moment of a torsion spring turned by `turn` since gear down (N·m).
#[must_use]
pub fn torsion_moment(spring: &TorsionSpring, turn: f64) -> f64 {
    spring.moment_at_down - spring.rate * turn
}

/// Forces of all springs of a leg at a pose.
#[must_use]
pub fn spring_loads(leg: &Leg, linkage: &Linkage, pose: &Pose) -> BodyLoads {
    spring_loads_bent(leg, linkage, pose, None)
}

/// As [`spring_loads`], the turn from the upper to the lower link being known or not (rad).
pub(super) fn spring_loads_bent(
    leg: &Leg,
    linkage: &Linkage,
    pose: &Pose,
    bent: Option<f64>,
) -> BodyLoads {
    let mut loads = BodyLoads::default();
    for Spring { kind, .. } in &leg.springs {
        match kind {
            SpringKind::Linear(spring) => {
                let pull = |length| linear_pull(spring, length);
                pull_together(
                    &mut loads,
                    (leg, linkage, pose),
                    [&spring.first, &spring.second],
                    pull,
                );
            }
            SpringKind::Gas(spring) => {
                let pull = |length| -gas_push(spring, length);
                pull_together(
                    &mut loads,
                    (leg, linkage, pose),
                    [&spring.first, &spring.second],
                    pull,
                );
            }
            SpringKind::Torsion(spring) => {
                let turn = linkage.turn_at(spring.joint, pose, bent);
                twist(&mut loads, leg, spring, turn);
            }
        }
    }
    loads
}

/// Energy stored in all springs at a pose (J), from where each has none or, for torsion springs,
/// from gear down: ½·F²/k, the work of p·Vⁿ from the longest length, ½·k·θ² − M₀·θ (any text on
/// mechanics and on thermodynamics).
#[must_use]
pub fn spring_energy(leg: &Leg, linkage: &Linkage, pose: &Pose) -> f64 {
    let length = |first: &SpringEnd, second: &SpringEnd| {
        (placed(leg, linkage, pose, second) - placed(leg, linkage, pose, first)).norm()
    };
    let energy = |spring: &Spring| match &spring.kind {
        SpringKind::Linear(s) => {
            let length = length(&s.first, &s.second);
            let pull = linear_pull(s, length);
            if s.rate > 0.0 {
                0.5 * pull * pull / s.rate
            } else {
                pull * length
            }
        }
        SpringKind::Gas(s) => gas_energy(s, length(&s.first, &s.second)),
        SpringKind::Torsion(s) => {
            let turn = linkage.turn_at(s.joint, pose, None);
            (0.5 * s.rate * turn - s.moment_at_down) * turn
        }
    };
    leg.springs.iter().map(energy).sum()
}

fn gas_energy(s: &GasSpring, length: f64) -> f64 {
    let inward = s.longest - length;
    let push = gas_push(s, length);
    match s.law {
        GasLaw::Polytropic { exponent } if s.force_longest < s.force_shortest => {
            let least = (s.force_longest / s.force_shortest).powf(1.0 / exponent);
            let gas = s.force_longest * (s.longest - s.shortest) / (1.0 - least);
            let logarithm = (push / s.force_longest).ln() / exponent;
            let over = exponent - 1.0;
            // (v^(1−n) − 1)/(n − 1), the logarithm of 1/v at n = 1
            if over.abs() < 1e-9 {
                gas * logarithm
            } else {
                gas * (over * logarithm).exp_m1() / over
            }
        }
        GasLaw::Polytropic { .. } | GasLaw::Linear => 0.5 * (s.force_longest + push) * inward,
    }
}

fn pull_together(
    loads: &mut BodyLoads,
    (leg, linkage, pose): (&Leg, &Linkage, &Pose),
    [first, second]: [&SpringEnd; 2],
    pull: impl Fn(f64) -> f64,
) {
    let (a, b) = (
        placed(leg, linkage, pose, first),
        placed(leg, linkage, pose, second),
    );
    let length = (b - a).norm();
    // ends that meet have no direction; the pull along none of them moves nothing
    let along = (b - a).try_normalize(0.0).unwrap_or_else(Vector::zeros);
    let force = along * pull(length);
    for (end, at, force) in [(first, a, force), (second, b, -force)] {
        if let Some(body) = on(loads, end.body) {
            body.push(linkage.trunnion(), at, force);
        }
    }
}

/// The loads of a body; the airframe has none.
fn on(loads: &mut BodyLoads, body: Body) -> Option<&mut Wrench> {
    match body {
        Body::Airframe => None,
        Body::Leg => Some(&mut loads.leg),
        Body::SlidingStrut => Some(&mut loads.sliding),
        Body::UpperLink => Some(&mut loads.upper),
        Body::LowerLink => Some(&mut loads.lower),
    }
}

fn twist(loads: &mut BodyLoads, leg: &Leg, spring: &TorsionSpring, turn: f64) {
    let folds = matches!(leg.brace, Brace::Folding(_));
    let moment = torsion_moment(spring, turn);
    match (spring.joint, folds) {
        (SpringJoint::Trunnion, _) => loads.leg.moment += moment,
        (SpringJoint::BracePivot, true) => loads.upper.moment += moment,
        (SpringJoint::BracePivot, false) => loads.brace += moment,
        (SpringJoint::Knee, _) => {
            loads.lower.moment += moment;
            loads.upper.moment -= moment;
        }
        (SpringJoint::LegAttach, true) => {
            loads.lower.moment += moment;
            loads.leg.moment -= moment;
        }
        (SpringJoint::LegAttach, false) => {
            loads.brace += moment;
            loads.leg.moment -= moment;
        }
    }
}
