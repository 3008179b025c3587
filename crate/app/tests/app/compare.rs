//! States kept to compare with: what has changed, an adviser's answer, and taking changes back or over.
use gearswing_app::msg::{self, Compare, History, Msg, Share};
use gearswing_app::scene::Role;
use gearswing_app::words::sheets::Sheet;
use gearswing_app::{drawing, strip};

use crate::files::link;
use crate::support::Desk;

const BORE: &str = "legs[1].actuator.bore_m";
const TIRE: &str = "legs[2].wheel.tire.diameter_m";

/// What the list of changes says.
fn said(desk: &Desk) -> Vec<(String, String)> {
    let rows = desk.page().changes.rows.into_iter();
    rows.map(|row| (row.name, row.text)).collect()
}

/// Names of the kept states.
fn names(desk: &Desk) -> Vec<String> {
    // the first is the gear as it is; the demo keeps its previous tire
    let kept = desk.page().changes.kept.into_iter().skip(1);
    let kept = kept.filter(|row| row.name != "previous tire");
    kept.map(|row| row.name).collect()
}

/// Presses what stands at a change.
fn press(desk: &mut Desk, at: usize) {
    let msg = desk.page().changes.rows[at].actions[0].msg.clone();
    desk.send(msg);
}

pub(crate) fn open(desk: &mut Desk, text: &str) {
    let text = text.to_owned();
    desk.send(Msg::Share(Share::OpenLink { text }));
}

#[test]
fn what_has_changed_is_told_shown_and_taken_back() {
    let mut desk = Desk::demo();
    let has_tab = |desk: &Desk| {
        desk.page()
            .sheets
            .iter()
            .any(|tab| tab.sheet == Sheet::Changes)
    };
    // the demo keeps its previous tire
    assert!(has_tab(&desk));
    assert_eq!(
        desk.page().changes.line,
        "Not compared with any kept state."
    );
    desk.send(Msg::Compare(Compare::Keep));
    assert!(has_tab(&desk));
    assert_eq!(desk.page().changes.line, "Nothing differs from Before 1.");
    let as_kept = desk.state.gear().clone();
    desk.enter(TIRE, "17 in");
    desk.enter(BORE, "1.25 in");
    assert_eq!(desk.page().changes.line, "2 changes from Before 1.");
    assert_eq!(
        said(&desk),
        [
            ("Left main, actuator bore", "1 in → 1 1/4 in"),
            (
                "Right main, overall diameter of the tire",
                "18 11/16 in → 17 in"
            ),
        ]
        .map(|(place, text)| (place.to_owned(), text.to_owned()))
    );
    // every verdict that is another says what it was
    let was = |desk: &Desk, leg: usize, question: usize| {
        desk.page().answers[leg].answers[question].was.clone()
    };
    assert_eq!(was(&desk, 2, 0).unwrap(), "was −0.18 in");
    assert_eq!(was(&desk, 1, 1).unwrap(), "was 50 % spare");
    assert_eq!(was(&desk, 0, 0), None);
    // drawing and strip show it
    desk.send(Msg::View(msg::View::SelectLeg { leg: 2 }));
    for scene in [drawing(&desk.state), strip(&desk.state)] {
        assert!(scene.marks.iter().any(|mark| mark.role == Role::Before));
    }
    // one by one, undone, and all at once
    press(&mut desk, 0);
    assert_eq!(said(&desk).len(), 1);
    desk.send(Msg::History(History::Undo));
    assert_eq!(said(&desk).len(), 2);
    let all = desk.page().changes.actions[0].msg.clone();
    desk.send(all);
    assert_eq!(desk.state.gear(), &as_kept);
    assert_eq!(was(&desk, 2, 0), None);
    // and kept with the file
    let again = desk.reloaded();
    assert_eq!(again.page().changes.line, "Nothing differs from Before 1.");
}

