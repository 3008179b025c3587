//! The link: whole in a fresh profile, damaged, and bare.

use crate::same::{all_answers, ensure_same, export};
use anyhow::{Result, ensure};
use gearswing_browser_tests::{Browser, Device, fixture, in_browser, journey, journey_on};

/// The link as it is put on the clipboard.
pub(crate) async fn copied(browser: &Browser) -> Result<String> {
    copied_by(browser, async || {
        browser.press("#share > summary").await?;
        browser.press("[data-act=copy-link]").await
    })
    .await
}

/// The same where other hands than the mouse open the menu and press.
pub(crate) async fn copied_by(
    browser: &Browser,
    presses: impl AsyncFnOnce() -> Result<()>,
) -> Result<String> {
    browser
        .script::<Option<bool>>(
            "window.copied = null;
             navigator.clipboard.writeText = (text) => { window.copied = text; return Promise.resolve(); };
             return null;",
            &[],
        )
        .await?;
    presses().await?;
    browser
        .wait_until("the link is copied", "return window.copied !== null;")
        .await?;
    browser.keys(thirtyfour::Key::Escape).await?;
    browser.script("return window.copied;", &[]).await
}

#[test]
fn a_link_opens_the_same_answers_elsewhere_beside_own_work() {
    journey("link", async |browser| {
        browser.open("").await?;
        browser.open_group("Actuator").await?;
        browser.enter("legs[2].actuator.bore_m", "13/16").await?;
        let answers = all_answers(browser).await?;
        let file = export(browser).await?;
        browser.choose_leg("Left main").await?;
        let link = copied(browser).await?;
        ensure!(link.len() < 2000, "the link has {} characters", link.len());
        // the page is on this computer: a link would lead nowhere
        let code = link;
        ensure!(
            code.chars()
                .all(|c| c.is_ascii_alphanumeric() || c == '-' || c == '_'),
            "{code}"
        );
        in_browser(Device::DESK, "link, elsewhere", async |other| {
            other.open("").await?;
            other.open_group("Actuator").await?;
            other.enter("legs[2].actuator.bore_m", "3/4").await?;
            let own = all_answers(other).await?;
            other.open(&format!("#{code}")).await?;
            let pressed = other.text("#verdicts .leg-name[aria-pressed=true]").await?;
            ensure!(pressed == "Left main", "{pressed} is drawn");
            ensure!(all_answers(other).await? == answers, "answers differ");
            ensure_same(other, &file).await?;
            // The own work is still there.
            other.press_button("#shared", "Back").await?;
            ensure!(
                all_answers(other).await? == own,
                "the own work is not as it was"
            );
            // As a mail program may write it.
            other.open(&format!("%23{code}")).await?;
            ensure!(
                all_answers(other).await? == answers,
                "answers differ behind %23"
            );
            Ok(())
        })
        .await
    });
}

#[test]
fn damaged_links_say_what_they_are_and_touch_nothing() {
    journey("damaged links", async |browser| {
        browser.open("").await?;
        let answers = all_answers(browser).await?;
        for (name, word) in [
            ("cut_half", "cut"),
            ("cut_late", "cut"),
            ("cut_early", "cut"),
            ("altered_body", "altered"),
            ("altered_case", "altered"),
            ("altered_length", ""),
            ("too_new", "made by a newer version (35)"),
            ("foreign", "no gear link"),
        ] {
            let text = fixture(&format!("links/{name}.txt"))?;
            let code = text.rsplit('#').next().unwrap_or_default();
            browser.open(&format!("#{code}")).await?;
            let said = browser.text(".notice[data-kind=problem]").await?;
            ensure!(said.contains(word), "{name}: {said}");
            ensure!(
                all_answers(browser).await? == answers,
                "{name} did something"
            );
        }
        Ok(())
    });
}

#[test]
fn a_link_is_understood_as_it_is_pasted() {
    journey("pasted links", async |browser| {
        browser.open("").await?;
        for name in ["v1", "whole_address", "percent_23", "mail_wrapped"] {
            let text = fixture(&format!("links/{name}.txt"))?;
            browser.press("#share > summary").await?;
            browser
                .script::<Option<bool>>(
                    "const input = document.querySelector('input#open-link'); input.value = arguments[0]; return null;",
                    &[serde_json::json!(text)],
                )
                .await?;
            browser.press("[data-act=open-link]").await?;
            browser
                .wait_until(
                    &format!("{name} opens beside"),
                    "return !document.getElementById('shared').hidden;",
                )
                .await?;
            browser.press_button("#shared", "Back").await?;
        }
        Ok(())
    });
}

#[test]
fn a_link_typed_into_the_address_of_the_open_page_opens() {
    journey("fragment", async |browser| {
        browser.open("").await?;
        let code = fixture("links/v1.txt")?;
        browser
            .script::<Option<bool>>(
                "location.hash = arguments[0]; return null;",
                &[serde_json::json!(code.rsplit('#').next())],
            )
            .await?;
        browser
            .wait_until(
                "the link opens beside",
                "return !document.getElementById('shared').hidden;",
            )
            .await
    });
}

/// What is said about a text typed in an open menu is seen beside it.
#[test]
fn a_fault_is_told_over_an_open_menu() {
    for device in [Device::DESK, Device::PHONE] {
        journey_on(device, "fault over a menu", async |browser| {
            browser.open("").await?;
            browser.press("#share > summary").await?;
            let field = browser.driver.find(thirtyfour::By::Id("home")).await?;
            field.send_keys("my page").await?;
            browser.keys(thirtyfour::Key::Tab).await?;
            let seen: String = browser
                .script(
                    "const notice = document.querySelector('.notice[data-kind=problem]');
                     if (!notice) return 'there is none';
                     const box = notice.querySelector('p').getBoundingClientRect();
                     const on = document.elementFromPoint(box.x + 20, box.y + 8);
                     return notice.contains(on) ? '' : `it lies behind ${on?.outerHTML.slice(0, 80)}`;",
                    &[],
                )
                .await?;
            ensure!(seen.is_empty(), "{seen}");
            ensure!(
                browser
                    .script::<bool>("return document.getElementById('share').open;", &[])
                    .await?,
                "the menu closed"
            );
            Ok(())
        });
    }
}
