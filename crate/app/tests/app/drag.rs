//! Moving points by pointer and keys.
use gearswing_app::msg::{self, Direction, Modifiers, Msg, Pointer, PointerKind};
use gearswing_app::view::PointerStyle;
use gearswing_app::{drawing, fields};
use gearswing_units::StepSize;

use crate::support::{Desk, by};

const MOUNT: &str = "legs[2].actuator.mount_m";

fn desk() -> Desk {
    let mut desk = Desk::demo();
    desk.send(Msg::View(msg::View::SelectLeg { leg: 2 }));
    desk
}

#[test]
fn a_drag_is_one_step_and_follows_the_pointer() {
    let mut desk = desk();
    let before = desk.gear();
    let from = desk.handle(MOUNT);
    desk.press(from);
    for i in 1..=10 {
        desk.drag_to(by(from, 3.0 * f64::from(i), -2.0 * f64::from(i)), true);
    }
    let to = by(from, 30.0, -20.0);
    let now = desk.handle(MOUNT);
    assert!((now.x_px - to.x_px).abs() < 0.5 && (now.y_px - to.y_px).abs() < 0.5);
    desk.release(to);
    assert_ne!(desk.gear(), before);
    assert!(!desk.stored.is_empty(), "stored at the end of the drag");
    desk.send(Msg::History(msg::History::Undo));
    assert_eq!(desk.gear(), before);
    assert!(!desk.page().toolbar.can_undo);
}

#[test]
fn escape_gives_a_drag_up() {
    let mut desk = desk();
    desk.enter("legs[2].actuator.bore_m", "1.5");
    desk.send(Msg::History(msg::History::Undo));
    assert!(desk.page().toolbar.can_redo);
    let before = desk.gear();
    let from = desk.handle(MOUNT);
    desk.press(from);
    desk.drag_to(by(from, 40.0, 0.0), true);
    assert_ne!(desk.gear(), before);
    desk.send(Msg::Key(msg::Key::Escape));
    assert_eq!(desk.gear(), before);
    desk.drag_to(by(from, 60.0, 0.0), true);
    desk.release(by(from, 60.0, 0.0));
    assert_eq!(desk.gear(), before, "the rest of the drag does nothing");
    assert!(
        desk.page().toolbar.can_redo,
        "what could be redone still can"
    );
}

#[test]
fn a_click_only_selects() {
    let mut desk = desk();
    let before = desk.gear();
    let at = desk.handle(MOUNT);
    desk.press(at);
    desk.release(at);
    assert_eq!(desk.gear(), before);
    assert_eq!(desk.state.session.selection.as_deref(), Some(MOUNT));
    let page = desk.page();
    let open: Vec<_> = page.groups.iter().filter(|group| group.open).collect();
    assert_eq!(open.len(), 1);
    assert!(open[0].marked && open[0].rows.iter().any(|row| row.marked));
}

#[test]
fn a_turned_point_maps_back_to_gear_down() {
    let mut desk = desk();
    desk.send(Msg::Play(msg::Play::Scrub { progress: 0.6 }));
    let path = "legs[2].strut.axle_m";
    let before = fields::point(desk.state.gear(), path).unwrap();
    let from = desk.handle(path);
    desk.press(from);
    desk.drag_to(by(from, 14.0, 9.0), true);
    let now = desk.handle(path);
    // the swing itself may change a little with the point, the pointer is followed all the same
    assert!(
        (now.x_px - from.x_px - 14.0).abs() < 1.0,
        "{now:?} {from:?}"
    );
    assert!((now.y_px - from.y_px - 9.0).abs() < 1.0, "{now:?} {from:?}");
    let moved = fields::point(desk.state.gear(), path).unwrap() - before;
    let scale = 1.0 / drawing_scale(&desk);
    let expected = 14.0_f64.hypot(9.0) * scale;
    assert!((moved.norm() / expected - 1.0).abs() < 0.05);
    desk.release(by(from, 14.0, 9.0));
}

/// Pixels in a meter, from two handles.
fn drawing_scale(desk: &Desk) -> f64 {
    let gear = desk.state.gear();
    let (a, b) = ("legs[2].trunnion_m", MOUNT);
    let metres = (fields::point(gear, a).unwrap() - fields::point(gear, b).unwrap()).norm();
    let (a, b) = (desk.handle(a), desk.handle(b));
    (a.x_px - b.x_px).hypot(a.y_px - b.y_px) / metres
}