#[test]
fn several_states_are_kept_and_one_is_compared_with() {
    let mut desk = Desk::demo();
    desk.send(Msg::Compare(Compare::Keep));
    desk.enter(TIRE, "17 in");
    desk.send(Msg::Compare(Compare::Keep));
    desk.send(Msg::Compare(Compare::Rename {
        name: "mount B".to_owned(),
    }));
    assert_eq!(desk.page().changes.line, "Nothing differs from mount B.");
    desk.send(Msg::Compare(Compare::With { state: Some(1) }));
    assert_eq!(desk.page().changes.line, "1 change from Before 1.");
    desk.send(Msg::Compare(Compare::Remove { state: 1 }));
    assert_eq!(
        desk.page().changes.line,
        "Not compared with any kept state."
    );
    assert_eq!(names(&desk).len(), 1);
    desk.send(Msg::View(msg::View::Sheet(Sheet::Changes)));
    desk.send(Msg::Compare(Compare::Remove { state: 1 }));
    desk.send(Msg::Compare(Compare::Remove { state: 0 }));
    // the sheet goes with its last state, and comes back with it
    assert_eq!(desk.page().sheet, Sheet::Answers);
    desk.send(Msg::History(History::Undo));
    desk.send(Msg::History(History::Undo));
    assert_eq!(names(&desk).len(), 1);
    // out of range
    desk.send(Msg::Compare(Compare::Remove { state: 9 }));
    desk.send(Msg::Compare(Compare::With { state: Some(9) }));
    assert_eq!(names(&desk).len(), 1);
}

#[test]
fn an_adviser_answers_and_what_was_changed_is_taken_over_one_by_one() {
    let mut own = Desk::demo();
    own.enter("legs[0].name", "Nose leg");
    let asked = link(&mut own);
    // on another computer
    let mut adviser = Desk::demo();
    open(&mut adviser, &asked);
    adviser.enter(TIRE, "17 in");
    adviser.enter(BORE, "1.25 in");
    assert_eq!(adviser.page().changes.line, "2 changes from As received.");
    let answer = link(&mut adviser);
    // back with the owner
    own.enter("legs[1].wheel.mass_kg", "9 kg");
    let before = own.state.gear().clone();
    open(&mut own, &answer);
    assert_eq!(own.page().sheet, Sheet::Changes);
    assert_eq!(own.page().changes.line, "2 changes from As received.");
    let banner = own.page().shared.unwrap();
    let compare = banner
        .actions
        .iter()
        .find(|action| action.id == "shared.compare");
    own.send(compare.unwrap().msg.clone());
    assert_eq!(own.page().shared, None);
    let places: Vec<_> = said(&own).into_iter().map(|(place, _)| place).collect();
    assert_eq!(
        places,
        [
            "Left main, mass of the wheel",
            "Left main, actuator bore",
            "Right main, overall diameter of the tire"
        ]
    );
    assert_eq!(said(&own)[2].1, "18 11/16 in → 17 in");
    assert_eq!(own.page().changes.rows[2].actions[0].label, "Take over");
    press(&mut own, 2);
    assert_eq!(own.state.gear().legs[2].wheel.tire.diameter, 0.4318);
    assert_eq!(own.state.gear().legs[1], before.legs[1]);
    // it is one's own file still
    assert_eq!(own.page().files.len(), 1);
}

#[test]
fn what_was_received_stays_through_undo_and_has_a_name_of_its_own() {
    let mut own = Desk::demo();
    let text = link(&mut own);
    let mut other = Desk::demo();
    open(&mut other, &text);
    // looking at something else makes no file of it
    other.send(Msg::Compare(Compare::With { state: None }));
    assert!(other.page().shared.is_some());
    other.enter(TIRE, "17 in");
    other.send(Msg::History(History::Undo));
    other.enter(BORE, "1.25 in");
    assert_eq!(other.page().changes.line, "1 change from As received.");
    let answer = link(&mut other);
    // an answer to the answer
    let mut again = Desk::demo();
    open(&mut again, &answer);
    again.enter(TIRE, "17 in");
    assert_eq!(names(&again), ["As received", "As received 2"]);
    assert_eq!(again.page().changes.line, "1 change from As received 2.");
}

