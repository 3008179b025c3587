//! Where a path leads within a spring, which kind it is, and what a new one starts with.
use gearswing_gear::model::{
    Acts, Body, GasLaw, GasSpring, Leg, LinearSpring, Point, Spring, SpringEnd, SpringJoint,
    SpringKind, SpringSet, TorsionSpring,
};

use super::path::{Seg, Seg::Key};
use super::slot::{PlaceMut, PlaceRef, in_point, in_point_mut};

macro_rules! places {
    ($place:ident, $spring:ident, $end:ident, $coordinate:ident, $($m:tt)?) => {
        /// Follows a path within a spring.
        pub(super) fn $spring<'g>(
            kind: &'g $($m)? SpringKind,
            rest: &[Seg<'_>],
        ) -> Option<$place<'g>> {
            use $place::Number;
            Some(match (kind, rest) {
                (SpringKind::Linear(s), [Key("linear"), rest @ ..]) => match rest {
                    [Key("first"), rest @ ..] => return $end(&$($m)? s.first, rest),
                    [Key("second"), rest @ ..] => return $end(&$($m)? s.second, rest),
                    [Key("rate_n_m")] => Number(&$($m)? s.rate),
                    [Key("set"), rest @ ..] => match (&$($m)? s.set, rest) {
                        (
                            SpringSet::FreeLength { length },
                            [Key("free_length"), Key("length_m")],
                        ) => Number(length),
                        (
                            SpringSet::ForceAtDown { force },
                            [Key("force_at_down"), Key("force_n")],
                        ) => Number(force),
                        _ => return None,
                    },
                    _ => return None,
                },
                (SpringKind::Gas(s), [Key("gas"), rest @ ..]) => match rest {
                    [Key("first"), rest @ ..] => return $end(&$($m)? s.first, rest),
                    [Key("second"), rest @ ..] => return $end(&$($m)? s.second, rest),
                    [Key("shortest_m")] => Number(&$($m)? s.shortest),
                    [Key("longest_m")] => Number(&$($m)? s.longest),
                    [Key("force_longest_n")] => Number(&$($m)? s.force_longest),
                    [Key("force_shortest_n")] => Number(&$($m)? s.force_shortest),
                    [Key("law"), Key("polytropic"), Key("exponent")] => {
                        match &$($m)? s.law {
                            GasLaw::Polytropic { exponent } => Number(exponent),
                            GasLaw::Linear => return None,
                        }
                    }
                    _ => return None,
                },
                (SpringKind::Torsion(s), [Key("torsion"), Key(key)]) => Number(match *key {
                    "rate_n_m_rad" => &$($m)? s.rate,
                    "moment_at_down_n_m" => &$($m)? s.moment_at_down,
                    _ => return None,
                }),
                _ => return None,
            })
        }

        fn $end<'g>(end: &'g $($m)? SpringEnd, rest: &[Seg<'_>]) -> Option<$place<'g>> {
            match rest {
                [Key("point_m"), rest @ ..] => $coordinate(&$($m)? end.point, rest),
                _ => None,
            }
        }
    };
}

places!(PlaceRef, in_spring, in_end, in_point,);
places!(PlaceMut, in_spring_mut, in_end_mut, in_point_mut, mut);

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
pub(super) fn chosen(spring: &Spring, rest: &[Seg<'_>]) -> Option<&'static str> {
    Some(match (&spring.kind, rest) {
        (SpringKind::Linear(_), []) => "linear",
        (SpringKind::Gas(_), []) => "gas",
        (SpringKind::Torsion(_), []) => "torsion",
        (SpringKind::Linear(s), [Key("linear"), rest @ ..]) => match rest {
            [Key("first"), Key("body")] => body::key(s.first.body),
            [Key("second"), Key("body")] => body::key(s.second.body),
            [Key("acts")] => acts::key(s.acts),
            [Key("set")] => match s.set {
                SpringSet::FreeLength { .. } => "free_length",
                SpringSet::ForceAtDown { .. } => "force_at_down",
            },
            _ => return None,
        },
        (SpringKind::Gas(s), [Key("gas"), rest @ ..]) => match rest {
            [Key("first"), Key("body")] => body::key(s.first.body),
            [Key("second"), Key("body")] => body::key(s.second.body),
            [Key("law")] => match s.law {
                GasLaw::Linear => "linear",
                GasLaw::Polytropic { .. } => "polytropic",
            },
            _ => return None,
        },
        (SpringKind::Torsion(s), [Key("torsion"), Key("joint")]) => joint::key(s.joint),
        _ => return None,
    })
}

/// Takes an option within a spring of `leg`.
pub(super) fn choose(leg: &mut Leg, at: usize, rest: &[Seg<'_>], option: &str) -> Option<()> {
    if rest.is_empty() {
        let ends = match &leg.springs.get(at)?.kind {
            SpringKind::Linear(s) => [s.first, s.second],
            SpringKind::Gas(s) => [s.first, s.second],
            SpringKind::Torsion(_) => first_ends(leg),
        };
        leg.springs.get_mut(at)?.kind = first_kind(option, ends)?;
        return Some(());
    }
    match (&mut leg.springs.get_mut(at)?.kind, rest) {
        (SpringKind::Linear(s), [Key("linear"), rest @ ..]) => match rest {
            [Key("first"), Key("body")] => s.first.body = body::value(option)?,
            [Key("second"), Key("body")] => s.second.body = body::value(option)?,
            [Key("acts")] => s.acts = acts::value(option)?,
            [Key("set")] => {
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
            _ => return None,
        },
        (SpringKind::Gas(s), [Key("gas"), rest @ ..]) => match rest {
            [Key("first"), Key("body")] => s.first.body = body::value(option)?,
            [Key("second"), Key("body")] => s.second.body = body::value(option)?,
            [Key("law")] => {
                s.law = match option {
                    "linear" => GasLaw::Linear,
                    "polytropic" => GasLaw::Polytropic { exponent: 1.0 },
                    _ => return None,
                }
            }
            _ => return None,
        },
        (SpringKind::Torsion(s), [Key("torsion"), Key("joint")]) => {
            s.joint = joint::value(option)?;
        }
        _ => return None,
    }
    Some(())
}

/// Rate that a new spring starts with [N/m]: no force until somebody says how much.
const FIRST_RATE: f64 = 0.0;
/// Push that a new gas spring starts with [N], the least that is allowed.
const FIRST_PUSH: f64 = 0.1;

fn first_kind(option: &str, [first, second]: [SpringEnd; 2]) -> Option<SpringKind> {
    let length = (second.point - first.point).norm();
    Some(match option {
        "linear" => SpringKind::Linear(LinearSpring {
            first,
            second,
            rate: FIRST_RATE,
            set: SpringSet::FreeLength { length },
            acts: Acts::Both,
        }),
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
    let side = gearswing_gear::model::Vector::new(-down.y, down.x) * 0.25;
    [
        end(Body::Airframe, leg.trunnion + side),
        end(Body::Leg, leg.trunnion + down * 0.5),
    ]
}

/// A new spring of no force, to be filled in.
pub(super) fn first_spring(leg: &Leg, name: String) -> Spring {
    let ends = first_ends(leg);
    let length = (ends[1].point - ends[0].point).norm();
    Spring {
        name,
        kind: SpringKind::Linear(LinearSpring {
            first: ends[0],
            second: ends[1],
            rate: FIRST_RATE,
            set: SpringSet::FreeLength { length },
            acts: Acts::Both,
        }),
    }
}
