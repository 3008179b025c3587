//! Springs on the paper: drawn where the solver has them, with ends that can be dragged.
use gearswing_app::msg::{self, Msg};
use gearswing_app::scene::{Role, ScreenPoint, Shape};
use gearswing_app::{drawing, fields};
use gearswing_gear::model::{Point, SpringKind};
use gearswing_solver::kinematics::Linkage;
use gearswing_solver::statics::placed;

use crate::scenes::check;
use crate::support::{Desk, by};

const LEG: usize = 2;
const PROGRESS: f64 = 0.6;

/// The demo's right main leg with one more coil, and the path of its kind.
fn sprung() -> (Desk, String) {
    let mut desk = Desk::demo();
    desk.send(Msg::View(msg::View::DrawingSize {
        width_px: 900.0,
        height_px: 620.0,
    }));
    desk.send(Msg::View(msg::View::SelectLeg { leg: LEG }));
    let at = desk.gear().legs[LEG].springs.len();
    desk.send(Msg::Field(msg::Field::Add {
        path: format!("legs[{LEG}].springs"),
    }));
    (desk, format!("legs[{LEG}].springs[{at}].kind"))
}

/// Meters to pixels, from the handles of two points of the airframe.
fn to_screen(desk: &Desk, p: Point) -> ScreenPoint {
    let leg = &desk.gear().legs[LEG];
    let (p0, a0) = (leg.trunnion, leg.actuator.mount);
    let at = |key: &str| desk.handle(&format!("legs[{LEG}].{key}"));
    let (p0_px, a0_px) = (at("trunnion_m"), at("actuator.mount_m"));
    let scale = (a0_px.x_px - p0_px.x_px).hypot(a0_px.y_px - p0_px.y_px) / (a0 - p0).norm();
    by(p0_px, scale * (p.x - p0.x), -scale * (p.y - p0.y))
}

fn far(a: ScreenPoint, b: ScreenPoint) -> f64 {
    (a.x_px - b.x_px).hypot(a.y_px - b.y_px)
}

#[test]
fn ends_go_with_the_part_that_carries_them() {
    for body in ["leg", "sliding_strut", "upper_link", "lower_link"] {
        let (mut desk, kind) = sprung();
        desk.send(Msg::Field(msg::Field::Choose {
            path: format!("{kind}.linear.second.body"),
            option: body.to_owned(),
        }));
        desk.send(Msg::Play(msg::Play::Scrub { progress: PROGRESS }));
        let leg = &desk.gear().legs[LEG];
        let linkage = Linkage::new(leg);
        let pose = linkage.pose(PROGRESS).unwrap();
        let SpringKind::Linear(spring) = &leg.springs.last().unwrap().kind else {
            panic!("a new spring is a coil");
        };
        let first = desk.handle(&format!("{kind}.linear.first.point_m"));
        let stands = far(first, to_screen(&desk, spring.first.point)) < 0.1;
        assert!(stands, "its other end is on the airframe");
        let wanted = to_screen(&desk, placed(leg, &linkage, &pose, &spring.second));
        let handle = desk.handle(&format!("{kind}.linear.second.point_m"));
        assert!(far(handle, wanted) < 0.1, "{body}: {handle:?} {wanted:?}");
        // and the zigzag ends there
        let ends_there = drawing(&desk.state).marks.iter().any(|mark| {
            mark.role == Role::Spring
                && matches!(&mark.shape, Shape::Path { points, .. }
                    if points.last().is_some_and(|last| far(*last, wanted) < 0.1))
        });
        assert!(ends_there, "{body}");
    }
}

#[test]
fn an_end_is_dragged_and_every_kind_is_drawn() {
    let (mut desk, kind) = sprung();
    let path = format!("{kind}.linear.first.point_m");
    let from = desk.handle(&path);
    let number = |desk: &Desk| fields::number(desk.state.gear(), &format!("{path}[0]"));
    let before = number(&desk);
    desk.press(from);
    let to = by(from, 20.0, 15.0);
    desk.drag_to(to, true);
    desk.release(to);
    assert_ne!(number(&desk), before);
    assert!(far(desk.handle(&path), to) < 0.5);
    let lines = |desk: &Desk| {
        let scene = drawing(&desk.state);
        check(&scene);
        scene
            .marks
            .iter()
            .filter(|mark| mark.role == Role::Spring)
            .count()
    };
    // a spiral at the demo's knee besides
    for (option, count) in [("linear", 2), ("gas", 3), ("torsion", 2)] {
        desk.send(Msg::Field(msg::Field::Choose {
            path: kind.clone(),
            option: option.to_owned(),
        }));
        assert_eq!(lines(&desk), count, "{option}");
    }
}
