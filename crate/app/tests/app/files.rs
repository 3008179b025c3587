//! Gear files, storage, links: nothing that was typed is lost.
use gearswing_app::msg::{self, Msg};
use gearswing_app::{Effect, Start, StoredFile};
use gearswing_units::UnitChoice;

use crate::support::Desk;

const BORE: &str = "legs[2].actuator.bore_m";

pub(crate) fn link(desk: &mut Desk) -> String {
    desk.send(Msg::Share(msg::Share::CopyLink))
        .into_iter()
        .find_map(|effect| match effect {
            Effect::CopyText { text } => Some(text),
            _ => None,
        })
        .unwrap()
}

fn names(desk: &Desk) -> Vec<String> {
    desk.page()
        .files
        .into_iter()
        .map(|file| file.name)
        .collect()
}

#[test]
fn the_demo_becomes_a_file_when_it_is_changed() {
    let mut desk = Desk::demo();
    assert!(desk.stored.is_empty() && desk.page().files.is_empty());
    desk.enter(BORE, "1.4");
    assert_eq!(desk.stored.len(), 1);
    assert!(desk.page().files[0].current);
    let again = desk.reloaded();
    assert_eq!(again.gear(), desk.gear());
    assert!(again.page().files[0].current);
}

#[test]
fn a_new_file_starts_from_a_working_example() {
    let mut desk = Desk::demo();
    for starter in desk.page().starters {
        desk.send(starter.msg.clone());
        let page = desk.page();
        assert!(
            page.answers.iter().all(|leg| leg.faults.is_empty()),
            "{}",
            starter.label
        );
        assert!(
            page.answers.iter().all(|leg| leg.answers.len() == 3),
            "{}",
            starter.label
        );
    }
    assert!(desk.stored.len() >= 6);
    let mut unique = names(&desk);
    unique.sort();
    unique.dedup();
    assert_eq!(unique.len(), desk.page().files.len());
}

#[test]
fn files_keep_their_history_while_another_is_open() {
    let mut desk = Desk::demo();
    desk.enter(BORE, "1.4");
    let first = desk.page().files[0].id.clone();
    let changed = desk.gear();
    desk.send(Msg::File(msg::File::Duplicate));
    assert_eq!(desk.page().files.len(), 2);
    assert!(!desk.page().toolbar.can_undo);
    desk.send(Msg::File(msg::File::Open { id: first }));
    assert_eq!(desk.gear(), changed);
    assert!(desk.page().toolbar.can_undo);
}

#[test]
fn a_deleted_file_comes_back() {
    let mut desk = Desk::demo();
    desk.enter(BORE, "1.4");
    let (id, gear) = (desk.page().files[0].id.clone(), desk.gear());
    desk.send(Msg::File(msg::File::Delete { id }));
    assert!(desk.stored.is_empty() && desk.page().files.is_empty());
    let back = desk.page().notices[0].actions[0].clone();
    desk.send(back.msg);
    assert_eq!(desk.gear(), gear);
    assert_eq!(desk.stored.len(), 1);
}

#[test]
fn export_and_import_give_the_same_gear() {
    let mut desk = Desk::demo();
    desk.enter(BORE, "1 7/16");
    let effects = desk.send(Msg::File(msg::File::Export));
    let Some(Effect::Download { name, text, .. }) = effects.into_iter().next_back() else {
        panic!("a download");
    };
    let gear = desk.gear();
    desk.send(Msg::File(msg::File::ImportText { name, text }));
    let mut imported = desk.gear();
    assert_eq!(desk.page().files.len(), 2);
    assert_ne!(imported.name, gear.name, "two files never share a name");
    imported.name.clone_from(&gear.name);
    assert_eq!(imported, gear);
}

#[test]
fn a_bad_import_changes_nothing() {
    let mut desk = Desk::demo();
    desk.enter(BORE, "1.4");
    let (gear, stored) = (desk.gear(), desk.stored.clone());
    for text in [
        "",
        "{",
        "[]",
        "{\"format\":\"gearswing-gear\",\"version\":99}",
        "x",
        "\0\0",
    ] {
        let name = "other.json".to_owned();
        desk.send(Msg::File(msg::File::ImportText {
            name,
            text: text.to_owned(),
        }));
        assert!(desk.page().notices[0].text.contains("not imported"));
        assert_eq!(desk.gear(), gear);
        assert_eq!(desk.stored, stored);
    }
}

