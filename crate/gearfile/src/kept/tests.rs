//! Kept states come back from file and link, and every difference is told and taken back.
use gearswing_gear::field::{Field, Place, Value, changes, take_back};
use gearswing_gear::model::{Brace, Gear, Kept, KneeGiven, MOST_KEPT};
use proptest::prelude::*;

use crate::arbitrary;
use crate::link::{self, Shared};
use crate::{ContentFault, DEMO, OpenError, read, to_text};

fn demo() -> Gear {
    DEMO.gear().unwrap()
}

fn with(gear: &Gear, states: &[&Gear], before: Option<usize>) -> Gear {
    let kept = states.iter().enumerate();
    let kept = kept.map(|(at, state)| Kept {
        sent: at == 1,
        ..Kept::of(state, format!("state {at}"))
    });
    Gear {
        kept: kept.collect(),
        before,
        ..gear.clone()
    }
}

fn sent(gear: &Gear) -> Shared {
    Shared::of(gear.clone())
}

/// Takes back what differs until nothing does.
fn taken_back(now: &Gear, before: &Gear) -> Gear {
    let mut gear = now.clone();
    for _ in 0..1_000 {
        let Some(first) = changes(&gear, before).first().map(|change| change.place) else {
            return gear;
        };
        take_back(first, &mut gear, before).unwrap();
    }
    panic!("does not end: {:?}", changes(&gear, before));
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(64))]

    #[test]
    fn any_state_comes_back_with_any_gear(a in arbitrary::gear(), b in arbitrary::gear(), c in arbitrary::gear()) {
        let gear = with(&a, &[&b, &c, &a], Some(1));
        let text = to_text(&gear).unwrap();
        prop_assert_eq!(read(&text).unwrap(), gear.clone());
        if !gear.legs.is_empty() {
            let code = link::encode(&sent(&gear)).unwrap();
            prop_assert_eq!(link::decode(&code).unwrap().gear, gear);
        }
    }

    #[test]
    fn what_differs_is_told_and_taken_back_one_by_one(a in arbitrary::gear(), b in arbitrary::gear()) {
        let mut back = taken_back(&a, &b);
        prop_assert!(changes(&back, &b).is_empty());
        // names and notes of the gear itself and how points are told are no change, and a set may stand in any order
        (back.name, back.note, back.points_from) = (b.name.clone(), b.note.clone(), b.points_from);
        back.notes.clone_from(&b.notes);
        back.id = b.id;
        back.kept.clone_from(&b.kept);
        let mut other = b.clone();
        // what is left out counts as what stands there
        for gear in [&mut back, &mut other] {
            gear.emergency_way = Some(gear.way_down());
        }
        for leg in back.legs.iter_mut().chain(&mut other.legs) {
            // how a knee is told is no change either
            if let Brace::Folding(brace) = &mut leg.brace {
                brace.knee_given = KneeGiven::Points;
            }
            for piece in &mut leg.well {
                piece.ignores.sort_unstable();
                piece.ignores.dedup();
            }
        }
        let names = |gear: &Gear| gear.legs.iter().map(|leg| leg.name.clone()).collect::<Vec<_>>();
        // legs are told apart by their names
        if names(&a).len() == names(&b).len() {
            let (back, other) = (format!("{back:#?}"), format!("{other:#?}"));
            let lines = back.lines().zip(other.lines());
            let off: Vec<_> = lines.filter(|(a, b)| a.replace("-0.0", "0.0") != b.replace("-0.0", "0.0")).collect();
            prop_assert!(off.is_empty(), "{off:?}");
        }
    }
}

#[test]
fn a_few_numbers_take_a_few_letters() {
    let before = demo();
    let mut now = before.clone();
    let numbers: Vec<_> = gearswing_gear::field::value_paths(&now)
        .into_iter()
        .filter(|path| {
            path.field.is_of_leg() && matches!(path.value(&before), Some(Value::Number(_)))
        })
        .step_by(12)
        .take(12)
        .collect();
    for path in &numbers {
        let Some(Value::Number(number)) = path.value(&before) else {
            unreachable!()
        };
        // as typed: a few figures
        let typed = (1e4 * (1.03 * number + 0.01)).round() / 1e4;
        path.set(&mut now, &Value::Number(typed)).unwrap();
    }
    assert_eq!(changes(&now, &before).len(), 12);
    let alone = link::encode(&sent(&now)).unwrap().len();
    let mut gear = with(&now, &[&before], Some(0));
    gear.kept[0].name = "tires of the old sort".chars().take(20).collect();
    let both = link::encode(&sent(&gear)).unwrap().len();
    assert!(both < alone + 200, "{alone}, {both}");
    // with a note of 200 letters, on a host of 40
    gear.note = NOTE.to_owned();
    let noted = link::encode(&sent(&gear)).unwrap().len();
    assert!(
        NOTE.len() == 200 && noted + 42 < link::LINK_LIMIT,
        "{noted}"
    );
}

const NOTE: &str = "I moved the actuator mount up by half an inch and took the smaller tire: it clears now by a quarter inch and the pump has plenty to spare. Check the lock on the jacks before you drill anything, please";

#[test]
fn a_file_without_kept_states_is_as_before() {
    let gear = demo();
    assert!(to_text(&gear).unwrap().contains("\"version\": 2"));
    assert!(
        to_text(&with(&gear, &[&gear], None))
            .unwrap()
            .contains("\"version\": 4")
    );
}

#[test]
fn a_damaged_state_is_told_with_its_path() {
    let mut before = demo();
    before.legs[0].actuator.bore = 0.05;
    let text = to_text(&with(&demo(), &[&before], Some(0))).unwrap();
    let fault = |from: &str, to: &str| match read(&text.replacen(from, to, 1)) {
        Err(OpenError::Field {
            path,
            what: ContentFault::NoSuchPlace,
            ..
        }) => path,
        other => panic!("{other:?}"),
    };
    let bore = "legs[0].actuator.bore_m";
    assert!(text.contains(bore));
    assert_eq!(
        fault(bore, "legs[9].actuator.bore_m"),
        "kept[0].values.legs[9].actuator.bore_m"
    );
    assert_eq!(
        fault(bore, "legs[0].actuator.bor"),
        "kept[0].values.legs[0].actuator.bor"
    );
    assert_eq!(fault("\"before\": 0", "\"before\": 1"), "before");
    let entry = "{\n          \"at\": \"legs[0].actuator.bore_m\"";
    assert!(text.contains(entry));
    let twice = format!("{{\"at\": \"{bore}\", \"number\": 1}},\n        {entry}");
    assert_eq!(fault(entry, &twice), format!("kept[0].values.{bore}"));
    let mut many = demo();
    many.kept = vec![Kept::of(&demo(), String::new()); MOST_KEPT + 2];
    let text = to_text(&many).unwrap();
    assert!(matches!(read(&text), Err(OpenError::Field { path, .. }) if path == "kept"));
}

#[test]
fn a_change_that_brings_others_along_is_one() {
    let before = demo();
    let mut now = before.clone();
    let leg = now
        .legs
        .iter()
        .position(|leg| !matches!(leg.brace, gearswing_gear::model::Brace::None))
        .unwrap();
    let brace = Field::BraceType.of_leg(leg);
    brace.choose(&mut now, "none").unwrap();
    now.legs[leg].actuator = before.legs[leg].actuator.clone();
    let found = changes(&now, &before);
    assert_eq!(
        found.iter().map(|change| change.place).collect::<Vec<_>>(),
        [Place::Field(brace)]
    );
    take_back(found[0].place, &mut now, &before).unwrap();
    assert_eq!(now, before);
}
