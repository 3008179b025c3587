//! While an end of the actuator is in hand the drawing says how far the actuator reaches. What it says is held
//! against the solver's own linkage with the end there.
use gearswing_app::msg::{self, Msg};
use gearswing_app::scene::{Role, ScreenPoint, Shape};
use gearswing_app::{drawing, fields};
use gearswing_gear::model::{Leg, Point};
use gearswing_solver::kinematics::Linkage;

use crate::support::{Desk, by};

/// Lengths of the actuator with the leg down and up (m).
fn lengths(leg: &Leg) -> [f64; 2] {
    let linkage = Linkage::new(leg);
    let start = linkage.path().start();
    let length = |progress| {
        let pose = linkage.pose(progress).unwrap();
        (pose.actuator_attach - leg.actuator.mount).norm()
    };
    [length(start), length(1.0)]
}

/// The least and the largest length over the whole way (m).
fn extremes(leg: &Leg) -> (f64, f64) {
    let linkage = Linkage::new(leg);
    let start = linkage.path().start();
    let lengths = (0..=2000).map(|at| {
        let progress = start + f64::from(at) / 2000.0 * (1.0 - start);
        let pose = linkage.pose(progress).unwrap();
        (pose.actuator_attach - leg.actuator.mount).norm()
    });
    lengths.fold((f64::INFINITY, 0.0), |(least, most), length| {
        (least.min(length), most.max(length))
    })
}

fn arcs(desk: &Desk) -> Vec<Vec<ScreenPoint>> {
    let marks = drawing(&desk.state).marks;
    let arcs = marks.into_iter().filter(|mark| mark.role == Role::Reach);
    arcs.map(|mark| match mark.shape {
        Shape::Path { points, .. } => points,
        other => panic!("{other:?}"),
    })
    .collect()
}

/// The demo with a leg in hand, down, and close to an end of its actuator.
fn desk(leg: usize, end: &str) -> (Desk, String) {
    let mut desk = Desk::demo();
    let path = format!("legs[{leg}].actuator.{end}");
    desk.send(Msg::View(msg::View::SelectLeg { leg }));
    desk.send(Msg::Play(msg::Play::Scrub { progress: -2.0 }));
    desk.send(Msg::View(msg::View::DrawingSize {
        width_px: 900.0,
        height_px: 700.0,
    }));
    desk.send(Msg::View(msg::View::Fit));
    (desk, path)
}

#[test]
fn on_an_arc_the_actuator_is_at_its_end_with_the_leg_down_or_up() {
    let mut count = 0;
    for leg in 0..3 {
        for end in ["mount_m", "attach_m"] {
            let (mut desk, path) = desk(leg, end);
            assert!(arcs(&desk).is_empty(), "nothing is in hand");
            let before = desk.gear();
            let from = desk.handle(&path);
            desk.press(from);
            let found = arcs(&desk);
            assert_eq!(found.len(), 4, "leg {leg} {end}");
            // one point of each arc, a little beside it: there the end catches on it
            for (at, arc) in found.iter().enumerate() {
                let on = arc[arc.len() / 2];
                desk.drag_to(by(on, 1.0, 1.0), false);
                let model = &desk.gear().legs[leg];
                let actuator = &model.actuator;
                let ends = [actuator.shortest, actuator.longest];
                // another arc may be nearer where two cross: it is the one that is told
                let text = desk.page().drawing.drag_text;
                let [down, up] = lengths(model);
                let [retracted, extended] = ends;
                let told = [
                    ("just retracted, leg down", down - retracted),
                    ("just retracted, leg up", up - retracted),
                    ("just extended, leg down", down - extended),
                    ("just extended, leg up", up - extended),
                ];
                let told = told.into_iter().find(|(words, _)| text.contains(words));
                let (words, off) = told.unwrap_or_else(|| panic!("{text}"));
                assert!(
                    off.abs() < 1e-9,
                    "leg {leg} {end} arc {at}: {words}, {off} m"
                );
                count += 1;
                desk.drag_to(by(from, 4.0, 4.0), true);
            }
            desk.send(Msg::Key(msg::Key::Escape));
            assert_eq!(desk.gear(), before);
        }
    }
    assert_eq!(count, 24);
}

#[test]
fn what_is_left_at_both_ends_is_told() {
    let (mut desk, path) = desk(0, "mount_m");
    let from = desk.handle(&path);
    desk.press(from);
    desk.drag_to(by(from, 5.0, 5.0), true);
    let model = &desk.gear().legs[0];
    let (least, most) = extremes(model);
    let left = [
        model.actuator.longest - most,
        least - model.actuator.shortest,
    ];
    let text = desk.page().drawing.drag_text;
    let ends = [("extended", "too short"), ("retracted", "too long")];
    for (left, (end, lacks)) in left.into_iter().zip(ends) {
        let word = if left < 0.0 { lacks } else { "left" };
        let said = format!("{:.2} in {word} {end}", left.abs() / 0.0254);
        assert!(text.contains(&said), "{said}: {text}");
    }
    // in turns of the rod end too, where its pitch is known
    desk.release(from);
    desk.enter("legs[0].actuator.rod_end_pitch_m", "1/28 in");
    let from = desk.handle(&path);
    desk.press(from);
    desk.drag_to(by(from, 5.0, 5.0), true);
    let text = desk.page().drawing.drag_text;
    assert!(text.contains(" turns) "), "{text}");
}

