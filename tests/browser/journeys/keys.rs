//! Everything by keyboard alone.

use crate::same::all_answers;
use anyhow::{Context, Result, ensure};
use gearswing_browser_tests::{Browser, journey};
use serde_json::json;
use thirtyfour::Key;

/// What has the focus: id, point, action, text.
async fn focus(browser: &Browser) -> Result<String> {
    browser
        .script(
            "const node = document.activeElement;
             return node.id || node.dataset.handle || node.dataset.act || node.dataset.action || node.dataset.skip || node.tagName;",
            &[],
        )
        .await
}

/// Tab to the points of the drawing, and from one to the next until the wanted one has the focus.
async fn tab_to_point(browser: &Browser, wanted: &str) -> Result<()> {
    for _ in 0..20 {
        browser.keys(Key::Tab).await?;
        if focus(browser).await?.starts_with("legs[") {
            break;
        }
    }
    for _ in 0..60 {
        if focus(browser).await? == wanted {
            return Ok(());
        }
        browser.keys(Key::Right).await?;
    }
    anyhow::bail!("the arrow keys never come to {wanted}")
}

/// From the top to the first field of the measurements: at most 20 stops.
#[test]
fn few_stops_lie_before_the_first_field() {
    journey("stops", async |browser| {
        browser.open("").await?;
        let is_field = async || -> Result<bool> {
            let path = "return Boolean(document.activeElement.dataset.path);";
            browser.script(path, &[]).await
        };
        let mut stops = 0;
        while focus(browser).await? != "sheet.answers" {
            browser.keys(Key::Tab).await?;
            stops += 1;
            ensure!(stops < 20, "the sheets are not met");
        }
        while focus(browser).await? != "sheet.measurements" {
            let before = focus(browser).await?;
            browser.keys(Key::Right).await?;
            ensure!(focus(browser).await? != before, "measurements are not met");
        }
        browser.keys(Key::Enter).await?;
        // the first group is opened on the way
        while !is_field().await? {
            browser.keys(Key::Tab).await?;
            stops += 1;
            ensure!(stops <= 20, "no field: {}", focus(browser).await?);
            if focus(browser).await?.starts_with("group") {
                browser.keys(Key::Enter).await?;
            }
        }
        Ok(())
    });
}

#[test]
fn a_point_is_moved_and_put_back_by_keys() {
    journey("keys on a point", async |browser| {
        browser.open("").await?;
        let answers = all_answers(browser).await?;
        browser.reload().await?;
        let point = "legs[2].actuator.mount_m";
        tab_to_point(browser, point).await?;
        let place = || async {
            let label: Option<String> = browser
                .script(
                    "return document.querySelector(`[data-handle=\"${arguments[0]}\"]`).getAttribute('aria-label');",
                    &[json!(point)],
                )
                .await?;
            label.context("the point has no spoken name")
        };
        let before = place().await?;
        let outline: String = browser
            .script(
                "return getComputedStyle(document.activeElement).outlineStyle;",
                &[],
            )
            .await?;
        ensure!(outline != "none", "the focus cannot be seen");
        // until it is held, the arrows choose another one
        browser.keys(Key::Down).await?;
        ensure!(focus(browser).await? != point, "the focus stays");
        browser.keys(Key::Up).await?;
        ensure!(place().await? == before, "it moves without being held");
        browser.keys(Key::Enter).await?;
        let mut seen = vec![before.clone()];
        for _ in 0..3 {
            browser.keys(Key::Up).await?;
            seen.push(place().await?);
        }
        seen.dedup();
        ensure!(seen.len() == 4, "{seen:?}");
        ensure!(focus(browser).await? == point, "the focus went away");
        browser.keys(Key::Escape).await?;
        browser.keys(Key::Up).await?;
        ensure!(focus(browser).await? != point, "Escape does not leave it");
        let said = browser.text("#announcer").await?;
        ensure!(!said.trim().is_empty(), "nothing is spoken");
        for _ in 0..3 {
            browser.control("z").await?;
        }
        ensure!(
            place().await? == before,
            "undo by keys left {}",
            place().await?
        );
        ensure!(all_answers(browser).await? == answers, "answers differ");
        Ok(())
    });
}

