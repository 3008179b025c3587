//! Gear files with one value changed to something extreme, or with a piece missing: whatever comes,
//! the program ends with one of its own exit codes and a sentence.
use serde_json::{Value, json};

use crate::support::{demo, run_with};

/// Values that a number is changed to: nothing, tiny, huge, negative, another type.
fn extremes() -> [Value; 7] {
    [
        json!(0),
        json!(1e-300),
        json!(1e300),
        json!(-1e9),
        json!(1.0000000001),
        json!("9"),
        json!(null),
    ]
}

/// Pointers to every number of a value.
fn numbers(value: &Value, at: &str, found: &mut Vec<String>) {
    match value {
        Value::Object(map) => {
            for (key, value) in map {
                numbers(value, &format!("{at}/{key}"), found);
            }
        }
        Value::Array(items) => {
            for (index, value) in items.iter().enumerate() {
                numbers(value, &format!("{at}/{index}"), found);
            }
        }
        Value::Number(_) => found.push(at.to_owned()),
        _ => {}
    }
}

fn check(what: &str, text: &[u8]) {
    let got = run_with(["-", "--format", "csv", "--stations", "3"], text);
    assert!((0..=2).contains(&got.code), "{what}: code {}", got.code);
    assert!(!got.err.contains("panicked"), "{what}: {}", got.err);
    assert_eq!(got.code == 2, !got.err.is_empty(), "{what}: {}", got.err);
    assert!(
        !got.out.contains("NaN") && !got.out.contains("inf"),
        "{what}"
    );
}

#[test]
fn one_value_changed() {
    let mut gear = demo();
    // One leg is enough: the right main has a shortening strut and a full well.
    gear.legs.retain(|leg| leg.name == "Right main");
    let file: Value =
        serde_json::from_str(&gearswing_gearfile::to_text(&gear).expect("it can be saved"))
            .expect("JSON");
    let mut places = Vec::new();
    numbers(&file["gear"], "/gear", &mut places);
    assert!(places.len() > 60);
    for (index, place) in places.iter().enumerate() {
        // Each place gets two of the values, so that every value comes by often.
        for step in 0..2 {
            let values = extremes();
            let value = &values[(index + step * 3) % values.len()];
            let mut changed = file.clone();
            *changed.pointer_mut(place).expect("a place of it") = value.clone();
            check(
                &format!("{place} = {value}"),
                changed.to_string().as_bytes(),
            );
        }
    }
}

#[test]
fn a_piece_missing() {
    let text = gearswing_gearfile::DEMO.text.as_bytes();
    for cut in 0..60 {
        let from = cut * text.len() / 60;
        let to = (from + 7 * (cut + 1)).min(text.len());
        let pieces = [&text[..from], &text[to..]].concat();
        check(&format!("without bytes {from} to {to}"), &pieces);
    }
}
