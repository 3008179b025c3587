//! Entries that cannot be used: where they are shown, and what they leave alone.
use gearswing_app::fields;
use gearswing_app::msg::{self, Msg};
use gearswing_solver::faults::check_gear;

use crate::support::Desk;

const BORE: &str = "legs[2].actuator.bore_m";

fn choose(desk: &mut Desk, path: &str, option: &str) {
    desk.send(Msg::Field(msg::Field::Choose {
        path: path.to_owned(),
        option: option.to_owned(),
    }));
}

fn alert(desk: &Desk, group: &str) -> String {
    let page = desk.page();
    let found = page.groups.into_iter().find(|g| g.id == group).unwrap();
    found.alert
}

#[test]
fn the_head_of_a_folded_group_says_what_is_wrong_inside() {
    let mut desk = Desk::demo();
    desk.send(Msg::View(msg::View::SelectLeg { leg: 2 }));
    assert!(
        desk.page()
            .groups
            .iter()
            .all(|group| group.alert.is_empty())
    );
    desk.enter("legs[2].wheel.tire.circumference_m", "4x");
    desk.enter("legs[2].actuator.bore_m", "one");
    desk.enter("legs[2].actuator.rod_m", "two");
    desk.send(Msg::View(msg::View::ToggleGroup {
        id: "fall".to_owned(),
    }));
    assert_eq!(alert(&desk, "wheel"), "1 entry can't be read");
    assert_eq!(alert(&desk, "actuator"), "2 entries can't be read");
    assert_eq!(alert(&desk, "brace"), "");
    // They are the leg's: another leg says nothing of them.
    desk.send(Msg::View(msg::View::SelectLeg { leg: 1 }));
    assert_eq!(alert(&desk, "wheel"), "");
    desk.send(Msg::View(msg::View::SelectLeg { leg: 2 }));
    desk.enter("legs[2].wheel.tire.circumference_m", "4 ft");
    desk.enter("legs[2].actuator.bore_m", "1 1/2");
    desk.enter("legs[2].actuator.rod_m", "9 in");
    assert_eq!(alert(&desk, "wheel"), "");
    assert_eq!(alert(&desk, "actuator"), "a fault in here");
}

#[test]
fn a_wrong_circumference_is_shown_where_it_was_typed() {
    let mut desk = Desk::demo();
    let [around, across] =
        ["circumference_m", "diameter_m"].map(|key| format!("legs[2].wheel.tire.{key}"));
    desk.enter(&around, "90 m");
    let error = desk.row(&around).error.unwrap();
    assert!(error.contains("not possible"), "{error}");
    assert_eq!(desk.row(&across).error, None);
    let fault = desk.page().answers[2].faults.remove(0);
    let shown = Msg::Field(msg::Field::Show {
        path: around.clone(),
    });
    assert_eq!(fault.show.unwrap().msg, shown);
    // Typed as a diameter it is shown there.
    desk.enter(&across, "30 m");
    assert!(desk.row(&across).error.is_some());
    assert_eq!(desk.row(&around).error, None);
    desk.enter(&across, "0.4 m");
    assert_eq!(desk.row(&across).error, None);
}

#[test]
fn a_stall_speed_above_the_gear_speed_is_a_fault_at_its_field() {
    let mut desk = Desk::demo();
    let stall = "conditions.stall_speed_m_s";
    desk.enter("conditions.gear_speed_m_s", "80 kt");
    desk.enter(stall, "50 kt");
    assert_eq!(desk.row(stall).error, None);
    desk.enter(stall, "90 kt");
    let error = desk.row(stall).error.unwrap();
    for part in ["Stall speed", "90 kt must be less than", "80 kt"] {
        assert!(error.contains(part), "{error}");
    }
    desk.enter("conditions.gear_speed_m_s", "");
    assert_eq!(desk.row(stall).error, None);
}

#[test]
fn a_pump_comes_back_with_its_figures() {
    let mut desk = Desk::demo();
    let source = "supply.source";
    choose(&mut desk, source, "motor_pump");
    let flow = "supply.source.motor_pump.free_flow_m3_s";
    desk.enter(flow, "0.9 l/min");
    let typed = desk.gear();
    choose(&mut desk, source, "constant_pressure");
    choose(&mut desk, source, "hand_pump");
    let stroke = "supply.source.hand_pump.stroke_volume_m3";
    let first = fields::number(desk.state.gear(), stroke).unwrap();
    assert!(first.unwrap() > 0.0);
    desk.enter(stroke, "8 cm³");
    choose(&mut desk, source, "motor_pump");
    assert_eq!(desk.gear().supply, typed.supply);
    choose(&mut desk, source, "hand_pump");
    let back = fields::number(desk.state.gear(), stroke).unwrap();
    assert_eq!(back, Some(8e-6));
    // What is undone does not come back.
    for _ in 0..3 {
        desk.send(Msg::History(msg::History::Undo));
    }
    choose(&mut desk, source, "constant_pressure");
    choose(&mut desk, source, "hand_pump");
    assert_eq!(fields::number(desk.state.gear(), stroke).unwrap(), first);
}

