//! Every sheet in both themes, on desk and phone, by axe-core (MPL-2.0; its file lies beside, nothing of it is shipped):
//! the rules of WCAG 2.0 to 2.2, A and AA, and those it calls best practice. And fingers have room: 44 px each way
//! (WCAG 2.2, 2.5.5).

use anyhow::{Result, ensure};
use gearswing_browser_tests::{Browser, Device, SHEETS, is_long, journey_on};

const AXE: &str = include_str!("../axe/axe.min.js");

/// What breaks a rule, each as the rule, how bad it is, and where.
async fn violations(browser: &Browser) -> Result<Vec<String>> {
    browser
        .script(
            "return axe.run(document, {
               runOnly: ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa', 'best-practice'],
               rules: {'label-content-name-mismatch': {enabled: true}},
               resultTypes: ['violations'],
             }).then((found) => found.violations.flatMap((rule) => rule.nodes.map((node) =>
               `${rule.id} (${rule.impact}) ${node.target.join(' ')}: ${node.html.slice(0, 120)}`)));",
            &[],
        )
        .await
}

/// Whatever a finger presses that is smaller.
const SMALL: &str = "
    const wanted = 'a[href], button, input, select, textarea, summary, [role=slider]';
    return [...document.querySelectorAll(wanted)].filter((node) => {
      if (!node.checkVisibility({visibilityProperty: true})) return false;
      const style = getComputedStyle(node);
      // what lies under it takes the finger
      if (style.pointerEvents === 'none' || node.matches('.unseen, .skip') || node.closest('.unseen')) return false;
      const about = ['checkbox', 'radio'].includes(node.type) && node.labels[0] ? node.labels[0] : node;
      const box = about.getBoundingClientRect();
      return box.width > 0 && (box.width < 43.5 || box.height < 43.5);
    }).map((node) => {
      const box = node.getBoundingClientRect();
      const name = node.getAttribute('aria-label') || node.innerText || node.id;
      return `${node.tagName} #${node.id}.${node.className} “${name.trim().slice(0, 40)}” ${box.width.toFixed(0)} × ${box.height.toFixed(0)}`;
    });";

struct Looked<'b> {
    browser: &'b Browser,
    touch: bool,
    found: Vec<String>,
}

impl Looked<'_> {
    async fn look(&mut self, at: &str) -> Result<()> {
        self.browser.settled().await?;
        let mut found = violations(self.browser).await?;
        if self.touch {
            found.extend(self.browser.script::<Vec<String>>(SMALL, &[]).await?);
        }
        let new = found.into_iter().map(|what| format!("{at}: {what}"));
        self.found.extend(new);
        Ok(())
    }
}

/// Opens everything on the sheet in hand that can be.
const UNFOLD: &str = "
    for (const part of document.querySelectorAll('.sheet:not([hidden]) details:not([open])')) part.open = true;
    return null;";

async fn all(browser: &Browser, touch: bool) -> Result<()> {
    browser.open("").await?;
    browser
        .script::<Option<bool>>(&[AXE, "\nreturn null;"].concat(), &[])
        .await?;
    let mut looked = Looked {
        browser,
        touch,
        found: Vec::new(),
    };
    looked.look("at the start").await?;
    browser
        .press(if touch {
            "#settings > summary"
        } else {
            "#keep"
        })
        .await?;
    if touch {
        browser.press("#settings [data-act=keep]").await?;
    }
    for sheet in SHEETS {
        browser.sheet(sheet).await?;
        browser.script::<Option<bool>>(UNFOLD, &[]).await?;
        looked.look(sheet).await?;
    }
    for group in ["Leg", "Actuator", "Root rib"] {
        browser.open_group(group).await?;
        looked.look(group).await?;
    }
    for drop in ["files", "share", "settings"] {
        browser.press(&format!("#{drop} > summary")).await?;
        looked.look(drop).await?;
        browser.keys(thirtyfour::Key::Escape).await?;
    }
    // what looks has eyes
    browser
        .script::<Option<bool>>(
            "const bad = document.createElement('button'); bad.id = 'bad'; bad.style.minHeight = 0;
             document.getElementById('sheet').prepend(bad); return null;",
            &[],
        )
        .await?;
    let seen = violations(browser).await?;
    ensure!(
        seen.iter().any(|what| what.starts_with("button-name")),
        "{seen:?}"
    );
    let small: Vec<String> = browser.script(SMALL, &[]).await?;
    ensure!(
        !touch || small.iter().any(|what| what.contains("#bad")),
        "{small:?}"
    );
    browser
        .script::<Option<bool>>("document.getElementById('bad').remove(); return null;", &[])
        .await?;
    // a leg that cannot be worked out
    browser.open_group("Actuator").await?;
    browser
        .enter("legs[2].actuator.shortest_m", "40 in")
        .await?;
    browser.sheet("answers").await?;
    looked.look("a faulty leg").await?;
    let found = looked.found;
    ensure!(
        found.is_empty(),
        "{} things:\n{}",
        found.len(),
        found.join("\n")
    );
    Ok(())
}

#[test]
fn every_sheet_keeps_the_rules_of_accessibility() {
    let desk = Device {
        width: 1440,
        height: 900,
        ..Device::DESK
    };
    let phone = Device {
        height: 844,
        ..Device::PHONE
    };
    let short = [(desk, false, false), (phone, true, true)];
    let rest = [(desk, true, false), (phone, false, true)];
    let rest = rest.into_iter().filter(|_| is_long());
    for (device, dark, touch) in short.into_iter().chain(rest) {
        journey_on(Device { dark, ..device }, "accessible", async |browser| {
            all(browser, touch).await
        });
    }
}
