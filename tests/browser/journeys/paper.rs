//! Paper: printed to a file by the browser and read back by poppler's tools, the QR code by a decoder.

use crate::links::copied;
use anyhow::{Context, Result, ensure};
use gearswing_browser_tests::{Browser, Device, journey_on};
use std::path::Path;
use std::process::Command;

/// Letter and A4 (in).
const PAPERS: [(f64, f64); 2] = [(8.5, 11.0), (8.27, 11.69)];

#[test]
fn a_form_of_its_own_is_printed() {
    // as wide as A4 with margins of 15 mm
    let device = Device {
        width: 680,
        ..Device::DESK
    };
    journey_on(device, "paper", async |browser| {
        browser.open("").await?;
        for (width, height) in PAPERS {
            let file = browser.printed(width, height).await?;
            ensure!(file.starts_with(b"%PDF"), "no file was printed");
            let pages = file
                .windows(11)
                .filter(|bytes| bytes == b"/Type /Page")
                .count()
                - file
                    .windows(12)
                    .filter(|bytes| bytes == b"/Type /Pages")
                    .count();
            ensure!((8..=24).contains(&pages), "{pages} pages");
        }
        // nothing of it stays on the screen
        ensure!(browser.text("#paper").await?.is_empty());
        browser
            .script::<Option<bool>>(
                "window.dispatchEvent(new Event('beforeprint')); return null;",
                &[],
            )
            .await?;
        browser.on_paper(true).await?;
        let wide: Vec<String> = browser
            .script(
                "return [...document.querySelectorAll('#paper :is(h1, h2, p, table, td, svg, .columns)')]
                   .filter((node) => node.getBoundingClientRect().right > window.innerWidth + 0.5)
                   .map((node) => node.tagName + ' ' + node.textContent.slice(0, 40));",
                &[],
            )
            .await?;
        // what is wider makes the browser print all of it smaller, and the scale is none
        ensure!(wide.is_empty(), "{wide:?}");
        let text = browser.text("#paper").await?;
        for said in [
            "Scale 1:10",
            "Detail A",
            "Does it clear? No",
            "Before you rely on it",
            "Signature",
        ] {
            ensure!(text.contains(said), "{said} is not there");
        }
        ensure!(!browser.text("#paper h1").await?.is_empty());
        let others: bool = browser
            .script(
                "return document.getElementById('page').checkVisibility();",
                &[],
            )
            .await?;
        ensure!(!others, "the page of the screen is printed too");
        browser.on_paper(false).await
    });
}

/// Every text of the form: cells, paragraphs, entries, headings.
async fn texts(browser: &Browser) -> Result<Vec<String>> {
    browser
        .script(
            "return [...document.querySelectorAll('#paper :is(h1, h2, p, td, figcaption, .lines span)')]
               .map((node) => node.textContent);",
            &[],
        )
        .await
}

/// A text without blanks: lines break elsewhere on paper.
fn dense(text: &str) -> String {
    text.chars().filter(|c| !c.is_whitespace()).collect()
}

/// What poppler's pdftotext reads in a file, without the numbers of its pages.
fn read_back(file: &Path) -> Result<String> {
    let read = Command::new("pdftotext")
        .args(["-raw", "-enc", "UTF-8"])
        .arg(file)
        .arg("-")
        .output()
        .context("pdftotext is needed; on Debian: apt-get install poppler-utils")?;
    ensure!(
        read.status.success(),
        "{}",
        String::from_utf8_lossy(&read.stderr)
    );
    let text = String::from_utf8(read.stdout)?;
    let is_number = |line: &str| {
        let parts = line.trim().split_once(" / ");
        parts.is_some_and(|(page, of)| [page, of].iter().all(|part| part.parse::<u32>().is_ok()))
    };
    // a page begins with a form feed
    let lines = text.split(['\n', '\u{c}']).filter(|line| !is_number(line));
    Ok(lines.collect::<Vec<_>>().join("\n"))
}