/// The answers of all kept states stand side by side: each as it was told when it was the gear itself.
#[test]
fn numbers_of_kept_states_stand_side_by_side() {
    let mut desk = Desk::demo();
    desk.send(Msg::View(msg::View::SelectLeg { leg: 2 }));
    desk.send(Msg::Compare(Compare::Keep));
    desk.send(Msg::View(msg::View::Sheet(Sheet::Changes)));
    let now = |desk: &Desk| desk.page().changes.kept[0].text.clone();
    let mut were = vec![now(&desk)];
    for width in ["6.5", "6"] {
        desk.enter("legs[2].wheel.tire.width_m", width);
        were.push(now(&desk));
        desk.send(Msg::Compare(Compare::Keep));
        desk.send(Msg::View(msg::View::Sheet(Sheet::Changes)));
    }
    assert!(
        were[0].starts_with("Right main: Clears? −0.18 in, Driven? "),
        "{}",
        were[0]
    );
    assert!(were[0] != were[1] && were[1] != were[2]);
    let told = |desk: &Desk| -> Vec<String> {
        let rows = desk.page().changes.kept.into_iter().skip(2);
        rows.map(|row| row.text.trim_end_matches("; compared with").to_owned())
            .collect()
    };
    assert_eq!(told(&desk), were);
    // those of the leg in hand
    desk.send(Msg::View(msg::View::SelectLeg { leg: 0 }));
    assert!(told(&desk).iter().all(|text| text.starts_with("Nose: ")));
}

#[test]
fn a_state_that_is_kept_already_is_not_kept_twice() {
    let mut desk = Desk::demo();
    desk.send(Msg::Compare(Compare::Keep));
    desk.send(Msg::Compare(Compare::Keep));
    assert_eq!(names(&desk).len(), 1);
    desk.enter(TIRE, "17 in");
    desk.send(Msg::Compare(Compare::Keep));
    // names are told apart, and none is empty
    for name in ["", "  ", "Before 1"] {
        desk.send(Msg::Compare(Compare::Rename {
            name: name.to_owned(),
        }));
    }
    assert_eq!(names(&desk), ["Before 1", "Before 2"]);
    // the run against time rests on none of it
    for at in 3..40 {
        desk.enter(TIRE, &format!("{} in", 16.0 + 0.01 * f64::from(at)));
        desk.send(Msg::Compare(Compare::Keep));
    }
    assert_eq!(names(&desk).len(), 19);
}

#[test]
fn another_file_shows_nothing_of_what_was_compared_with() {
    let mut desk = Desk::demo();
    desk.send(Msg::Compare(Compare::Keep));
    desk.enter(TIRE, "17 in");
    let grays = |desk: &Desk| {
        drawing(&desk.state)
            .marks
            .iter()
            .filter(|mark| mark.role == Role::Before)
            .count()
    };
    assert!(grays(&desk) > 0);
    // before anything is worked out
    desk.update(Msg::File(msg::File::OpenDemo));
    assert_eq!(grays(&desk), 0);
}

#[test]
fn a_link_that_is_only_looked_at_changes_nothing() {
    let mut own = Desk::demo();
    let text = link(&mut own);
    let mut other = Desk::demo();
    open(&mut other, &text);
    other.send(Msg::File(msg::File::KeepShared));
    assert!(names(&other).is_empty());
    // a gear of other legs is not one's own
    let mut third = Desk::demo();
    third.enter("legs[0].name", "Tail wheel");
    open(&mut third, &text);
    let banner = third.page().shared.unwrap();
    assert!(
        banner
            .actions
            .iter()
            .all(|action| action.id != "shared.compare")
    );
}