#[test]
fn the_knee_is_set_with_the_gear_down() {
    let mut desk = desk();
    desk.send(Msg::Play(msg::Play::Scrub { progress: 0.5 }));
    let knee = "legs[2].brace.folding.knee_m";
    let scene = drawing(&desk.state);
    let handle = scene.handles.iter().find(|h| h.id == knee).unwrap().clone();
    assert!(!handle.movable);
    let before = desk.gear();
    desk.press(handle.at);
    desk.drag_to(by(handle.at, 30.0, 30.0), true);
    desk.release(by(handle.at, 30.0, 30.0));
    assert_eq!(desk.gear(), before);
    let page = desk.page();
    assert_eq!(page.transport.value, page.transport.min);
    assert!(page.drawing.drag_text.contains("gear down") || page.drawing.drag_text.is_empty());
    let at = desk.handle(knee);
    desk.press(at);
    desk.drag_to(by(at, 0.0, 12.0), true);
    desk.release(by(at, 0.0, 12.0));
    assert_ne!(desk.gear(), before);
}

#[test]
fn arrow_presses_on_one_point_are_one_step() {
    let mut desk = desk();
    let before = desk.gear();
    let nudge = |handle: &str, direction, size| {
        Msg::Key(msg::Key::Nudge {
            handle: handle.to_owned(),
            direction,
            size,
        })
    };
    for _ in 0..5 {
        desk.send(nudge(MOUNT, Direction::Right, StepSize::Normal));
    }
    let moved = fields::point(desk.state.gear(), MOUNT).unwrap().x
        - fields::point(&before, MOUNT).unwrap().x;
    assert!(
        (moved - 5.0 * 0.0254 / 16.0).abs() < 1e-9,
        "5/16 in: {moved}"
    );
    let middle = desk.gear();
    desk.send(nudge("legs[2].trunnion_m", Direction::Up, StepSize::Fine));
    desk.send(Msg::History(msg::History::Undo));
    assert_eq!(desk.gear(), middle);
    desk.send(Msg::History(msg::History::Undo));
    assert_eq!(desk.gear(), before);
}

#[test]
fn a_point_snaps_level_and_not_with_the_key_held() {
    let mut desk = desk();
    desk.send(Msg::Play(msg::Play::Scrub { progress: -2.0 }));
    let trunnion = fields::point(desk.state.gear(), "legs[2].trunnion_m").unwrap();
    let from = desk.handle(MOUNT);
    let level = desk.handle("legs[2].trunnion_m");
    desk.press(from);
    // aside, so that it is not plumb with the trunnion as well
    let to = by(from, 40.0, level.y_px - from.y_px + 3.0);
    desk.drag_to(to, false);
    let y = fields::point(desk.state.gear(), MOUNT).unwrap().y;
    assert_eq!(y, trunnion.y);
    assert!(desk.page().drawing.drag_text.contains("level with"));
    let snapped = drawing(&desk.state)
        .marks
        .iter()
        .any(|mark| mark.role == gearswing_app::scene::Role::Snap);
    assert!(snapped);
    desk.drag_to(to, true);
    let y = fields::point(desk.state.gear(), MOUNT).unwrap().y;
    assert_ne!(y, trunnion.y);
    desk.release(to);
}

#[test]
fn empty_space_pans_and_two_fingers_zoom() {
    let mut desk = desk();
    let before = desk.gear();
    let scene = drawing(&desk.state);
    let free = (0..40)
        .map(|i| gearswing_app::scene::ScreenPoint {
            x_px: 15.0 * f64::from(i) + 5.0,
            y_px: 5.0,
        })
        .find(|p| {
            scene
                .handles
                .iter()
                .all(|h| (h.at.x_px - p.x_px).hypot(h.at.y_px - p.y_px) > 80.0)
        })
        .unwrap();
    let was = desk.handle(MOUNT);
    desk.press(free);
    desk.drag_to(by(free, 21.0, 13.0), false);
    assert_eq!(desk.page().drawing.pointer, PointerStyle::Moving);
    desk.release(by(free, 21.0, 13.0));
    let now = desk.handle(MOUNT);
    assert!((now.x_px - was.x_px - 21.0).abs() < 1e-6);
    assert!((now.y_px - was.y_px - 13.0).abs() < 1e-6);
    let scale = drawing_scale(&desk);
    let touch = |id, at| Pointer::Down {
        id,
        kind: PointerKind::Touch,
        at,
        modifiers: Modifiers::default(),
    };
    desk.send(Msg::Pointer(touch(7, free)));
    desk.send(Msg::Pointer(touch(8, by(free, 100.0, 0.0))));
    desk.send(Msg::Pointer(Pointer::Move {
        id: 8,
        kind: PointerKind::Touch,
        at: by(free, 150.0, 0.0),
        modifiers: Modifiers::default(),
    }));
    assert!((drawing_scale(&desk) / scale - 1.5).abs() < 1e-6);
    for id in [7, 8] {
        desk.send(Msg::Pointer(Pointer::Cancel { id }));
    }
    desk.send(Msg::View(msg::View::Fit));
    assert_eq!(desk.gear(), before);
}

