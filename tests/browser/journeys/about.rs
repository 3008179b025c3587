//! The foot of the page tells which build it is and leads to the licenses of the libraries.

use anyhow::ensure;
use gearswing_browser_tests::{Device, fixture, gearswing, journey, journey_on};

#[test]
fn the_foot_tells_the_build() {
    journey("version at the foot", async |browser| {
        browser.open("").await?;
        let told = browser.text("#program").await?;
        // the command of the same tree, built another way, says the same
        let result = gearswing(fixture("demo.json")?.as_bytes())?;
        let program = &result["program"];
        // a tree without git has no commit
        let parts = [program["version"].as_str(), program["commit"].as_str()];
        ensure!(
            parts[0].is_some_and(|version| !version.is_empty()),
            "{program}"
        );
        for part in parts.into_iter().flatten() {
            ensure!(told.contains(part), "{told:?} on the page, {program}");
        }
        let changed = program["changed"] == true;
        ensure!(told.contains("changed") == changed, "{told:?}, {program}");
        ensure!(told.starts_with("Gearswing "), "{told:?}");
        Ok(())
    });
}

/// What the link at the foot names is there, and not loaded before it is asked for.
#[test]
fn licenses_are_there_for_who_asks() {
    journey_on(Device::PHONE, "licenses", async |browser| {
        browser.open("").await?;
        let loaded = browser.loaded().await?;
        ensure!(
            !loaded.iter().any(|name| name.contains("licenses")),
            "{loaded:?}"
        );
        let link: String = browser
            .script("return document.querySelector('#about a').href;", &[])
            .await?;
        browser.driver.goto(&link).await?;
        let is_there = "return location.pathname.endsWith('licenses.html')
            && document.readyState === 'complete';";
        browser.wait_until("the licenses", is_there).await?;
        let (text, [wide, inner], links): (String, [f64; 2], Vec<String>) = browser
            .script(
                "return [document.body.innerText,
                    [document.documentElement.scrollWidth, innerWidth],
                    [...document.querySelectorAll('a')].map(a => a.href)];",
                &[],
            )
            .await?;
        for part in ["nalgebra", "wasm-bindgen", "Permission is hereby granted"] {
            ensure!(text.contains(part), "no {part:?} among the licenses");
        }
        ensure!(wide <= inner, "the licenses are {wide} px wide in {inner}");
        // every other file that they lead to is there too; the page's policy lets it ask
        browser.open("").await?;
        for link in links.iter().filter(|link| !link.contains('#')) {
            let got: bool = browser
                .script(&format!("return fetch('{link}').then(r => r.ok);"), &[])
                .await?;
            ensure!(got, "{link} is not there");
        }
        Ok(())
    });
}
