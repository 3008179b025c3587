//! Names as people type them, and as nobody should: however long, whichever way they are written,
//! the page keeps its width and its own words their direction.

use crate::files::import;
use crate::same::export;
use anyhow::{Context, Result, ensure};
use gearswing_browser_tests::{Browser, Device, journey_on};
use serde_json::{Value, json};

/// The demo with another name in every place that takes one; of the pieces of a well and the springs
/// the first is enough.
async fn named(browser: &Browser, name: &str) -> Result<()> {
    browser.open("").await?;
    let mut file: Value = serde_json::from_slice(&export(browser).await?)?;
    let gear = &mut file["gear"];
    gear["name"] = json!(name);
    for leg in gear["legs"].as_array_mut().context("no legs")? {
        leg["name"] = json!(name);
        for list in ["well", "springs"] {
            for piece in leg[list].as_array_mut().into_iter().flatten().take(1) {
                piece["name"] = json!(name);
            }
        }
        leg["wheel"]["tire"]["size"] = json!(name);
        if leg["wheel"]["former"].is_object() {
            leg["wheel"]["former"]["size"] = json!(name);
        }
    }
    import(browser, "named.json", &serde_json::to_vec(&file)?).await
}

/// Everything that unfolds stands open, one group of fields after the other; `look` sees each.
async fn unfold(browser: &Browser, mut look: impl AsyncFnMut(&str) -> Result<()>) -> Result<()> {
    browser
        .script::<Option<bool>>(
            "for (const node of document.querySelectorAll('main details')) node.open = true; return null;",
            &[],
        )
        .await?;
    browser.frame().await?;
    look("the lists").await?;
    browser
        .script::<Option<bool>>(
            "document.getElementById('files').open = true; return null;",
            &[],
        )
        .await?;
    look("the files").await?;
    browser
        .script::<Option<bool>>(
            "document.getElementById('files').open = false; return null;",
            &[],
        )
        .await?;
    let groups: usize = browser
        .script(
            "return document.querySelectorAll('.group-head').length;",
            &[],
        )
        .await?;
    for at in 0..groups {
        let script = "const head = document.querySelectorAll('.group-head')[arguments[0]];
            if (!head) return '';
            if (head.getAttribute('aria-expanded') === 'false') head.click();
            return head.dataset.group;";
        let group: String = browser.script(script, &[json!(at)]).await?;
        browser.frame().await?;
        look(&group).await?;
    }
    Ok(())
}

/// What is wider than the window, or a single text higher than it.
const TOO_LARGE: &str = "
    const width = document.documentElement.clientWidth, found = [];
    if (document.documentElement.scrollWidth > width) {
      found.push('page ' + document.documentElement.scrollWidth);
      for (const node of document.querySelectorAll('body *'))
        if (node.getBoundingClientRect().right > width + 1 && !node.closest('.wide'))
          found.push(node.outerHTML.slice(0, 120));
    }
    for (const node of document.querySelectorAll('p, li, dt, dd, button, summary, bdi, h3, output'))
      if (node.checkVisibility() && node.getBoundingClientRect().height > innerHeight && !node.querySelector('p, li, ol, ul'))
        found.push('high: ' + node.outerHTML.slice(0, 120));
    return found.slice(0, 6);";

#[test]
fn a_name_of_100000_letters_widens_nothing() {
    for device in [Device::PHONE, Device::DESK] {
        let name = format!("long names, {} px", device.width);
        journey_on(device, &name, async |browser| {
            named(browser, &"W".repeat(100_000)).await?;
            unfold(browser, async |what| {
                let found: Vec<String> = browser.script(TOO_LARGE, &[]).await?;
                ensure!(found.is_empty(), "{what}: {found:?}");
                Ok(())
            })
            .await?;
            let longest: usize = browser
                .script(
                    "return Math.max(...[...document.querySelectorAll('[title], [aria-label]')]
                       .map((node) => Math.max(node.title.length, (node.getAttribute('aria-label') || '').length)));",
                    &[],
                )
                .await?;
            ensure!(longest < 1000, "a spoken text of {longest} letters");
            Ok(())
        });
    }
}

/// Letters of the page's own words that stand left of the letter before them, on one line. A Latin
/// word is read from left to right whatever stands beside it (Unicode Standard Annex 9); only an
/// override turns it round.
const TURNED: &str = "
    const walk = document.createTreeWalker(document.getElementById('sheet'), NodeFilter.SHOW_TEXT), found = [];
    const range = document.createRange();
    for (let node = walk.nextNode(); node; node = walk.nextNode()) {
      if (!node.parentElement.checkVisibility() || node.parentElement.closest('select, textarea, .unseen')) continue;
      const text = node.data;
      let before = null, at = 0;
      for (const word of text.matchAll(/[A-Za-z]+/g)) {
        const boxes = [word.index, word.index + word[0].length - 1].map((at) => {
          range.setStart(node, at); range.setEnd(node, at + 1);
          return range.getBoundingClientRect();
        });
        if (word[0].length > 1 && boxes[0].top === boxes[1].top && boxes[1].left < boxes[0].left)
          found.push('turned round: ' + text.slice(0, 120));
        if (before && before.top === boxes[0].top && boxes[0].left < before.left)
          found.push('out of order: ' + text.slice(0, 120));
        before = boxes[1];
      }
    }
    return [...new Set(found)].slice(0, 6);";

/// Right-to-left override, embedding without end, a pop too many, and a name in Hebrew letters with
/// digits and brackets at its end.
#[test]
fn no_name_turns_the_page_s_own_words_round() {
    for (at, name) in [
        "Tourer \u{202e}",
        "\u{202b}\u{2067}Left",
        "Left \u{2069}\u{202e}",
        "כן נסע (3)",
    ]
    .into_iter()
    .enumerate()
    {
        journey_on(Device::DESK, &format!("direction {at}"), async |browser| {
            named(browser, name).await?;
            unfold(browser, async |what| {
                let found: Vec<String> = browser.script(TURNED, &[]).await?;
                ensure!(found.is_empty(), "{what}, {name:?}: {found:?}");
                Ok(())
            })
            .await
        });
    }
}
