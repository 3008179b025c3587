//! Without a network: the page from a host that is gone, its newer version, and the page as one file from a disk.

use crate::same::{all_answers, ensure_same, export};
use anyhow::{Context, Result, ensure};
use gearswing_browser_tests::{Browser, Device, Host, fixture, in_browser, journey};
use serde_json::json;
use std::fs;

const BORE: &str = "legs[2].actuator.bore_m";
const TIRE: &str = "legs[2].wheel.tire.diameter_m";

/// Waits until the page is kept for use without a network.
async fn kept(browser: &Browser) -> Result<()> {
    browser
        .script::<Option<bool>>(
            "window.workerReady = false;
             navigator.serviceWorker.ready.then(() => { window.workerReady = true; });
             return null;",
            &[],
        )
        .await?;
    browser
        .wait_until("the page is kept", "return window.workerReady;")
        .await
}

/// Whether the page that runs is the one that was laid on the host last.
const IS_NEWER: &str = "return document.querySelector('meta[name=newer]') !== null
    && document.documentElement.dataset.started === 'yes';";

#[test]
fn the_page_opens_without_its_host_and_a_newer_one_waits() {
    journey("offline", async |browser| {
        let host = Host::start().await?;
        browser.open_at(host.address()).await?;
        kept(browser).await?;
        browser.open_group("Actuator").await?;
        browser.enter(BORE, "13/16").await?;
        let answers = all_answers(browser).await?;
        host.switch(false);
        browser.reload().await?;
        ensure!(
            all_answers(browser).await? == answers,
            "answers differ without the host"
        );
        browser.open_group("Actuator").await?;
        browser.enter(BORE, "3/4").await?;
        let typed = all_answers(browser).await?;
        host.switch(true);
        // half a newer version is none
        let half = tempfile::tempdir()?;
        host.lay(half.path(), "<meta name=\"newer\">")?;
        fs::write(half.path().join("style.css"), "of another version")?;
        browser.reload().await?;
        ensure!(all_answers(browser).await? == typed, "work was lost");
        ensure!(
            !browser.script::<bool>(IS_NEWER, &[]).await?,
            "half of a version is shown"
        );
        let whole = tempfile::tempdir()?;
        host.lay(whole.path(), "<meta name=\"newer\" content=\"2\">")?;
        browser.reload().await?;
        browser
            .wait_until(
                "it is said that a newer version waits",
                "return [...document.querySelectorAll('.notice')].some((notice) => notice.innerText.includes('newer version'));",
            )
            .await?;
        ensure!(
            !browser.script::<bool>(IS_NEWER, &[]).await?,
            "it has not waited"
        );
        // the page goes away under it: nothing more is asked of this one
        browser
            .script::<Option<bool>>(
                "const all = [...document.querySelectorAll('#notices button')];
                 all.find((button) => button.innerText === 'Load it').click(); return null;",
                &[],
            )
            .await?;
        browser.wait_until("the newer version", IS_NEWER).await?;
        browser.started().await?;
        ensure!(all_answers(browser).await? == typed, "work was lost");
        Ok(())
    });
}

#[test]
fn a_link_of_a_newer_version_waits_for_the_newer_page() {
    journey("newer link", async |browser| {
        let host = Host::start().await?;
        browser.open_at(host.address()).await?;
        kept(browser).await?;
        let text = fixture("links/too_new.txt")?;
        let code = text
            .trim()
            .rsplit('#')
            .next()
            .context("no code")?
            .to_owned();
        let address = format!("{}#{code}", host.address());
        // without a network it stays where it is
        host.switch(false);
        browser.open_at(&address).await?;
        let said = browser.text(".notice[data-kind=problem]").await?;
        ensure!(said.contains("newer version (35)"), "{said}");
        let stays = format!("return location.hash === '#{code}';");
        ensure!(
            browser.script::<bool>(&stays, &[]).await?,
            "the link is gone"
        );
        // with one, the newer page takes over by itself and has the link
        let newer = tempfile::tempdir()?;
        host.lay(newer.path(), "<meta name=\"newer\">")?;
        host.switch(true);
        browser.open_at(&address).await?;
        browser.wait_until("the newer version", IS_NEWER).await?;
        ensure!(
            browser.script::<bool>(&stays, &[]).await?,
            "the link is gone"
        );
        browser.started().await
    });
}

