//! Every version that was ever written opens.
use gearswing_gear::model::*;

use super::*;

/// The golden file of a version names every key that is new in it.
fn names_all_new(text: &str, version: u64) {
    for (key, since) in super::envelope::newer_keys() {
        let there = text.contains(&format!("\"{key}\":"));
        assert!(there || since != version, "{key}");
        assert!(
            !there || since <= version,
            "{key} in a file of version {version}"
        );
    }
}

#[test]
fn version_5_opens_for_ever() {
    let text = include_str!("../../../../fixtures/versions/v5.json");
    // its keys came one after the other
    let later = include_str!("../../../../fixtures/versions/v5_id.json");
    names_all_new(&[text, later].concat(), 5);
    let gear = read(text).unwrap();
    assert_eq!(gear.points_from, PointsFrom::Trunnion);
    assert_eq!(to_text(&gear).unwrap(), text);
    // told from the airplane's axes, an older program has no need of it
    let text = text.replacen(
        "    \"points_from\": \"trunnion\"",
        "    \"points_from\": \"airplane\"",
        1,
    );
    let gear = read(&text).unwrap();
    assert_eq!(gear.points_from, PointsFrom::Airplane);
    assert!(to_text(&gear).unwrap().contains("\"version\": 3"));
}

#[test]
fn version_5_with_notes_opens_for_ever() {
    let text = include_str!("../../../../fixtures/versions/v5_notes.json");
    let gear = read(text).unwrap();
    assert_eq!(gear.notes.len(), 3);
    assert_eq!(gear.notes[1].on, "legs[0].actuator.mount_m");
    assert_eq!(gear.notes[2].progress, Some(0.75));
    assert_eq!(to_text(&gear).unwrap(), text);
    // so many that nobody has written them are not read
    let many = Gear {
        notes: vec![gear.notes[0].clone(); 21],
        ..gear.clone()
    };
    assert!(read(&to_text(&many).unwrap()).is_err());
    // without them an older program opens it
    let gear = Gear {
        notes: Vec::new(),
        ..gear
    };
    assert!(to_text(&gear).unwrap().contains("\"version\": 1"));
}

#[test]
fn version_5_with_a_mark_opens_for_ever() {
    let text = include_str!("../../../../fixtures/versions/v5_id.json");
    let gear = read(text).unwrap();
    let id = gear.id.unwrap();
    assert_eq!(id.0, [0x0f, 0x1e, 0x2d, 0x3c, 0x4b, 0x5a, 0x69, 0x78]);
    assert_eq!(to_text(&gear).unwrap(), text);
    for wrong in [
        "",
        "0f1e2d3c4b5a697",
        "0f1e2d3c4b5a69780",
        "+f1e2d3c4b5a6978",
    ] {
        let text = text.replace("0f1e2d3c4b5a6978", wrong);
        assert!(read(&text).is_err(), "{wrong}");
    }
    let without = text.replace("\"knee_given\": \"measured\"", "\"knee_given\": \"points\"");
    let gear = Gear {
        id: None,
        ..read(&without).unwrap()
    };
    assert!(to_text(&gear).unwrap().contains("\"version\": 3"));
}

/// The tires at the wheels are a state of their own in hand, and stand at the wheels again in the file.
#[test]
fn the_previous_tires_are_a_kept_state() {
    let text = include_str!("../../../../fixtures/versions/v3.json");
    let gear = read(text).unwrap();
    assert!(gear.legs.iter().all(|leg| leg.wheel.former.is_none()));
    let kept = &gear.kept[gear.previous().unwrap()];
    let before = gearswing_gear::field::previous_tire(&gear, 0).unwrap();
    assert_eq!(kept.gear.legs[0].wheel.tire, *before);
    assert!(text.contains(&format!("\"diameter_m\": {}", before.diameter)));
    // one that has something else as well is one among the others
    let mut other = gear.clone();
    let mut state = (*kept.gear).clone();
    state.legs[0].actuator.bore *= 1.5;
    other.kept = vec![Kept::of(&state, PREVIOUS_TIRE.to_owned())];
    let written = to_text(&other).unwrap();
    assert!(written.contains("\"version\": 4") && !written.contains("\"former\""));
    assert_eq!(read(&written).unwrap(), other);
    // what older versions told of the tire before that of a kept state goes with it
    let told = "\"values\": [\n        {\n          \"at\": \"legs[0].wheel.former.width_m\",\n          \"number\": 0.1\n        },";
    let old = written.replacen("\"values\": [", told, 1);
    assert_ne!(old, written);
    assert_eq!(read(&old).unwrap(), other);
}

#[test]
fn version_4_opens_for_ever() {
    let text = include_str!("../../../../fixtures/versions/v4.json");
    let gear = read(text).unwrap();
    let before = gear.state_before().unwrap();
    assert_eq!(before.name, "old tire");
    assert_eq!(before.gear.legs[0].wheel.tire.diameter, 0.34);
    assert_eq!(before.gear.legs[0].actuator.rod_end_pitch, None);
    assert_eq!(gear.kept[1].gear.legs.len(), gear.legs.len() + 1);
    // the tires at the wheels come as one more state, and stand among the others from then on
    assert_eq!(gear.previous(), Some(2));
    let again = to_text(&gear).unwrap();
    assert!(again.contains("\"version\": 4") && !again.contains("\"former\""));
    assert_eq!(read(&again).unwrap(), gear);
}

#[test]
fn version_3_opens_for_ever() {
    let text = include_str!("../../../../fixtures/versions/v3.json");
    names_all_new(text, 3);
    let gear = read(text).unwrap();
    // 28 threads per inch
    assert_eq!(gear.legs[0].actuator.rod_end_pitch, Some(0.0254 / 28.0));
    assert_eq!(to_text(&gear).unwrap(), text);
}

#[test]
fn version_2_opens_for_ever() {
    let text = include_str!("../../../../fixtures/versions/v2.json");
    names_all_new(text, 2);
    let gear = read(text).unwrap();
    assert_eq!(gear.legs.len(), 5);
    assert_eq!(gear.legs[2].shared_drive, "Central cylinder");
    assert_eq!(gear.legs[1].drive_ratio, 1.1);
    assert_eq!(gear.supply.relief_down, Some(4_500_000.0));
    // a margin that is typed stays typed, though it is the default
    assert_eq!(gear.supply.margin_wanted, Some(0.1));
    assert_eq!(gear.legs[0].pins.trunnion.couple, Some(1.5));
    assert_eq!(gear.legs[0].out_of_plane.trunnion_skew, Some(0.02));
    assert_eq!(to_text(&gear).unwrap(), text);
}

#[test]
fn version_1_opens_for_ever() {
    let text = include_str!("../../../../fixtures/versions/v1.json");
    let gear = read(text).unwrap();
    assert_eq!(gear.legs.len(), 5);
    assert_eq!(
        gear.note,
        "Every key and every word of version 1 occurs in this file."
    );
    let [nose, left, right, ..] = &gear.legs[..] else {
        unreachable!()
    };
    assert!(matches!(&nose.brace, Brace::Folding(b) if b.excursion_allowed == Some(0.002)));
    assert!(matches!(&left.brace, Brace::Sliding(b) if b.longest == 0.78));
    assert!(matches!(&right.brace, Brace::None));
    assert_eq!(nose.wheel.tire.diameter, 0.36068);
    // what it says is written again in the same words
    assert_eq!(to_text(&gear).unwrap(), text);
}
