//! A leg put in from a sketch of what was measured on it: `fixtures/sketch/left_main.svg`. What comes of it is the gear
//! file beside it, which was written from the sketch without the page.
//!
//! An entry is one field left with a new value, or one choice. "x, y" in one field is one, and so is a pasted list.

use crate::same::export;
use anyhow::{Context, Result, ensure};
use gearswing_browser_tests::{Browser, fixture, journey};
use serde_json::{Value, json};

/// Most entries.
const MOST: usize = 25;

/// Most time that they take (s): four minutes.
const MOST_S: f64 = 240.0;

/// The time that hand and head take, by the keystroke-level model of Card, Moran and Newell (Communications of the
/// ACM 23, 1980; its times from memory): a key of an average typist, pointing, going between mouse and keys, and making
/// up one's mind.
const KEY_S: f64 = 0.28;
const POINT_S: f64 = 1.1;
const HOME_S: f64 = 0.4;
const MIND_S: f64 = 1.35;

/// Something is looked for, pointed at and pressed.
const PRESS_S: f64 = MIND_S + POINT_S + KEY_S;

/// A figure is read off the sketch, its field is pressed, and it is typed in the place of what stands there.
fn typed_s(text: &str) -> f64 {
    // all of it is taken by two keys, and left by Enter
    let keys = text.chars().count() + 3;
    MIND_S + PRESS_S + HOME_S + keys as f64 * KEY_S + HOME_S
}

/// Entries of the sketch by the group in which they stand: path of the field, and what is typed.
const TYPED: [(&str, &[(&str, &str)]); 7] = [
    (
        "Leg",
        &[
            ("legs[0].trunnion_m[0]", "58, 2"),
            ("legs[0].swing_up_rad", "89"),
        ],
    ),
    (
        "Shock strut",
        &[
            ("legs[0].strut.axle_m[0]", "4, -28"),
            ("legs[0].strut.axis_bottom_m[0]", "0, -28"),
        ],
    ),
    (
        "Wheel and tire",
        &[
            ("legs[0].wheel.tire.diameter_m", "17"),
            ("legs[0].wheel.tire.width_m", "6"),
        ],
    ),
    (
        "Brace",
        &[
            ("legs[0].brace.folding.airframe_pivot_m[0]", "14 1/2, 3/4"),
            ("legs[0].brace.folding.knee_m[0]", "6 1/8, -5 3/4"),
            ("legs[0].brace.folding.leg_attach_m[0]", "0, -9 3/4"),
        ],
    ),
    (
        "Actuator",
        &[
            ("legs[0].actuator.mount_m[0]", "-2 3/4, 4 3/4"),
            ("legs[0].actuator.attach_m[0]", "12 3/4, 5 1/4"),
            ("legs[0].actuator.bore_m", "1 1/8"),
            ("legs[0].actuator.rod_m", "5/8"),
            ("legs[0].actuator.shortest_m", "14 7/8"),
            ("legs[0].actuator.longest_m", "22 1/4"),
        ],
    ),
    ("Supply", &[("supply.available_pressure_pa", "1200")]),
    ("Upper skin", &[]),
];

/// Lists of corners that are pasted: group, path of the first coordinate, and the lines.
const PASTED: [(&str, &str, &str); 2] = [
    (
        "Upper skin",
        "legs[0].well[0].shape.surface.points_m[0][0]",
        "-10, 10 1/2\n41, 10 1/4",
    ),
    (
        "Inboard rib",
        "legs[0].well[1].shape.solid.points_m[0][0]",
        "38 1/2\t-2 1/2\n38\t-2 1/2\n38\t10 1/2\n38 1/2\t10 1/2",
    ),
];

async fn paste(browser: &Browser, path: &str, text: &str) -> Result<()> {
    browser.press(&format!("[id=\"field-{path}\"]")).await?;
    browser
        .script::<Option<bool>>(
            "const data = new DataTransfer();
             data.setData('text/plain', arguments[1]);
             document.getElementById('field-' + arguments[0]).dispatchEvent(
               new ClipboardEvent('paste', {clipboardData: data, bubbles: true, cancelable: true}));
             return null;",
            &[json!(path), json!(text)],
        )
        .await?;
    browser.frame().await
}

