//! The strip: what a pointer on it does, its marks, and the sheets beside the drawing.
use gearswing_app::msg::{self, Msg, PointerKind, StripPointer};
use gearswing_app::scene::{Role, ScreenPoint};
use gearswing_app::strip;
use gearswing_app::words::sheets::Sheet;
use gearswing_app::{Question, Verdict};
use gearswing_solver::{Options, solve_leg};

use crate::scenes::check;
use crate::support::{Desk, by};

fn at(x_px: f64, y_px: f64) -> ScreenPoint {
    ScreenPoint { x_px, y_px }
}

fn down(desk: &mut Desk, kind: PointerKind, x_px: f64) -> f64 {
    let at = at(x_px, 40.0);
    desk.send(Msg::StripPointer(StripPointer::Down { kind, at }));
    desk.state.session.progress
}

fn drag(desk: &mut Desk, to: ScreenPoint) -> f64 {
    let kind = PointerKind::Touch;
    desk.send(Msg::StripPointer(StripPointer::Drag { kind, at: to }));
    desk.state.session.progress
}

/// On every width and with mouse and finger, travel never goes back while the pointer goes on; both ends of the way
/// and every mark are reached exactly.
#[test]
fn the_cursor_follows_and_meets_every_mark() {
    for width_px in [320.0, 390.0, 844.0, 1400.0] {
        for kind in [PointerKind::Mouse, PointerKind::Touch] {
            let mut desk = Desk::demo();
            desk.send(Msg::View(msg::View::StripSize {
                width_px,
                height_px: 100.0,
            }));
            for leg in 0..3 {
                desk.send(Msg::View(msg::View::SelectLeg { leg }));
                let page = desk.page();
                let (min, max) = (page.transport.min, page.transport.max);
                let mut reached: Vec<f64> = Vec::new();
                let mut x_px = 0.0;
                while x_px <= width_px {
                    let progress = down(&mut desk, kind, x_px);
                    if let Some(before) = reached.last() {
                        assert!(progress >= *before, "{before} to {progress} at {x_px} px");
                    }
                    reached.push(progress);
                    x_px += 0.5;
                }
                assert_eq!((reached[0], reached[reached.len() - 1]), (min, max));
                let marks = page.transport.marks;
                assert!(marks.len() > 2, "{marks:?}");
                // a mark in reach of another one is met by the presses beside the play
                let wide = 2.0 * 12.0 * (max - min) / width_px;
                for (i, mark) in marks.iter().enumerate() {
                    let others = marks.iter().enumerate().filter(|(k, _)| *k != i);
                    let alone = others
                        .into_iter()
                        .all(|(_, other)| (other.progress - mark.progress).abs() > wide);
                    if alone && mark.progress >= 0.0 {
                        assert!(reached.contains(&mark.progress), "{mark:?}");
                    }
                }
            }
        }
    }
}

/// The presses beside the play go from mark to mark, exactly and no further.
#[test]
fn presses_go_from_mark_to_mark() {
    let mut desk = Desk::demo();
    let marks = desk.page().transport.marks;
    desk.send(Msg::Play(msg::Play::Scrub { progress: -9.0 }));
    let step = |desk: &mut Desk, up| {
        desk.send(Msg::Play(msg::Play::Mark { up }));
        desk.state.session.progress
    };
    let mut want: Vec<f64> = marks.iter().map(|mark| mark.progress).collect();
    want.dedup();
    let up: Vec<f64> = want.iter().map(|_| step(&mut desk, true)).collect();
    assert_eq!(up, want);
    let page = desk.page();
    assert!(page.transport.mark_before && !page.transport.mark_after);
    assert_eq!(step(&mut desk, true), want[want.len() - 1]);
    let back: Vec<f64> = want
        .iter()
        .skip(1)
        .map(|_| step(&mut desk, false))
        .collect();
    assert!(back.iter().rev().eq(&want[..want.len() - 1]), "{back:?}");
}

/// Slid away from the strip, a finger moves the cursor by a fifth.
#[test]
fn away_from_the_strip_it_goes_slower() {
    let mut desk = Desk::demo();
    desk.send(Msg::View(msg::View::StripSize {
        width_px: 390.0,
        height_px: 84.0,
    }));
    desk.send(Msg::Play(msg::Play::Scrub { progress: 0.3 }));
    let from = down(&mut desk, PointerKind::Touch, 150.0);
    let far = drag(&mut desk, at(200.0, 40.0)) - from;
    down(&mut desk, PointerKind::Touch, 150.0);
    drag(&mut desk, at(150.0, -80.0));
    let fine = drag(&mut desk, at(200.0, -80.0)) - from;
    assert!((fine / far - 0.2).abs() < 1e-9, "{fine} of {far}");
    desk.send(Msg::StripPointer(StripPointer::End));
    let stands = desk.state.session.progress;
    assert_eq!(drag(&mut desk, at(300.0, 40.0)), stands, "let go");
}

