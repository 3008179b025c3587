//! Nothing changes its place while a pointer is down, and a pressed thing is the thing that acts.

use anyhow::{Context, Result, ensure};
use gearswing_browser_tests::{Browser, Device, Spot, journey, journey_on};
use serde::Deserialize;
use serde_json::json;

const MOUNT: &str = "legs[2].actuator.mount_m";

fn moved(from: Spot, x: f64, y: f64) -> Spot {
    Spot {
        x: from.x + x,
        y: from.y + y,
    }
}

/// Where an element stands in the window (CSS px).
#[derive(Debug, Clone, Copy, PartialEq, Deserialize)]
struct Place {
    left: f64,
    top: f64,
    width: f64,
    height: f64,
}

impl Place {
    fn middle(self) -> Spot {
        Spot {
            x: self.left + self.width / 2.0,
            y: self.top + self.height / 2.0,
        }
    }
}

/// Where an element stands; nothing is scrolled.
async fn place(browser: &Browser, css: &str) -> Result<Place> {
    let script = "const node = document.querySelector(arguments[0]);
        if (!node) return null;
        const box = node.getBoundingClientRect();
        return {left: box.left, top: box.top, width: box.width, height: box.height};";
    let found: Option<Place> = browser.script(script, &[json!(css)]).await?;
    found.with_context(|| format!("there is no {css}"))
}

/// Scrolls the sheet in hand to this share of what it has more than it shows.
async fn scroll_sheet(browser: &Browser, share: f64) -> Result<()> {
    browser
        .script::<Option<bool>>(
            "const sheet = document.getElementById('sheet');
             sheet.scrollTop = arguments[0] * (sheet.scrollHeight - sheet.clientHeight);
             return null;",
            &[json!(share)],
        )
        .await?;
    browser.frame().await?;
    browser.frame().await
}

/// Both numbers of a point's fields.
async fn point(browser: &Browser, path: &str) -> Result<(f64, f64)> {
    let number = async |at: u32| -> Result<f64> {
        let text = browser.field(&format!("{path}[{at}]")).await?;
        let first = text.split_whitespace().next().unwrap_or_default();
        first
            .replace('−', "-")
            .parse()
            .with_context(|| format!("{path}[{at}] reads {text:?}"))
    };
    Ok((number(0).await?, number(1).await?))
}

/// Presses, waits as long as a hand does, and releases.
async fn press_slowly(browser: &Browser, at: Spot) -> Result<()> {
    browser.mouse("mouseMoved", at).await?;
    browser.mouse("mousePressed", at).await?;
    for _ in 0..4 {
        browser.frame().await?;
    }
    browser.mouse("mouseReleased", at).await?;
    browser.frame().await
}

/// Whatever sheet is in hand, and wherever it is scrolled to, a dragged joint follows the pointer step by step.
#[test]
fn a_joint_follows_the_pointer_beside_every_sheet() {
    journey("drag beside every sheet", async |browser| {
        browser.open("").await?;
        browser.choose_leg("Right main").await?;
        browser.choose("#units", "mm-bar").await?;
        browser.press("#snap").await?;
        browser.open_group("Actuator").await?;
        let sheets = ["answers", "curves", "times", "stopped", "measurements"];
        for (sheet, share) in sheets.into_iter().zip([0.0, 0.5, 1.0, 0.0, 0.5]) {
            browser.sheet(sheet).await?;
            scroll_sheet(browser, share).await?;
            let from = place(browser, &format!("[data-handle=\"{MOUNT}\"]"))
                .await?
                .middle();
            let first = point(browser, MOUNT).await?;
            let box_at = place(browser, "#drawing-box").await?;
            browser.mouse("mouseMoved", from).await?;
            browser.mouse("mousePressed", from).await?;
            let mut values = Vec::new();
            for step in 1..=14 {
                let by = 6.0 * f64::from(step);
                browser.mouse("mouseMoved", moved(from, by, -by)).await?;
                browser.frame().await?;
                let stands = place(browser, "#drawing-box").await?;
                ensure!(
                    stands == box_at,
                    "the drawing moved from {box_at:?} to {stands:?}"
                );
                values.push(point(browser, MOUNT).await?);
            }
            let last = moved(from, 84.0, -84.0);
            browser.mouse("mouseReleased", last).await?;
            browser.frame().await?;
            browser.frame().await?;
            let stands = place(browser, "#drawing-box").await?;
            ensure!(
                (stands.top - box_at.top).abs() < 1.5,
                "the drawing jumped from {box_at:?} to {stands:?}"
            );
            let end = values.last().context("no values")?;
            let whole = (end.0 - first.0, end.1 - first.1);
            ensure!(whole.1 > 10.0, "it hardly moved: {first:?} to {end:?}");
            for (at, value) in (1_u32..).zip(&values) {
                let share = f64::from(at) / 14.0;
                let (x, y) = (first.0 + share * whole.0, first.1 + share * whole.1);
                let off = (value.0 - x).hypot(value.1 - y);
                ensure!(
                    off < 0.03 * whole.0.hypot(whole.1),
                    "step {at}: {value:?}, but {x}, {y} is under the pointer: {values:?}"
                );
            }
            browser.press("#undo").await?;
        }
        Ok(())
    });
}

