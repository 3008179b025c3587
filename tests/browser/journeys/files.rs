//! Files: nothing that was typed is lost by a reload, a bad import or another window.

use crate::same::{all_answers, export};
use anyhow::{Result, ensure};
use gearswing_browser_tests::{Browser, Device, in_browser, journey};
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

pub(crate) async fn import(browser: &Browser, name: &str, text: &[u8]) -> Result<()> {
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
async fn stored(browser: &Browser, parts: &[&str]) -> Result<()> {
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

async fn says(browser: &Browser, part: &str) -> Result<()> {
    let said = format!(
        "return document.getElementById('notices').innerText.includes({});",
        json!(part)
    );
    browser.wait_until(part, &said).await
}

async fn state_is(browser: &Browser, text: &str) -> Result<()> {
    let is = format!(
        "return document.getElementById('file-state').textContent === {};",
        json!(text)
    );
    browser.wait_until(text, &is).await
}

#[test]
fn two_windows_lose_nothing_of_each_other() {
    journey("two windows", async |browser| {
        browser.open("").await?;
        change(browser, "13/16").await?;
        stored(browser, &["13/16"]).await?;
        let first = browser.driver.window().await?;
        browser.driver.new_tab().await?;
        let second = browser
            .driver
            .windows()
            .await?
            .into_iter()
            .find(|window| *window != first);
        let second = second.ok_or_else(|| anyhow::anyhow!("no second window"))?;
        browser.driver.switch_to_window(second.clone()).await?;
        browser.open("").await?;
        change(browser, "3/4").await?;
        stored(browser, &["3/4"]).await?;
        browser.driver.switch_to_window(first.clone()).await?;
        says(browser, "another window").await?;
        // What was typed here goes on as a file of its own.
        change(browser, "5/8").await?;
        stored(browser, &["3/4", "5/8"]).await?;
        // The second window does not hear the first: what it then writes is held against the disk.
        browser.driver.switch_to_window(second).await?;
        browser
            .script::<Option<bool>>(
                "BroadcastChannel.prototype.postMessage = () => {}; return null;",
                &[],
            )
            .await?;
        change(browser, "9/16").await?;
        stored(browser, &["9/16"]).await?;
        browser.driver.switch_to_window(first).await?;
        browser.press("#files > summary").await?;
        let name = browser
            .script::<String>(
                "return [...document.querySelectorAll('.file')].find((file) => !file.hasAttribute('aria-current')).querySelector('.file-title').textContent;",
                &[],
            )
            .await?;
        browser
            .press_button(".file:not([aria-current])", "Open")
            .await?;
        ensure!(
            browser.text("#file-name").await? == name,
            "{name} is not open"
        );
        // opened, it is as the second window left it
        browser.open_group("Actuator").await?;
        browser
            .wait_until(
                "what the second window left is shown",
                &format!(
                    "return document.querySelector('[data-path=\"{BORE}\"] input, input[data-path=\"{BORE}\"]')?.value === '9/16';"
                ),
            )
            .await?;
        change(browser, "15/16").await?;
        stored(browser, &["15/16", "5/8"]).await?;
        says(browser, "another window").await
    });
}

#[test]
fn a_full_storage_is_told_once_and_recovers() {
    journey("no room", async |browser| {
        browser.open("").await?;
        change(browser, "13/16").await?;
        state_is(browser, "Kept in this browser").await?;
        // an overridden quota does not stop small writes: the database ends what is written as on a full disk
        browser
            .script::<Option<bool>>(
                "window.put = IDBObjectStore.prototype.put;
                 IDBObjectStore.prototype.put = function (...what) {
                   const asked = window.put.apply(this, what);
                   Promise.resolve().then(() => this.transaction.abort()).catch(() => {});
                   return asked;
                 };
                 return null;",
                &[],
            )
            .await?;
        change(browser, "3/4").await?;
        says(browser, "not kept in this browser").await?;
        ensure!(
            browser.text("#file-state").await?.starts_with("Not kept"),
            "the state says something else"
        );
        change(browser, "15/16").await?;
        // tried again, and again without room
        tokio::time::sleep(std::time::Duration::from_millis(2_500)).await;
        let problems: u32 = browser
            .script(
                "return document.querySelectorAll('.notice[data-kind=problem]').length;",
                &[],
            )
            .await?;
        ensure!(problems == 1, "{problems} notices");
        ensure!(
            browser.field(BORE).await? == "15/16",
            "the field lost its text"
        );
        browser
            .script::<Option<bool>>(
                "IDBObjectStore.prototype.put = window.put; return null;",
                &[],
            )
            .await?;
        state_is(browser, "Kept in this browser").await?;
        says(browser, "works again").await?;
        stored(browser, &["15/16"]).await?;
        browser.reload().await?;
        browser.choose_leg("Right main").await?;
        browser.open_group("Actuator").await?;
        ensure!(browser.field(BORE).await? == "15/16", "it was not kept");
        Ok(())
    });
}

#[test]
fn a_browser_without_a_database_is_told_and_the_page_works() {
    journey("no database", async |browser| {
        browser
            .before_the_page("Object.defineProperty(window, 'indexedDB', {value: null});")
            .await?;
        browser.open("").await?;
        says(browser, "not kept in this browser").await?;
        change(browser, "7/8").await?;
        ensure!(
            browser.field(BORE).await? == "7/8",
            "the field lost its text"
        );
        let notices: u32 = browser
            .script("return document.querySelectorAll('.notice').length;", &[])
            .await?;
        ensure!(notices == 1, "{notices} notices");
        Ok(())
    });
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
            .script("return document.querySelectorAll('.file').length;", &[])
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
                .script("return document.querySelectorAll('.file').length;", &[])
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
    });
}
