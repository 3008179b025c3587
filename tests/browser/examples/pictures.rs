//! Pictures of every sheet on a desk and on a phone, light and dark, for whoever changes the page to look at.
//!
//! `cargo xtask pictures` runs it; they come to lie in `target/screenshots/`, and the one that the README begins with
//! is written anew.

use anyhow::{Context, Result};
use gearswing_browser_tests::{Browser, Device, SHEETS, outcome_on};
use std::fs;
use std::path::Path;

const DESK: Device = Device {
    width: 1440,
    height: 900,
    ..Device::DESK
};

const PHONE: Device = Device {
    height: 844,
    ..Device::PHONE
};

fn main() -> Result<()> {
    for (screen, device) in [("desk", DESK), ("phone", PHONE)] {
        for dark in [false, true] {
            let name = format!("{screen}-{}", if dark { "dark" } else { "light" });
            outcome_on(Device { dark, ..device }, &name, async |browser| {
                all(browser, &name).await
            })?;
        }
    }
    Ok(())
}

/// Every sheet on one screen, and the boxes of the head.
async fn all(browser: &Browser, name: &str) -> Result<()> {
    browser.open("").await?;
    if name == "desk-light" {
        let picture = browser.screenshot(name).await?;
        let readme = Path::new(env!("CARGO_MANIFEST_DIR")).join("../../fixtures/page.png");
        fs::copy(picture, readme).context("the README's picture was not written")?;
    }
    browser.press("#keep").await?;
    for sheet in SHEETS {
        browser.sheet(sheet).await?;
        browser.screenshot(&format!("{name}-{sheet}")).await?;
    }
    for drop in ["files", "share", "settings"] {
        browser.press(&format!("#{drop} > summary")).await?;
        browser.screenshot(&format!("{name}-{drop}")).await?;
        browser.keys(thirtyfour::Key::Escape).await?;
    }
    println!("{name}: {} pictures", SHEETS.len() + 3);
    Ok(())
}
