//! Charts over travel and against time: their texts can be read at any width.
use gearswing_app::msg::{self, Msg};
use gearswing_app::scene::{Anchor, Mark, Role, Scene, Shape};
use gearswing_app::{curves, times};
use gearswing_solver::{Options, solve_leg};

use crate::support::Desk;

/// Sides of a text's box, to half a letter: left, top, right, bottom.
fn texts(scene: &Scene) -> Vec<(String, [f64; 4])> {
    let boxed = |mark: &Mark| {
        let Shape::Text {
            at, text, anchor, ..
        } = &mark.shape
        else {
            return None;
        };
        let width = 6.0 * text.chars().count() as f64;
        let left = match anchor {
            Anchor::Start => at.x_px,
            Anchor::Middle => at.x_px - 0.5 * width,
            Anchor::End => at.x_px - width,
        };
        let sides = [left, at.y_px - 5.0, left + width, at.y_px + 5.0];
        Some((text.clone(), sides))
    };
    scene.marks.iter().filter_map(boxed).collect()
}

/// Lines that stand upright through the charts.
fn uprights(scene: &Scene) -> Vec<[f64; 3]> {
    let upright = |mark: &Mark| {
        let over_all = matches!(mark.role, Role::Cursor | Role::GridMajor | Role::CurveEnd);
        let Shape::Path { points, .. } = &mark.shape else {
            return None;
        };
        let (first, last) = (points.first()?, points.last()?);
        (over_all && first.x_px == last.x_px).then_some([first.x_px, first.y_px, last.y_px])
    };
    scene.marks.iter().filter_map(upright).collect()
}

#[test]
fn no_title_or_name_is_cut_off_or_crossed() {
    for width_px in [300.0, 390.0, 700.0, 1100.0] {
        let mut desk = Desk::demo();
        desk.send(Msg::View(msg::View::CurvesSize { width_px }));
        for share in 0..=20 {
            let share = f64::from(share) / 20.0;
            desk.send(Msg::Play(msg::Play::Scrub { progress: share }));
            let time_s = share * desk.page().times.end_s;
            desk.send(Msg::Times(msg::Times::Seek { time_s }));
            for scene in [curves(&desk.state), times(&desk.state)] {
                let lines = uprights(&scene);
                assert!(lines.len() > 5, "{lines:?}");
                let texts = texts(&scene);
                for (text, [left, top, right, bottom]) in &texts {
                    assert!(
                        width_px < 350.0 || !text.ends_with('…'),
                        "{text} at {width_px}"
                    );
                    for [x, from, to] in &lines {
                        let crossed = left < x && x < right && from < bottom && top < to;
                        assert!(!crossed, "{text} at {width_px}, {share}");
                    }
                }
                for (at, (one, [left, top, right, bottom])) in texts.iter().enumerate() {
                    for (other, [l, t, r, b]) in texts.iter().skip(at + 1) {
                        let apart = right <= l || r <= left || bottom <= t || b <= top;
                        assert!(apart, "{one} over {other} at {width_px}");
                    }
                }
            }
        }
    }
}

/// A curve begins at the first place that has a value, where it may be steepest: the nose leg's actuator
/// takes over there from the device that unlocks it.
#[test]
fn curves_begin_where_their_values_do() {
    let mut desk = Desk::demo();
    desk.send(Msg::View(msg::View::SelectLeg { leg: 0 }));
    let found = solve_leg(&desk.gear(), 0, &Options::default()).unwrap();
    let mut forces = found
        .stations
        .iter()
        .filter(|station| station.force.is_some());
    let (first, later) = (forces.next().unwrap(), forces.nth(10).unwrap());
    let mut rings = |progress: f64| {
        desk.send(Msg::Play(msg::Play::Scrub { progress }));
        let is_ring =
            |mark: &&Mark| mark.role == Role::Cursor && matches!(mark.shape, Shape::Circle { .. });
        curves(&desk.state).marks.iter().filter(is_ring).count()
    };
    // one value is so large there that its chart is cut off below it
    assert!(rings(first.progress) + 1 >= rings(later.progress));
}