/// The curve is that of the answer that was pressed; contact is hatched, not only colored.
#[test]
fn the_curve_follows_the_answer_that_is_pressed() {
    let mut desk = Desk::demo();
    let pictures: Vec<_> = [Question::Clears, Question::Driven, Question::Locks]
        .into_iter()
        .map(|question| {
            desk.send(Msg::View(msg::View::GoTo { leg: 2, question }));
            assert_eq!(desk.state.session.sheet, Sheet::Answers);
            let scene = strip(&desk.state);
            check(&scene);
            let hatched = scene.marks.iter().any(|m| m.role == Role::ContactHatch);
            assert_eq!(hatched, question == Question::Clears);
            scene.marks
        })
        .collect();
    assert!(pictures[0] != pictures[1] && pictures[1] != pictures[2]);
    // at first that of the worst one
    let mut desk = Desk::demo();
    let before = strip(&desk.state).marks;
    let (verdict, line) = desk.page().drawing.worst.unwrap();
    assert_eq!(verdict, Verdict::Bad);
    assert!(line.starts_with("Does it clear? No: "), "{line}");
    desk.send(Msg::View(msg::View::GoTo {
        leg: 2,
        question: Question::Clears,
    }));
    assert_eq!(strip(&desk.state).marks, before);
}

/// Touching a point opens its measurements; dragging one leaves the sheet in hand.
#[test]
fn a_touched_point_opens_its_measurements() {
    let mut desk = Desk::demo();
    let mount = "legs[2].actuator.mount_m";
    desk.send(Msg::View(msg::View::Sheet(Sheet::Curves)));
    let from = desk.handle(mount);
    desk.press(from);
    let to = by(from, 12.0, 5.0);
    desk.drag_to(to, true);
    desk.release(to);
    assert_eq!(desk.page().sheet, Sheet::Curves);
    let from = desk.handle(mount);
    desk.press(from);
    desk.release(from);
    let page = desk.page();
    assert_eq!(page.sheet, Sheet::Measurements);
    let open = page.groups.iter().find(|group| group.open).unwrap();
    assert_eq!(open.id, "actuator");
    assert_eq!(page.sheets.iter().filter(|tab| tab.in_hand).count(), 1);
}

/// What the motion of the way in hand needs stands thick, what the other one needs thin; its mark goes along.
#[test]
fn the_way_in_hand_is_thick() {
    let mut desk = Desk::demo();
    let (leg, question) = (0, Question::Driven);
    desk.send(Msg::View(msg::View::GoTo { leg, question }));
    desk.send(Msg::View(msg::View::StripSize {
        width_px: 900.0,
        height_px: 100.0,
    }));
    let lines = |desk: &Desk, role: Role| {
        let marks = strip(&desk.state).marks.into_iter();
        let of_role = marks.filter(|mark| mark.role == role);
        of_role
            .map(|mark| format!("{:?}", mark.shape))
            .collect::<Vec<_>>()
    };
    let marks = |desk: &Desk| {
        let marks = desk.page().transport.marks.into_iter();
        marks.map(|mark| mark.text).collect::<Vec<_>>()
    };
    let up = (
        lines(&desk, Role::CurveNeeded),
        lines(&desk, Role::OtherWay),
    );
    let marks_up = marks(&desk);
    assert!(!up.0.is_empty() && !up.1.is_empty() && up.0 != up.1);
    desk.send(Msg::Play(msg::Play::Way { down: true }));
    let down = (
        lines(&desk, Role::CurveNeeded),
        lines(&desk, Role::OtherWay),
    );
    assert_eq!((down.1, down.0), up);
    let most = |marks: &[String]| {
        let found = marks.iter().find(|text| text.contains("ost pressure"));
        found.cloned()
    };
    let force = solve_leg(desk.state.gear(), leg, &Options::default())
        .unwrap()
        .force;
    assert!(most(&marks_up).is_some());
    let needs_push = force.extend_peak.is_some_and(|peak| peak.pressure > 0.0);
    assert_eq!(most(&marks(&desk)).is_some(), needs_push);
}
