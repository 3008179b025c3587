//! Fingers: drag a point, pinch, and scroll the page beside the drawing.

use anyhow::{Result, ensure};
use gearswing_browser_tests::{Browser, Device, Spot, journey_on};
use serde_json::json;

const POINT: &str = "legs[2].actuator.mount_m";

fn moved(from: Spot, x: f64, y: f64) -> Spot {
    Spot {
        x: from.x + x,
        y: from.y + y,
    }
}

/// Upper edge of the drawing in the window (CSS px).
async fn top(browser: &Browser) -> Result<f64> {
    browser
        .script(
            "return document.getElementById('drawing').getBoundingClientRect().top;",
            &[],
        )
        .await
}

#[test]
fn a_finger_drags_a_point_without_scrolling_the_page() {
    journey_on(Device::PHONE, "touch drag", async |browser| {
        browser.open("").await?;
        browser.press("#snap").await?;
        let from = browser.spot(POINT).await?;
        let before = top(browser).await?;
        browser.fingers("touchStart", &[from]).await?;
        for step in 1..=10 {
            let by = f64::from(step);
            browser
                .fingers("touchMove", &[moved(from, by, -by)])
                .await?;
            browser.frame().await?;
            let now = top(browser).await?;
            ensure!(now == before, "the drawing moved from {before} to {now}");
        }
        browser.fingers("touchEnd", &[]).await?;
        browser.frame().await?;
        let now = top(browser).await?;
        ensure!(
            (now - before).abs() < 1.0,
            "the drawing jumped from {before} to {now}"
        );
        let to = browser.spot(POINT).await?;
        ensure!(
            (to.x - from.x - 10.0).abs() < 3.0 && (to.y - from.y + 10.0).abs() < 3.0,
            "the point went from {from:?} to {to:?}"
        );
        // a finger is coarse: it goes on by steps, in the place of strip and bar
        let seen = async |id: &str| -> Result<bool> {
            let script =
                "return document.getElementById(arguments[0]).getClientRects().length > 0;";
            browser.script(script, &[json!(id)]).await
        };
        ensure!(seen("steps").await? && !seen("strip").await? && !seen("play").await?);
        ensure!(browser.text("#steps-name").await? == "Actuator mount A0");
        for _ in 0..8 {
            browser.press("[data-act=step-right]").await?;
        }
        let after = browser.spot(POINT).await?;
        ensure!(
            after.x > to.x + 0.5,
            "half an inch to the right of {to:?} is {after:?}"
        );
        browser.press("[data-act=steps-done]").await?;
        ensure!(!seen("steps").await? && seen("strip").await? && seen("play").await?);
        Ok(())
    });
}

#[test]
fn two_fingers_zoom_the_drawing() {
    journey_on(Device::PHONE, "pinch", async |browser| {
        browser.open("").await?;
        let spread = async || -> Result<f64> {
            let (a, b) = (
                browser.spot("legs[2].trunnion_m").await?,
                browser.spot("legs[2].strut.axle_m").await?,
            );
            Ok((a.x - b.x).hypot(a.y - b.y))
        };
        let before = spread().await?;
        let corner: Spot = browser
            .script(
                "const box = document.getElementById('drawing').getBoundingClientRect();
                 return {x: box.x, y: box.y + box.height - 90};",
                &[],
            )
            .await?;
        let fingers = |apart: f64| [moved(corner, 120.0, 0.0), moved(corner, 180.0 + apart, 0.0)];
        browser.fingers("touchStart", &fingers(0.0)[..1]).await?;
        browser.fingers("touchStart", &fingers(0.0)).await?;
        for step in 1..=10 {
            browser
                .fingers("touchMove", &fingers(6.0 * f64::from(step)))
                .await?;
            browser.frame().await?;
        }
        browser.fingers("touchEnd", &[]).await?;
        browser.frame().await?;
        let after = spread().await?;
        ensure!(
            after > 1.6 * before && after < 2.4 * before,
            "two fingers twice as far apart: {before} px became {after} px"
        );
        Ok(())
    });
}

#[test]
fn nothing_scrolls_sideways_on_the_smallest_phone() {
    let small = Device {
        width: 320,
        height: 640,
        ..Device::PHONE
    };
    journey_on(small, "smallest phone", async |browser| {
        browser.open("").await?;
        for group in ["Wheel and tire", "Brace", "Root rib", "Attitude"] {
            browser.open_group(group).await?;
            let wide: Vec<String> = browser
                .script(
                    "const width = document.documentElement.clientWidth;
                     if (document.documentElement.scrollWidth <= width) return [];
                     return [...document.querySelectorAll('#page *')]
                       .filter((node) => node.getBoundingClientRect().right > width + 1)
                       .map((node) => node.outerHTML.slice(0, 100)).slice(0, 5);",
                    &[],
                )
                .await?;
            ensure!(wide.is_empty(), "{group}: too wide: {wide:?}");
        }
        let small: Vec<String> = browser
            .script(
                "return [...document.querySelectorAll('button, select, input:not([type=checkbox]), summary')]
                   .filter((node) => node.getClientRects().length > 0 && !node.classList.contains('handle') && !node.closest('.unseen') && !node.classList.contains('unseen'))
                   .filter((node) => getComputedStyle(node).pointerEvents !== 'none')
                   .filter((node) => node.getBoundingClientRect().height < 39.5)
                   .map((node) => node.outerHTML.slice(0, 100) + node.getBoundingClientRect().height);",
                &[],
            )
            .await?;
        ensure!(small.is_empty(), "too small for a finger: {small:?}");
        Ok(())
    });
}

#[test]
fn the_sheet_is_pulled_by_its_grip() {
    journey_on(Device::PHONE, "grip", async |browser| {
        browser.open("").await?;
        let height = async || -> Result<String> {
            let script = "return document.getElementById('room').dataset.height;";
            browser.script(script, &[]).await
        };
        let pull = async |by: f64| -> Result<()> {
            let (grip, _) = browser.middle("#sheet-grip").await?;
            browser.fingers("touchStart", &[grip]).await?;
            for step in 1..=5 {
                let to = moved(grip, 0.0, by * f64::from(step) / 5.0);
                browser.fingers("touchMove", &[to]).await?;
            }
            browser.fingers("touchEnd", &[]).await?;
            browser.settled().await
        };
        ensure!(height().await? == "middle");
        for (by, after) in [
            (-60.0, "high"),
            (-60.0, "high"),
            (60.0, "middle"),
            (60.0, "low"),
            (60.0, "low"),
            (-60.0, "middle"),
        ] {
            pull(by).await?;
            // the page waits a moment for the click that may follow a release
            let stands =
                format!("return document.getElementById('room').dataset.height === '{after}';");
            let what = format!("pulled by {by} it is {after}");
            browser.wait_until(&what, &stands).await?;
        }
        // a press is one still
        browser.press("#sheet-grip").await?;
        ensure!(height().await? == "high");
        Ok(())
    });
}
