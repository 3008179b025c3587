//! The gear against time: every leg follows one clock.
use gearswing_app::fields;
use gearswing_app::msg::{self, Msg, Times};
use gearswing_app::scene::{Anchor, Mark, Role, ScreenPoint, Shape};
use gearswing_app::times;

use crate::support::Desk;

fn seek(desk: &mut Desk, time_s: f64) {
    desk.send(Msg::Times(Times::Seek { time_s }));
}

/// How many legs are shown down, in transit, up: under the legs texts stand in the middle, switches
/// have the same words at their left end.
fn shown_for_legs(desk: &Desk) -> [usize; 3] {
    let scene = times(&desk.state);
    ["down and locked", "in transit", "up"].map(|words| {
        let says = |mark: &&Mark| {
            matches!(&mark.shape, Shape::Text { text, anchor: Anchor::Middle, .. } if text == words)
        };
        scene.marks.iter().filter(says).count()
    })
}

#[test]
fn all_legs_go_from_down_to_up_and_back() {
    let mut desk = Desk::demo();
    let page = desk.page();
    assert!(page.times.shown && page.times.end_s > 3.0);
    seek(&mut desk, 0.0);
    // a separate device unlocks the knee of the nose leg before its actuator moves it
    assert_eq!(shown_for_legs(&desk), [2, 1, 0]);
    seek(&mut desk, page.times.end_s / 2.0);
    let [down, transit, up] = shown_for_legs(&desk);
    assert!(transit > 0 && down == 0, "{transit} {up}");
    seek(&mut desk, 1e9);
    assert_eq!(desk.page().times.value_s, page.times.end_s);
    assert_eq!(shown_for_legs(&desk), [0, 0, 3]);
    desk.send(Msg::Times(Times::Select { down: true }));
    assert_eq!(shown_for_legs(&desk), [0, 0, 3]);
    seek(&mut desk, 1e9);
    assert_eq!(shown_for_legs(&desk), [3, 0, 0]);
}

#[test]
fn the_drawing_follows_until_it_is_moved() {
    let mut desk = Desk::demo();
    let end_s = desk.page().times.end_s;
    let mut places = Vec::new();
    for leg in 0..3 {
        desk.send(Msg::View(msg::View::SelectLeg { leg }));
        seek(&mut desk, 1e9);
        assert!((desk.state.session.progress - 1.0).abs() < 1e-6);
        seek(&mut desk, 0.4 * end_s);
        places.push(desk.state.session.progress);
    }
    // Another leg at the same time stands where it stood before.
    desk.send(Msg::View(msg::View::SelectLeg { leg: 0 }));
    assert_eq!(desk.state.session.progress, places[0]);
    desk.send(Msg::Play(msg::Play::Scrub { progress: 0.9 }));
    assert_eq!(desk.state.session.progress, 0.9);
    desk.send(Msg::View(msg::View::SelectLeg { leg: 1 }));
    assert_eq!(desk.state.session.progress, 0.9);
}

#[test]
fn it_runs_in_its_own_time_and_stops_at_its_end() {
    let mut desk = Desk::demo();
    let end_s = desk.page().times.end_s;
    desk.send(Msg::Times(Times::Toggle));
    let frame = |desk: &mut Desk, at: usize| {
        desk.send(Msg::Frame {
            time_s: 50.0 + at as f64 / 60.0,
        });
        desk.page().times.value_s
    };
    for at in 0..=120 {
        frame(&mut desk, at);
    }
    assert!((desk.page().times.value_s - 2.0).abs() < 1e-9);
    for at in 121..(60.0 * end_s) as usize + 5 {
        frame(&mut desk, at);
    }
    assert_eq!(desk.page().times.value_s, end_s);
    assert!((desk.state.session.progress - 1.0).abs() < 1e-6);
    assert!(desk.page().times.actions.iter().any(|a| a.label == "Play"));
}

