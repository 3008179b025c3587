//! Which kind a spring is, and what a new one starts with.
use crate::field::Field;
use crate::field::range::GAS_FORCE;
use crate::model::{
    Acts, Body, GasLaw, GasSpring, Leg, LinearSpring, Point, Spring, SpringEnd, SpringJoint,
    SpringKind, SpringSet, TorsionSpring,
};

keys! {
    body, Body: Body::Airframe => "airframe", Body::Leg => "leg",
        Body::SlidingStrut => "sliding_strut", Body::UpperLink => "upper_link",
        Body::LowerLink => "lower_link";
    acts, Acts: Acts::Both => "both", Acts::Pulls => "pulls", Acts::Pushes => "pushes";
    joint, SpringJoint: SpringJoint::Trunnion => "trunnion",
        SpringJoint::BracePivot => "brace_pivot", SpringJoint::Knee => "knee",
        SpringJoint::LegAttach => "leg_attach";
}

/// Key of the option taken within a spring.
pub(super) fn chosen(spring: &Spring, field: Field) -> Option<&'static str> {
    Some(match (&spring.kind, field) {
        (SpringKind::Linear(_), Field::SpringType) => "linear",
        (SpringKind::Gas(_), Field::SpringType) => "gas",
        (SpringKind::Torsion(_), Field::SpringType) => "torsion",
        (SpringKind::Linear(s), Field::LinearFirstBody) => body::key(s.first.body),
        (SpringKind::Linear(s), Field::LinearSecondBody) => body::key(s.second.body),
        (SpringKind::Linear(s), Field::SpringActs) => acts::key(s.acts),
        (SpringKind::Linear(s), Field::SpringSet) => match s.set {
            SpringSet::FreeLength { .. } => "free_length",
            SpringSet::ForceAtDown { .. } => "force_at_down",
        },
        (SpringKind::Gas(s), Field::GasFirstBody) => body::key(s.first.body),
        (SpringKind::Gas(s), Field::GasSecondBody) => body::key(s.second.body),
        (SpringKind::Gas(s), Field::GasSpringLaw) => match s.law {
            GasLaw::Linear => "linear",
            GasLaw::Polytropic { .. } => "polytropic",
        },
        (SpringKind::Torsion(s), Field::TorsionJoint) => joint::key(s.joint),
        _ => return None,
    })
}

/// Takes another kind of spring, between the same points.
pub(super) fn choose_kind(leg: &mut Leg, at: usize, option: &str) -> Option<()> {
    let ends = match &leg.springs.get(at)?.kind {
        SpringKind::Linear(s) => [s.first, s.second],
        SpringKind::Gas(s) => [s.first, s.second],
        SpringKind::Torsion(_) => first_ends(leg),
    };
    leg.springs.get_mut(at)?.kind = first_kind(option, ends)?;
    Some(())
}

/// Takes an option within a spring.
pub(super) fn choose(spring: &mut Spring, field: Field, option: &str) -> Option<()> {
    match (&mut spring.kind, field) {
        (SpringKind::Linear(s), Field::LinearFirstBody) => s.first.body = body::value(option)?,
        (SpringKind::Linear(s), Field::LinearSecondBody) => s.second.body = body::value(option)?,
        (SpringKind::Linear(s), Field::SpringActs) => s.acts = acts::value(option)?,
        (SpringKind::Linear(s), Field::SpringSet) => {
            // the same spring, said the other way
            let down = (s.second.point - s.first.point).norm();
            s.set = match (option, s.set) {
                ("free_length", SpringSet::ForceAtDown { force }) => {
                    let stretch = if s.rate > 0.0 { force / s.rate } else { 0.0 };
                    SpringSet::FreeLength {
                        length: down - stretch,
                    }
                }
                ("force_at_down", SpringSet::FreeLength { length }) => SpringSet::ForceAtDown {
                    force: s.rate * (down - length),
                },
                _ => return None,
            };
        }
        (SpringKind::Gas(s), Field::GasFirstBody) => s.first.body = body::value(option)?,
        (SpringKind::Gas(s), Field::GasSecondBody) => s.second.body = body::value(option)?,
        (SpringKind::Gas(s), Field::GasSpringLaw) => {
            s.law = match option {
                "linear" => GasLaw::Linear,
                "polytropic" => GasLaw::Polytropic { exponent: 1.0 },
                _ => return None,
            }
        }
        (SpringKind::Torsion(s), Field::TorsionJoint) => s.joint = joint::value(option)?,
        _ => return None,
    }
    Some(())
}

/// Rate that a new spring starts with (N/m): no force until somebody says how much.
const FIRST_RATE: f64 = 0.0;
/// Push that a new gas spring starts with (N), the least that is allowed.
const FIRST_PUSH: f64 = GAS_FORCE.min;

fn length([first, second]: &[SpringEnd; 2]) -> f64 {
    (second.point - first.point).norm()
}

/// A spring at rest between two ends.
fn first_linear(ends: [SpringEnd; 2]) -> SpringKind {
    let length = length(&ends);
    let [first, second] = ends;
    SpringKind::Linear(LinearSpring {
        first,
        second,
        rate: FIRST_RATE,
        set: SpringSet::FreeLength { length },
        acts: Acts::Both,
    })
}

fn first_kind(option: &str, ends: [SpringEnd; 2]) -> Option<SpringKind> {
    let length = length(&ends);
    let [first, second] = ends;
    Some(match option {
        "linear" => first_linear(ends),
        "gas" => SpringKind::Gas(GasSpring {
            first,
            second,
            shortest: 0.2 * length,
            longest: 3.0 * length,
            force_longest: FIRST_PUSH,
            force_shortest: FIRST_PUSH,
            law: GasLaw::Linear,
        }),
        "torsion" => SpringKind::Torsion(TorsionSpring {
            joint: SpringJoint::Trunnion,
            rate: 0.0,
            moment_at_down: 0.0,
        }),
        _ => return None,
    })
}

/// From beside the trunnion to halfway down the leg.
fn first_ends(leg: &Leg) -> [SpringEnd; 2] {
    let down = leg.strut.axle - leg.trunnion;
    let end = |body, point: Point| SpringEnd { body, point };
    let side = crate::model::Vector::new(-down.y, down.x) * 0.25;
    [
        end(Body::Airframe, leg.trunnion + side),
        end(Body::Leg, leg.trunnion + down * 0.5),
    ]
}

/// A new spring of no force, to be filled in.
#[must_use]
pub fn first_spring(leg: &Leg, name: String) -> Spring {
    Spring {
        name,
        kind: first_linear(first_ends(leg)),
    }
}
