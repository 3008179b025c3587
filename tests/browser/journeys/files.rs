//! Files: nothing that was typed is lost by a reload, a bad import or another window.

use crate::same::{all_answers, export};
use anyhow::{Result, ensure};
use gearswing_browser_tests::{Browser, Device, in_browser, journey};
use serde_json::json;
use std::fs;
use tempfile::TempDir;
use thirtyfour::prelude::*;

pub(crate) const BORE: &str = "legs[2].actuator.bore_m";

/// Types a bore, which makes the demo a file of its own.
pub(crate) async fn change(browser: &Browser, bore: &str) -> Result<()> {
    browser.open_group("Actuator").await?;
    browser.enter(BORE, bore).await
}

pub(crate) async fn import(browser: &Browser, name: &str, text: &[u8]) -> Result<()> {
    let dir = TempDir::new()?;
    let path = dir.path().join(name);
    fs::write(&path, text)?;
    let input = browser.driver.find(By::Id("import-file")).await?;
    input.send_keys(path.display().to_string()).await?;
    // another version of a gear of one's own stands beside it, under a line of its own
    let said = format!(
        "return document.getElementById('notices').innerText.includes({})
           || document.getElementById('shared').checkVisibility();",
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
        let said = browser.text("#shared-text").await?;
        ensure!(said.contains("another version of your file"), "{said}");
        browser
            .press_button("#shared", "Keep as a new file")
            .await?;
        browser.settled().await?;
        let files: Vec<String> = browser
            .script(
                "return [...document.querySelectorAll('#file-list .file-title')].map((node) => node.textContent);",
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
                    .replace("\"version\": 2", "\"version\": 9")
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

/// Waits until the texts of the stored files have all of these in them, one file each at least.
pub(crate) async fn stored(browser: &Browser, parts: &[&str]) -> Result<()> {
    browser
        .script::<Option<bool>>(
            "window.storedTexts = [];
             window.readStored = () => {
               const asked = indexedDB.open('gearswing');
               asked.onsuccess = () => {
                 const kept = asked.result.transaction('kept').objectStore('kept');
                 const all = kept.getAll(IDBKeyRange.bound('file/', 'file/\\uffff'));
                 all.onsuccess = () => { window.storedTexts = all.result; asked.result.close(); };
               };
             };
             return null;",
            &[],
        )
        .await?;
    let wanted = format!(
        "window.readStored(); return {}.every((part) => window.storedTexts.some((text) => text.includes(part)));",
        json!(parts)
    );
    browser.wait_until("the files are stored", &wanted).await
}

pub(crate) async fn says(browser: &Browser, part: &str) -> Result<()> {
    let said = format!(
        "return document.getElementById('notices').innerText.includes({});",
        json!(part)
    );
    browser.wait_until(part, &said).await
}

pub(crate) async fn state_is(browser: &Browser, text: &str) -> Result<()> {
    let is = format!(
        "return document.getElementById('file-state').textContent === {};",
        json!(text)
    );
    browser.wait_until(text, &is).await
}

/// Files as earlier versions kept them: taken over once, and taken out only then.
#[test]
fn files_of_earlier_versions_are_taken_over() {
    journey("taken over", async |browser| {
        browser.open("").await?;
        change(browser, "7/8").await?;
        let answers = all_answers(browser).await?;
        let gear = String::from_utf8(export(browser).await?)?;
        browser
            .script::<Option<bool>>("indexedDB.deleteDatabase('gearswing'); return null;", &[])
            .await?;
        browser.driver.goto("about:blank").await?;
        // what version 1 left, text by text
        let file = format!(
            "gearswing stored file 1\nentered|inch bar kt|0.022225|legs[2].actuator.bore_m|7/8\n---\n{gear}"
        );
        let index = "gearswing index 1\nunits inch bar kt\ntheme dark\nopen g3\nfile g3\n";
        let leave = format!(
            "if (location.protocol.startsWith('http') && !localStorage.getItem('was')) {{
               localStorage.setItem('was', '1');
               localStorage.setItem('gearswing.file.g3', {});
               localStorage.setItem('gearswing.index', {});
             }}",
            json!(file),
            json!(index)
        );
        browser.before_the_page(&leave).await?;
        browser.open("").await?;
        ensure!(all_answers(browser).await? == answers, "answers differ");
        let theme: String = browser
            .script("return document.documentElement.dataset.theme;", &[])
            .await?;
        ensure!(theme == "dark", "the theme is {theme}");
        stored(browser, &["7/8"]).await?;
        browser
            .wait_until(
                "the old ones are taken out",
                "return !Object.keys(localStorage).some((key) => key.startsWith('gearswing.'));",
            )
            .await?;
        browser.reload().await?;
        ensure!(
            all_answers(browser).await? == answers,
            "answers differ after"
        );
        let files: u32 = browser
            .script(
                "return document.querySelectorAll('#file-list .file').length;",
                &[],
            )
            .await?;
        ensure!(files == 1, "{files} files are listed");
        Ok(())
    });
}

#[test]
fn all_files_go_out_into_one_and_come_back() {
    journey("all in one", async |browser| {
        browser.open("").await?;
        change(browser, "7/8").await?;
        browser.press("#files > summary").await?;
        browser.press("[data-act=duplicate]").await?;
        change(browser, "3/4").await?;
        let answers = all_answers(browser).await?;
        browser.press("#files > summary").await?;
        browser.press("[data-act=export-all]").await?;
        let all = browser.downloaded("all-airplanes.json").await?;
        in_browser(Device::DESK, "all in one, back", async |other| {
            other.open("").await?;
            import(other, "all-airplanes.json", &all).await?;
            let files: u32 = other
                .script(
                    "return document.querySelectorAll('#file-list .file').length;",
                    &[],
                )
                .await?;
            ensure!(files == 2, "{files} files are listed");
            other.press("#files > summary").await?;
            other
                .press_button(".file:not([aria-current])", "Open")
                .await?;
            ensure!(all_answers(other).await? == answers, "answers differ");
            Ok(())
        })
        .await
    });
}

#[test]
fn undo_outlives_a_reload() {
    journey("undo after a reload", async |browser| {
        browser.open("").await?;
        names_outlive_a_reload(browser).await
    });
}

/// A page that ends before anything is on the disk leaves its history too.
#[test]
fn undo_outlives_a_disk_that_never_came() {
    journey("undo without a disk", async |browser| {
        browser.open("").await?;
        // while one transaction goes on, no other gets its turn
        browser
            .script::<Option<bool>>(
                "const asked = indexedDB.open('gearswing');
                 asked.onsuccess = () => {
                   const kept = asked.result.transaction('kept', 'readwrite').objectStore('kept');
                   const hold = () => { window.held = true; kept.get('none').onsuccess = hold; };
                   hold();
                 };
                 return null;",
                &[],
            )
            .await?;
        browser
            .wait_until("the disk is held", "return window.held === true;")
            .await?;
        names_outlive_a_reload(browser).await
    });
}

async fn names_outlive_a_reload(browser: &Browser) -> Result<()> {
    browser.open_group("Gear file").await?;
    for name in ["one", "two", "three"] {
        browser.enter("name", name).await?;
    }
    browser.press("#undo").await?;
    browser.reload().await?;
    for (button, name) in [("#redo", "three"), ("#undo", "two"), ("#undo", "one")] {
        browser
            .wait_until(
                "the history is read",
                &format!("return !document.querySelector('{button}').disabled;"),
            )
            .await?;
        browser.press(button).await?;
        let found = browser.text("#file-name").await?;
        ensure!(found == name, "{button}: {found:?} is not {name:?}");
    }
    Ok(())
}
