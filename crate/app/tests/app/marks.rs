//! The mark by which states of one gear find each other, whatever they are called by then.
use gearswing_app::Effect;
use gearswing_app::msg::{self, File, History, Msg, Share};

use crate::compare::open;
use crate::files::link;
use crate::support::Desk;

const BORE: &str = "legs[1].actuator.bore_m";

fn banner(desk: &Desk) -> String {
    desk.page()
        .shared
        .map(|shared| shared.text)
        .unwrap_or_default()
}

/// Somebody else's page, on which what was sent is open.
fn adviser_with(asked: &str) -> Desk {
    let mut adviser = Desk::drawing(2);
    open(&mut adviser, asked);
    adviser
}

/// A file of one's own, and its link.
fn own_file() -> (Desk, String) {
    let mut own = Desk::drawing(1);
    own.enter("name", "Old crate");
    let asked = link(&mut own);
    (own, asked)
}

fn compares(desk: &Desk) -> bool {
    let shared = desk.page().shared.unwrap();
    shared
        .actions
        .iter()
        .any(|action| action.id == "shared.compare")
}

/// It is given as the gear is first kept or shared, once, and stays through undo and redo.
#[test]
fn a_gear_gets_its_mark_once() {
    let mut desk = Desk::drawing(7);
    desk.enter(BORE, "1.25 in");
    assert_eq!(desk.gear().id, None);
    desk.send(Msg::Compare(msg::Compare::Keep));
    let id = desk.gear().id.unwrap();
    assert_eq!(id.0, [7; 8]);
    assert!(desk.effects.contains(&Effect::DrawChance));
    desk.send(Msg::File(File::Chance { bytes: [8; 8] }));
    link(&mut desk);
    for _ in 0..2 {
        desk.send(Msg::History(History::Undo));
        assert_eq!(desk.gear().id, Some(id));
    }
    desk.send(Msg::History(History::Redo));
    assert_eq!(desk.gear().id, Some(id));
    // what is kept knows it after a restart
    let again = desk.reloaded();
    assert_eq!(again.gear().id, Some(id));
    // the demo that is only shared is no file for it
    let mut demo = Desk::drawing(9);
    link(&mut demo);
    assert!(demo.gear().id.is_some() && demo.page().files.is_empty());
}

#[test]
fn an_answer_says_which_state_it_answers() {
    let (mut own, asked) = own_file();
    let mut adviser = adviser_with(&asked);
    // the adviser calls everything otherwise
    adviser.enter("name", "For the workshop");
    adviser.enter("legs[1].name", "Port");
    let answer = link(&mut adviser);
    open(&mut own, &answer);
    let text = banner(&own);
    assert!(
        text.contains("made from your file “Old crate” as that is now"),
        "{text}"
    );
    own.send(Msg::File(File::LeaveShared));
    own.enter(BORE, "1.25 in");
    open(&mut own, &answer);
    let text = banner(&own);
    assert!(text.contains("which has changed since"), "{text}");
    // also while another file is open
    own.send(Msg::File(File::LeaveShared));
    own.send(Msg::File(File::OpenDemo));
    open(&mut own, &answer);
    let shared = own.page().shared.unwrap();
    let compare = shared
        .actions
        .iter()
        .find(|action| action.id == "shared.compare");
    own.send(compare.unwrap().msg.clone());
    assert_eq!(own.gear().name, "Old crate");
    let line = own.page().changes.line;
    assert!(line.starts_with("Sent to me: 2 changes"), "{line}");
}

/// A file that is sent back stands beside one's own as what a link brings.
#[test]
fn a_file_that_comes_back_is_told_as_one_of_the_same_gear() {
    let (mut own, asked) = own_file();
    let mut adviser = adviser_with(&asked);
    adviser.enter(BORE, "1.25 in");
    let text = gearswing_gearfile::to_text(&adviser.gear()).unwrap();
    let name = "answer.json".to_owned();
    own.send(Msg::File(File::ImportText { name, text }));
    assert!(compares(&own), "{}", banner(&own));
    assert_eq!(own.page().files.len(), 1);
}

