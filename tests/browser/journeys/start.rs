//! The page starts.

use anyhow::ensure;
use gearswing_browser_tests::{Device, journey, journey_on};
use serde_json::json;

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
        let loaded = browser.loaded().await?;
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
        for (canvas, layers) in [("drawing", 2), ("curves", 2), ("times", 3)] {
            browser.choose("#theme", "light").await?;
            let light = browser.layers(canvas).await?;
            browser.choose("#theme", "dark").await?;
            let dark = browser.layers(canvas).await?;
            ensure!(light.len() == layers, "{canvas} has {} layers", light.len());
            for (light, dark) in light.iter().zip(&dark) {
                ensure!(light != dark, "a layer of {canvas} keeps its colors");
            }
        }
        Ok(())
    });
}

/// What moves lies on patches no larger than it is: where a patch ends within the picture, nothing
/// of it is cut off.
#[test]
fn patches_cut_nothing_off() {
    for device in [Device::DESK, Device::PHONE] {
        journey_on(device, "patches", async |browser| {
            browser.open("").await?;
            for canvas in ["drawing", "curves", "times"] {
                browser.layers(canvas).await?;
                let inked: Vec<[bool; 4]> =
                    browser.script(EDGES_WITH_INK, &[json!(canvas)]).await?;
                ensure!(!inked.is_empty(), "{canvas} has no patch");
                ensure!(
                    inked.iter().flatten().all(|inked| !inked),
                    "{canvas}: left, upper, right, lower edges: {inked:?}"
                );
            }
            Ok(())
        });
    }
}

/// For each patch over a canvas whether there is ink on its left, upper, right and lower edge; on
/// an edge of the whole picture there may be.
const EDGES_WITH_INK: &str = "
    const box = document.getElementById(arguments[0]).parentElement;
    return Array.from(box.querySelectorAll('canvas.over'), patch => {
        const [w, h] = [patch.width, patch.height];
        // read once: the browser warns of canvases that are read often
        const pixels = patch.getContext('2d').getImageData(0, 0, w, h).data;
        const ink = (x, y, wide, high) => {
            for (let row = y; row < y + high; row++)
                for (let column = x; column < x + wide; column++)
                    if (pixels[4 * (row * w + column) + 3] !== 0) return true;
            return false;
        };
        const [left, top] = [patch.offsetLeft > 0, patch.offsetTop > 0];
        const right = patch.offsetLeft + patch.offsetWidth < box.clientWidth;
        const low = patch.offsetTop + patch.offsetHeight < box.clientHeight;
        return [left && ink(0, 0, 1, h), top && ink(0, 0, w, 1),
            right && ink(w - 1, 0, 1, h), low && ink(0, h - 1, w, 1)];
    });";
