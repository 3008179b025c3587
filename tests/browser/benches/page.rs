//! Speed of the release page in headless Chromium with the demo: start, solving, a drag, scrubbing,
//! memory.
//!
//! `cargo xtask bench first`, `… legs`, `… cycle`, `… drag`, `… scrub` or `… memory` run one part. The memory part takes
//! 20 s, or what `GEARSWING_DRAG_SECONDS` says. The server builds the release page first. On a busy
//! machine only the least and the median mean much.

#![allow(missing_docs, reason = "a benchmark")]

use anyhow::{Context, Result, ensure};
use gearswing_browser_tests::{Browser, Busy, Device, Frames, Spot, Times, outcome_on};
use std::ops::Range;
use std::process::ExitCode;
use std::time::Instant;

/// Time of a frame at 60 a second (ms).
const FRAME_MS: f64 = 16.7;

/// Longest wait for the first answer (ms).
const FIRST_MS: f64 = 1000.0;

/// Longest solving of a leg (ms).
const LEG_MS: f64 = 3.0;

/// Longest time for the gear up and down again against time (ms).
const CYCLE_MS: f64 = 50.0;

/// Frames in a second that the page is to keep while it is scrubbed (1/s).
const FRAMES_A_SECOND: f64 = 60.0;

/// What memory may gain in a long drag for other reasons (caches of the browser) (MB).
const GAIN_MB: f64 = 1.0;

/// Moves before a drag is timed: they fill caches.
const WARM: u32 = 60;

/// Moves of a drag that is timed.
const MOVES: u32 = 600;

/// Length of the long drag unless the environment says otherwise (s).
const SECONDS: u64 = 20;

