//! A stop seen on the jacks: entered, explained, shown, undone.
use gearswing_app::msg::{self, Msg};
use gearswing_solver::result::Fit;
use gearswing_solver::stop::explain_stop;

use crate::support::Desk;

const STOP: &str = "legs[2].seen_stop";

fn choose(desk: &mut Desk, path: &str, option: &str) {
    desk.send(Msg::Field(msg::Field::Choose {
        path: path.to_owned(),
        option: option.to_owned(),
    }));
}

fn with_a_stop() -> Desk {
    let mut desk = Desk::demo();
    desk.send(Msg::View(msg::View::SelectLeg { leg: 2 }));
    assert!(!desk.page().stopped.shown);
    choose(&mut desk, STOP, "travel");
    desk.enter(&format!("{STOP}.how_far.travel.travel"), "88 %");
    desk.enter(&format!("{STOP}.gauge_pa"), "900 psi");
    choose(&mut desk, &format!("{STOP}.pump"), "running");
    desk
}

#[test]
fn a_stop_is_explained_by_the_same_numbers_as_everywhere() {
    let desk = with_a_stop();
    let shown = desk.page().stopped;
    assert!(shown.shown);
    let found = explain_stop(&desk.gear(), 2).unwrap();
    assert_eq!(shown.rows.len(), found.explanations.len());
    for (row, one) in shown.rows.iter().zip(&found.explanations) {
        assert_eq!(row.ruled_out, one.fit == Fit::RuledOut);
        assert_eq!(row.readings.len(), one.readings.len());
    }
    assert!(shown.rows.iter().any(|row| row.ruled_out));
    assert!(shown.sentences[0].contains("88.0 %"), "{shown:?}");
    for row in &shown.rows {
        println!("{}: {} {:?}", row.fit_text, row.sentence, row.readings);
    }
    println!("{:?}", shown.sentences);
}

#[test]
fn the_drawing_goes_to_the_place_and_undo_takes_the_stop_out() {
    let mut desk = with_a_stop();
    let action = desk.page().stopped.actions.remove(0);
    desk.send(action.msg);
    let progress = desk.state.session.progress;
    let found = explain_stop(&desk.gear(), 2).unwrap();
    assert!((progress - found.place.progress).abs() < 1e-9);
    desk.send(Msg::View(msg::View::SelectLeg { leg: 0 }));
    assert!(!desk.page().stopped.shown, "the stop is another leg's");
    desk.send(Msg::View(msg::View::SelectLeg { leg: 2 }));
    for _ in 0..4 {
        desk.send(Msg::History(msg::History::Undo));
    }
    assert!(!desk.page().stopped.shown);
    assert_eq!(desk.gear().legs[2].seen_stop, None);
}

#[test]
fn the_way_of_measuring_can_be_changed_and_keeps_the_place() {
    let mut desk = with_a_stop();
    for option in [
        "angle",
        "travel",
        "actuator_pins",
        "axle_from",
        "travel",
        "none",
    ] {
        choose(&mut desk, STOP, option);
        assert_eq!(desk.page().stopped.shown, option != "none");
        if option == "angle" || option == "actuator_pins" {
            let found = explain_stop(&desk.gear(), 2).unwrap();
            assert!(
                (found.place.travel - 0.88).abs() < 1e-3,
                "{option} {found:?}"
            );
        }
    }
}

#[test]
fn what_is_nowhere_on_the_way_says_so() {
    let mut desk = with_a_stop();
    choose(&mut desk, STOP, "actuator_pins");
    desk.enter(
        &format!("{STOP}.how_far.actuator_pins.pins_apart_m"),
        "19 m",
    );
    let shown = desk.page().stopped;
    assert!(shown.rows.is_empty() && shown.sentences[0].contains("Nowhere on its way"));
    desk.enter(&format!("{STOP}.gauge_pa"), "-5 psi");
    let row = desk.row(&format!("{STOP}.gauge_pa"));
    assert!(row.error.is_some());
}

#[test]
fn a_new_stop_is_empty_and_explains_nothing_before_it_is_told_how_far() {
    for (option, key) in [
        ("travel", "travel"),
        ("angle", "angle_rad"),
        ("actuator_pins", "pins_apart_m"),
        ("axle_from", "axle_apart_m"),
    ] {
        let mut desk = Desk::demo();
        desk.send(Msg::View(msg::View::SelectLeg { leg: 2 }));
        choose(&mut desk, STOP, option);
        let path = format!("{STOP}.how_far.{option}.{key}");
        let row = desk.row(&path);
        assert_eq!((row.value.as_str(), row.error), ("", None));
        assert_eq!(row.if_empty, "to be entered");
        let shown = desk.page().stopped;
        assert!(shown.shown && shown.rows.is_empty(), "{shown:?}");
        assert!(shown.sentences[0].contains("enter how far"), "{shown:?}");
        assert!(shown.actions.is_empty());
        // Kept as it is over a reload.
        assert_eq!(desk.reloaded().gear(), desk.gear());
    }
}

#[test]
fn a_bad_reading_takes_down_nothing_but_its_own_answer() {
    let mut desk = with_a_stop();
    let before = desk.page();
    desk.enter(&format!("{STOP}.how_far.travel.travel"), "150 %");
    let page = desk.page();
    assert_eq!(page.answers, before.answers);
    assert_eq!(page.times, before.times);
    assert!(!page.drawing.faded);
    let stopped = &page.stopped;
    assert!(stopped.rows.is_empty());
    let [sentence] = stopped.sentences.as_slice() else {
        panic!("{stopped:?}");
    };
    for part in ["Nothing is explained.", "travel seen: 150"] {
        assert!(sentence.contains(part), "{sentence}");
    }
    let row = desk.row(&format!("{STOP}.how_far.travel.travel"));
    assert!(row.error.is_some());
    let group = stopped.group.as_ref();
    assert_eq!(group.unwrap().alert, "a fault in here");
}

/// What was seen on the jacks is one's own: an adviser whose state lacks it has changed nothing, and takes it from
/// nobody.
#[test]
fn what_was_seen_is_no_change_of_an_adviser() {
    let sent = |gear: &gearswing_gear::model::Gear| {
        let mut gear = gear.clone();
        gear.legs[1].actuator.bore = 0.03;
        gearswing_gear::model::Kept {
            sent: true,
            ..gearswing_gear::model::Kept::of(&gear, "Sent to me".to_owned())
        }
    };
    let mut desk = Desk::demo();
    let mut gear = desk.gear();
    gear.kept = vec![sent(&gear)];
    gear.before = Some(0);
    desk.send(Msg::File(msg::File::ImportText {
        name: "own.json".to_owned(),
        text: gearswing_gearfile::to_text(&gear).unwrap(),
    }));
    desk.send(Msg::View(msg::View::SelectLeg { leg: 2 }));
    choose(&mut desk, STOP, "travel");
    desk.enter(&format!("{STOP}.how_far.travel.travel"), "88 %");
    let rows = desk.page().changes.rows;
    assert_eq!(rows.len(), 1, "{rows:?}");
    assert!(rows[0].name.contains("bore"), "{}", rows[0].name);
    let seen = desk.gear().legs[2].seen_stop.clone();
    assert!(seen.is_some());
    desk.send(Msg::Compare(msg::Compare::TakeAllBack));
    assert_eq!(desk.gear().legs[1].actuator.bore, 0.03);
    assert_eq!(desk.gear().legs[2].seen_stop, seen);
}
