//! What is looked at: the place of an answer, and what a zoom leaves where it is.
use gearswing_app::drawing;
use gearswing_app::msg::{self, Msg};
use gearswing_app::scene::{Role, ScreenPoint, Shape};
use gearswing_solver::result::Question;
use gearswing_solver::{Options, solve_leg};

use crate::support::{Desk, by};

fn show(desk: &mut Desk, leg: usize, question: Question) {
    desk.send(Msg::View(msg::View::GoTo { leg, question }));
}

/// Scale of the drawing (px/m), from two points whose places are in the file.
fn scale(desk: &Desk, leg: usize) -> f64 {
    let model = &desk.state.gear().legs[leg];
    let (a, b) = (model.trunnion, model.actuator.mount);
    let (a_px, b_px) = (
        desk.handle(&format!("legs[{leg}].trunnion_m")),
        desk.handle(&format!("legs[{leg}].actuator.mount_m")),
    );
    (a_px.x_px - b_px.x_px).hypot(a_px.y_px - b_px.y_px) / (a - b).norm()
}

/// Middle of the ring about the tightest place.
fn ring(desk: &Desk) -> ScreenPoint {
    let scene = drawing(&desk.state);
    let ring = scene.marks.iter().find_map(|mark| match mark.shape {
        Shape::Circle { centre, .. } if mark.role == Role::Governing => Some(centre),
        _ => None,
    });
    ring.unwrap()
}

fn depth_of_contact(desk: &Desk, leg: usize) -> f64 {
    let result = solve_leg(desk.state.gear(), leg, &Options::default());
    let clearance = result.unwrap().clearance;
    let governing = clearance.governing.unwrap();
    clearance.pairs[governing].tightest.clearance.abs()
}

#[test]
fn a_place_is_shown_so_close_that_its_gap_is_seen() {
    for (width_px, height_px) in [(1000.0, 700.0), (390.0, 430.0)] {
        let mut desk = Desk::demo();
        desk.send(Msg::View(msg::View::DrawingSize {
            width_px,
            height_px,
        }));
        for leg in 0..3 {
            show(&mut desk, leg, Question::Clears);
            let at = ring(&desk);
            assert!((at.x_px - width_px / 2.0).abs() < 1.0, "{at:?}");
            assert!((at.y_px - height_px / 2.0).abs() < 1.0, "{at:?}");
            let scale = scale(&desk, leg);
            let long_px = depth_of_contact(&desk, leg) * scale;
            let seen = width_px.min(height_px) / scale;
            assert!(
                long_px > 39.0 || seen < 0.061,
                "leg {leg}: {long_px} px long, {seen} m seen"
            );
            assert!(seen > 0.059, "leg {leg}: only {seen} m seen");
        }
    }
}

#[test]
fn a_place_that_was_panned_away_comes_back() {
    let mut desk = Desk::demo();
    for question in [Question::Clears, Question::Driven, Question::Locks] {
        show(&mut desk, 2, question);
        let there = desk.handle("legs[2].trunnion_m");
        let free = ScreenPoint {
            x_px: 3.0,
            y_px: 3.0,
        };
        desk.press(free);
        desk.drag_to(by(free, 5000.0, 5000.0), false);
        desk.release(by(free, 5000.0, 5000.0));
        assert_ne!(desk.handle("legs[2].trunnion_m"), there);
        show(&mut desk, 2, question);
        assert_eq!(desk.handle("legs[2].trunnion_m"), there);
    }
}

#[test]
fn a_zoom_leaves_the_selected_point_where_it_is() {
    const MOUNT: &str = "legs[2].actuator.mount_m";
    let mut desk = Desk::demo();
    desk.send(Msg::View(msg::View::SelectLeg { leg: 2 }));
    desk.send(Msg::View(msg::View::FocusHandle {
        id: Some(MOUNT.to_owned()),
    }));
    let (at, before) = (desk.handle(MOUNT), scale(&desk, 2));
    for factor in [1.25, 1.25, 0.8] {
        desk.send(Msg::View(msg::View::Zoom { factor }));
        let now = desk.handle(MOUNT);
        assert!((now.x_px - at.x_px).hypot(now.y_px - at.y_px) < 1e-6);
    }
    assert!((scale(&desk, 2) / before - 1.25).abs() < 1e-9);

    // after the place of an answer was asked for, it is what stays
    show(&mut desk, 2, Question::Clears);
    let at = ring(&desk);
    desk.send(Msg::View(msg::View::Zoom { factor: 1.25 }));
    let now = ring(&desk);
    assert!((now.x_px - at.x_px).hypot(now.y_px - at.y_px) < 1e-6);
}