#[test]
fn tab_reaches_every_control_that_is_shown() {
    journey("tab", async |browser| {
        browser.open("").await?;
        let wanted: Vec<String> = browser
            .script(
                "const shown = (node) => node.checkVisibility() && !node.disabled && node.getClientRects().length > 0;
                 const all = [...document.querySelectorAll('button, input, select, textarea, summary')].filter(shown);
                 all.forEach((node, at) => { node.dataset.testTab = at; });
                 return all.map((node) => node.dataset.testTab);",
                &[],
            )
            .await?;
        ensure!(wanted.len() > 60, "only {} controls", wanted.len());
        let mut reached = std::collections::BTreeSet::new();
        // The focus on a point opens its fields, which lie on the way then.
        for _ in 0..wanted.len() + 120 {
            if reached.len() == wanted.len() {
                break;
            }
            browser
                .driver
                .action_chain()
                .send_keys(Key::Tab)
                .perform()
                .await?;
            // from control to control where a group is one stop
            loop {
                let (at, grouped): (Option<String>, bool) = browser
                    .script(
                        "const node = document.activeElement;
                         return [node.dataset.testTab ?? null, Boolean(node.closest('[data-stop]'))];",
                        &[],
                    )
                    .await?;
                let is_new = at.is_some_and(|at| reached.insert(at));
                if !grouped || !is_new {
                    break;
                }
                let next = browser.driver.action_chain().send_keys(Key::Right);
                next.perform().await?;
            }
        }
        let missed: Vec<_> = wanted.iter().filter(|at| !reached.contains(*at)).collect();
        let names: Vec<String> = browser
            .script(
                "return arguments[0].map((at) => document.querySelector(`[data-test-tab=\"${at}\"]`).outerHTML.slice(0, 120));",
                &[json!(missed)],
            )
            .await?;
        ensure!(missed.is_empty(), "Tab never comes to {names:?}");
        Ok(())
    });
}

#[test]
fn controls_have_names_and_fields_are_described() {
    journey("names", async |browser| {
        browser.open("").await?;
        browser.open_group("Actuator").await?;
        let nameless: Vec<String> = browser
            .script(
                "return [...document.querySelectorAll('button, input, select, textarea, canvas:not([aria-hidden])')].filter((node) => {
                   const label = node.getAttribute('aria-label') || node.textContent || (node.labels && [...node.labels].map((l) => l.innerText || l.textContent).join(''));
                   return !(label && label.trim());
                 }).map((node) => node.outerHTML.slice(0, 120));",
                &[],
            )
            .await?;
        ensure!(nameless.is_empty(), "no name: {nameless:?}");
        let undescribed: Vec<String> = browser
            .script(
                "return [...document.querySelectorAll('#groups [data-path]')].filter((node) =>
                   !(node.getAttribute('aria-describedby') || node.closest('[aria-describedby]')))
                 .map((node) => node.dataset.path);",
                &[],
            )
            .await?;
        ensure!(undescribed.is_empty(), "no description: {undescribed:?}");
        Ok(())
    });
}

#[test]
fn skip_links_move_the_focus_and_leave_the_address_alone() {
    journey("skip links", async |browser| {
        browser.open("").await?;
        browser.keys(Key::Tab).await?;
        ensure!(
            focus(browser).await? == "drawing",
            "{}",
            focus(browser).await?
        );
        browser.keys(Key::Enter).await?;
        ensure!(
            focus(browser).await? == "drawing",
            "{}",
            focus(browser).await?
        );
        let hash: String = browser.script("return location.hash;", &[]).await?;
        ensure!(hash.is_empty(), "the address got {hash}");
        Ok(())
    });
}
