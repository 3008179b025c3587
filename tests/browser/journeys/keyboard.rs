//! The main journeys once more, by keyboard alone: what a pointer reaches elsewhere, Tab, arrows and Enter reach here.
//! What comes of it is read, not pressed.

use crate::links::copied_by;
use crate::same::{all_answers, ensure_same, export};
use anyhow::{Context, Result, ensure};
use gearswing_browser_tests::{Browser, Device, in_browser, journey};
use serde_json::json;
use thirtyfour::Key;

/// Most stops of Tab from one end of the page to the other, and most arrows within a group.
const STOPS: usize = 90;
const WITHIN: usize = 40;

const TIRE: &str = "legs[2].wheel.tire.diameter_m";
const WIDTH: &str = "legs[2].wheel.tire.width_m";

fn field(path: &str) -> String {
    format!("[id=\"field-{path}\"]")
}

/// Where the focus is: on what the selector finds, in a group of one stop that holds it, or elsewhere.
async fn at(browser: &Browser, css: &str) -> Result<String> {
    browser
        .script(
            "const node = document.activeElement, css = arguments[0];
             if (node.matches(css)) return 'on';
             const group = node.closest('[data-stop]');
             return group && [...group.querySelectorAll(css)].some((one) => one.checkVisibility()) ? 'in' : '';",
            &[json!(css)],
        )
        .await
}

/// Goes there by Tab, and by arrows within a group that is one stop.
async fn go(browser: &Browser, css: &str) -> Result<()> {
    for _ in 0..STOPS {
        match at(browser, css).await?.as_str() {
            "on" => return Ok(()),
            "in" => break,
            _ => browser.keys(Key::Tab).await?,
        }
    }
    // a group begins where it was left, and ends at both ends
    for arrow in [Key::Right, Key::Left] {
        for _ in 0..WITHIN {
            if at(browser, css).await? == "on" {
                return Ok(());
            }
            browser.keys(arrow.clone()).await?;
        }
    }
    let on: String = browser
        .script(
            "return document.activeElement.outerHTML.slice(0, 200);",
            &[],
        )
        .await?;
    anyhow::bail!("the keyboard does not come to {css}; it is at {on}")
}

/// Goes there and presses it.
async fn press(browser: &Browser, css: &str) -> Result<()> {
    go(browser, css).await?;
    browser.keys(Key::Enter).await
}

/// Names what a text is on, so that a selector finds it.
async fn named(browser: &Browser, within: &str, text: &str) -> Result<String> {
    let found: bool = browser
        .script(
            "for (const old of document.querySelectorAll('[data-test-named]')) old.removeAttribute('data-test-named');
             const node = [...document.querySelectorAll(arguments[0])].find((node) => node.innerText.includes(arguments[1]));
             node?.setAttribute('data-test-named', '');
             return Boolean(node);",
            &[json!(within), json!(text)],
        )
        .await?;
    ensure!(found, "there is no “{text}” in {within}");
    Ok("[data-test-named]".to_owned())
}

/// Takes a sheet in hand.
async fn sheet(browser: &Browser, key: &str) -> Result<()> {
    press(
        browser,
        &format!("#sheet-names [data-action=\"sheet.{key}\"]"),
    )
    .await
}

/// Opens a group of measurements, if it is closed.
async fn group(browser: &Browser, title: &str) -> Result<()> {
    sheet(browser, "measurements").await?;
    let head = named(browser, ".group-head", title).await?;
    go(browser, &head).await?;
    let open: bool = browser
        .script(
            "return document.activeElement.getAttribute('aria-expanded') === 'true';",
            &[],
        )
        .await?;
    if !open {
        browser.keys(Key::Enter).await?;
    }
    Ok(())
}

/// Types a text in the place of what stands in a field.
async fn enter(browser: &Browser, css: &str, text: &str) -> Result<()> {
    go(browser, css).await?;
    browser.control("a").await?;
    browser.keys(text).await?;
    browser.keys(Key::Enter).await
}