/// A part of the benchmark: its name and what it does.
type Part = (&'static str, fn() -> Result<()>);

const PARTS: [Part; 6] = [
    ("first answer", first_answer),
    ("legs", legs),
    ("cycle", cycle),
    ("drag", drag),
    ("scrub", scrub),
    ("memory", memory),
];

fn main() -> ExitCode {
    // cargo says --bench; what is left is a part's name.
    let filter = std::env::args()
        .skip(1)
        .find(|argument| !argument.starts_with('-'));
    for (name, part) in PARTS {
        if filter.as_ref().is_none_or(|part| name.contains(part)) {
            println!("{name}");
            if let Err(error) = part() {
                eprintln!("{name}: {error:#}");
                return ExitCode::FAILURE;
            }
        }
    }
    ExitCode::SUCCESS
}

/// A line with a figure and how it stands to what is aimed at.
fn aim(what: &str, figure: f64, aim: f64, unit: &str) {
    let word = if figure <= aim { "kept" } else { "MISSED" };
    println!("  aim: {what} {figure:.2} {unit}, at most {aim} {unit}: {word}");
}

/// From the navigation to the first answer, in a fresh browser and again in the same.
fn first_answer() -> Result<()> {
    let mut fresh = Vec::new();
    let mut again = Vec::new();
    for _ in 0..5 {
        outcome_on(Device::DESK, "first answer", async |browser| {
            fresh.push(browser.time_to_first_answer().await?);
            for _ in 0..3 {
                again.push(browser.time_to_first_answer().await?);
            }
            Ok(())
        })?;
    }
    let (fresh, again) = (Times::from(fresh), Times::from(again));
    println!("  navigation to first answer, fresh browser: {fresh}");
    println!("  navigation to first answer, again: {again}");
    aim("median, fresh browser", fresh.share(0.5), FIRST_MS, "ms");
    Ok(())
}

/// Solving of each leg of the demo, while its actuator mount is dragged.
fn legs() -> Result<()> {
    outcome_on(Device::DESK, "legs", async |browser| {
        browser.open("").await?;
        let mut medians = Vec::new();
        for leg in 0..3 {
            let solving = drag_mount(browser, leg, MOVES / 2).await?.solving;
            println!("  solving leg {}: {solving}", leg + 1);
            medians.push(solving.share(0.5));
        }
        let worst = medians.iter().copied().fold(0.0, f64::max);
        let all: f64 = medians.iter().sum();
        println!("  all three legs, sum of medians: {all:.2} ms");
        aim("median of the slowest leg", worst, LEG_MS, "ms");
        Ok(())
    })
}

/// The whole gear up and down again: a new name of the file asks for it, and for no leg.
fn cycle() -> Result<()> {
    outcome_on(Device::DESK, "cycle", async |browser| {
        browser.open("").await?;
        browser.open_group("Gear file").await?;
        browser.time_frames().await?;
        for name in 0..60 {
            browser.enter("name", &format!("Timed {name}")).await?;
        }
        let solving = browser.frames().await?.solving;
        ensure!(solving.count() > 30, "solved {} times", solving.count());
        println!("  three legs up and down: {solving}");
        aim("median of a cycle", solving.share(0.5), CYCLE_MS, "ms");
        Ok(())
    })
}

/// A desk screen, and a phone's with its dense pixels.
fn screens() -> [(&'static str, Device); 2] {
    let dense = Device {
        pixel_ratio: 3.0,
        touch: false,
        ..Device::PHONE
    };
    [("desk", Device::DESK), ("phone", dense)]
}

/// The cursor drawn along the curves and along the charts against time.
fn scrub() -> Result<()> {
    for (screen, device) in screens() {
        for (canvas, what) in [("#curves", "curves"), ("#times", "charts against time")] {
            outcome_on(device, "scrub", async |browser| {
                browser.open("").await?;
                let (middle, width) = browser.middle(canvas).await?;
                browser.mouse("mouseMoved", middle).await?;
                browser.mouse("mousePressed", middle).await?;
                let along = |moves: Range<u32>| {
                    moves.map(|step| Spot {
                        x: middle.x + 0.3 * width * (0.05 * f64::from(step)).sin(),
                        ..middle
                    })
                };
                browser.glide(along(0..WARM)).await?;
                browser.time_frames().await?;
                browser.glide(along(WARM..WARM + MOVES)).await?;
                let frames = browser.frames().await?;
                browser.mouse("mouseReleased", middle).await?;
                println!("  {screen}, {what}");
                println!("  handlers and drawing, a frame: {}", frames.work);
                println!("  between frames of the browser: {}", frames.frames);
                let rate = 1e3 / frames.frames.mean();
                let word = if rate > 0.98 * FRAMES_A_SECOND {
                    "kept"
                } else {
                    "MISSED"
                };
                println!("  aim: {rate:.1} frames a second of {FRAMES_A_SECOND}: {word}");
                Ok(())
            })?;
        }
    }
    Ok(())
}

/// A mount dragged, one pointer event a frame, on a desk screen and on a phone's.
fn drag() -> Result<()> {
    for (screen, device) in screens() {
        outcome_on(device, "drag", async |browser| {
            browser.open("").await?;
            let before = browser.busy().await?;
            let frames = drag_mount(browser, 2, MOVES).await?;
            let after = browser.busy().await?;
            println!("  {screen}, {MOVES} moves");
            println!("  handlers and drawing, a frame: {}", frames.work);
            println!("  until painted, a frame: {}", frames.painted);
            println!(
                "  between frames that the page works in: {}",
                frames.updates
            );
            println!("  between frames of the browser: {}", frames.frames);
            let each =
                |get: fn(&Busy) -> f64| (get(&after) - get(&before)) / f64::from(WARM + MOVES);
            println!(
                "  the page's thread busy, mean of a frame: scripts {:.2}, style and layout {:.2}, with painting {:.2} ms",
                each(|busy| busy.scripts),
                each(|busy| busy.layout),
                each(|busy| busy.all)
            );
            let over = |times: &Times| 100.0 * times.over(FRAME_MS);
            println!(
                "  over {FRAME_MS} ms: handlers and drawing {:.1} %, until painted {:.1} %",
                over(&frames.work),
                over(&frames.painted)
            );
            for (what, times) in [
                ("handlers and drawing", &frames.work),
                ("until painted", &frames.painted),
            ] {
                let what = format!("99 % of frames, {what}");
                aim(&what, times.share(0.99), FRAME_MS, "ms");
            }
            Ok(())
        })?;
    }
    Ok(())
}

/// Memory of the module and of the scripts along one long drag.
fn memory() -> Result<()> {
    let seconds = match std::env::var("GEARSWING_DRAG_SECONDS") {
        Ok(text) => text
            .parse()
            .with_context(|| format!("GEARSWING_DRAG_SECONDS is “{text}”, not whole seconds"))?,
        Err(_) => SECONDS,
    };
    outcome_on(Device::DESK, "memory", async |browser| {
        browser.open("").await?;
        let at = take(browser, 2).await?;
        // The first moves fill caches; they do not count.
        let mut moves = 180;
        browser.glide(circle(at, 0..moves)).await?;
        let first = browser.memory().await?;
        let mut last = first;
        let start = Instant::now();
        let piece = u32::try_from((6 * seconds).clamp(60, 1800))?;
        println!("    seconds     moves   module MB   scripts MB");
        while start.elapsed().as_secs() < seconds {
            browser.glide(circle(at, moves..moves + piece)).await?;
            moves += piece;
            last = browser.memory().await?;
            println!(
                "  {:>9.0} {moves:>9} {:>11.3} {:>12.3}",
                start.elapsed().as_secs_f64(),
                last.module / 1e6,
                last.heap / 1e6
            );
        }
        browser.mouse("mouseReleased", at).await?;
        println!(
            "  at the start: module {:.3} MB, scripts {:.3} MB",
            first.module / 1e6,
            first.heap / 1e6
        );
        let gain = |before: f64, after: f64| (after - before) / 1e6;
        aim(
            "module gained",
            gain(first.module, last.module),
            GAIN_MB,
            "MB",
        );
        aim("scripts gained", gain(first.heap, last.heap), GAIN_MB, "MB");
        Ok(())
    })
}

/// Shows a leg, gives its actuator the stroke that the drag asks for, and presses on its mount.
async fn take(browser: &Browser, leg: usize) -> Result<Spot> {
    let button = format!("#verdict-rows > tr:nth-of-type({}) .leg-name", leg + 1);
    browser.press(&button).await?;
    browser.open_group("Actuator").await?;
    for (end, length) in [("shortest_m", "13 in"), ("longest_m", "25 in")] {
        let path = format!("legs[{leg}].actuator.{end}");
        browser.enter(&path, length).await?;
    }
    let at = browser
        .spot(&format!("legs[{leg}].actuator.mount_m"))
        .await?;
    browser.mouse("mouseMoved", at).await?;
    browser.mouse("mousePressed", at).await?;
    Ok(at)
}

/// Drags a leg's actuator mount about its place and notes what the page does.
async fn drag_mount(browser: &Browser, leg: usize, moves: u32) -> Result<Frames> {
    let at = take(browser, leg).await?;
    browser.glide(circle(at, 0..WARM)).await?;
    browser.time_frames().await?;
    browser.glide(circle(at, WARM..WARM + moves)).await?;
    let frames = browser.frames().await?;
    browser.mouse("mouseReleased", at).await?;
    ensure!(
        frames.solving.count() > 50,
        "solved {} times in {moves} moves",
        frames.solving.count()
    );
    ensure!(
        frames.faded == 0,
        "{} of {moves} moves made a leg that is not solved",
        frames.faded
    );
    Ok(frames)
}

/// Spots on a closed path about a spot, each some pixels from the one before.
fn circle(at: Spot, moves: Range<u32>) -> impl Iterator<Item = Spot> {
    moves.map(move |step| {
        let angle = f64::from(step) * 0.31;
        Spot {
            x: at.x + 9.0 * angle.sin(),
            y: at.y + 6.0 * (1.3 * angle).cos(),
        }
    })
}