#[test]
fn a_link_opens_beside_and_shows_the_same() {
    let mut sender = Desk::demo();
    sender.enter(BORE, "1.31");
    sender.send(Msg::View(msg::View::SelectLeg { leg: 1 }));
    sender.send(Msg::Play(msg::Play::Scrub { progress: 0.4375 }));
    sender.send(Msg::View(msg::View::Units(UnitChoice::METRIC)));
    sender.send(Msg::View(msg::View::Zoom { factor: 2.0 }));
    let text = link(&mut sender);
    assert!(text.len() < 2_000, "{}", text.len());

    let mut receiver = Desk::demo();
    receiver.enter(BORE, "1.9");
    let (own, stored) = (receiver.gear(), receiver.stored.clone());
    receiver.send(Msg::Share(msg::Share::OpenLink { text: text.clone() }));
    assert_eq!(receiver.gear(), sender.gear());
    assert_eq!(receiver.state.session.leg, 1);
    assert_eq!(receiver.state.session.progress, 0.4375);
    // in the reader's own units
    assert_ne!(receiver.state.session.units, UnitChoice::METRIC);
    receiver.send(Msg::View(msg::View::Units(UnitChoice::METRIC)));
    let numbers = |desk: &Desk| {
        let page = desk.page();
        (
            page.answers
                .iter()
                .map(|l| l.answers.clone())
                .collect::<Vec<_>>(),
            page.readout,
        )
    };
    assert_eq!(numbers(&receiver), numbers(&sender));
    let seen = |desk: &Desk| desk.handle("legs[1].trunnion_m");
    let (a, b) = (seen(&receiver), seen(&sender));
    assert!((a.x_px - b.x_px).abs() < 1e-6 && (a.y_px - b.y_px).abs() < 1e-6);
    assert_eq!(receiver.stored, stored, "own work untouched");
    let banner = receiver.page().shared.unwrap();
    // back to the own work
    receiver.send(banner.actions[1].msg.clone());
    assert_eq!(receiver.gear(), own);
    assert!(receiver.page().shared.is_none() && receiver.page().toolbar.can_undo);
    // open again and keep
    receiver.send(Msg::Share(msg::Share::OpenLink { text }));
    receiver.send(banner.actions[0].msg.clone());
    assert_eq!(receiver.page().files.len(), 2);
    assert_eq!(receiver.stored.len(), 2);
    assert!(receiver.page().shared.is_none());
    let id = stored.keys().next().unwrap();
    assert_eq!(receiver.stored[id], stored[id]);
}

#[test]
fn a_change_keeps_what_a_link_brought() {
    let mut sender = Desk::demo();
    let text = link(&mut sender);
    let mut receiver = Desk::new(Start {
        fragment: text.split_once('#').map(|(_, code)| code.to_owned()),
        ..Start::default()
    });
    assert!(receiver.page().shared.is_some());
    receiver.enter(BORE, "half typed");
    assert_eq!(receiver.stored.len(), 1);
    let mut again = receiver.reloaded();
    assert_eq!(again.row(BORE).value, "half typed");
}

#[test]
fn a_page_as_one_file_opens_what_was_made_of_it() {
    let mut sender = Desk::demo();
    let text = link(&mut sender);
    let given = |files: &Desk, index: Option<String>| {
        let files = files.stored.iter().map(|(id, text)| StoredFile {
            id: id.clone(),
            text: text.clone(),
        });
        Desk::new(Start {
            given: true,
            fragment: text.split_once('#').map(|(_, code)| code.to_owned()),
            files: files.collect(),
            index,
            ..Start::default()
        })
    };
    let none = Desk::demo();
    let mut first = given(&none, None);
    assert!(first.page().shared.is_some());
    // not changed, it is opened again
    assert!(given(&first, first.index.clone()).page().shared.is_some());
    first.enter(BORE, "1.7");
    let own = first.gear();
    let again = given(&first, first.index.clone());
    assert!(again.page().shared.is_none());
    assert_eq!(again.gear(), own);
    // kept as it is, under another name since its own is taken
    let mut kept = given(&none, None);
    kept.send(Msg::File(msg::File::KeepShared));
    let again = given(&kept, None);
    assert!(again.page().shared.is_none());
    assert_eq!(again.gear(), kept.gear());
}