/// Chooses an option of a select, by the arrows.
async fn choose(browser: &Browser, css: &str, option: &str) -> Result<()> {
    go(browser, css).await?;
    for key in [Key::Up, Key::Down] {
        for _ in 0..WITHIN {
            let value: String = browser
                .script(
                    "return document.querySelector(arguments[0]).value;",
                    &[json!(css)],
                )
                .await?;
            if value == option {
                return Ok(());
            }
            browser.keys(key.clone()).await?;
            // the field may have been set anew
            go(browser, css).await?;
        }
    }
    anyhow::bail!("{css} has no option {option}")
}

/// The leg in hand, by its name in the verdicts.
async fn leg(browser: &Browser, name: &str) -> Result<()> {
    let cell = named(browser, "#verdicts .leg-name", name).await?;
    press(browser, &cell).await
}

#[test]
fn the_fault_is_found_and_the_smaller_tire_put_in() {
    journey("keyboard: tire", async |browser| {
        browser.open("").await?;
        leg(browser, "Right main").await?;
        let first = browser.answer("Right main", "Does it clear?").await?;
        ensure!(first.verdict == "bad", "{first:?}");
        press(browser, "#compare").await?;
        let compared = browser.answer("Right main", "Does it clear?").await?;
        ensure!(compared.text.contains("was 0."), "{compared:?}");
        press(browser, "#compare").await?;
        group(browser, "Wheel and tire").await?;
        enter(browser, &field(TIRE), "17 1/2 in").await?;
        enter(browser, &field(WIDTH), "160 mm").await?;
        let smaller = browser.answer("Right main", "Does it clear?").await?;
        ensure!(smaller.verdict == "good", "{smaller:?}");
        ensure_same(browser, &export(browser).await?).await?;
        Ok(())
    });
}

#[test]
fn marks_lead_to_the_contact_and_the_swing_is_played() {
    journey("keyboard: travel", async |browser| {
        browser.open("").await?;
        leg(browser, "Right main").await?;
        go(browser, "#scrub").await?;
        browser.keys(Key::Home).await?;
        let scrub = "const scrub = document.getElementById('scrub');
            return Number(scrub.value) - Number(scrub.min);";
        ensure!(
            browser.script::<f64>(scrub, &[]).await? == 0.0,
            "not at the beginning"
        );
        browser.keys(Key::Right).await?;
        ensure!(
            browser.script::<f64>(scrub, &[]).await? > 0.0,
            "the arrow does nothing"
        );
        browser.keys(Key::Home).await?;
        // from mark to mark until the answer's own place is met
        let tightest = browser.answer("Right main", "Does it clear?").await?.text;
        let mut met = false;
        for _ in 0..12 {
            press(browser, "#mark-after").await?;
            let place = browser.text("#travel").await?;
            let share = place
                .split_whitespace()
                .collect::<Vec<_>>()
                .windows(2)
                .find_map(|pair| (pair[1].starts_with('%')).then(|| format!("{} %", pair[0])));
            if share.is_some_and(|share| tightest.contains(&share)) {
                met = true;
                break;
            }
        }
        ensure!(met, "no mark is at the place of “{tightest}”");
        go(browser, "#scrub").await?;
        browser.keys(Key::Home).await?;
        press(browser, "#play").await?;
        browser
            .wait_until(
                "the played swing goes on",
                "return Number(document.getElementById('scrub').value) > 0.05;",
            )
            .await?;
        browser.keys(Key::Enter).await?;
        let stopped = browser.text("#travel").await?;
        browser.frame().await?;
        ensure!(browser.text("#travel").await? == stopped, "it plays on");
        Ok(())
    });
}

