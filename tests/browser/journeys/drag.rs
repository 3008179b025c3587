//! Frame time of a mount's drag, and memory over a long one.
//!
//! `GEARSWING_DRAG_SECONDS=600` makes the long one ten minutes.

use anyhow::{Result, ensure};
use gearswing_browser_tests::{Browser, Spot, journey};
use std::time::{Duration, Instant};

const MOUNT: &str = "legs[2].actuator.mount_m";

/// Length of the long drag unless the environment says otherwise (s).
const SECONDS: u64 = 12;

/// Sanity bound on the median frame, wide enough for a busy machine (ms).
const MEDIAN_MS: f64 = 120.0;

/// What the memory may gain over a long drag for other reasons (caches of the browser) (bytes).
const GAIN: f64 = 3.0e6;

/// Circles about the mount until the time is over; gives the number of moves.
async fn circle(browser: &Browser, at: Spot, time: Duration) -> Result<u32> {
    let start = Instant::now();
    let mut moves = 0;
    while start.elapsed() < time {
        let angle = f64::from(moves) * 0.21;
        let spot = Spot {
            x: at.x + 9.0 * angle.sin(),
            y: at.y + 6.0 * (1.3 * angle).cos(),
        };
        browser.mouse("mouseMoved", spot).await?;
        moves += 1;
    }
    Ok(moves)
}

#[test]
fn a_drag_keeps_up_with_the_pointer() {
    journey("frame time", async |browser| {
        browser.open("").await?;
        let at = browser.spot(MOUNT).await?;
        browser.mouse("mouseMoved", at).await?;
        browser.mouse("mousePressed", at).await?;
        circle(browser, at, Duration::from_millis(500)).await?;
        browser.time_frames().await?;
        let moves = circle(browser, at, Duration::from_secs(4)).await?;
        let times = browser.frames().await?.work;
        browser.mouse("mouseReleased", at).await?;
        ensure!(
            times.count() > 20,
            "only {} frames for {moves} moves",
            times.count()
        );
        println!("drag of a mount, work in each frame: {times}");
        let median = times.share(0.5);
        ensure!(median < MEDIAN_MS, "median frame {median:.1} ms");
        Ok(())
    });
}

#[test]
fn memory_stays_over_a_long_drag() {
    let seconds = std::env::var("GEARSWING_DRAG_SECONDS")
        .ok()
        .and_then(|text| text.parse().ok())
        .unwrap_or(SECONDS);
    journey("long drag", async |browser| {
        browser.open("").await?;
        let at = browser.spot(MOUNT).await?;
        browser.mouse("mouseMoved", at).await?;
        browser.mouse("mousePressed", at).await?;
        // The first moves fill caches; they do not count.
        circle(browser, at, Duration::from_secs(3)).await?;
        let before = browser.memory().await?;
        let moves = circle(browser, at, Duration::from_secs(seconds)).await?;
        let after = browser.memory().await?;
        browser.mouse("mouseReleased", at).await?;
        println!(
            "drag of {seconds} s, {moves} moves: heap {:.2} to {:.2} MB, module {:.2} to {:.2} MB",
            before.heap / 1e6,
            after.heap / 1e6,
            before.module / 1e6,
            after.module / 1e6
        );
        ensure!(after.heap - before.heap < GAIN, "{before:?} {after:?}");
        ensure!(after.module - before.module < GAIN, "{before:?} {after:?}");
        Ok(())
    });
}

#[test]
fn a_drag_ends_when_the_window_loses_the_pointer() {
    for lost in ["blur", "pagehide"] {
        journey(lost, async |browser| {
            browser.open("").await?;
            let at = browser.spot(MOUNT).await?;
            let moved = |x: f64, y: f64| Spot {
                x: at.x + x,
                y: at.y + y,
            };
            browser.mouse("mouseMoved", at).await?;
            browser.mouse("mousePressed", at).await?;
            browser.mouse("mouseMoved", moved(-12.0, 8.0)).await?;
            browser.frame().await?;
            browser
                .script::<Option<bool>>(
                    &format!("window.dispatchEvent(new Event('{lost}')); return null;"),
                    &[],
                )
                .await?;
            // Still pressed, as after a release that nobody heard.
            browser.mouse("mouseMoved", moved(30.0, -30.0)).await?;
            browser.frame().await?;
            let now = browser.spot(MOUNT).await?;
            ensure!(
                (now.x - at.x + 12.0).abs() < 3.0 && (now.y - at.y - 8.0).abs() < 3.0,
                "after {lost} the mount is at {now:?}, from {at:?}"
            );
            browser.mouse("mouseReleased", moved(30.0, -30.0)).await
        });
    }
}
