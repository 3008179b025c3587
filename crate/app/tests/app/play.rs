//! The played swing.
use gearswing_app::Effect;
use gearswing_app::msg::{self, Msg};
use gearswing_app::state::Speed;

use crate::support::Desk;

fn run(desk: &mut Desk, from_s: f64, seconds: f64) -> Vec<f64> {
    let frames = (seconds * 60.0) as usize;
    (0..=frames)
        .map(|i| {
            let time_s = from_s + i as f64 / 60.0;
            let effects = desk.send(Msg::Frame { time_s });
            assert!(effects.contains(&Effect::AskFrame));
            desk.state.session.progress
        })
        .collect()
}

#[test]
fn a_swing_takes_its_time_and_comes_back() {
    for speed in [Speed::Slow, Speed::Normal, Speed::Fast] {
        let mut desk = Desk::demo();
        desk.send(Msg::Play(msg::Play::Scrub { progress: 0.0 }));
        desk.send(Msg::Play(msg::Play::Speed(speed)));
        desk.send(Msg::Play(msg::Play::Toggle));
        let way = run(&mut desk, 100.0, speed.swing_time_s());
        assert!(
            (way.last().unwrap() - 1.0).abs() < 0.01,
            "{speed:?} {:?}",
            way.last()
        );
        let back = run(
            &mut desk,
            100.0 + speed.swing_time_s(),
            speed.swing_time_s(),
        );
        assert!(*back.last().unwrap() < 0.3);
        desk.send(Msg::Play(msg::Play::Toggle));
        let held = desk.state.session.progress;
        assert!(desk.send(Msg::Frame { time_s: 500.0 }).is_empty());
        assert_eq!(desk.state.session.progress, held);
    }
}

#[test]
fn less_motion_goes_in_steps() {
    let mut desk = Desk::demo();
    desk.send(Msg::Play(msg::Play::ReducedMotion { on: true }));
    desk.send(Msg::Play(msg::Play::Scrub { progress: 0.0 }));
    desk.send(Msg::Play(msg::Play::Toggle));
    let mut places = run(&mut desk, 0.0, 5.0);
    places.dedup();
    assert!((2..=7).contains(&places.len()), "{places:?}");
    assert!(desk.page().transport.motion_text.contains("steps"));
}

#[test]
fn the_curves_scrub() {
    let mut desk = Desk::demo();
    desk.send(Msg::View(msg::View::CurvesSize { width_px: 600.0 }));
    let at = |x_px: f64| {
        Msg::CurvePointer(msg::CurvePointer::Scrub {
            at: gearswing_app::scene::ScreenPoint { x_px, y_px: 50.0 },
        })
    };
    desk.send(at(0.0));
    let (min, max) = (desk.page().transport.min, desk.page().transport.max);
    assert_eq!(desk.state.session.progress, min);
    desk.send(at(600.0));
    assert_eq!(desk.state.session.progress, max);
    desk.send(at(250.0));
    assert!(desk.state.session.progress > min && desk.state.session.progress < max);
}

/// Play starts on the way in hand, at its end turns to the other one, and what is in hand goes along.
#[test]
fn play_goes_the_way_in_hand() {
    let mut desk = Desk::demo();
    desk.send(Msg::Play(msg::Play::Scrub { progress: 0.3 }));
    desk.send(Msg::Play(msg::Play::Way { down: true }));
    desk.send(Msg::Play(msg::Play::Toggle));
    let way = run(&mut desk, 10.0, 1.0);
    assert!(way.last().unwrap() < &0.29, "{:?}", way.last());
    // chosen while it plays, it turns at once
    desk.send(Msg::Play(msg::Play::Way { down: false }));
    let here = desk.state.session.progress;
    let way = run(&mut desk, 11.0, 1.0);
    assert!(way.last().unwrap() > &here);
    desk.send(Msg::Play(msg::Play::Toggle));
    // from where a way ends, Play goes on with the other
    desk.send(Msg::Play(msg::Play::Scrub { progress: 1.0 }));
    desk.send(Msg::Play(msg::Play::Toggle));
    assert!(desk.page().transport.way_down);
    let way = run(&mut desk, 20.0, 1.0);
    assert!(way.last().unwrap() < &1.0);
    run(&mut desk, 21.0, 20.0);
    assert!(!desk.page().transport.way_down, "it has turned at down");
}
