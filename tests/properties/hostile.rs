//! Numbers that make no sense: a result or named faults, never a panic, never a number that is none.
use gearswing_gear::model::Gear;
use gearswing_gearfile::{read, to_text};
use gearswing_solver::faults::{FaultKind, Faults, check_gear};
use gearswing_solver::result::LegResult;
use gearswing_solver::{Options, solve_leg};
use gearswing_tests::numbers::each_number;
use gearswing_tests::{Draw, cases};
use serde_json::{Value, json};

/// Every number of a gear file's JSON, by its pointer.
fn numbers(value: &Value, path: &str, found: &mut Vec<String>) {
    match value {
        Value::Number(_) => found.push(path.to_owned()),
        Value::Array(list) => {
            for (i, one) in list.iter().enumerate() {
                numbers(one, &format!("{path}/{i}"), found);
            }
        }
        Value::Object(map) => {
            for (key, one) in map {
                numbers(one, &format!("{path}/{key}"), found);
            }
        }
        _ => {}
    }
}

/// A pointer as faults write it: "/legs/0/actuator/rod_m" is "legs[0].actuator.rod_m".
fn field(pointer: &str) -> String {
    let mut field = String::new();
    for key in pointer.split('/').skip(1) {
        if key.parse::<usize>().is_ok() {
            field += &format!("[{key}]");
        } else {
            if !field.is_empty() {
                field.push('.');
            }
            field += key;
        }
    }
    field
}

fn put(gear: &Gear, pointer: &str, number: f64) -> Gear {
    let mut value = serde_json::to_value(gear).unwrap();
    *value.pointer_mut(pointer).unwrap() = json!(number);
    serde_json::from_value(value).unwrap()
}

/// The fault must name the field, or the point or outline that the number belongs to.
fn named(faults: &Faults, pointer: &str) -> bool {
    let field = field(pointer);
    faults.0.iter().any(|fault| {
        let is_it = field == fault.path || field.starts_with(&format!("{}[", fault.path));
        is_it
            && matches!(
                fault.kind,
                FaultKind::NotFinite | FaultKind::OutOfRange { .. }
            )
    })
}

/// Each number of the model on its own, replaced by one that no leg has: its field is named.
#[test]
fn every_number_is_checked() {
    const MARK: f64 = 7.123_456_789;
    let mut checked = 0;
    for case in cases(1, 1, 70) {
        let mut pointers = Vec::new();
        numbers(
            &serde_json::to_value(&case.gear).unwrap(),
            "",
            &mut pointers,
        );
        for pointer in &pointers {
            for bad in [1e300, -1e300] {
                let faults = check_gear(&put(&case.gear, pointer, bad)).unwrap_err();
                assert!(named(&faults, pointer), "{bad} in {pointer}: {faults:?}");
            }
            // JSON has no such numbers: marked there, replaced in the model
            for bad in [f64::NAN, f64::INFINITY, f64::NEG_INFINITY] {
                let mut gear = put(&case.gear, pointer, MARK);
                let mut replaced = 0;
                each_number(&mut gear, &mut |_, number| {
                    if *number == MARK {
                        *number = bad;
                        replaced += 1;
                    }
                });
                assert_eq!(replaced, 1, "{pointer}");
                let faults = solve_leg(&gear, 0, &Options::default()).unwrap_err();
                assert!(named(&faults, pointer), "{bad} in {pointer}: {faults:?}");
                // what has no number cannot be written either, and says so
                assert!(to_text(&gear).is_err(), "{bad} in {pointer}");
            }
            checked += 1;
        }
    }
    assert!(checked > 2000, "{checked}");
}

/// A number that may well stand in a file, but not there.
fn odd(draw: &mut Draw, was: f64) -> f64 {
    match draw.below(12) {
        0 => 0.0,
        1 => -was,
        2 => was * 10.0,
        3 => was * 0.1,
        4 => was * (1.0 + draw.between(-1e-9, 1e-9)),
        5 => was + draw.between(-0.01, 0.01),
        6 => 1e-4,
        7 => 1e-12,
        8 => draw.between(-100.0, 100.0),
        9 => draw.between(-0.5, 0.5),
        10 => draw.one_of(&[1.0, -1.0, 20.0, 100.0, std::f64::consts::TAU, 0.5]),
        _ => was * draw.between(0.5, 2.0),
    }
}

/// One to several numbers of a gear made odd: faults with their fields, or a result without holes.
#[test]
fn odd_numbers_end_in_faults_or_in_a_result() {
    let (mut results, mut faulty, mut refused) = (0_u32, 0_u32, 0_u32);
    for mut case in cases(14, 2, 71) {
        let mut count = 0;
        each_number(&mut case.gear, &mut |_, _| count += 1);
        let several = 1 + case.draw.below(3);
        for _ in 0..several {
            let chosen = case.draw.below(count);
            let mut index = 0;
            let draw = &mut case.draw;
            each_number(&mut case.gear, &mut |_, number| {
                if index == chosen {
                    *number = odd(draw, *number);
                }
                index += 1;
            });
        }
        // what a page would do with it: write, read, solve
        let gear = read(&to_text(&case.gear).unwrap()).unwrap();
        match solve_leg(&gear, 0, &Options::default()) {
            Ok(result) => {
                whole(&result);
                results += 1;
            }
            Err(faults) => {
                assert!(!faults.0.is_empty());
                for fault in &faults.0 {
                    assert!(!fault.path.is_empty());
                    refused += u32::from(matches!(fault.kind, FaultKind::Unresolved { .. }));
                }
                faulty += 1;
            }
        }
    }
    assert!(results > 200 && faulty > 200, "{results} {faulty}");
    // clearances that could not be certified: an honest answer, but no substitute for one
    assert!(refused * 50 <= results, "{refused} of {results}");
}

/// Nothing in a result is NaN or infinite.
fn whole(result: &LegResult) {
    let text = format!("{result:?}");
    assert!(
        !text.contains("NaN") && !text.contains("inf,") && !text.contains("inf "),
        "{text}"
    );
    assert_eq!(result.findings.len(), 3);
    assert!(!result.stations.is_empty());
}

/// Text that is no gear file, or a damaged one, is told so.
#[test]
fn damaged_text_is_refused() {
    for mut case in cases(1, 1, 72) {
        let text = to_text(&case.gear).unwrap();
        for _ in 0..30 {
            let mut bytes = text.clone().into_bytes();
            for _ in 0..=case.draw.below(3) {
                let at = case.draw.below(bytes.len());
                match case.draw.below(3) {
                    0 => bytes[at] = b' ' + case.draw.below(95) as u8,
                    1 => drop(bytes.remove(at)),
                    _ => bytes.truncate(at.max(1)),
                }
            }
            let Ok(damaged) = String::from_utf8(bytes) else {
                continue;
            };
            // a changed digit may still be a gear: then it is checked as any other
            if let Ok(gear) = read(&damaged)
                && let Err(faults) = check_gear(&gear)
            {
                assert!(!faults.0.is_empty());
            }
        }
    }
}