#[test]
fn another_airplane_is_no_state_of_this_one() {
    let mut own = Desk::drawing(1);
    own.enter(BORE, "1.25 in");
    link(&mut own);
    own.send(Msg::File(File::Chance { bytes: [2; 8] }));
    own.send(Msg::File(File::AnotherAirplane));
    assert_eq!(own.gear().id, None);
    let other = link(&mut own);
    assert_eq!(own.gear().id.unwrap().0, [2; 8]);
    let mut first = Desk::drawing(3);
    first.enter(BORE, "1.25 in");
    link(&mut first);
    open(&mut first, &other);
    assert!(!compares(&first), "{}", banner(&first));
    // of a gear without a mark names and places of the legs tell, and the page says that it only seems so
    let mut unmarked = Desk::demo();
    unmarked.enter(BORE, "1.25 in");
    unmarked.send(Msg::Share(Share::OpenLink { text: other }));
    assert!(
        compares(&unmarked)
            && banner(&unmarked).contains("seems to be another version of your file")
    );
}

/// What somebody has sent and was only looked at is not what the next start opens.
#[test]
fn the_next_start_opens_the_own_file() {
    let mut own = Desk::drawing(1);
    own.enter("name", "Old crate");
    let mut adviser = Desk::drawing(2);
    adviser.enter("name", "Theirs");
    let sent = link(&mut adviser);
    open(&mut own, &sent);
    assert_eq!(own.gear().name, "Theirs");
    assert_eq!(own.reloaded().gear().name, "Old crate");
}

/// A file that is gone takes nothing in, and no other file does instead.
#[test]
fn what_was_sent_goes_into_no_other_file() {
    let (mut own, asked) = own_file();
    let mut adviser = adviser_with(&asked);
    adviser.enter(BORE, "1.25 in");
    let answer = link(&mut adviser);
    open(&mut own, &answer);
    let id = own.page().files[0].id.clone();
    own.send(Msg::File(File::Delete { id }));
    own.send(Msg::Compare(msg::Compare::WithOwn));
    assert!(own.gear().kept.iter().all(|kept| !kept.sent));
    let notices = own.page().notices;
    assert!(
        notices
            .iter()
            .any(|notice| notice.text.contains("not there any more"))
    );
}

/// One's own link says nothing of an answer, whatever the file keeps; of two copies that is found which was answered.
#[test]
fn a_copy_is_told_from_the_file_it_was_made_of() {
    let mut own = Desk::drawing(1);
    own.enter("name", "Old crate");
    own.send(Msg::Compare(msg::Compare::Keep));
    own.enter(BORE, "1.25 in");
    let as_it_is = link(&mut own);
    open(&mut own, &as_it_is);
    assert!(
        banner(&own).contains("another version of your file"),
        "{}",
        banner(&own)
    );
    own.send(Msg::File(File::LeaveShared));
    own.send(Msg::File(File::Duplicate));
    own.enter("name", "Second crate");
    own.enter(BORE, "1.5 in");
    let asked = link(&mut own);
    let mut adviser = adviser_with(&asked);
    adviser.enter("legs[1].wheel.mass_kg", "9 kg");
    let answer = link(&mut adviser);
    own.send(Msg::File(File::OpenDemo));
    open(&mut own, &answer);
    let text = banner(&own);
    assert!(
        text.contains("made from your file “Second crate” as that is now"),
        "{text}"
    );
    // a file that is taken in as it was is a copy as before, no answer
    own.send(Msg::File(File::LeaveShared));
    let files = own.page().files.len();
    let text = own.stored.values().next().unwrap().clone();
    let name = "backup.txt".to_owned();
    own.send(Msg::File(File::ImportText { name, text }));
    assert_eq!(own.page().files.len(), files + 1);
}
