//! Notes: written by one, seen by another where they hang.
use gearswing_app::msg::{self, HangOn, Msg};
use gearswing_app::scene::Shape;
use gearswing_app::{Effect, drawing, strip};

use crate::support::Desk;

const MOUNT: &str = "legs[2].actuator.mount_m";

fn add(desk: &mut Desk, text: &str, by: &str, on: HangOn) -> Vec<Effect> {
    desk.send(Msg::Note(msg::Note::Add {
        text: text.to_owned(),
        by: by.to_owned(),
        on,
    }))
}

/// The code of the gear as it is.
fn link(desk: &mut Desk) -> String {
    let effects = desk.send(Msg::Share(msg::Share::CopyLink));
    effects
        .into_iter()
        .find_map(|effect| match effect {
            Effect::CopyText { text } => Some(text),
            _ => None,
        })
        .unwrap()
}

fn texts(scene: &gearswing_app::Scene) -> Vec<String> {
    let marks = scene.marks.iter();
    marks
        .filter_map(|mark| match &mark.shape {
            Shape::Text { text, .. } => Some(text.clone()),
            _ => None,
        })
        .collect()
}

#[test]
fn a_note_goes_with_the_link_and_hangs_where_it_was_hung() {
    let mut desk = Desk::demo();
    desk.send(Msg::View(msg::View::SelectLeg { leg: 2 }));
    assert_eq!(desk.page().toolbar.note_selected, "");
    let at = desk.handle(MOUNT);
    desk.press(at);
    desk.release(at);
    assert_eq!(
        desk.page().toolbar.note_selected,
        "Add at Actuator mount A0"
    );
    let answers = desk.page().answers;
    add(
        &mut desk,
        " Move this up by 1/4 in. ",
        "Ada",
        HangOn::Selected,
    );
    desk.send(Msg::Play(msg::Play::Scrub { progress: 0.5 }));
    add(&mut desk, "Too close here", "", HangOn::Here);
    add(&mut desk, "The rest looks good", "Ada", HangOn::Gear);
    assert_eq!(desk.question, None, "nothing is to be worked out for it");
    let told = |desk: &Desk| -> Vec<(String, String)> {
        let notes = desk.page().changes.notes;
        notes.into_iter().map(|row| (row.name, row.text)).collect()
    };
    let here = told(&desk);
    assert_eq!(
        here[0],
        (
            "Note 1, Right main, Actuator mount A0".to_owned(),
            "Move this up by 1/4 in. (Ada)".to_owned()
        )
    );
    assert!(
        here[1].0.starts_with("Note 2, Right main, "),
        "{}",
        here[1].0
    );
    assert!(here[1].0.ends_with(" % of travel"), "{}", here[1].0);
    assert_eq!(here[2].0, "Note 3");
    let answered: Vec<_> = desk
        .page()
        .answers
        .into_iter()
        .map(|leg| leg.answers)
        .collect();
    let before: Vec<_> = answers.into_iter().map(|leg| leg.answers).collect();
    assert_eq!(answered, before, "no answer rests on it");
    // whoever is sent it
    let text = link(&mut desk);
    let mut other = Desk::demo();
    other.send(Msg::Share(msg::Share::OpenLink { text }));
    let page = other.page();
    assert_eq!(told(&other), here);
    let banner = page.shared.unwrap().text;
    assert!(banner.starts_with("Ada: “The rest looks good”"), "{banner}");
    assert!(
        page.sheets
            .iter()
            .any(|tab| tab.in_hand && tab.take.label == "Changes")
    );
    other.send(Msg::View(msg::View::SelectLeg { leg: 2 }));
    assert!(texts(&drawing(&other.state)).contains(&"note 1".to_owned()));
    assert!(
        texts(&strip(&other.state))
            .iter()
            .any(|text| text == "note 2")
    );
    // it is gone to, and taken away
    other.send(Msg::View(msg::View::SelectLeg { leg: 0 }));
    other.send(Msg::Note(msg::Note::Show { at: 1 }));
    assert!((other.page().transport.value - 0.5).abs() < 1e-12);
    other.send(Msg::Note(msg::Note::Show { at: 0 }));
    assert_eq!(
        other.page().toolbar.note_selected,
        "Add at Actuator mount A0"
    );
    other.send(Msg::Note(msg::Note::Remove { at: 0 }));
    assert_eq!(told(&other).len(), 2);
    other.send(Msg::History(msg::History::Undo));
    assert_eq!(told(&other), here);
}