#[test]
fn damaged_links_say_which_and_leave_the_work_alone() {
    let mut desk = Desk::demo();
    let whole = link(&mut desk);
    desk.enter(BORE, "1.9");
    let (gear, stored) = (desk.gear(), desk.stored.clone());
    let code = whole.split_once('#').unwrap().1.to_owned();
    let cut = code[..code.len() - 30].to_owned();
    let mut altered: Vec<char> = code.chars().collect();
    let at = altered.len() / 2;
    altered[at] = if altered[at] == 'A' { 'B' } else { 'A' };
    let altered: String = altered.into_iter().collect();
    let mut newer = code.clone();
    newer.replace_range(2..3, "3");
    for (text, word) in [
        (cut.as_str(), "cut"),
        (altered.as_str(), "altered"),
        (newer.as_str(), ""),
        ("hello", "no gear link"),
        ("", ""),
    ] {
        desk.send(Msg::Share(msg::Share::OpenLink {
            text: text.to_owned(),
        }));
        let said = desk.page().notices[0].text.clone();
        assert!(said.contains(word), "{word}: {said}");
        assert_eq!(desk.gear(), gear);
        assert_eq!(desk.stored, stored);
        assert!(desk.page().shared.is_none());
    }
    // %23 for #, and the bare code
    for text in [whole.replace('#', "%23"), code] {
        desk.send(Msg::Share(msg::Share::OpenLink { text }));
        assert!(desk.page().shared.is_some());
        desk.send(Msg::File(msg::File::LeaveShared));
        assert_eq!(desk.gear(), gear);
    }
}

#[test]
fn a_broken_stored_file_is_reported_and_kept() {
    let mut desk = Desk::demo();
    desk.enter(BORE, "1.4");
    let mut broken = desk.stored.clone();
    broken.insert(
        "g7".to_owned(),
        "gearswing stored file 1\n---\n{\"format\"".to_owned(),
    );
    broken.insert(
        "g8".to_owned(),
        "gearswing stored file 2\n---\n{}".to_owned(),
    );
    let mut desk = Desk::new(Start {
        index: desk.index.clone(),
        files: broken
            .iter()
            .map(|(id, text)| StoredFile {
                id: id.clone(),
                text: text.clone(),
            })
            .collect(),
        ..Start::default()
    });
    let page = desk.page();
    assert_eq!(page.files.iter().filter(|file| file.problem).count(), 2);
    assert!(page.notices.len() >= 2);
    assert!(page.files.iter().any(|file| file.current && !file.problem));
    desk.enter(BORE, "1.5");
    for id in ["g7", "g8"] {
        assert_eq!(desk.stored[id], broken[id]);
        let id = id.to_owned();
        let effects = desk.send(Msg::File(msg::File::ExportStored { id: id.clone() }));
        assert!(matches!(&effects[0], Effect::Download { text, .. } if *text == broken[&id]));
    }
}

#[test]
fn a_broken_index_is_kept_and_no_file_is_lost() {
    let mut desk = Desk::demo();
    desk.enter(BORE, "1.4");
    desk.index = Some("rubbish".to_owned());
    let again = desk.reloaded();
    assert_eq!(again.stored["kept-index"], "rubbish");
    assert!(again.page().files.iter().any(|file| !file.problem));
}

#[test]
fn two_windows_lose_nothing() {
    let mut one = Desk::demo();
    one.enter(BORE, "1.4");
    let id = one.page().files[0].id.clone();
    let mut two = one.reloaded();
    two.enter(BORE, "1.6");
    let text = two.stored[&id].clone();
    one.send(Msg::File(msg::File::StoredElsewhere {
        id: id.clone(),
        text: text.clone(),
    }));
    // the first window had work of its own: it goes on as another file
    assert_eq!(one.page().files.len(), 2);
    let bore = |desk: &Desk| gearswing_app::fields::number(desk.state.gear(), BORE);
    assert_eq!(bore(&one), Some(Some(0.03556)));
    one.send(Msg::File(msg::File::Open { id: id.clone() }));
    assert_eq!(bore(&one), Some(Some(0.04064)));
    // a window without work of its own just shows the change
    let mut three = two.reloaded();
    two.enter(BORE, "1.7");
    let text = two.stored[&id].clone();
    three.send(Msg::File(msg::File::StoredElsewhere { id, text }));
    assert_eq!(three.page().files.len(), 1);
    assert_eq!(bore(&three), bore(&two));
}

#[test]
fn what_was_being_typed_is_entered_after_a_reload() {
    let mut desk = Desk::demo();
    desk.send(Msg::Field(msg::Field::Draft {
        path: BORE.to_owned(),
        text: "1 1/4".to_owned(),
    }));
    let mut again = desk.reloaded();
    assert_eq!(again.row(BORE).value, "1 1/4");
    assert_eq!(
        gearswing_app::fields::number(again.state.gear(), BORE),
        Some(Some(0.03175))
    );
}
