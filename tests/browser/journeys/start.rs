//! The page starts.

use anyhow::ensure;
use gearswing_browser_tests::{Device, journey, journey_on};

#[test]
fn page_starts_on_a_desk() {
    journey("start on a desk", async |browser| {
        browser.open("").await?;
        let title = browser.driver.title().await?;
        anyhow::ensure!(title.ends_with("Gearswing"), "title is {title:?}");
        anyhow::ensure!(!title.contains("starting"), "title is {title:?}");
        Ok(())
    });
}

#[test]
fn page_starts_on_a_phone_without_sideways_scrolling() {
    journey_on(Device::PHONE, "start on a phone", async |browser| {
        browser.open("").await?;
        let (inner, wide): (f64, f64) = browser
            .script(
                "return [innerWidth, document.documentElement.scrollWidth];",
                &[],
            )
            .await?;
        anyhow::ensure!((inner - 390.0).abs() < 1.0, "window is {inner} px wide");
        anyhow::ensure!(wide <= inner, "page is {wide} px wide in {inner}");
        Ok(())
    });
}

/// Every file comes from the page's own server and from below the page's own address.
#[test]
fn nothing_is_loaded_from_elsewhere() {
    journey("own files only", async |browser| {
        browser.open("").await?;
        let loaded: Vec<String> = browser
            .script(
                "return performance.getEntriesByType('resource').map(e => e.name);",
                &[],
            )
            .await?;
        let own = gearswing_browser_tests::address()?;
        anyhow::ensure!(
            loaded.iter().any(|name| name.ends_with(".wasm")),
            "{loaded:?}"
        );
        for name in loaded {
            let allowed = name.starts_with(own) || name.starts_with("data:");
            anyhow::ensure!(allowed, "{name} is not from {own}");
        }
        Ok(())
    });
}

/// Another theme paints everything anew, what stays as well as what moves.
#[test]
fn another_theme_paints_every_canvas() {
    journey("another theme", async |browser| {
        browser.open("").await?;
        for canvas in ["drawing", "curves", "times"] {
            browser.choose("#theme", "light").await?;
            let light = browser.layers(canvas).await?;
            browser.choose("#theme", "dark").await?;
            let dark = browser.layers(canvas).await?;
            ensure!(light.len() == 2, "{canvas} has {} layers", light.len());
            for (light, dark) in light.iter().zip(&dark) {
                ensure!(light != dark, "a layer of {canvas} keeps its colours");
            }
        }
        Ok(())
    });
}
