//! The springs as they stand, in the symbols of mechanism sketches: a zigzag for a coil or a cord,
//! a cylinder with its rod for a gas spring, a spiral for a coil about a joint.
use std::f64::consts::TAU;

use gearswing_gear::model::{Body, Brace, Leg, Point, SpringEnd, SpringJoint, SpringKind};
use gearswing_report::name_words;
use gearswing_solver::kinematics::Pose;
use gearswing_solver::statics::placed;

use super::labels::Placer;
use super::{Carrier, Pen, Role, ScreenPoint, Shape};
use crate::state::Good;

/// Strokes of a zigzag.
const STROKES: u32 = 12;
/// Half of its width (CSS px).
const HALF_PX: f64 = 5.0;
/// Share of the length that is straight at each end (ratio).
const LEAD: f64 = 0.15;
/// Share of a gas spring that is its cylinder (ratio).
const CYLINDER: f64 = 0.55;
/// Spiral about a joint: inner and outer radius (CSS px), turns, points of a turn.
const SPIRAL_PX: (f64, f64) = (8.0, 15.0);
const TURNS: f64 = 1.75;
const TURN_POINTS: f64 = 16.0;

/// The part that carries the end of a spring.
pub(super) fn carrier(body: Body) -> Carrier {
    match body {
        Body::Airframe => Carrier::Airframe,
        Body::Leg => Carrier::Leg,
        Body::SlidingStrut => Carrier::Axle,
        Body::UpperLink => Carrier::UpperLink,
        Body::LowerLink => Carrier::LowerLink,
    }
}

/// Key of a spring's kind and its ends with their keys; one about a joint has none.
pub(super) fn ends(kind: &SpringKind) -> Option<(&'static str, [(&'static str, SpringEnd); 2])> {
    let pair = |first, second| [("first", first), ("second", second)];
    match kind {
        SpringKind::Linear(spring) => Some(("linear", pair(spring.first, spring.second))),
        SpringKind::Gas(spring) => Some(("gas", pair(spring.first, spring.second))),
        SpringKind::Torsion(_) => None,
    }
}

/// Draws every spring; gives its name and where that belongs.
pub(super) fn springs(pen: &mut Pen, good: &Good, pose: &Pose) -> Vec<(String, ScreenPoint)> {
    let leg = &good.leg;
    let mut named = Vec::with_capacity(leg.springs.len());
    for spring in &leg.springs {
        let name = || name_words(&spring.name);
        let at = match (&spring.kind, ends(&spring.kind)) {
            (SpringKind::Torsion(coil), _) => joint(leg, pose, coil.joint),
            (kind, Some((_, ends))) => {
                let [from, to] = ends
                    .map(|(_, end)| pen.view.to_screen(placed(leg, good.linkage(), pose, &end)));
                if matches!(kind, SpringKind::Gas(_)) {
                    cylinder(pen, from, to);
                } else {
                    zigzag(pen, from, to);
                }
                named.push((name(), between(from, to, 0.5, 0.0)));
                continue;
            }
            _ => None,
        };
        let Some(at) = at.map(|at| pen.view.to_screen(at)) else {
            continue;
        };
        spiral(pen, at);
        named.push((name(), at));
    }
    named
}

/// The names of the springs beside them.
pub(super) fn names(pen: &mut Pen, placer: &mut Placer, named: &[(String, ScreenPoint)]) {
    for (name, at) in named.iter().filter(|(name, _)| !name.is_empty()) {
        placer.label(pen, Role::Label, *at, name);
    }
}

/// Where a joint stands (m); without the brace it names there is none.
fn joint(leg: &Leg, pose: &Pose, joint: SpringJoint) -> Option<Point> {
    match joint {
        SpringJoint::Trunnion => Some(leg.trunnion),
        SpringJoint::BracePivot => match &leg.brace {
            Brace::None => None,
            Brace::Folding(brace) => Some(brace.airframe_pivot),
            Brace::Sliding(brace) => Some(brace.airframe_pivot),
        },
        SpringJoint::Knee => pose.knee,
        SpringJoint::LegAttach => pose.brace_attach,
    }
}

/// A share of the way from one point to the other, and so far to the side (CSS px).
fn between(from: ScreenPoint, to: ScreenPoint, share: f64, aside_px: f64) -> ScreenPoint {
    let (x, y) = (to.x_px - from.x_px, to.y_px - from.y_px);
    let length = x.hypot(y);
    let aside = if length > 0.0 { aside_px / length } else { 0.0 };
    ScreenPoint {
        x_px: from.x_px + share * x - aside * y,
        y_px: from.y_px + share * y + aside * x,
    }
}

fn open_line(pen: &mut Pen, points: Vec<ScreenPoint>) {
    let shape = Shape::Path {
        points,
        closed: false,
        filled: false,
    };
    pen.put(Role::Spring, shape);
}

fn zigzag(pen: &mut Pen, from: ScreenPoint, to: ScreenPoint) {
    let mut points = vec![from, between(from, to, LEAD, 0.0)];
    for stroke in 0..STROKES {
        let share = (f64::from(stroke) + 0.5) / f64::from(STROKES);
        let aside = if stroke % 2 == 0 { HALF_PX } else { -HALF_PX };
        let share = LEAD + share * (1.0 - 2.0 * LEAD);
        points.push(between(from, to, share, aside));
    }
    points.extend([between(from, to, 1.0 - LEAD, 0.0), to]);
    open_line(pen, points);
}

fn cylinder(pen: &mut Pen, from: ScreenPoint, to: ScreenPoint) {
    let corners = [
        (0.0, -HALF_PX),
        (0.0, HALF_PX),
        (CYLINDER, HALF_PX),
        (CYLINDER, -HALF_PX),
    ];
    let shape = Shape::Path {
        points: corners
            .map(|(share, aside)| between(from, to, share, aside))
            .to_vec(),
        closed: true,
        filled: false,
    };
    pen.put(Role::Spring, shape);
    open_line(pen, vec![between(from, to, CYLINDER, 0.0), to]);
}

fn spiral(pen: &mut Pen, at: ScreenPoint) {
    let last = TURNS * TURN_POINTS;
    let points = (0..=last as u32)
        .map(|step| {
            let share = f64::from(step) / last;
            let radius = SPIRAL_PX.0 + share * (SPIRAL_PX.1 - SPIRAL_PX.0);
            let (sin, cos) = (share * TURNS * TAU).sin_cos();
            ScreenPoint {
                x_px: at.x_px + radius * cos,
                y_px: at.y_px + radius * sin,
            }
        })
        .collect();
    open_line(pen, points);
}