#[test]
fn a_note_stays_on_its_leg_and_goes_with_it() {
    let mut desk = Desk::demo();
    desk.send(Msg::View(msg::View::SelectLeg { leg: 2 }));
    add(&mut desk, "here", "", HangOn::Here);
    let remove = |leg: usize| {
        Msg::Field(msg::Field::Remove {
            path: format!("legs[{leg}]"),
        })
    };
    desk.send(remove(0));
    assert_eq!(desk.gear().notes[0].on, "legs[1]");
    assert!(desk.page().changes.notes[0].name.contains("Right main"));
    desk.send(remove(1));
    assert_eq!(desk.gear().notes[0].on, "");
    assert_eq!(desk.page().changes.notes[0].name, "Note 1");
}

#[test]
fn nothing_and_too_much_is_not_taken() {
    let mut desk = Desk::demo();
    add(&mut desk, "  ", "x", HangOn::Gear);
    assert!(desk.gear().notes.is_empty());
    for number in 0..7 {
        add(&mut desk, &format!("{number}"), "", HangOn::Gear);
    }
    assert_eq!(desk.gear().notes.len(), 5);
    assert!(
        desk.page()
            .notices
            .iter()
            .any(|notice| notice.text.contains("5 notes"))
    );
    let mut desk = Desk::demo();
    let long = "ü".repeat(500);
    add(&mut desk, &long, &long, HangOn::Gear);
    assert_eq!(desk.gear().notes[0].text.chars().count(), 200);
    assert_eq!(desk.gear().notes[0].by.chars().count(), 40);
}

/// The sheet in hand goes with a link without notes.
#[test]
fn a_link_brings_the_sheet_in_hand() {
    let times = Msg::View(msg::View::Sheet(gearswing_app::words::sheets::Sheet::Times));
    let mut desk = Desk::demo();
    let plain = link(&mut desk);
    desk.send(times.clone());
    // an older program opens the demo, which counts for more
    assert_eq!(link(&mut desk), plain);
    desk.send(Msg::File(msg::File::New {
        starter: "folding_front".to_owned(),
    }));
    desk.send(Msg::View(msg::View::Sheet(
        gearswing_app::words::sheets::Sheet::Answers,
    )));
    let plain = link(&mut desk);
    desk.send(times);
    // with the curve and the way that are looked at
    let question = gearswing_app::Question::Locks;
    desk.send(Msg::View(msg::View::GoTo { leg: 0, question }));
    desk.send(Msg::Play(msg::Play::Way { down: true }));
    desk.send(Msg::View(msg::View::Sheet(
        gearswing_app::words::sheets::Sheet::Times,
    )));
    let text = link(&mut desk);
    assert_ne!(text, plain);
    let mut other = Desk::demo();
    other.send(Msg::Share(msg::Share::OpenLink { text }));
    let page = other.page();
    assert!(
        page.sheets
            .iter()
            .any(|tab| tab.in_hand && tab.take.label == "Against time")
    );
    assert!(page.transport.way_down);
    assert_eq!(other.state.session.strip, Some(question));
}

#[test]
fn what_stands_in_a_note_is_text_and_no_more() {
    let mut desk = Desk::demo();
    let rude = "\u{202e}evil\u{1b}[31m\n\nVERDICT: GOOD <script>alert(1)</script>";
    add(&mut desk, rude, "a\u{202e}b\nc", HangOn::Gear);
    let text = desk.page().changes.notes[0].text.clone();
    assert_eq!(
        text,
        "evil [31m VERDICT: GOOD <script>alert(1)</script> (a b c)"
    );
}

/// A note keeps to its leg where legs come back, and to nothing that is another thing now.
#[test]
fn a_note_keeps_to_its_leg_when_legs_come_back() {
    let mut desk = Desk::demo();
    desk.send(Msg::Compare(msg::Compare::Keep));
    desk.send(Msg::View(msg::View::SelectLeg { leg: 1 }));
    add(&mut desk, "here", "", HangOn::Here);
    desk.send(Msg::Field(msg::Field::Remove {
        path: "legs[0]".to_owned(),
    }));
    assert_eq!(desk.gear().notes[0].on, "legs[0]");
    desk.send(Msg::Compare(msg::Compare::TakeAllBack));
    assert_eq!(desk.gear().legs.len(), 3);
    assert_eq!(desk.gear().notes[0].on, "legs[1]");
    let corner = "legs[1].well[0].shape.solid.points_m[3]";
    let at = desk.handle(corner);
    desk.press(at);
    desk.release(at);
    add(&mut desk, "this corner", "", HangOn::Selected);
    assert_eq!(desk.gear().notes[1].on, corner);
    desk.send(Msg::Field(msg::Field::Paste {
        path: "legs[1].well[0].shape.solid.points_m[0][0]".to_owned(),
        text: "1, 2\n3, 4\n5, 9".to_owned(),
    }));
    assert_eq!(desk.gear().notes[1].on, "legs[1]");
}
