//! Swing a leg, see whether the wheel clears, change the tire, move a mount, take it back.

use crate::same::{all_answers, ensure_same, export};
use anyhow::{Context, ensure};
use gearswing_browser_tests::journey;
use serde_json::json;

const LEG: &str = "Right main";
const CLEARS: &str = "Does it clear?";

#[test]
fn the_fault_of_the_demo_is_seen_and_the_smaller_tire_clears() {
    journey("change the tire", async |browser| {
        browser.open("").await?;
        let first = browser.answer(LEG, CLEARS).await?;
        ensure!(first.verdict == "bad", "{first:?}");
        ensure!(first.text.contains("when it has grown"), "{first:?}");
        let drawn = browser.picture("drawing").await?;
        let told = ensure_same(browser, &export(browser).await?).await?;
        browser.choose_leg(LEG).await?;

        // The depth in the sentence is the command's number, rounded to 0.01 in.
        let clearance =
            told["legs"][2]["result"]["findings"][0]["detail"]["tightest"]["clearance_m"]
                .as_f64()
                .context("no clearance")?;
        let depth = format!("{:.2} in of interference", -clearance / 0.0254);
        ensure!(first.text.contains(&depth), "{depth}: {first:?}");

        // One press compares with the tire fitted before.
        browser.press("#compare").await?;
        let compared = browser.answer(LEG, CLEARS).await?;
        ensure!(compared.text.contains("was 0."), "{compared:?}");
        browser.press("#compare").await?;

        // The previous tire's figures typed in make the leg clear.
        browser.open_group("Wheel and tire").await?;
        browser
            .enter("legs[2].wheel.tire.diameter_m", "17 1/2 in")
            .await?;
        browser
            .enter("legs[2].wheel.tire.width_m", "160 mm")
            .await?;
        let smaller = browser.answer(LEG, CLEARS).await?;
        ensure!(smaller.verdict == "good", "{smaller:?}");
        ensure!(
            browser.picture("drawing").await? != drawn,
            "the drawing is as before"
        );
        ensure_same(browser, &export(browser).await?).await?;
        Ok(())
    });
}

#[test]
fn a_mount_is_dragged_and_put_back_by_one_undo() {
    journey("drag a mount", async |browser| {
        browser.open("").await?;
        let before = all_answers(browser).await?;
        browser.choose_leg(LEG).await?;
        let mount = browser.spot("legs[2].actuator.mount_m").await?;
        let drawn = browser.picture("drawing").await?;
        browser.drag(mount, (-14.0, 9.0), 12).await?;
        ensure!(browser.picture("drawing").await? != drawn, "nothing moved");
        let moved = browser.spot("legs[2].actuator.mount_m").await?;
        ensure!(
            (moved.x - mount.x + 14.0).abs() < 3.0 && (moved.y - mount.y - 9.0).abs() < 3.0,
            "the mount went from {mount:?} to {moved:?}"
        );
        ensure_same(browser, &export(browser).await?).await?;
        let after = all_answers(browser).await?;
        ensure!(after != before, "the answers are as before: {after:?}");
        browser.press("#undo").await?;
        ensure!(all_answers(browser).await? == before, "undo left a rest");
        let disabled: bool = browser
            .script("return document.getElementById('undo').disabled;", &[])
            .await?;
        ensure!(disabled, "one drag took more than one undo");
        browser.press("#redo").await?;
        ensure!(all_answers(browser).await? == after, "redo is not the same");
        Ok(())
    });
}

#[test]
fn an_answer_leads_to_its_place_and_the_cursor_runs_through_all() {
    journey("go to a place", async |browser| {
        browser.open("").await?;
        browser.choose_leg(LEG).await?;
        let contact = browser.text("#travel").await?;
        let good = ".leg[data-selected=true] [data-verdict=good]";
        browser.press(&format!("{good} summary")).await?;
        browser.press(&format!("{good} .go-to")).await?;
        let elsewhere = browser.text("#travel").await?;
        ensure!(contact != elsewhere, "still at {contact}");
        let row = |rows: &[(String, String)], label: &str| {
            rows.iter()
                .find(|row| row.0.contains(label))
                .map(|row| row.1.clone())
        };
        let here = row(&browser.readout().await?, "Pressure needed to retract");
        let curves = browser.picture("curves").await?;
        browser
            .script::<Option<bool>>(
                "const scrub = document.getElementById('scrub');
                 scrub.value = 0.25; scrub.dispatchEvent(new Event('input', {bubbles: true})); return null;",
                &[],
            )
            .await?;
        browser.frame().await?;
        ensure!(
            row(&browser.readout().await?, "Pressure needed to retract") != here,
            "the numbers at the cursor stay at {here:?}"
        );
        ensure!(
            browser.picture("curves").await? != curves,
            "the cursor of the curves stands still"
        );
        Ok(())
    });
}

#[test]
fn the_played_swing_runs_and_stops() {
    journey("play", async |browser| {
        browser.open("").await?;
        browser
            .script::<Option<bool>>(
                "const scrub = document.getElementById('scrub');
                 scrub.value = scrub.min; scrub.dispatchEvent(new Event('input', {bubbles: true})); return null;",
                &[],
            )
            .await?;
        browser.press("#play").await?;
        let start = browser.text("#travel").await?;
        browser
            .wait_until(
                "the played swing goes on",
                "return Number(document.getElementById('scrub').value) > 0.05;",
            )
            .await?;
        ensure!(browser.text("#travel").await? != start, "the travel stands");
        browser.press("#play").await?;
        let stopped: f64 = scrub(browser).await?;
        browser.frame().await?;
        ensure!(scrub(browser).await? == stopped, "it plays on");
        Ok(())
    });
}

async fn scrub(browser: &gearswing_browser_tests::Browser) -> anyhow::Result<f64> {
    browser
        .script(
            "return Number(document.getElementById(arguments[0]).value);",
            &[json!("scrub")],
        )
        .await
}

#[test]
fn units_change_on_screen_and_not_in_the_file() {
    journey("units", async |browser| {
        browser.open("").await?;
        let before = export(browser).await?;
        browser.choose("#units", "mm-bar").await?;
        let shown = browser.answer(LEG, CLEARS).await?;
        ensure!(shown.text.contains(" mm of interference"), "{shown:?}");
        browser.choose("#units", "mm-mpa").await?;
        let shown = browser.answer(LEG, "Can it be driven?").await?;
        ensure!(shown.text.contains(" MPa"), "{shown:?}");
        ensure!(export(browser).await? == before, "a stored value changed");
        Ok(())
    });
}
