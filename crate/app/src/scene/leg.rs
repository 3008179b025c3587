//! The leg in one pose: outlines, joints, ground symbols, center lines.
use gearswing_gear::model::{Brace, Leg, MovingPart, Point, Vector};
use gearswing_report::page::names::short;
use gearswing_solver::clearance::{PlacedOutline, leg_outlines};
use gearswing_solver::kinematics::Pose;
use gearswing_solver::result::TireState;
use gearswing_solver::tires::TireSizes;

use super::ring::ring;
use super::{Pen, Role, ScreenPoint};
use crate::state::Good;

/// Radius of a joint's circle (CSS px).
const JOINT_PX: f64 = 4.5;

/// The whole leg as it stands: thin grown tire, filled and outlined parts.
pub(crate) fn standing(pen: &mut Pen, outlines: &[PlacedOutline]) {
    let is_grown = |o: &&PlacedOutline| o.tire == Some(TireState::Grown);
    for outline in outlines.iter().filter(|o| !is_grown(o)) {
        pen.fill(Role::MovingFill, &ring(outline));
    }
    for outline in outlines.iter().filter(is_grown) {
        pen.path(Role::Grown, &ring(outline), true);
    }
    for outline in outlines.iter().filter(|o| !is_grown(o)) {
        pen.path(Role::Moving, &ring(outline), true);
    }
}

/// Outlines of a leg in a pose.
pub(crate) fn outlines(leg: &Leg, pose: &Pose) -> Vec<PlacedOutline> {
    leg_outlines(leg, &TireSizes::of(&leg.wheel.tire), pose)
}

/// The other extreme positions: down and up, or where the leg stops.
pub(crate) fn ghosts(pen: &mut Pen, good: &Good) {
    let (first, last) = good.range();
    for progress in [first, last] {
        let Some(pose) = good.pose(progress) else {
            continue;
        };
        for outline in outlines(&good.leg, &pose) {
            if outline.tire != Some(TireState::Grown) {
                pen.path(Role::Ghost, &ring(&outline), true);
            }
        }
    }
}

/// The leg as it stood in the state compared with, at the same place, and the path of its axle.
pub(crate) fn before(pen: &mut Pen, good: &Good, progress: f64) {
    let Some(pose) = good.pose(progress) else {
        return;
    };
    for outline in outlines(&good.leg, &pose) {
        if outline.tire != Some(TireState::Grown) {
            pen.path(Role::Before, &ring(&outline), true);
        }
    }
    pen.path(Role::Before, &axle_path(good), false);
}

/// Path of the axle.
fn axle_path(good: &Good) -> Vec<Point> {
    let stations = &good.result.stations;
    let all = stations.iter().step_by(6).chain(stations.last());
    all.map(|station| station.axle).collect()
}

/// Path of the axle, and the strut's center line as it stands.
pub(crate) fn centre_lines(pen: &mut Pen, good: &Good, pose: &Pose) {
    pen.path(Role::PointPath, &axle_path(good), false);
    let leg = &good.leg;
    let placed = |p: Point| leg.trunnion + pose.turn(p - leg.trunnion);
    let (bottom, top) = (placed(leg.strut.axis_bottom), placed(leg.strut.axis_top));
    let beyond = (top - bottom) * 0.08;
    pen.line(Role::CentreLine, bottom - beyond, top + beyond);
    let (ends, tick) = (pose.axle, 7.0 / pen.view.scale());
    pen.line(
        Role::CentreLine,
        ends - Vector::new(tick, 0.0),
        ends + Vector::new(tick, 0.0),
    );
    pen.line(
        Role::CentreLine,
        ends - Vector::new(0.0, tick),
        ends + Vector::new(0.0, tick),
    );
    pen.line(Role::CentreLine, leg.actuator.mount, pose.actuator_attach);
}

/// A joint as it stands: short name, place, whether it is fixed to the airframe.
pub(crate) struct Joint {
    pub(crate) name: &'static str,
    pub(crate) at: Point,
    pub(crate) fixed: bool,
}

/// Joints of a leg in a pose.
pub(crate) fn joints(leg: &Leg, pose: &Pose) -> Vec<Joint> {
    let joint = |name, at, fixed| Joint { name, at, fixed };
    let mut found = vec![joint(short::TRUNNION, leg.trunnion, true)];
    let pivot = match &leg.brace {
        Brace::None => None,
        Brace::Folding(b) => Some(b.airframe_pivot),
        Brace::Sliding(b) => Some(b.airframe_pivot),
    };
    found.extend(pivot.map(|at| joint(short::BRACE_PIVOT, at, true)));
    found.extend(pose.knee.map(|at| joint(short::KNEE, at, false)));
    found.extend(
        pose.brace_attach
            .map(|at| joint(short::BRACE_ATTACH, at, false)),
    );
    found.push(joint(short::ACTUATOR_MOUNT, leg.actuator.mount, true));
    found.push(joint(short::ACTUATOR_ATTACH, pose.actuator_attach, false));
    found.push(joint(short::AXLE, pose.axle, false));
    found
}

/// Circles at the joints, ground symbols at the fixed ones.
pub(crate) fn pins(pen: &mut Pen, joints: &[Joint]) {
    for joint in joints {
        let at = pen.view.to_screen(joint.at);
        if joint.fixed {
            ground(pen, at);
        }
        pen.circle_px(Role::Joint, at, JOINT_PX, false);
    }
}

/// The mechanism sketch's symbol of a pivot that is fixed to the frame.
fn ground(pen: &mut Pen, at: ScreenPoint) {
    let p = |x: f64, y: f64| ScreenPoint {
        x_px: at.x_px + x,
        y_px: at.y_px + y,
    };
    pen.line_px(Role::Ground, p(0.0, 0.0), p(-8.0, 13.0));
    pen.line_px(Role::Ground, p(0.0, 0.0), p(8.0, 13.0));
    pen.line_px(Role::Ground, p(-12.0, 13.0), p(12.0, 13.0));
    for i in 0..5 {
        let x = -10.0 + 5.0 * f64::from(i);
        pen.line_px(Role::Ground, p(x, 13.0), p(x - 4.0, 18.0));
    }
}

/// The part that a finding names, among outlines.
pub(crate) fn outline_of(
    outlines: &[PlacedOutline],
    part: MovingPart,
    tire: Option<TireState>,
) -> Option<&PlacedOutline> {
    outlines.iter().find(|o| o.part == part && o.tire == tire)
}
