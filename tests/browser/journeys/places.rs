//! “Show the place” brings the place into sight, so close that it can be seen; a zoom keeps to what is
//! selected.

use anyhow::{Result, ensure};
use gearswing_browser_tests::{Browser, Device, Spot, journey_on};
use serde_json::json;

const LEG: &str = "Right main";

/// Distance of two points of the drawing on the screen (CSS px).
async fn spread(browser: &Browser) -> Result<f64> {
    let (a, b) = (
        spot(browser, "legs[2].trunnion_m").await?,
        spot(browser, "legs[2].actuator.mount_m").await?,
    );
    Ok((a.x - b.x).hypot(a.y - b.y))
}

/// Middle of a point within the drawing; nothing is scrolled.
async fn spot(browser: &Browser, handle: &str) -> Result<Spot> {
    browser
        .wait_until(
            "the points of the drawing stand",
            "return document.getElementById('handles').getAttribute('aria-busy') === 'false';",
        )
        .await?;
    browser
        .script(
            "const node = document.querySelector(`[data-handle=\"${arguments[0]}\"]`);
             return {x: parseFloat(node.style.left), y: parseFloat(node.style.top)};",
            &[json!(handle)],
        )
        .await
}

/// Presses what a selector finds, with a finger or the mouse.
async fn press(browser: &Browser, css: &str, touch: bool) -> Result<()> {
    let (at, _) = browser.middle(css).await?;
    if touch {
        browser.fingers("touchStart", &[at]).await?;
        browser.fingers("touchEnd", &[]).await?;
    } else {
        browser.mouse("mouseMoved", at).await?;
        browser.mouse("mousePressed", at).await?;
        browser.mouse("mouseReleased", at).await?;
    }
    browser.frame().await?;
    browser.frame().await
}

#[test]
fn the_place_of_an_answer_comes_into_sight_and_close() {
    for (name, device) in [
        ("place on a phone", Device::PHONE),
        (
            "place on a low screen",
            Device {
                height: 420,
                ..Device::DESK
            },
        ),
    ] {
        journey_on(device, name, async |browser| {
            browser.open("").await?;
            browser.choose_leg(LEG).await?;
            press(browser, "[data-act=fit]", device.touch).await?;
            let whole = spread(browser).await?;
            browser
                .script::<Option<bool>>("scrollTo(0, 0); return null;", &[])
                .await?;
            press(
                browser,
                ".leg[data-selected=true] [data-verdict=bad] .go-to",
                device.touch,
            )
            .await?;
            let (top, bottom, low): (f64, f64, f64) = browser
                .script(
                    "const box = document.getElementById('drawing-box').getBoundingClientRect();
                     const slider = document.getElementById('transport').getBoundingClientRect();
                     return [box.top, box.bottom, Math.min(innerHeight, slider.top)];",
                    &[],
                )
                .await?;
            ensure!(
                top > -1.0 && bottom < low + 1.0,
                "of the window's {low} px the drawing takes {top} to {bottom}"
            );
            let close = spread(browser).await?;
            ensure!(close > 1.5 * whole, "{whole} px became {close} px");
            Ok(())
        });
    }
}

#[test]
fn plus_zooms_about_the_selected_point() {
    journey_on(Device::DESK, "zoom about a point", async |browser| {
        browser.open("").await?;
        browser.choose_leg(LEG).await?;
        let mount = "legs[2].actuator.mount_m";
        let at = browser.spot(mount).await?;
        browser.mouse("mouseMoved", at).await?;
        browser.mouse("mousePressed", at).await?;
        browser.mouse("mouseReleased", at).await?;
        browser.frame().await?;
        let (before, whole) = (spot(browser, mount).await?, spread(browser).await?);
        for _ in 0..3 {
            press(browser, "[data-act=zoom-in]", false).await?;
        }
        let (after, close) = (spot(browser, mount).await?, spread(browser).await?);
        ensure!(close > 1.9 * whole, "{whole} px became {close} px");
        ensure!(
            (after.x - before.x).hypot(after.y - before.y) < 0.5,
            "the point went from {before:?} to {after:?}"
        );
        Ok(())
    });
}

/// On a phone the lines under the cells are pressed like them.
#[test]
fn an_answer_line_opens_its_answer() {
    journey_on(Device::PHONE, "answer line", async |browser| {
        browser.open("").await?;
        browser.choose_leg(LEG).await?;
        let line = "#answer-lines > [data-verdict=good]";
        ensure!(
            browser.text(line).await?.contains("Driven?"),
            "another line"
        );
        browser.sheet("curves").await?;
        press(browser, line, true).await?;
        let seen: bool = browser
            .script(
                "const answer = document.querySelector('#answers [data-question=driven]');
                 if (!answer.checkVisibility()) return false;
                 const head = answer.querySelector('.question').getBoundingClientRect();
                 const room = document.getElementById('sheet').getBoundingClientRect();
                 return head.top >= room.top - 1 && head.bottom <= room.bottom + 1;",
                &[],
            )
            .await?;
        ensure!(seen, "its answer is not in sight");
        Ok(())
    });
}
