//! Before and after: a kept state, an adviser who changes two numbers on a phone, and what is taken over.

use crate::links::copied;
use anyhow::{Result, ensure};
use gearswing_browser_tests::{Browser, Device, in_browser, journey};
use serde_json::json;
use thirtyfour::prelude::*;

/// Texts of what a selector finds.
async fn texts(browser: &Browser, css: &str) -> Result<Vec<String>> {
    browser
        .script(
            "return [...document.querySelectorAll(arguments[0])].map((node) => node.innerText);",
            &[json!(css)],
        )
        .await
}

/// The code of the link as it is put on the clipboard.
async fn code(browser: &Browser) -> Result<String> {
    copied(browser).await
}

const TIRE: &str = "legs[2].wheel.tire.diameter_m";
const BORE: &str = "legs[1].actuator.bore_m";

#[test]
fn an_adviser_answers_from_a_phone_and_one_change_is_taken_over() {
    journey("adviser", async |browser| {
        browser.open("").await?;
        browser.open_group("Wheel").await?;
        browser.enter("legs[2].wheel.mass_kg", "20 lb").await?;
        let asked = code(browser).await?;
        let mut answer = String::new();
        in_browser(Device::PHONE, "adviser, phone", async |phone| {
            phone.open(&format!("#{asked}")).await?;
            phone.open_group("Wheel").await?;
            phone.enter(TIRE, "17 in").await?;
            phone.choose_leg("Left main").await?;
            phone.open_group("Actuator").await?;
            phone.enter(BORE, "1 1/4").await?;
            phone.sheet("changes").await?;
            let line = phone.text("#changes-line").await?;
            ensure!(line == "2 changes from As received.", "{line}");
            phone.press("#share > summary").await?;
            phone.press("#note-part > summary").await?;
            for (id, text) in [("note-text", "A smaller tire clears."), ("note-by", "Ada")] {
                let field = phone.driver.find(By::Id(id)).await?;
                field.send_keys(text).await?;
            }
            phone.press("#note-here").await?;
            phone.settled().await?;
            answer = code(phone).await?;
            Ok(())
        })
        .await?;
        browser.open(&format!("#{answer}")).await?;
        // what was changed is seen at once
        let line = browser.text("#changes-line").await?;
        ensure!(line == "2 changes from As received.", "{line}");
        let said = browser.text("#shared-text").await?;
        ensure!(said.starts_with("Ada: “A smaller tire clears.”"), "{said}");
        let was = texts(browser, "#verdict-rows .was").await?;
        ensure!(was.iter().any(|text| text.starts_with("was −")), "{was:?}");
        browser
            .press_button("#shared", "Compare with my own")
            .await?;
        let places = texts(browser, "#changes-list .file-title").await?;
        ensure!(places.len() == 2, "{places:?}");
        let notes = texts(browser, "#notes-list > li").await?;
        ensure!(
            notes.len() == 1 && notes[0].starts_with("Note 1, Left main, "),
            "{notes:?}"
        );
        // the second of them, the tire, alone
        browser
            .press("#changes-list li:nth-child(2) button")
            .await?;
        let left = texts(browser, "#changes-list .file-title").await?;
        ensure!(left == [places[0].clone()], "{left:?}");
        let line = browser.text("#changes-line").await?;
        ensure!(
            line == "Sent to me: 1 change to your gear, not taken over.",
            "{line}"
        );
        browser.choose_leg("Right main").await?;
        browser.open_group("Wheel").await?;
        let tire = browser.field(TIRE).await?;
        ensure!(tire == "17", "{tire}");
        // and undone
        browser.press("#undo").await?;
        let tire = browser.field(TIRE).await?;
        ensure!(tire != "17", "{tire}");
        Ok(())
    });
}

#[test]
fn a_kept_state_outlives_a_reload() {
    journey("kept state", async |browser| {
        browser.open("").await?;
        browser.press("#keep").await?;
        browser.open_group("Wheel").await?;
        browser.enter(TIRE, "17 in").await?;
        browser.sheet("changes").await?;
        browser
            .script::<Option<bool>>(
                "const name = document.getElementById('kept-name');
                 name.value = '<b>old</b> tires'; name.dispatchEvent(new Event('change', {bubbles: true}));
                 return null;",
                &[],
            )
            .await?;
        browser.settled().await?;
        browser
            .wait_until(
                "it is kept",
                "return document.getElementById('file-state').innerText.startsWith('Kept');",
            )
            .await?;
        browser.reload().await?;
        browser.sheet("changes").await?;
        let line = browser.text("#changes-line").await?;
        ensure!(line == "1 change from <b>old</b> tires.", "{line}");
        browser.press("#changes-list button").await?;
        let line = browser.text("#changes-line").await?;
        ensure!(line.starts_with("Nothing differs"), "{line}");
        Ok(())
    });
}
