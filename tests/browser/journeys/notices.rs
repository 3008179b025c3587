//! What the page says when it cannot start, and when it breaks off.

use anyhow::ensure;
use gearswing_browser_tests::{fixture, journey};

#[test]
fn opened_from_a_folder_it_says_so() {
    journey("from a folder", async |browser| {
        let page = std::path::Path::new(env!("CARGO_MANIFEST_DIR")).join("../../www/index.html");
        browser
            .driver
            .goto(format!("file://{}", page.canonicalize()?.display()))
            .await?;
        browser
            .wait_until(
                "the sentence about the folder",
                "return document.getElementById('start-notice')?.innerText.includes('from a folder') === true;",
            )
            .await?;
        // The reason goes to the console too, a moment after the sentence; with it go the browser's
        // own complaints about files.
        for _ in 0..200 {
            let said = browser.console().await?;
            if said.iter().any(|line| line.contains("from a folder")) {
                return Ok(());
            }
            tokio::time::sleep(std::time::Duration::from_millis(25)).await;
        }
        anyhow::bail!("the console does not tell the reason")
    });
}

#[test]
fn a_breakdown_offers_the_gear_file() {
    journey("breakdown", async |browser| {
        browser.open("").await?;
        browser.open_group("Actuator").await?;
        browser.enter("legs[2].actuator.bore_m", "13/16").await?;
        // What the browser tells of a trap in the module.
        browser
            .script::<Option<bool>>(
                "window.dispatchEvent(new ErrorEvent('error', {error: new WebAssembly.RuntimeError('unreachable')})); return null;",
                &[],
            )
            .await?;
        let said = browser.text("#panic-notice").await?;
        ensure!(said.contains("broke off"), "{said}");
        browser.press("#panic-save").await?;
        let saved = browser.downloaded("gear-recovered.json").await?;
        let saved: serde_json::Value = serde_json::from_slice(&saved)?;
        let bore = saved["gear"]["legs"][2]["actuator"]["bore_m"].as_f64();
        ensure!(bore == Some(13.0 / 16.0 * 0.0254), "the bore is {bore:?}");
        // From there the demo opens, and the own file is still listed.
        browser.press("#panic-fresh").await?;
        browser.started().await?;
        let demo: serde_json::Value = serde_json::from_str(&fixture("demo.json")?)?;
        let name = browser.text("#file-name").await?;
        ensure!(
            Some(name.as_str()) == demo["gear"]["name"].as_str(),
            "{name}"
        );
        let address: String = browser.driver.current_url().await?.to_string();
        ensure!(!address.contains("fresh"), "{address}");
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
