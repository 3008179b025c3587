//! What is said to be kept is kept, with its history; and all files go out and come back.
use gearswing_app::msg::{self, Msg};
use gearswing_app::{Effect, Start, StoredFile};

use crate::support::{Desk, by};

const BORE: &str = "legs[2].actuator.bore_m";
const BEING_KEPT: &str = "Being kept …";
const KEPT: &str = "Kept in this browser";

fn stored_text(desk: &Desk) -> String {
    desk.page().toolbar.stored_text
}

fn kept(desk: &mut Desk, ticket: u64) {
    desk.send(Msg::File(msg::File::Kept { ticket }));
}

fn refused(desk: &mut Desk, reason: &str) {
    desk.send(Msg::File(msg::File::NotStored {
        reason: reason.to_owned(),
    }));
}

fn texts(desk: &Desk) -> Vec<String> {
    let notices = desk.page().notices;
    notices.into_iter().map(|notice| notice.text).collect()
}

fn undo(desk: &mut Desk) {
    desk.send(Msg::History(msg::History::Undo));
}

fn redo(desk: &mut Desk) {
    desk.send(Msg::History(msg::History::Redo));
}

#[test]
fn kept_is_said_of_what_is_on_the_disk_only() {
    let mut desk = Desk::demo();
    desk.keeps = false;
    desk.enter(BORE, "1.4");
    assert_eq!(stored_text(&desk), BEING_KEPT);
    let first = *desk.tickets.last().unwrap();
    desk.enter(BORE, "1.5");
    let second = *desk.tickets.last().unwrap();
    assert!(second > first);
    // the answer to the first says nothing of the second
    kept(&mut desk, first);
    assert_eq!(stored_text(&desk), BEING_KEPT);
    kept(&mut desk, second);
    assert_eq!(stored_text(&desk), KEPT);
    // one letter is not kept yet
    desk.send(Msg::Field(msg::Field::Draft {
        path: BORE.to_owned(),
        text: "1.52".to_owned(),
    }));
    assert_eq!(stored_text(&desk), BEING_KEPT);
    // an answer that comes late takes nothing back
    let third = *desk.tickets.last().unwrap();
    kept(&mut desk, third);
    kept(&mut desk, first);
    assert_eq!(stored_text(&desk), KEPT);
}

#[test]
fn a_full_storage_is_told_once_and_recovers() {
    let mut desk = Desk::new(Start {
        storage_refused: Some("there is no storage".to_owned()),
        ..Start::default()
    });
    desk.keeps = false;
    assert_eq!(desk.page().notices.len(), 1);
    desk.enter(BORE, "1.4");
    for reason in [
        "there is no storage",
        "there is no room left for it",
        "other",
    ] {
        refused(&mut desk, reason);
        let problems = texts(&desk);
        assert_eq!(problems.len(), 1, "{problems:?}");
        assert!(problems[0].contains(reason));
        assert!(stored_text(&desk).starts_with("Not kept"));
    }
    desk.enter(BORE, "1.5");
    assert!(stored_text(&desk).starts_with("Not kept"));
    let ticket = *desk.tickets.last().unwrap();
    kept(&mut desk, ticket);
    assert_eq!(stored_text(&desk), KEPT);
    let said = texts(&desk);
    assert_eq!(said.len(), 1, "{said:?}");
    assert!(said[0].contains("works again"), "{said:?}");
}

#[test]
fn the_browser_is_asked_to_keep_and_its_refusal_told_once() {
    let mut desk = Desk::demo();
    desk.enter(BORE, "1.4");
    desk.enter(BORE, "1.5");
    let asked = |desk: &Desk| {
        let all = desk.effects.iter();
        all.filter(|effect| **effect == Effect::AskToStay).count()
    };
    assert_eq!(asked(&desk), 1);
    let told = |desk: &Desk| {
        let all = texts(desk);
        all.iter()
            .filter(|text| text.contains("does not promise"))
            .count()
    };
    desk.send(Msg::File(msg::File::MayBeCleared));
    assert_eq!(told(&desk), 1);
    let mut again = desk.reloaded();
    again.enter(BORE, "1.6");
    again.send(Msg::File(msg::File::MayBeCleared));
    assert_eq!((asked(&again), told(&again)), (1, 0));
}