#[test]
fn a_stop_seen_on_the_jacks_is_put_in() {
    journey("keyboard: stop", async |browser| {
        const STOP: &str = "legs[2].seen_stop";
        browser.open("").await?;
        leg(browser, "Right main").await?;
        sheet(browser, "stopped").await?;
        choose(browser, &field(STOP), "travel").await?;
        enter(
            browser,
            &field(&format!("{STOP}.how_far.travel.travel")),
            "88 %",
        )
        .await?;
        choose(browser, &field(&format!("{STOP}.pump")), "running").await?;
        enter(browser, &field(&format!("{STOP}.gauge_pa")), "300 psi").await?;
        let said = browser.text("#stop-said").await?;
        let told = gearswing_browser_tests::gearswing(&export(browser).await?)?;
        let lead = told["stops"][0]["lead"].as_str().context("no lead")?;
        ensure!(said.contains(lead), "“{lead}” is not in “{said}”");
        Ok(())
    });
}

#[test]
fn an_own_gear_is_begun_from_a_picture() {
    journey("keyboard: own gear", async |browser| {
        browser.open("").await?;
        press(browser, "#own-gear").await?;
        let picture = named(
            browser,
            "#starters button",
            "Folding brace, seen from ahead",
        )
        .await?;
        press(browser, &picture).await?;
        browser.settled().await?;
        group(browser, "Wheel and tire").await?;
        enter(browser, &field("legs[0].wheel.tire.diameter_m"), "17").await?;
        let made: serde_json::Value = serde_json::from_slice(&export(browser).await?)?;
        let tire = made["gear"]["legs"][0]["wheel"]["tire"]["diameter_m"]
            .as_f64()
            .context("no tire")?;
        ensure!((tire - 17.0 * 0.0254).abs() < 1e-12, "{tire}");
        ensure!(
            made["gear"]["legs"]
                .as_array()
                .is_some_and(|legs| legs.len() == 1)
        );
        Ok(())
    });
}

/// Copies the link, and gives its code as it went to the clipboard.
async fn copied(browser: &Browser) -> Result<String> {
    copied_by(browser, async || {
        press(browser, "#share > summary").await?;
        press(browser, "[data-act=copy-link]").await
    })
    .await
}

#[test]
fn an_adviser_answers_and_a_change_is_taken_over() {
    journey("keyboard: adviser", async |browser| {
        browser.open("").await?;
        leg(browser, "Right main").await?;
        group(browser, "Wheel and tire").await?;
        enter(browser, &field("legs[2].wheel.mass_kg"), "20 lb").await?;
        let asked = copied(browser).await?;
        let mut answer = String::new();
        in_browser(
            Device::DESK,
            "keyboard: adviser, elsewhere",
            async |other| {
                other.open(&format!("#{asked}")).await?;
                leg(other, "Right main").await?;
                group(other, "Wheel and tire").await?;
                enter(other, &field(TIRE), "17 in").await?;
                press(other, "#share > summary").await?;
                press(other, "#note-part > summary").await?;
                go(other, "#note-text").await?;
                other.keys("A smaller tire clears.").await?;
                go(other, "#note-by").await?;
                other.keys("Ada").await?;
                press(other, "#note-here").await?;
                other.settled().await?;
                other.keys(Key::Escape).await?;
                answer = copied(other).await?;
                Ok(())
            },
        )
        .await?;
        // opened as it would be: put into the field for links
        press(browser, "#share > summary").await?;
        go(browser, "#open-link").await?;
        browser.keys(answer.as_str()).await?;
        press(browser, "[data-act=open-link]").await?;
        browser
            .wait_until(
                "the link opens beside",
                "return !document.getElementById('shared').hidden;",
            )
            .await?;
        let said = browser.text("#shared-text").await?;
        ensure!(said.starts_with("Ada: “A smaller tire clears.”"), "{said}");
        let compare = named(browser, "#shared button", "Compare with my own").await?;
        press(browser, &compare).await?;
        sheet(browser, "changes").await?;
        press(browser, "#changes-list li:nth-child(1) button").await?;
        leg(browser, "Right main").await?;
        group(browser, "Wheel and tire").await?;
        ensure!(browser.field(TIRE).await? == "17", "it was not taken over");
        let taken = all_answers(browser).await?;
        browser.control("z").await?;
        ensure!(browser.field(TIRE).await? != "17", "it was not undone");
        ensure!(all_answers(browser).await? != taken, "no answer changed");
        Ok(())
    });
}
