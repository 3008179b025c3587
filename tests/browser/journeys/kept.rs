//! What the browser keeps: with two windows, without room, without a database.
use crate::files::{BORE, change, says, state_is, stored};
use anyhow::ensure;
use gearswing_browser_tests::journey;

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
        browser.driver.switch_to_window(second.clone()).await?;
        browser
            .script::<Option<bool>>(
                "BroadcastChannel.prototype.postMessage = () => {}; return null;",
                &[],
            )
            .await?;
        change(browser, "9/16").await?;
        stored(browser, &["9/16"]).await?;
        browser.driver.switch_to_window(first.clone()).await?;
        browser.press("#files > summary").await?;
        let name = browser
            .script::<String>(
                "return [...document.querySelectorAll('#file-list .file')].find((file) => !file.hasAttribute('aria-current')).querySelector('.file-title').textContent;",
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
        // while both work on it, neither takes the other's place
        browser.driver.switch_to_window(second).await?;
        change(browser, "1 1/8").await?;
        stored(browser, &["1 1/8"]).await?;
        browser.driver.switch_to_window(first).await?;
        change(browser, "1 1/4").await?;
        stored(browser, &["1 1/8", "1 1/4", "5/8"]).await?;
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
