//! The gear against time: the page says what the command says, the slider moves the drawing, and a
//! tired battery makes it slower.

use crate::same::{all_answers, export};
use anyhow::{Context, Result, ensure};
use gearswing_browser_tests::{Browser, Host, gearswing, journey};
use serde_json::json;
use std::fs;

/// Puts the slider to a share of the run.
async fn slide(browser: &Browser, share: f64) -> Result<()> {
    browser
        .script::<Option<bool>>(
            "const slider = document.getElementById('times-slider');
             slider.value = Number(slider.max) * arguments[0];
             slider.dispatchEvent(new Event('input', {bubbles: true})); return null;",
            &[json!(share)],
        )
        .await?;
    browser.frame().await
}

/// Time of the run shown (s).
async fn whole(browser: &Browser) -> Result<f64> {
    let script = "return Number(document.getElementById('times-slider').max);";
    browser.script(script, &[]).await
}

/// Holds what is said of the run up against the command; gives the run's time (s).
async fn ensure_told(browser: &Browser) -> Result<f64> {
    let told = gearswing(&export(browser).await?)?;
    let shown = browser.text("#times-said").await?;
    let words = told["against_time"]["up_words"]
        .as_array()
        .context("the command says nothing of the time")?;
    ensure!(!words.is_empty(), "no words");
    for sentence in words {
        let sentence = sentence.as_str().context("no sentence")?;
        ensure!(shown.contains(sentence), "“{sentence}” is not in “{shown}”");
    }
    whole(browser).await
}

#[test]
fn the_slider_swings_the_drawing_and_a_tired_battery_takes_longer() {
    journey("against time", async |browser| {
        browser.open("").await?;
        browser.sheet("times").await?;
        let fresh = ensure_told(browser).await?;
        slide(browser, 0.0).await?;
        let travel = browser.text("#travel").await?;
        let legs = browser.picture("times").await?;
        slide(browser, 0.7).await?;
        ensure!(browser.text("#travel").await? != travel, "the leg stands");
        ensure!(
            browser.picture("times").await? != legs,
            "the legs over the charts stand"
        );
        let clock = browser.text("#times-clock").await?;
        ensure!(clock.contains("psi") && clock.contains(" V"), "{clock}");

        browser.open_group("Battery and wires").await?;
        browser
            .enter("supply.battery.open_circuit_v", "11.6 V")
            .await?;
        browser.enter("supply.battery.internal_ohm", "0.03").await?;
        browser.sheet("times").await?;
        let tired = ensure_told(browser).await?;
        ensure!(tired > 1.05 * fresh, "{tired} s after {fresh} s");
        Ok(())
    });
}

/// Without the second module all answers are there, and the page says what is missing; with it, it goes on.
#[test]
fn without_its_second_module_the_page_answers_and_says_what_is_missing() {
    journey("no second module", async |browser| {
        let host = Host::start().await?;
        let (without, with) = (tempfile::tempdir()?, tempfile::tempdir()?);
        host.lay(without.path(), "<!-- without -->")?;
        fs::remove_file(without.path().join("gearswing_worker_bg.wasm"))?;
        browser.open_at(host.address()).await?;
        ensure!(!all_answers(browser).await?.is_empty());
        let said = browser.text("#notices").await?;
        ensure!(said.contains("could not be worked out"), "{said}");
        browser.sheet("times").await?;
        let said = browser.text("#times-said").await?;
        ensure!(said.contains("given up"), "{said}");
        // the failure stands in the console too, and is what was wanted here
        ensure!(!browser.console_said().await?.is_empty());
        host.lay(with.path(), "<!-- with -->")?;
        browser.press_button("#notices", "Work it out").await?;
        ensure_told(browser).await?;
        let said = browser.text("#notices").await?;
        ensure!(!said.contains("could not"), "{said}");
        Ok(())
    });
}