/// What the label says beside the place is what the answers have, and by how much they have changed since the press.
#[test]
fn a_moved_point_tells_which_way_is_better() {
    let mut desk = desk();
    let said = |desk: &Desk| desk.page().drawing.drag_text;
    // the mount changes what is to spare
    let from = desk.handle(MOUNT);
    desk.press(from);
    desk.drag_to(by(from, 0.0, 25.0), true);
    let one = said(&desk);
    desk.drag_to(by(from, 0.0, -25.0), true);
    let other = said(&desk);
    assert!(one.contains(". Clearance −"), "{one}");
    assert!(one.contains("better") || one.contains("worse"), "{one}");
    assert!(
        other.contains("better") || other.contains("worse"),
        "{other}"
    );
    assert_ne!(
        one.contains("better"),
        other.contains("better"),
        "{one}\n{other}"
    );
}

/// A finger is coarse: what it has let go is moved by steps until that is done.
#[test]
fn what_a_finger_lets_go_is_moved_by_steps() {
    let mut desk = desk();
    let finger = |desk: &mut Desk, at| {
        desk.send(Msg::Pointer(msg::Pointer::Down {
            id: 1,
            kind: msg::PointerKind::Touch,
            at,
            modifiers: msg::Modifiers::default(),
        }));
    };
    let at = desk.handle(MOUNT);
    finger(&mut desk, at);
    assert_eq!(desk.page().steps, None, "it is still dragged");
    desk.drag_to(by(at, -9.0, -5.0), true);
    desk.release(by(at, -9.0, -5.0));
    let shown = desk.page().steps.unwrap();
    assert_eq!(shown.name, "Actuator mount A0");
    assert_eq!(shown.step_text, "Step 1/16 in");
    let dragged = fields::point(desk.state.gear(), MOUNT).unwrap();
    let step = |direction| Msg::View(msg::View::Step { direction });
    desk.send(step(Direction::Right));
    desk.send(step(Direction::Right));
    desk.send(Msg::View(msg::View::FineSteps { on: true }));
    assert_eq!(desk.page().steps.unwrap().step_text, "Step 0.01 in");
    desk.send(step(Direction::Down));
    let moved = fields::point(desk.state.gear(), MOUNT).unwrap() - dragged;
    assert!((moved.x - 0.0254 / 8.0).abs() < 1e-9, "{moved}");
    assert!((moved.y + 0.000_254).abs() < 1e-9, "{moved}");
    assert!(desk.page().drawing.drag_text.contains(" retracted"));
    // all steps are one act, the drag before them another
    desk.send(Msg::History(msg::History::Undo));
    assert_eq!(fields::point(desk.state.gear(), MOUNT).unwrap(), dragged);
    desk.send(Msg::View(msg::View::StepsDone));
    assert_eq!(desk.page().steps, None);
    desk.send(step(Direction::Right));
    assert_eq!(fields::point(desk.state.gear(), MOUNT).unwrap(), dragged);
    // a mouse needs none
    let at = desk.handle(MOUNT);
    desk.press(at);
    desk.drag_to(by(at, -9.0, -5.0), true);
    desk.release(by(at, -9.0, -5.0));
    assert_eq!(desk.page().steps, None);
}

/// The label is of the point that is selected, and the steps are of the leg in hand.
#[test]
fn label_and_steps_stay_with_their_point() {
    let mut desk = desk();
    desk.send(Msg::Key(msg::Key::Nudge {
        handle: "legs[2].strut.axle_m".to_owned(),
        direction: Direction::Up,
        size: StepSize::Normal,
    }));
    assert!(desk.page().drawing.drag_text.contains("Axle"));
    desk.send(Msg::Field(msg::Field::Focus {
        path: format!("{MOUNT}[0]"),
    }));
    assert_eq!(desk.page().drawing.drag_text, "");
    let touched = |desk: &mut Desk| {
        let at = desk.handle(MOUNT);
        desk.send(Msg::Pointer(msg::Pointer::Down {
            id: 1,
            kind: PointerKind::Touch,
            at,
            modifiers: Modifiers::default(),
        }));
        desk.drag_to(by(at, -9.0, -5.0), true);
        desk.release(by(at, -9.0, -5.0));
        assert!(desk.page().steps.is_some());
    };
    touched(&mut desk);
    desk.send(Msg::View(msg::View::SelectLeg { leg: 0 }));
    assert_eq!(desk.page().steps, None);
    desk.send(Msg::View(msg::View::SelectLeg { leg: 2 }));
    touched(&mut desk);
    desk.send(Msg::File(msg::File::OpenDemo));
    assert_eq!(desk.page().steps, None);
}

#[test]
fn a_drag_that_is_given_up_makes_no_file_of_the_demo() {
    let mut desk = desk();
    let from = desk.handle(MOUNT);
    desk.press(from);
    desk.drag_to(by(from, -10.0, 0.0), true);
    desk.send(Msg::Key(msg::Key::Escape));
    desk.release(from);
    let toolbar = desk.page().toolbar;
    assert!(toolbar.is_demo, "{}", toolbar.stored_text);
    assert!(desk.stored.is_empty());
    assert!(!toolbar.can_undo);
}
