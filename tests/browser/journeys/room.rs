//! The room: as high as the window at every size, verdicts, drawing and the sheet in hand on one screen; the strip is
//! the scrub; the browser's back key goes back a sheet.

use anyhow::{Result, ensure};
use gearswing_browser_tests::{Browser, Device, SHEETS, journey, journey_on};
use serde::Deserialize;
use serde_json::json;

/// Part of the window that an element takes (CSS px).
#[derive(Debug, Clone, Copy, PartialEq, Deserialize)]
struct Part {
    left: f64,
    top: f64,
    right: f64,
    bottom: f64,
}

async fn part(browser: &Browser, css: &str) -> Result<Part> {
    browser
        .script(
            "const box = document.querySelector(arguments[0]).getBoundingClientRect();
             return {left: box.left, top: box.top, right: box.right, bottom: box.bottom};",
            &[json!(css)],
        )
        .await
}

/// Width, height, least height of the drawing (CSS px), and whether a finger points.
const SIZES: [(u32, u32, f64, bool); 8] = [
    (1440, 900, 650.0, false),
    (1366, 768, 540.0, false),
    (1366, 625, 400.0, false),
    (1024, 700, 440.0, false),
    (390, 844, 220.0, true),
    (390, 664, 130.0, true),
    (320, 640, 120.0, true),
    (844, 390, 180.0, true),
];

/// Keeps the present state: where there is little room the button stands among the others.
async fn keep(browser: &Browser) -> Result<()> {
    let in_head: bool = browser
        .script(
            "return document.getElementById('keep').checkVisibility();",
            &[],
        )
        .await?;
    if in_head {
        return browser.press("#keep").await;
    }
    browser.press("#settings > summary").await?;
    browser.press("#settings [data-act=keep]").await
}

#[test]
fn everything_stands_on_one_screen_at_every_size() {
    for (width, height, drawing, touch) in SIZES {
        let device = Device {
            width,
            height,
            touch,
            ..if touch { Device::PHONE } else { Device::DESK }
        };
        journey_on(device, "room", async |browser| {
            browser.open("").await?;
            keep(browser).await?;
            for sheet in SHEETS {
                browser.sheet(sheet).await?;
                let at = format!("{width} x {height}, {sheet}");
                let window = (f64::from(width) + 0.5, f64::from(height) + 0.5);
                for css in ["#verdicts", "#drawing", "#strip", "#transport", "#sheet"] {
                    let part = part(browser, css).await?;
                    ensure!(
                        part.left > -0.5
                            && part.top > -0.5
                            && part.right < window.0
                            && part.bottom < window.1
                            && part.bottom > part.top + 25.0,
                        "{at}: {css} takes {part:?}"
                    );
                }
                let high = part(browser, "#drawing").await?;
                ensure!(
                    high.bottom - high.top >= drawing,
                    "{at}: the drawing takes {high:?}"
                );
                let scrolls: Vec<f64> = browser
                    .script(
                        "const root = document.documentElement;
                         return [root.scrollWidth - root.clientWidth, root.scrollHeight - root.clientHeight];",
                        &[],
                    )
                    .await?;
                ensure!(
                    scrolls == [0.0, 0.0],
                    "{at}: the page scrolls by {scrolls:?}"
                );
            }
            // the fields of points stand beside each other, nothing over anything
            for from in ["airplane", "trunnion"] {
                if from == "trunnion" {
                    let path = json!("points_from");
                    browser.open_group("Gear file").await?;
                    browser
                        .script::<Option<bool>>(
                            "const list = document.querySelector(`[data-path=\"${arguments[0]}\"]`);
                             list.value = 'trunnion';
                             list.dispatchEvent(new Event('change', {bubbles: true})); return null;",
                            &[path],
                        )
                        .await?;
                    browser.settled().await?;
                }
                for group in ["Brace", "Lower skin edge"] {
                    browser.open_group(group).await?;
                    // as they stand, and with the help of the second one open below both
                    for helped in [false, true] {
                        if helped {
                            browser.script::<Option<bool>>(TO_SECOND, &[]).await?;
                            browser.settled().await?;
                        }
                        let over: Vec<String> = browser.script(OVER_EACH_OTHER, &[]).await?;
                        ensure!(
                            over.is_empty(),
                            "{width} x {height}, {group}, {from}, {helped}: {over:?}"
                        );
                    }
                }
            }
            Ok(())
        });
    }
}

/// Goes to the second coordinate of the first point of the open group.
const TO_SECOND: &str =
    "document.querySelector('#groups [data-axis=\"y\"] input').focus(); return null;";