#[test]
fn its_charts_scrub() {
    let mut desk = Desk::demo();
    let cursor = |desk: &Desk| {
        let scene = times(&desk.state);
        let line = scene.marks.iter().rev().find_map(|mark| match &mark.shape {
            Shape::Path { points, .. } if mark.role == Role::Cursor => points.first().copied(),
            _ => None,
        });
        line.unwrap().x_px
    };
    for x_px in [120.0, 250.0, 400.0] {
        let at = ScreenPoint { x_px, y_px: 300.0 };
        desk.send(Msg::Times(Times::Scrub { at }));
        assert!((cursor(&desk) - x_px).abs() < 1e-6);
    }
}

#[test]
fn a_file_that_names_no_source_has_no_times() {
    let mut desk = Desk::demo();
    desk.send(Msg::Field(msg::Field::Choose {
        path: "supply.source".to_owned(),
        option: "constant_pressure".to_owned(),
    }));
    for leg in 0..3 {
        let path = format!("legs[{leg}].drive.orifice_up.hole_m");
        desk.enter(&path, "");
        assert_eq!(fields::number(desk.state.gear(), &path), Some(None));
    }
    let page = desk.page().times;
    assert_eq!(page.end_s, 0.0);
    assert!(
        page.sentences
            .iter()
            .any(|s| s.starts_with("No times: they need an orifice"))
    );
    assert_eq!(times(&desk.state).height_px, 0.0);
    // An orifice comes with its hole, and goes with it.
    let path = "legs[1].drive.orifice_up.hole_m";
    desk.enter(path, "1/16");
    let drive = desk.gear().legs[1].drive;
    assert!((drive.orifice_up.unwrap().hole - 0.0254 / 16.0).abs() < 1e-12);
    desk.enter(path, "");
    assert!(desk.gear().legs[1].drive.orifice_up.is_none());
}

#[test]
fn every_source_gives_times_or_a_sentence() {
    for option in ["motor_pump", "hand_pump", "electric_actuators"] {
        let mut desk = Desk::demo();
        for option in ["constant_pressure", option] {
            desk.send(Msg::Field(msg::Field::Choose {
                path: "supply.source".to_owned(),
                option: option.to_owned(),
            }));
        }
        let page = desk.page();
        assert!(page.times.shown, "{option}");
        assert!(
            page.times.end_s > 0.0,
            "{option} {:?}",
            page.times.sentences
        );
        assert!(!page.answers.iter().any(|leg| leg.faded), "{option}");
    }
    let mut desk = Desk::demo();
    desk.enter("supply.source.motor_pump.relief_pressure_pa", "20 psi");
    let said = desk.page().times.sentences.join(" ");
    assert!(said.starts_with("Selected up, nothing moves"), "{said}");
}

/// The run is worked out as set, or for the airplane level on jacks.
#[test]
fn it_can_be_had_on_jacks() {
    let mut desk = Desk::demo();
    let said = |desk: &Desk| desk.page().times.sentences.join(" ");
    let as_set = said(&desk);
    assert!(
        as_set.starts_with("With attitude and air as set"),
        "{as_set}"
    );
    desk.send(Msg::Times(msg::Times::OnJacks { on: true }));
    let on_jacks = said(&desk);
    assert!(
        on_jacks.starts_with("For the airplane level on jacks"),
        "{on_jacks}"
    );
    let time = |text: &str| text.split("after ").nth(1).unwrap()[..4].to_owned();
    assert_ne!(time(&as_set), time(&on_jacks));
    desk.send(Msg::Times(msg::Times::OnJacks { on: false }));
    assert_eq!(said(&desk), as_set);
    // a file that sets neither is on the jacks as it is
    desk.enter("conditions.load_factor", "1");
    desk.enter("conditions.airspeed_m_s", "0");
    let page = desk.page();
    assert!(page.times.actions.iter().all(|a| a.id != "times-case"));
    assert!(said(&desk).starts_with("For the airplane level on jacks"));
}
