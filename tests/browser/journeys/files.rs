//! Files: nothing that was typed is lost by a reload, a bad import or another window.

use crate::same::{all_answers, export};
use anyhow::{Result, ensure};
use gearswing_browser_tests::{Browser, journey};
use serde_json::json;
use std::fs;
use tempfile::TempDir;
use thirtyfour::prelude::*;

const BORE: &str = "legs[2].actuator.bore_m";

/// Types a bore, which makes the demo a file of its own.
async fn change(browser: &Browser, bore: &str) -> Result<()> {
    browser.open_group("Actuator").await?;
    browser.enter(BORE, bore).await
}

async fn import(browser: &Browser, name: &str, text: &[u8]) -> Result<()> {
    let dir = TempDir::new()?;
    let path = dir.path().join(name);
    fs::write(&path, text)?;
    let input = browser.driver.find(By::Id("import-file")).await?;
    input.send_keys(path.display().to_string()).await?;
    let said = format!(
        "return document.getElementById('notices').innerText.includes({});",
        json!(name)
    );
    browser
        .wait_until("a message about the import", &said)
        .await
}

#[test]
fn work_outlives_a_reload_with_what_is_still_being_typed() {
    journey("reload", async |browser| {
        browser.open("").await?;
        change(browser, "7/8").await?;
        let answers = all_answers(browser).await?;
        browser.choose_leg("Right main").await?;
        browser.open_group("Actuator").await?;
        browser
            .type_text("legs[2].actuator.rod_m", "3/8 of nothing")
            .await?;
        browser.reload().await?;
        ensure!(all_answers(browser).await? == answers, "answers differ");
        browser.choose_leg("Right main").await?;
        browser.open_group("Actuator").await?;
        ensure!(
            browser.field(BORE).await? == "7/8",
            "the bore is not as typed"
        );
        let rod = browser.field("legs[2].actuator.rod_m").await?;
        ensure!(rod == "3/8 of nothing", "the rod reads {rod:?}");
        Ok(())
    });
}

#[test]
fn export_and_import_give_the_same_answers() {
    journey("export and import", async |browser| {
        browser.open("").await?;
        change(browser, "1 1/8 in").await?;
        let answers = all_answers(browser).await?;
        let file = export(browser).await?;
        change(browser, "3/4 in").await?;
        ensure!(
            all_answers(browser).await? != answers,
            "the bore does nothing"
        );
        import(browser, "from-disk.json", &file).await?;
        ensure!(all_answers(browser).await? == answers, "answers differ");
        let files: Vec<String> = browser
            .script(
                "return [...document.querySelectorAll('.file-title')].map((node) => node.textContent);",
                &[],
            )
            .await?;
        ensure!(files.len() == 2, "files: {files:?}");
        Ok(())
    });
}

#[test]
fn a_bad_import_changes_nothing_and_says_why() {
    journey("bad import", async |browser| {
        browser.open("").await?;
        change(browser, "7/8").await?;
        let answers = all_answers(browser).await?;
        let whole = String::from_utf8(export(browser).await?)?;
        let cases: [(&str, Vec<u8>); 5] = [
            ("empty.json", Vec::new()),
            ("cut.json", whole.as_bytes()[..whole.len() / 2].to_vec()),
            ("picture.json", vec![0x89, 0x50, 0x4e, 0x47, 0, 0xff, 0xfe]),
            (
                "newer.json",
                whole
                    .replace("\"version\": 1", "\"version\": 9")
                    .into_bytes(),
            ),
            ("other.json", b"{\"gear\": [1, 2, 3]}".to_vec()),
        ];
        for (name, text) in cases {
            import(browser, name, &text).await?;
            let said = browser.text(".notice[data-kind=problem]").await?;
            ensure!(said.contains("not imported"), "{name}: {said}");
            ensure!(
                all_answers(browser).await? == answers,
                "{name} did something"
            );
        }
        Ok(())
    });
}

#[test]
fn two_windows_lose_nothing_of_each_other() {
    journey("two windows", async |browser| {
        browser.open("").await?;
        change(browser, "7/8").await?;
        browser
            .wait_until(
                "the file is stored",
                "return Object.keys(localStorage).some((key) => key.startsWith('gearswing.file.'));",
            )
            .await?;
        let first = browser.driver.window().await?;
        browser.driver.new_tab().await?;
        let second = browser
            .driver
            .windows()
            .await?
            .into_iter()
            .find(|window| *window != first);
        let second = second.ok_or_else(|| anyhow::anyhow!("no second window"))?;
        browser.driver.switch_to_window(second).await?;
        browser.open("").await?;
        change(browser, "3/4").await?;
        browser
            .wait_until(
                "the second window's change is stored",
                "return Object.entries(localStorage).some(([key, text]) => key.startsWith('gearswing.file.') && text.includes('3/4'));",
            )
            .await?;
        browser.driver.switch_to_window(first).await?;
        browser
            .wait_until(
                "the first window says so",
                "return document.getElementById('notices').innerText.includes('another window');",
            )
            .await?;
        // What was typed here goes on as a file of its own.
        change(browser, "5/8").await?;
        browser
            .wait_until(
                "both are stored",
                "const all = Object.entries(localStorage).filter(([key]) => key.startsWith('gearswing.file.')).map(([, text]) => text);
                 return all.some((text) => text.includes('3/4')) && all.some((text) => text.includes('5/8'));",
            )
            .await?;
        Ok(())
    });
}

#[test]
fn a_storage_that_refuses_is_told_and_the_page_works() {
    journey("no room", async |browser| {
        browser.open("").await?;
        browser
            .script::<Option<bool>>(
                "Storage.prototype.setItem = () => { throw new DOMException('no room is left', 'QuotaExceededError'); }; return null;",
                &[],
            )
            .await?;
        change(browser, "7/8").await?;
        browser
            .wait_until(
                "a message that nothing is stored",
                "return document.getElementById('notices').innerText.includes('could not store');",
            )
            .await?;
        ensure!(
            browser.field(BORE).await? == "7/8",
            "the field lost its text"
        );
        Ok(())
    });
}
