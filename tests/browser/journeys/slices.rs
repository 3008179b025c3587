//! A large gear does not freeze the page.

use anyhow::{Result, ensure};
use gearswing_browser_tests::{Browser, fixture, journey};
use serde_json::{Value, json};
use std::fs;
use tempfile::TempDir;
use thirtyfour::prelude::*;

/// The demo with so many legs.
fn large(legs: usize) -> Result<Vec<u8>> {
    let mut file: Value = serde_json::from_str(&fixture("demo.json")?)?;
    if let Some(all) = file["gear"]["legs"].as_array_mut() {
        for at in all.len()..legs {
            let mut leg = all[at % 3].clone();
            leg["name"] = json!(format!("Leg {at}"));
            all.push(leg);
        }
    }
    Ok(serde_json::to_vec(&file)?)
}

async fn import_and_give_up(browser: &Browser, text: &[u8]) -> Result<()> {
    let dir = TempDir::new()?;
    let path = dir.path().join("large.json");
    fs::write(&path, text)?;
    let input = browser.driver.find(By::Id("import-file")).await?;
    input.send_keys(path.display().to_string()).await?;
    // between two slices scripts and presses are heard; at once, or it is over
    browser
        .wait_until(
            "the word that it is worked out, and a press there",
            "if (document.getElementById('working').hidden) return false;
             document.querySelector('[data-act=give-up]').click();
             return true;",
        )
        .await
}

#[test]
fn a_large_gear_is_worked_out_with_a_word_and_can_be_given_up() {
    journey("a large gear", async |browser| {
        browser.open("").await?;
        import_and_give_up(browser, &large(120)?).await?;
        browser
            .wait_until(
                "it has ended",
                "return document.getElementById('working').hidden;",
            )
            .await?;
        let said = browser.text("#notices").await?;
        ensure!(said.contains("given up"), "{said}");
        // one script: the press, and the word that follows while the page can be spoken to
        let told: bool = browser
            .script(
                "const button = [...document.querySelectorAll('#notices button')].find((node) => node.innerText.startsWith('Work it out'));
                 button.click();
                 return document.getElementById('working').textContent.includes('Working out');",
                &[],
            )
            .await?;
        ensure!(told, "there is no word that it goes on");
        browser
            .wait_until(
                "all is worked out",
                "return document.getElementById('working').hidden;",
            )
            .await?;
        let said = browser.text("#notices").await?;
        ensure!(!said.contains("given up"), "{said}");
        Ok(())
    });
}