/// Where two files differ by more than a rounding, or in anything but a number.
fn differences(at: &str, a: &Value, b: &Value, found: &mut Vec<String>) {
    match (a, b) {
        (Value::Object(a), Value::Object(b)) => {
            for key in a.keys().chain(b.keys().filter(|key| !a.contains_key(*key))) {
                let (one, other) = (a.get(key), b.get(key));
                match (one, other) {
                    (Some(one), Some(other)) => {
                        differences(&format!("{at}.{key}"), one, other, found);
                    }
                    _ => found.push(format!("{at}.{key}: {one:?}, {other:?}")),
                }
            }
        }
        (Value::Array(a), Value::Array(b)) if a.len() == b.len() => {
            for (index, (one, other)) in a.iter().zip(b).enumerate() {
                differences(&format!("{at}[{index}]"), one, other, found);
            }
        }
        (Value::Number(one), Value::Number(other)) => {
            let (one, other) = (one.as_f64().unwrap_or(0.0), other.as_f64().unwrap_or(1.0));
            if (one - other).abs() > 1e-9 * (1.0 + one.abs()) {
                found.push(format!("{at}: {one}, {other}"));
            }
        }
        _ if a == b => {}
        _ => found.push(format!("{at}: {a}, {b}")),
    }
}

#[test]
fn a_leg_is_put_in_from_a_sketch() {
    journey("sketch", async |browser| {
        browser.open("").await?;
        let mut entries = 0;
        // the press that begins it, and the picture
        let mut seconds = 2.0 * PRESS_S;
        browser.press("#own-gear").await?;
        browser
            .press_button("#starters", "Folding brace, seen from ahead")
            .await?;
        browser.settled().await?;
        entries += 1;
        for (group, fields) in TYPED {
            browser.open_group(group).await?;
            seconds += PRESS_S;
            for (path, text) in fields {
                browser.enter(path, text).await?;
                let error = browser.field_error(path).await?;
                ensure!(error.is_empty(), "{path}: {error}");
                entries += 1;
                seconds += typed_s(text);
            }
            if group == "Wheel and tire" {
                browser
                    .choose("[id=\"field-legs[0].wheel.tire.basis\"]", "measured")
                    .await?;
                entries += 1;
                seconds += 2.0 * PRESS_S;
            }
        }
        for (group, path, text) in PASTED {
            browser.open_group(group).await?;
            // as if each line of it were typed
            seconds += PRESS_S + text.lines().map(typed_s).sum::<f64>();
            paste(browser, path, text).await?;
            entries += 1;
        }
        browser.settled().await?;
        ensure!(entries <= MOST, "{entries} entries");
        ensure!(seconds <= MOST_S, "{seconds:.0} s of hand and head");
        let shown: Vec<String> = browser
            .script(
                "return [...document.querySelectorAll('#verdict-rows .verdict-cell')].map((cell) => cell.closest('[data-verdict]')?.dataset.verdict ?? '');",
                &[],
            )
            .await?;
        ensure!(
            shown.len() == 3 && !shown.iter().any(|one| one == "not-shown"),
            "{shown:?}"
        );
        let mut made: Value = serde_json::from_slice(&export(browser).await?)?;
        // the mark that it got as it was exported
        if let Some(gear) = made.get_mut("gear").and_then(Value::as_object_mut) {
            let id = gear.remove("id");
            ensure!(id.is_some_and(|id| id.is_string()), "it has no mark");
        }
        let meant: Value = serde_json::from_str(&fixture("sketch/left_main.json")?)?;
        let mut found = Vec::new();
        differences(
            "",
            made.get("gear").context("no gear")?,
            &meant["gear"],
            &mut found,
        );
        ensure!(found.is_empty(), "{found:#?}");
        println!("{entries} entries, {seconds:.0} s of hand and head");
        Ok(())
    });
}