#[test]
fn the_history_outlives_the_page() {
    let mut desk = Desk::demo();
    let first = desk.gear();
    let mut states = Vec::new();
    for bore in ["1.4", "1.5", "1.6", "1.7"] {
        desk.enter(BORE, bore);
        states.push(desk.gear());
    }
    undo(&mut desk);
    undo(&mut desk);
    let mut again = desk.reloaded();
    assert_eq!(again.gear(), states[1]);
    assert_eq!(
        again.page().toolbar.undo_text,
        desk.page().toolbar.undo_text
    );
    assert_eq!(
        again.page().toolbar.redo_text,
        desk.page().toolbar.redo_text
    );
    redo(&mut again);
    assert_eq!(again.gear(), states[2]);
    // again, from the middle, with a change: what was undone is off the line
    undo(&mut again);
    again.enter(BORE, "1.9");
    let changed = again.gear();
    let mut third = again.reloaded();
    assert!(!third.page().toolbar.can_redo);
    assert_eq!(third.gear(), changed);
    for state in [&states[1], &states[0]] {
        undo(&mut third);
        assert_eq!(third.gear(), *state);
    }
    undo(&mut third);
    let mut gear = third.gear();
    gear.name.clone_from(&first.name);
    assert_eq!(gear, first);
    assert!(!third.page().toolbar.can_undo);
}

#[test]
fn each_file_has_its_own_history() {
    let mut desk = Desk::demo();
    desk.enter(BORE, "1.4");
    let (one, first) = (desk.page().files[0].id.clone(), desk.gear());
    desk.send(Msg::File(msg::File::Duplicate));
    desk.enter(BORE, "1.5");
    desk.enter(BORE, "1.6");
    let mut again = desk.reloaded();
    assert!(again.page().toolbar.can_undo);
    again.send(Msg::File(msg::File::Open { id: one.clone() }));
    assert_eq!(again.gear(), first);
    undo(&mut again);
    assert_ne!(again.gear(), first);
    assert!(!again.page().toolbar.can_undo);
    // deleted and brought back, it still has it
    redo(&mut again);
    again.send(Msg::File(msg::File::Delete { id: one }));
    again.send(Msg::File(msg::File::BringBack));
    let mut third = again.reloaded();
    assert_eq!(third.gear(), first);
    undo(&mut third);
    assert_ne!(third.gear(), first);
}

#[test]
fn a_history_under_a_free_key_is_not_taken_for_the_new_files() {
    let mut desk = Desk::demo();
    desk.enter(BORE, "1.4");
    let id = desk.page().files[0].id.clone();
    // what another program or a crash may have left under the key of the next file
    let next = "g2".to_owned();
    let left = desk.steps[&id].clone();
    desk.steps.insert(next.clone(), left);
    desk.send(Msg::File(msg::File::Duplicate));
    desk.enter(BORE, "1.5");
    assert_eq!(desk.steps[&next].len(), 1);
}

#[test]
fn a_drag_of_a_stored_file_is_kept_while_it_goes_on() {
    let mut desk = Desk::demo();
    desk.enter(BORE, "1.4");
    let before = desk.gear();
    let at = desk.handle("legs[2].actuator.mount_m");
    desk.press(at);
    desk.drag_to(by(at, 30.0, 20.0), true);
    desk.drag_to(by(at, 40.0, 25.0), true);
    assert_ne!(desk.gear(), before);
    // killed here
    let mut again = desk.reloaded();
    assert_eq!(again.gear(), desk.gear());
    undo(&mut again);
    assert_eq!(again.gear(), before);
    // given up, nothing of it is left
    desk.send(Msg::Key(msg::Key::Escape));
    assert_eq!(desk.gear(), before);
    let again = desk.reloaded();
    assert_eq!(again.gear(), before);
    assert_eq!(
        again.page().toolbar.undo_text,
        desk.page().toolbar.undo_text
    );
}