/// A slider dragged slowly by its `picture`: its value never goes back while the pointer goes on, it ends where
/// the pointer does, and it keeps its size.
async fn ensure_slides(browser: &Browser, picture: &str, css: &str, even: bool) -> Result<()> {
    browser.middle(picture).await?;
    let stands = place(browser, picture).await?;
    let value = async || -> Result<f64> {
        browser
            .script(
                "const node = document.querySelector(arguments[0]);
                 return (node.value - node.min) / (node.max - node.min);",
                &[json!(css)],
            )
            .await
    };
    let from = moved(stands.middle(), -0.49 * stands.width, 0.0);
    let steps = 60;
    let stride = 0.98 * stands.width / f64::from(steps);
    browser.mouse("mouseMoved", from).await?;
    browser.mouse("mousePressed", from).await?;
    browser.frame().await?;
    let mut before = value().await?;
    let mut kept = 0;
    ensure!(before < 0.05, "{css}: the slider begins at {before}");
    for step in 1..=steps {
        let at = moved(from, stride * f64::from(step), 0.0);
        browser.mouse("mouseMoved", at).await?;
        browser.frame().await?;
        browser.frame().await?;
        let now = place(browser, picture).await?;
        ensure!(now == stands, "{picture}: {stands:?} became {now:?}");
        let reached = value().await?;
        ensure!(
            reached >= before,
            "{css}, step {step}: from {before} back to {reached}"
        );
        // on the strip what comes before the swing has less room, and marks take hold
        let most = if even { 3.0 } else { 10.0 } * stride / stands.width;
        ensure!(
            reached - before < most,
            "{css}, step {step}: from {before} on to {reached}"
        );
        kept += u32::from(reached == before);
        before = reached;
    }
    let last = moved(from, stride * f64::from(steps), 0.0);
    browser.mouse("mouseReleased", last).await?;
    ensure!(before > 0.98, "{css}: the slider ends at {before}");
    // beyond its ends, and where a mark has hold of it, it stands
    ensure!(
        kept < steps / 3,
        "{css}: it stood at {kept} of {steps} steps"
    );
    Ok(())
}

#[test]
fn a_slider_goes_with_the_pointer() {
    for (name, device) in [
        ("slider at a desk", Device::DESK),
        ("slider on a laptop", {
            Device {
                width: 1024,
                height: 640,
                ..Device::DESK
            }
        }),
        ("slider on a narrow screen", {
            Device {
                width: 390,
                ..Device::DESK
            }
        }),
    ] {
        journey_on(device, name, async |browser| {
            browser.open("").await?;
            for leg in ["Right main", "Nose"] {
                browser.choose_leg(leg).await?;
                ensure_slides(browser, "#strip", "#scrub", false).await?;
            }
            ensure_slides(browser, "#times-slider", "#times-slider", true).await
        });
    }
}

/// The field whose help stands open.
async fn helped(browser: &Browser) -> Result<Vec<String>> {
    browser
        .script(
            "return [...document.querySelectorAll('.help')].filter((node) => node.getClientRects().length > 0)
               .map((node) => node.id);",
            &[],
        )
        .await
}

