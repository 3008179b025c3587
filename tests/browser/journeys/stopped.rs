//! A leg that stopped on the jacks: entered on the page, explained as the command explains it, kept
//! over a reload, shown in the drawing.

use crate::same::export;
use anyhow::{Context, Result, ensure};
use gearswing_browser_tests::{Browser, gearswing, journey};

const STOP: &str = "legs[2].seen_stop";

/// Holds what the page says against the command; gives the command's first words.
async fn ensure_told(browser: &Browser) -> Result<String> {
    let told = gearswing(&export(browser).await?)?;
    let stop = &told["stops"][0];
    ensure!(stop["index"] == 2, "{stop}");
    let said = browser.text("#stop-said").await?;
    for key in ["lead", "next"] {
        if let Some(sentence) = stop[key].as_str() {
            ensure!(said.contains(sentence), "“{sentence}” is not in “{said}”");
        }
    }
    browser
        .script::<Option<bool>>(
            "document.getElementById('stop-out-part').open = true; return null;",
            &[],
        )
        .await?;
    let list = browser.text("#stop-list").await?;
    let shown = format!("{list} {}", browser.text("#stop-out").await?);
    let words = stop["words"].as_array().context("no words")?;
    ensure!(words.len() > 3, "{words:?}");
    let mut from = 0;
    for sentence in words {
        let sentence = sentence.as_str().context("no sentence")?;
        let at = shown[from..].find(sentence);
        from += at.with_context(|| format!("“{sentence}” is not in its order in “{shown}”"))?;
    }
    let first = words[0].as_str().context("no sentence")?;
    Ok(first.to_owned())
}

#[test]
fn a_stop_is_explained_and_the_drawing_goes_there() {
    journey("a stop on the jacks", async |browser| {
        browser.open("").await?;
        browser.sheet("stopped").await?;
        ensure!(
            browser.text("#stop-list").await?.is_empty(),
            "explained too soon"
        );
        let select = |path: &str| format!("[id=\"field-{path}\"]");
        browser.choose(&select(STOP), "travel").await?;
        let path = |key: &str| format!("{STOP}.{key}");
        browser
            .enter(&path("how_far.travel.travel"), "88 %")
            .await?;
        browser.choose(&select(&path("pump")), "running").await?;
        let before = ensure_told(browser).await?;
        // A gauge that stands far below what the pump makes rules out whatever stops it dead.
        browser.enter(&path("gauge_pa"), "300 psi").await?;
        let after = ensure_told(browser).await?;
        ensure!(before != after, "the gauge tells nothing");
        browser.press("[data-action=\"stop.2\"]").await?;
        let travel = browser.text("#travel").await?;
        ensure!(travel.contains("88.0 %"), "{travel}");
        browser.reload().await?;
        browser.sheet("stopped").await?;
        ensure!(ensure_told(browser).await? == after, "not kept");
        Ok(())
    });
}