/// What the QR code on the first page says. As with a phone held nearer or farther, one of some resolutions will do.
fn code_on(file: &Path) -> Result<String> {
    let mut last = None;
    for dots in ["600", "450", "750", "900", "300"] {
        match code_at(file, dots) {
            Ok(code) => return Ok(code),
            Err(error) => last = Some(error),
        }
    }
    Err(last.context("no resolution was tried")?)
}

/// The same from a picture of so many dots an inch.
fn code_at(file: &Path, dots: &str) -> Result<String> {
    let picture = Command::new("pdftoppm")
        .args(["-gray", "-r", dots, "-f", "1", "-l", "1"])
        .arg(file)
        .output()
        .context("pdftoppm is needed; on Debian: apt-get install poppler-utils")?
        .stdout;
    // a portable graymap: "P5", width, height, 255, and a byte for each point
    let mut heads = picture.splitn(4, |byte| byte.is_ascii_whitespace());
    let mut number = || -> Result<usize> {
        let head = heads.next().context("no head")?;
        Ok(std::str::from_utf8(head)?.trim_start_matches('P').parse()?)
    };
    let (kind, width, height) = (number()?, number()?, number()?);
    ensure!(kind == 5, "P{kind}");
    let points = picture
        .get(picture.len() - width * height..)
        .context("no points")?;
    let mut image =
        rqrr::PreparedImage::prepare_from_greyscale(width, height, |x, y| points[y * width + x]);
    let grids = image.detect_grids();
    ensure!(grids.len() == 1, "{} codes", grids.len());
    Ok(grids[0].decode()?.1)
}

#[test]
fn what_is_printed_reads_back() {
    journey_on(Device::DESK, "printed", async |browser| {
        browser.open("").await?;
        browser.press("#share > summary").await?;
        browser
            .script::<Option<bool>>(
                "const home = document.getElementById('home'); home.value = 'https://gear.example/swing/';
                 home.dispatchEvent(new Event('change')); return null;",
                &[],
            )
            .await?;
        browser.keys(thirtyfour::Key::Escape).await?;
        browser.frame().await?;
        // copied before, so that the gear has its mark
        let asked = copied(browser).await?;
        let folder = tempfile::tempdir()?;
        let file = folder.path().join("gear.pdf");
        for (width, height) in PAPERS {
            std::fs::write(&file, browser.printed(width, height).await?)?;
            browser
                .script::<Option<bool>>(
                    "window.dispatchEvent(new Event('beforeprint')); return null;",
                    &[],
                )
                .await?;
            let printed = dense(&read_back(&file)?);
            let texts = texts(browser).await?;
            ensure!(texts.len() > 300, "{} texts", texts.len());
            let missing: Vec<_> = texts
                .iter()
                .filter(|text| !printed.contains(&dense(text)))
                .collect();
            ensure!(missing.is_empty(), "{missing:?}");
            let link = code_on(&file)?;
            ensure!(link.starts_with("https://gear.example/swing/#gs"), "{link}");
            ensure!(link == asked, "{link} is not {asked}");
        }
        // one leg alone, by its own press
        browser
            .script::<Option<bool>>(
                "window.print = () => {
                   window.dispatchEvent(new Event('beforeprint'));
                   window.printed = document.getElementById('paper').innerText || document.getElementById('paper').textContent;
                   window.dispatchEvent(new Event('afterprint'));
                 }; return null;",
                &[],
            )
            .await?;
        browser.press("#settings > summary").await?;
        browser.press("#print-leg").await?;
        let one: String = browser.script("return window.printed;", &[]).await?;
        ensure!(
            one.contains("These sheets cover one leg only: Right main."),
            "{}",
            &one[..200]
        );
        browser.press("#print").await?;
        let all: String = browser.script("return window.printed;", &[]).await?;
        ensure!(!all.contains("cover one leg only"), "{}", &all[..200]);
        Ok(())
    });
}