/// What of the points of the open group lies over something else, or beyond the sheet.
const OVER_EACH_OTHER: &str = "
    const sheet = document.getElementById('sheet').getBoundingClientRect();
    const shown = [...document.querySelectorAll('#groups [data-axis]:not([data-axis=\"\"])')]
      .flatMap((field) => [...field.querySelectorAll('.point, .axis, input, .unit, button, p')])
      .filter((node) => node.getBoundingClientRect().width > 2)
      .map((node) => {
        const range = document.createRange();
        range.selectNodeContents(node);
        const box = (node.tagName === 'SPAN' ? range : node).getBoundingClientRect();
        return { what: node.id || node.textContent, box };
      });
    if (shown.length < 8) return ['only ' + shown.length];
    const found = shown.filter(({ box }) => box.right > sheet.right + 0.5).map(({ what }) => what + ' is beyond');
    shown.forEach(({ what, box }, at) => shown.slice(at + 1).forEach((other) => {
      const wide = Math.min(box.right, other.box.right) - Math.max(box.left, other.box.left);
      const high = Math.min(box.bottom, other.box.bottom) - Math.max(box.top, other.box.top);
      if (wide > 1 && high > 3) found.push(what + ' over ' + other.what);
    }));
    return found;";

/// By the presses beside the play, and by the pointer on the strip.
#[test]
fn the_strip_is_the_scrub() {
    journey("the strip", async |browser| {
        browser.open("").await?;
        let travel = async || browser.text("#travel").await;
        let deepest = travel().await?;
        browser.press("#mark-after").await?;
        let free = travel().await?;
        browser.press("#mark-before").await?;
        ensure!(travel().await? == deepest, "{deepest} is not met again");
        browser.press("#mark-before").await?;
        let touches = travel().await?;
        ensure!(touches != deepest && touches != free, "{touches}, {free}");
        let said = browser.text("#announcer").await?;
        ensure!(said.starts_with("First contact: "), "spoken: {said}");
        let picture = browser.layers("strip").await?;
        ensure!(picture.len() == 2, "{} layers", picture.len());
        browser
            .press("#verdicts .verdict-row[data-selected=true] td:nth-of-type(2) button")
            .await?;
        ensure!(
            browser.layers("strip").await?[0] != picture[0],
            "the curve does not follow the answer"
        );
        Ok(())
    });
}

/// Typed work stays whatever the browser's keys do, and a sheet is one step of its history.
#[test]
fn back_goes_back_a_sheet_and_undoes_nothing() {
    journey("back and forward", async |browser| {
        const BORE: &str = "legs[2].actuator.bore_m";
        let in_hand = async || -> Result<String> {
            browser
                .script(
                    "return document.querySelector('.sheet:not([hidden])').dataset.sheet;",
                    &[],
                )
                .await
        };
        let go = async |by: i32| -> Result<()> {
            browser
                .script::<Option<bool>>("history.go(arguments[0]); return null;", &[json!(by)])
                .await?;
            tokio::time::sleep(std::time::Duration::from_millis(200)).await;
            browser.frame().await
        };
        browser.open("").await?;
        browser.sheet("curves").await?;
        browser.open_group("Actuator").await?;
        browser.enter(BORE, "1 1/4 in").await?;
        let typed = browser.field(BORE).await?;
        go(-1).await?;
        ensure!(in_hand().await? == "curves", "{}", in_hand().await?);
        ensure!(browser.field(BORE).await? == typed, "the entry is gone");
        go(-1).await?;
        ensure!(in_hand().await? == "answers", "{}", in_hand().await?);
        go(2).await?;
        ensure!(in_hand().await? == "measurements", "{}", in_hand().await?);
        ensure!(browser.field(BORE).await? == typed, "the entry is gone");
        browser.press("#undo").await?;
        ensure!(browser.field(BORE).await? != typed, "nothing was undone");
        Ok(())
    });
}

/// With a phone's keyboard up, the field that is typed in, the drawing and the marks of the legs are in sight.
#[test]
fn what_is_typed_stays_in_sight_over_a_keyboard() {
    let device = Device {
        height: 844 - 400,
        ..Device::PHONE
    };
    journey_on(device, "keyboard", async |browser| {
        browser.set_device(Device::PHONE).await?;
        browser.open("").await?;
        browser.open_group("Actuator").await?;
        browser
            .press("[id=\"field-legs[2].actuator.bore_m\"]")
            .await?;
        browser.set_device(device).await?;
        browser.frame().await?;
        browser
            .press("[id=\"field-legs[2].actuator.bore_m\"]")
            .await?;
        let high = f64::from(device.height) + 0.5;
        for css in [
            "#verdicts",
            "#drawing",
            "[id=\"field-legs[2].actuator.bore_m\"]",
        ] {
            let part = part(browser, css).await?;
            ensure!(
                part.top > -0.5 && part.bottom < high && part.bottom > part.top + 20.0,
                "{css} takes {part:?}"
            );
        }
        Ok(())
    });
}