/// The file that the page gives out as one.
async fn one_file(browser: &Browser) -> Result<String> {
    browser.press("#share > summary").await?;
    browser.press("[data-act=save-one-file]").await?;
    let file = browser.only_download_of("html").await?;
    Ok(String::from_utf8(file)?)
}

#[test]
fn one_file_opens_from_a_disk_and_comes_back_with_changes() {
    journey("one file", async |browser| {
        browser.open("").await?;
        browser.open_group("Actuator").await?;
        browser.enter(BORE, "13/16").await?;
        let answers = all_answers(browser).await?;
        let gear = export(browser).await?;
        let file = one_file(browser).await?;
        ensure!(file.len() < 1_200_000, "{} bytes", file.len());
        let dir = tempfile::tempdir()?;
        let path = dir.path().join("a gear.html");
        fs::write(&path, file)?;
        let address = format!("file://{}", path.display()).replace(' ', "%20");
        let mut answer = String::new();
        in_browser(Device::DESK, "one file, elsewhere", async |other| {
            other.without_network().await?;
            other.open_at(&address).await?;
            ensure!(all_answers(other).await? == answers, "answers differ");
            ensure_same(other, &gear).await?;
            let said = other.text("#shared-text").await?;
            ensure!(said.starts_with("Sent to you"), "{said}");
            other.open_group("Wheel").await?;
            other.enter(TIRE, "17 in").await?;
            other.open_group("Actuator").await?;
            other.enter(BORE, "7/8").await?;
            let changed = all_answers(other).await?;
            other
                .wait_until(
                    "it is kept",
                    "return document.getElementById('file-state').innerText.startsWith('Kept');",
                )
                .await?;
            answer = one_file(other).await?;
            // what was made of it is there again, not what the file holds
            other.open_at(&address).await?;
            ensure!(all_answers(other).await? == changed, "the changes are gone");
            let said: String = other
                .script(
                    "return document.getElementById('link-reach').textContent;",
                    &[],
                )
                .await?;
            ensure!(said.contains("a file on this computer"), "{said}");
            Ok(())
        })
        .await?;
        // the answer, at the one who asked: as a file, and as a link
        fs::write(&path, &answer)?;
        let code = answer
            .split_once("id=\"given\">")
            .and_then(|(_, rest)| rest.split_once('<'))
            .map(|(code, _)| code)
            .context("no code in the file")?;
        browser.open(&format!("#{code}")).await?;
        let line = browser.text("#changes-line").await?;
        ensure!(line == "2 changes from As received.", "{line}");
        in_browser(Device::DESK, "one file, back", async |third| {
            third.open_at(&address).await?;
            let line = third.text("#changes-line").await?;
            ensure!(line == "2 changes from As received.", "{line}");
            Ok(())
        })
        .await
    });
}

#[test]
fn an_address_that_leads_elsewhere_is_put_before_links() {
    journey("home", async |browser| {
        browser.open("").await?;
        let type_home = async |text: &str| -> Result<()> {
            browser
                .script::<Option<bool>>(
                    "const home = document.getElementById('home'); home.value = arguments[0];
                     home.dispatchEvent(new Event('change', {bubbles: true})); return null;",
                    &[json!(text)],
                )
                .await?;
            browser.settled().await
        };
        let label = async |text: &str| -> Result<()> {
            let shown =
                format!("return document.getElementById('copy-link').textContent === '{text}';");
            browser.wait_until(text, &shown).await
        };
        label("Copy the code").await?;
        let code = crate::links::copied(browser).await?;
        ensure!(!code.contains('#'), "{code}");
        type_home("https://example.org/gear/").await?;
        label("Copy the link").await?;
        let link = crate::links::copied(browser).await?;
        ensure!(link.starts_with("https://example.org/gear/#"), "{link}");
        // a text that is no address is not taken, and said so
        type_home("the club page").await?;
        browser
            .wait_until(
                "the fault is told",
                "return document.querySelector('.notice[data-kind=problem]') !== null;",
            )
            .await?;
        label("Copy the link").await?;
        browser.reload().await?;
        label("Copy the link").await?;
        type_home("").await?;
        label("Copy the code").await?;
        Ok(())
    });
}