#[test]
fn all_files_go_out_into_one_and_come_back() {
    let mut desk = Desk::demo();
    desk.enter(BORE, "1.4");
    for starter in desk.page().starters {
        desk.send(starter.msg);
    }
    desk.send(Msg::File(msg::File::Rename {
        name: "The last".to_owned(),
    }));
    let broken = "gearswing stored file 9\n---\n{\"format\"".to_owned();
    let files = desk.stored.iter().map(|(id, text)| StoredFile {
        id: id.clone(),
        text: text.clone(),
    });
    let mut desk = Desk::new(Start {
        index: desk.index.clone(),
        files: files
            .chain([StoredFile {
                id: "g99".to_owned(),
                text: broken.clone(),
            }])
            .collect(),
        ..Start::default()
    });
    let effects = desk.send(Msg::File(msg::File::ExportAll));
    let Some(Effect::Download { name, text, .. }) = effects.into_iter().next() else {
        panic!("a download");
    };
    // into an empty browser
    let mut other = Desk::demo();
    other.send(Msg::File(msg::File::ImportText {
        name: name.clone(),
        text: text.clone(),
    }));
    let gears = |desk: &mut Desk| {
        let rows = desk.page().files;
        let whole = rows.iter().filter(|row| !row.problem);
        let mut all = Vec::new();
        for row in whole {
            let id = row.id.clone();
            desk.send(Msg::File(msg::File::Open { id }));
            all.push(desk.gear());
        }
        all
    };
    let own = gears(&mut desk);
    assert!(own.len() > 4);
    assert_eq!(gears(&mut other), own);
    assert!(other.stored.values().any(|text| *text == broken));
    assert!(
        texts(&other)
            .iter()
            .any(|text| text.contains("cannot be read"))
    );
    assert_eq!(gears(&mut other.reloaded()), own);
    // once more into the same: nothing is overwritten, and no two have the same name
    other.send(Msg::File(msg::File::ImportText { name, text }));
    let twice = gears(&mut other);
    assert_eq!(twice.len(), 2 * own.len());
    assert_eq!(twice[..own.len()], own);
    let mut names: Vec<_> = twice.iter().map(|gear| &gear.name).collect();
    names.sort();
    names.dedup();
    assert_eq!(names.len(), twice.len());
}

#[test]
fn a_file_of_files_that_is_newer_or_damaged_changes_nothing() {
    let mut desk = Desk::demo();
    desk.enter(BORE, "1.4");
    let (gear, stored) = (desk.gear(), desk.stored.clone());
    for text in [
        "{\"format\": \"gearswing-files\", \"version\": 2, \"files\": []}",
        "{\"format\": \"gearswing-files\", \"version\": 1}",
        "{\"format\": \"gearswing-files\", \"version\": 1, \"files\": [",
    ] {
        desk.send(Msg::File(msg::File::ImportText {
            name: "all.json".to_owned(),
            text: text.to_owned(),
        }));
        assert!(texts(&desk)[0].contains("not imported"), "{text}");
        assert_eq!((desk.gear(), &desk.stored), (gear.clone(), &stored));
    }
}

/// A change that another window was ahead of is a file of its own, whatever is open by then.
#[test]
fn what_was_not_written_is_not_lost() {
    let mut desk = Desk::demo();
    desk.enter(BORE, "1.4");
    let (id, before) = (desk.page().files[0].id.clone(), desk.stored.clone());
    let mut other = desk.reloaded();
    other.enter(BORE, "1.6");
    let foreign = other.stored[&id].clone();
    desk.enter(BORE, "1.5");
    let own = desk.stored[&id].clone();
    assert_ne!(own, before[&id]);
    let elsewhere = |desk: &mut Desk| {
        for msg in [
            msg::File::NotWritten {
                id: id.clone(),
                text: own.clone(),
            },
            msg::File::StoredElsewhere {
                id: id.clone(),
                text: foreign.clone(),
            },
        ] {
            desk.send(Msg::File(msg));
        }
    };
    let bores = |desk: &mut Desk| {
        let rows = desk.page().files;
        let mut all = Vec::new();
        for row in rows {
            desk.send(Msg::File(msg::File::Open { id: row.id }));
            all.push(gearswing_app::fields::number(desk.state.gear(), BORE));
        }
        all.sort_by(|a, b| a.partial_cmp(b).unwrap());
        all
    };
    let both = [Some(Some(0.0381)), Some(Some(0.04064))];
    // still open
    let mut open = Desk {
        state: desk.state.clone(),
        stored: desk.stored.clone(),
        ..Desk::demo()
    };
    elsewhere(&mut open);
    assert_eq!(bores(&mut open), both);
    // another one was opened meanwhile
    let mut away = Desk {
        state: desk.state.clone(),
        stored: desk.stored.clone(),
        ..Desk::demo()
    };
    away.send(Msg::File(msg::File::OpenDemo));
    elsewhere(&mut away);
    assert_eq!(bores(&mut away), both);
}