/// A field's help folds away when another thing is pressed, but not before that is let go: the first
/// press counts.
#[test]
fn the_first_press_beside_an_open_help_counts() {
    for (name, device) in [
        ("help at a desk", Device::DESK),
        ("help on a phone", {
            Device {
                width: 390,
                ..Device::DESK
            }
        }),
    ] {
        journey_on(device, name, async |browser| {
            browser.open("").await?;
            browser.choose_leg("Right main").await?;
            browser.open_group("Actuator").await?;
            let field = |axis: u32| format!("[id=\"field-{MOUNT}[{axis}]\"]");
            for below in [
                field(0),
                field(1),
                "#groups > section:last-of-type .group-head".to_owned(),
            ] {
                // a text under way, whose echo and answers come with the press
                let bore = "legs[2].actuator.bore_m";
                browser.type_text(bore, "1 1/8 in").await?;
                ensure!(!helped(browser).await?.is_empty(), "no help stands open");
                browser.middle(&below).await?;
                browser.frame().await?;
                let stands = place(browser, &below).await?;
                let at = stands.middle();
                browser.mouse("mouseMoved", at).await?;
                browser.mouse("mousePressed", at).await?;
                for _ in 0..4 {
                    browser.frame().await?;
                    let now = place(browser, &below).await?;
                    ensure!(now == stands, "{below}: {stands:?} became {now:?}");
                }
                browser.mouse("mouseReleased", at).await?;
                browser.frame().await?;
                // a heading opens, and folds away what stood open before
                browser.open_group("Actuator").await?;
                ensure!(
                    browser.field(bore).await?.starts_with("1 1/8"),
                    "what was typed is not taken"
                );
                browser.press("#undo").await?;
                browser.open_group("Actuator").await?;
            }
            Ok(())
        });
    }
}

#[test]
fn a_heading_pressed_slowly_opens_and_a_number_goes_where_it_was_meant() {
    journey("slow presses", async |browser| {
        browser.open("").await?;
        browser.choose_leg("Right main").await?;
        browser.open_group("Actuator").await?;
        browser
            .press("[id=\"field-legs[2].actuator.bore_m\"]")
            .await?;
        let before = point(browser, MOUNT).await?;
        let x = place(browser, &format!("[id=\"field-{MOUNT}[0]\"]")).await?;
        press_slowly(browser, x.middle()).await?;
        browser.control("a").await?;
        browser.keys("12.5").await?;
        browser.keys(thirtyfour::Key::Enter).await?;
        let after = point(browser, MOUNT).await?;
        ensure!(
            after == (12.5, before.1),
            "12.5 typed into x of {before:?} made {after:?}"
        );

        // A heading below the help that stands open.
        for _ in 0..2 {
            let css = "#groups > section:last-of-type .group-head";
            let open = |text: Option<String>| text.as_deref() == Some("true");
            let expanded = async || -> Result<bool> {
                let script =
                    "return document.querySelector(arguments[0]).getAttribute('aria-expanded');";
                Ok(open(browser.script(script, &[json!(css)]).await?))
            };
            browser.middle(css).await?;
            let was = expanded().await?;
            press_slowly(browser, place(browser, css).await?.middle()).await?;
            ensure!(expanded().await? != was, "the press on the heading is lost");
        }
        Ok(())
    });
}

/// On a narrow page every list that unfolds stays within it.
#[test]
fn nothing_that_unfolds_widens_a_phone() {
    journey_on(Device::PHONE, "unfold on a phone", async |browser| {
        browser.open("").await?;
        let summaries: usize = browser
            .script(
                "return document.querySelectorAll('main details > summary').length;",
                &[],
            )
            .await?;
        ensure!(summaries > 5, "only {summaries} lists to unfold");
        for at in 0..summaries {
            let shown: bool = browser
                .script(
                    "for (const old of document.querySelectorAll('[data-test-fold]')) old.removeAttribute('data-test-fold');
                     const node = document.querySelectorAll('main details > summary')[arguments[0]];
                     node.setAttribute('data-test-fold', '');
                     node.scrollIntoView({block: 'center'});
                     return node.getClientRects().length > 0;",
                    &[json!(at)],
                )
                .await?;
            if !shown {
                continue;
            }
            browser.frame().await?;
            let spot = place(browser, "[data-test-fold]").await?.middle();
            browser.fingers("touchStart", &[spot]).await?;
            browser.fingers("touchEnd", &[]).await?;
            browser.frame().await?;
            browser.frame().await?;
            let (text, open, wide): (String, bool, f64) = browser
                .script(
                    "const node = document.querySelector('[data-test-fold]');
                     return [node.innerText, node.parentElement.open, document.documentElement.scrollWidth];",
                    &[],
                )
                .await?;
            ensure!(open, "“{text}” did not unfold");
            ensure!(wide <= 390.0, "“{text}” makes the page {wide} px wide");
        }
        Ok(())
    });
}