#[test]
fn sliding_along_keeps_the_length_with_the_leg_down() {
    for end in ["mount_m", "attach_m"] {
        let (mut desk, path) = desk(0, end);
        let from = desk.handle(&path);
        desk.press(from);
        desk.release(from);
        assert_eq!(desk.page().toolbar.slide, Some(false));
        desk.send(Msg::View(msg::View::Slide { on: true }));
        let before = lengths(&desk.gear().legs[0])[0];
        let place = |desk: &Desk| -> Point { fields::point(desk.state.gear(), &path).unwrap() };
        let first = place(&desk);
        desk.press(from);
        for step in 1..12 {
            desk.drag_to(by(from, f64::from(step) * 2.0, f64::from(step)), false);
        }
        assert!((place(&desk) - first).norm() > 1e-3, "{end} stays");
        let now = lengths(&desk.gear().legs[0])[0];
        assert!((now - before).abs() < 1e-12, "{end}: {now} {before}");
        desk.release(from);
        desk.send(Msg::Key(msg::Key::Nudge {
            handle: path.clone(),
            direction: msg::Direction::Up,
            size: gearswing_units::StepSize::Normal,
        }));
        let now = lengths(&desk.gear().legs[0])[0];
        assert!((now - before).abs() < 1e-12, "{end} by keys");
    }
}

#[test]
fn no_other_point_has_arcs() {
    let (mut desk, _) = desk(0, "mount_m");
    let at = desk.handle("legs[0].trunnion_m");
    desk.press(at);
    assert!(arcs(&desk).is_empty());
    assert_eq!(desk.page().toolbar.slide, None);
}

/// The label of a point that is moved lies on the canvas and never over the point, on a desk and on a phone.
#[test]
fn the_label_leaves_the_point_in_sight() {
    let mut count = 0;
    for (width_px, height_px) in [(935.0, 597.0), (390.0, 245.0), (390.0, 400.0)] {
        for leg in 0..3 {
            let (mut desk, _) = desk(leg, "mount_m");
            desk.send(Msg::View(msg::View::DrawingSize {
                width_px,
                height_px,
            }));
            desk.send(Msg::View(msg::View::Fit));
            let joints = [
                "trunnion_m",
                "actuator.mount_m",
                "actuator.attach_m",
                "strut.axle_m",
            ];
            for joint in joints {
                let path = format!("legs[{leg}].{joint}");
                let from = desk.handle(&path);
                desk.press(from);
                desk.drag_to(by(from, 4.0, 3.0), true);
                let scene = drawing(&desk.state);
                let held = scene.handles.iter().find(|handle| handle.selected).unwrap();
                let note = scene.marks.iter().find(|mark| mark.role == Role::Note);
                let Shape::Path { points, .. } = &note.unwrap().shape else {
                    panic!("a frame");
                };
                let [low, _, high, _] = points.as_slice() else {
                    panic!("four corners");
                };
                assert!(
                    low.x_px >= 0.0 && high.x_px <= width_px,
                    "{joint}: {points:?}"
                );
                assert!(
                    low.y_px >= 0.0 && high.y_px <= height_px,
                    "{joint}: {points:?}"
                );
                let over = (low.x_px..high.x_px).contains(&held.at.x_px)
                    && (low.y_px..high.y_px).contains(&held.at.y_px);
                assert!(!over, "leg {leg} {joint} at {width_px} px: {points:?}");
                count += 1;
                desk.release(from);
                desk.send(Msg::History(msg::History::Undo));
            }
        }
    }
    assert_eq!(count, 36);
}

/// An actuator that is longest on the way, not at an end of it, is not said to have stroke left that it has not.
#[test]
fn what_is_left_counts_the_whole_way() {
    let mut desk = Desk::demo();
    desk.send(Msg::File(msg::File::New {
        starter: "folding_front".to_owned(),
    }));
    let mut model = desk.gear().legs[0].clone();
    let gearswing_gear::model::Brace::Folding(brace) = &model.brace else {
        panic!("no folding brace");
    };
    // on the upper link, near its pivot
    model.actuator.attach = brace.airframe_pivot + (brace.knee - brace.airframe_pivot) * 0.4;
    let mut found = 0;
    for at in 0..200 {
        model.actuator.mount = brace.airframe_pivot
            + gearswing_gear::model::Vector::new(
                -0.4 + 0.05 * f64::from(at % 16),
                -0.3 + 0.05 * f64::from(at / 16),
            );
        let [down, up] = lengths(&model);
        let (least, most) = extremes(&model);
        if most < down.max(up) + 0.005 {
            continue;
        }
        model.actuator.shortest = least - 0.01;
        model.actuator.longest = down.max(up) + 0.004;
        found += 1;
        let gear = gearswing_gear::model::Gear {
            legs: vec![model.clone()],
            ..desk.gear()
        };
        desk.send(Msg::File(msg::File::ImportText {
            name: "a.json".to_owned(),
            text: gearswing_gearfile::to_text(&gear).unwrap(),
        }));
        let from = desk.handle("legs[0].actuator.mount_m");
        desk.press(from);
        desk.drag_to(by(from, 4.0, 0.0), true);
        desk.drag_to(from, true);
        let text = desk.page().drawing.drag_text;
        assert!(text.contains(" too short extended"), "{text}");
        desk.release(from);
        if found > 5 {
            break;
        }
    }
    assert!(found > 5, "{found}");
}