/// What an emptied field stands for is a figure that the model takes.
#[test]
fn an_emptied_field_is_no_fault() {
    let paths: Vec<String> = crate::fields::all_rows(&mut Desk::demo())
        .into_iter()
        .map(|row| row.path)
        .collect();
    let mut emptied = 0;
    for path in paths {
        let mut desk = Desk::demo();
        if fields::when_empty(&path).is_none() {
            continue;
        }
        desk.enter(&path, "");
        let faults = check_gear(&desk.gear());
        assert!(faults.is_ok(), "{path}: {faults:?}");
        emptied += 1;
    }
    assert!(emptied > 30, "{emptied}");
}

#[test]
fn a_wrong_entry_changes_nothing_and_is_kept() {
    let mut desk = Desk::demo();
    let before = desk.gear();
    let answers = desk.page().answers;
    desk.enter(BORE, "1 3/x");
    assert_eq!(desk.gear(), before);
    let row = desk.row(BORE);
    assert_eq!(row.value, "1 3/x");
    assert!(row.error.is_some());
    assert!(
        desk.page()
            .groups
            .iter()
            .any(|group| group.alert == "1 entry can't be read")
    );
    let sentences = |answers: &[gearswing_app::view::LegAnswers]| -> Vec<String> {
        answers
            .iter()
            .flat_map(|leg| leg.answers.iter().map(|a| a.sentence.clone()))
            .collect()
    };
    assert_eq!(sentences(&desk.page().answers), sentences(&answers));
    // of before it, and of the leg alone whose entry it is
    let faded = |desk: &mut Desk| {
        desk.page()
            .answers
            .iter()
            .map(|leg| leg.faded)
            .collect::<Vec<_>>()
    };
    assert_eq!(faded(&mut desk), [false, false, true]);
    desk.send(Msg::Share(msg::Share::Copied));
    let told = |desk: &mut Desk| {
        desk.page().notices.iter().any(|notice| {
            notice
                .text
                .contains("One entry that could not be read is not in it")
        })
    };
    assert!(told(&mut desk));
    let mut again = desk.reloaded();
    let row = again.row(BORE);
    assert_eq!((row.value.as_str(), row.error.is_some()), ("1 3/x", true));
    desk.send(Msg::Field(msg::Field::Revert {
        path: BORE.to_owned(),
    }));
    assert!(desk.row(BORE).error.is_none());
    assert_eq!(faded(&mut desk), [false; 3]);
}

/// The last entry goes first; one that was not taken leaves the number in use.
#[test]
fn undo_takes_back_an_entry_that_was_not_taken() {
    let mut desk = Desk::demo();
    let rod = BORE.replace("bore_m", "rod_m");
    desk.enter(&rod, "1/2");
    let undo = |desk: &mut Desk| desk.send(Msg::History(msg::History::Undo));
    desk.enter(BORE, "1 3/x");
    let changed = desk.gear();
    assert!(desk.page().toolbar.undo_text.starts_with("Undo: entry at "));
    undo(&mut desk);
    assert!(desk.row(BORE).error.is_none());
    assert_eq!(desk.gear(), changed);
    // what was changed after it is undone before it
    desk.enter(BORE, "1 3/x");
    desk.enter(&rod, "5/8");
    undo(&mut desk);
    assert_eq!(desk.gear(), changed);
    assert!(desk.row(BORE).error.is_some());
    undo(&mut desk);
    assert_eq!(desk.gear(), changed);
    assert!(desk.row(BORE).error.is_none());
    undo(&mut desk);
    assert_eq!(desk.gear(), Desk::demo().gear());
}

/// What was given up can still be worked out after an entry that changed nothing.
#[test]
fn a_notice_of_now_stays_while_nothing_changes() {
    let mut desk = Desk::demo();
    desk.send(Msg::Share(msg::Share::Copied));
    desk.enter(BORE, "1 3/x");
    desk.send(Msg::Field(msg::Field::Revert {
        path: BORE.to_owned(),
    }));
    assert!(tells_of_clipboard(&desk));
    desk.send(Msg::File(msg::File::OpenDemo));
    assert!(!tells_of_clipboard(&desk));
}

/// What a notice tells of a link is over with the next change.
#[test]
fn a_copied_link_is_of_the_gear_as_it_was() {
    let mut desk = Desk::demo();
    desk.send(Msg::Share(msg::Share::Copied));
    assert!(tells_of_clipboard(&desk));
    desk.enter(BORE, "1 3/8");
    assert!(!tells_of_clipboard(&desk));
}

#[test]
fn a_long_entry_is_cut_where_it_is_told() {
    let mut desk = Desk::demo();
    desk.enter(BORE, &format!("1x{}", "7".repeat(5_000)));
    let leg = desk.page().answers.swap_remove(2);
    let fault = &leg.faults[0].text;
    assert!(
        fault.contains("1x777") && fault.chars().count() < 300,
        "{fault}"
    );
}

/// Whether a notice says that a link is on the clipboard.
fn tells_of_clipboard(desk: &Desk) -> bool {
    let notices = desk.page().notices;
    notices
        .iter()
        .any(|notice| notice.text.contains("clipboard"))
}
