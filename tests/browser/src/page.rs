//! What a person does on the page, and what they read there.

use crate::browser::Browser;
use anyhow::{Context, Result, bail};
use serde::Deserialize;
use serde_json::json;
use thirtyfour::TypingData;
use thirtyfour::prelude::*;

/// Keys of the sheets.
pub const SHEETS: [&str; 6] = [
    "answers",
    "curves",
    "times",
    "stopped",
    "measurements",
    "changes",
];

/// One answer as it stands on the page.
#[derive(Debug, Clone, PartialEq, Deserialize)]
pub struct Answer {
    /// `good`, `marginal`, `bad` or `not-shown`.
    pub verdict: String,
    /// All of its text, folded or not.
    pub text: String,
}

/// Middle of a point's stand-in over the drawing.
#[derive(Debug, Clone, Copy, PartialEq, Deserialize)]
pub struct Spot {
    /// From the window's left edge (CSS px).
    pub x: f64,
    /// From the window's upper edge (CSS px).
    pub y: f64,
}

/// Nothing is being worked out.
const SETTLED: &str =
    "const line = document.getElementById('working'); return !line || line.hidden;";

impl Browser {
    /// Text of the first element that the selector finds; empty when it is not shown.
    pub async fn text(&self, css: &str) -> Result<String> {
        let found: Option<String> = self
            .script(
                "const node = document.querySelector(arguments[0]);
                 if (!node) return null;
                 return node.getClientRects().length > 0 ? node.innerText : '';",
                &[json!(css)],
            )
            .await?;
        found.with_context(|| format!("there is no {css}"))
    }

    /// Takes a sheet in hand, by its name where that stands, else by the list of all.
    pub async fn sheet(&self, key: &str) -> Result<()> {
        let shown: Option<bool> = self
            .script(
                "const sheet = document.querySelector(`.sheet[data-sheet=\"${arguments[0]}\"]`);
                 return sheet && !sheet.hidden;",
                &[json!(key)],
            )
            .await?;
        match shown {
            Some(true) => return Ok(()),
            Some(false) => {}
            None => bail!("there is no sheet {key}"),
        }
        let names: bool = self
            .script(
                "return document.getElementById('sheet-names').checkVisibility();",
                &[],
            )
            .await?;
        let within = if names { "#sheet-names" } else { "#sheet-list" };
        if !names {
            self.press("#sheet-now").await?;
        }
        self.press(&format!("{within} [data-action=\"sheet.{key}\"]"))
            .await
    }

    /// Takes the sheet in hand on which something stands, if it stands on one.
    async fn sheet_of(&self, css: &str) -> Result<()> {
        let key: Option<String> = self
            .script(
                "const node = document.querySelector(arguments[0]);
                 const sheet = node && node.closest('.sheet[hidden]');
                 return sheet && sheet.dataset.sheet;",
                &[json!(css)],
            )
            .await?;
        match key {
            Some(key) => Box::pin(self.sheet(&key)).await,
            None => Ok(()),
        }
    }

    /// Brings an element into sight and presses it.
    pub async fn press(&self, css: &str) -> Result<()> {
        self.sheet_of(css).await?;
        let node = self
            .driver
            .find(By::Css(css))
            .await
            .with_context(|| format!("there is no {css}"))?;
        self.script::<Option<bool>>(
            "document.querySelector(arguments[0]).scrollIntoView({block: 'center'}); return null;",
            &[json!(css)],
        )
        .await?;
        node.click()
            .await
            .with_context(|| format!("{css} cannot be pressed"))?;
        self.frame().await
    }

    /// Presses the button inside of `within` whose text is, or begins with, this.
    pub async fn press_button(&self, within: &str, text: &str) -> Result<()> {
        let marked: bool = self
            .script(
                "for (const old of document.querySelectorAll('[data-test-press]')) old.removeAttribute('data-test-press');
                 const found = [...document.querySelectorAll(arguments[0] + ' button, ' + arguments[0] + ' summary')]
                   .filter((node) => node.innerText.trim().startsWith(arguments[1]));
                 if (found.length === 0) return false;
                 found[0].setAttribute('data-test-press', '');
                 return true;",
                &[json!(within), json!(text)],
            )
            .await?;
        if !marked {
            bail!("there is no button “{text}” in {within}");
        }
        self.press("[data-test-press]").await
    }

    /// Waits for the page to have worked off what was done, worked out all of its results and painted
    /// them.
    pub async fn frame(&self) -> Result<()> {
        self.painted().await?;
        if self.is_settled().await? {
            return Ok(());
        }
        self.settled().await?;
        self.painted().await
    }

    async fn is_settled(&self) -> Result<bool> {
        self.script(SETTLED, &[]).await
    }

    /// Waits until nothing is being worked out any more.
    pub async fn settled(&self) -> Result<()> {
        self.wait_until("the results", SETTLED).await
    }

    /// Waits for the page to have worked off what was done and painted it, and what it could work out
    /// meanwhile.
    pub async fn painted(&self) -> Result<()> {
        let done = self
            .driver
            .execute_async(
                "const done = arguments[0]; requestAnimationFrame(() => requestAnimationFrame(() => done(true)));",
                vec![],
            )
            .await?;
        if done.convert::<bool>()? {
            Ok(())
        } else {
            bail!("no frame came")
        }
    }

    /// The answer of a leg to a question, both as they stand on the page; the leg is then in hand.
    pub async fn answer(&self, leg: &str, question: &str) -> Result<Answer> {
        let in_hand: bool = self
            .script(
                "const name = document.querySelector('#verdicts .leg-name[aria-pressed=true]');
                 return name !== null && name.textContent.includes(arguments[0]);",
                &[json!(leg)],
            )
            .await?;
        if !in_hand {
            self.choose_leg(leg).await?;
        }
        let found: Option<Answer> = self
            .script(
                "for (const answer of document.querySelectorAll('#answers .answer'))
                   if (answer.querySelector('.question').textContent.includes(arguments[0]))
                     return {verdict: answer.dataset.verdict, text: answer.textContent};
                 return null;",
                &[json!(question)],
            )
            .await?;
        found.with_context(|| format!("{leg}: there is no answer to “{question}”"))
    }

    /// Chooses a leg.
    pub async fn choose_leg(&self, leg: &str) -> Result<()> {
        self.press_button("#verdicts", leg).await
    }

    /// Middle of a point of the drawing, scrolled into the window.
    pub async fn spot(&self, handle: &str) -> Result<Spot> {
        self.frame().await?;
        self.wait_until(
            "the points of the drawing stand",
            "return document.getElementById('handles').getAttribute('aria-busy') === 'false';",
        )
        .await?;
        let found: Option<Spot> = self
            .script(
                "document.getElementById('drawing').scrollIntoView({block: 'center'});
                 const node = document.querySelector(`[data-handle=\"${arguments[0]}\"]`);
                 if (!node) return null;
                 const box = node.getBoundingClientRect();
                 return {x: box.x + box.width / 2, y: box.y + box.height / 2};",
                &[json!(handle)],
            )
            .await?;
        found.with_context(|| format!("the drawing has no point {handle}"))
    }

    /// The middle of what a selector finds, scrolled into the window, and its width (CSS px).
    pub async fn middle(&self, css: &str) -> Result<(Spot, f64)> {
        self.sheet_of(css).await?;
        let script = "const node = document.querySelector(arguments[0]);
            if (!node) return null;
            node.scrollIntoView({block: 'center'});
            const box = node.getBoundingClientRect();
            return [{x: box.x + box.width / 2, y: box.y + box.height / 2}, box.width];";
        let found: Option<(Spot, f64)> = self.script(script, &[json!(css)]).await?;
        self.frame().await?;
        found.with_context(|| format!("there is no {css}"))
    }

    /// Drags with the mouse, in steps, and releases. By the browser's own input: the driver's
    /// pointer says between two actions that no button is down, and a captured pointer is let go.
    pub async fn drag(&self, from: Spot, by: (f64, f64), steps: u32) -> Result<()> {
        self.mouse("mouseMoved", from).await?;
        self.mouse("mousePressed", from).await?;
        let mut at = from;
        for step in 1..=steps {
            let share = f64::from(step) / f64::from(steps);
            at = Spot {
                x: from.x + by.0 * share,
                y: from.y + by.1 * share,
            };
            self.mouse("mouseMoved", at).await?;
            self.frame().await?;
        }
        self.mouse("mouseReleased", at).await?;
        self.frame().await
    }

    /// Chooses an option of a select.
    pub async fn choose(&self, css: &str, option: &str) -> Result<()> {
        let done: bool = self
            .script(
                "const select = document.querySelector(arguments[0]);
                 if (!select || ![...select.options].some((option) => option.value === arguments[1])) return false;
                 select.value = arguments[1];
                 select.dispatchEvent(new Event('change', {bubbles: true}));
                 return true;",
                &[json!(css), json!(option)],
            )
            .await?;
        if !done {
            bail!("{css} has no option {option}");
        }
        self.frame().await
    }

    /// Text in a field of the data.
    pub async fn field(&self, path: &str) -> Result<String> {
        let found: Option<String> = self
            .script(
                "const node = document.getElementById('field-' + arguments[0]);
                 return node && (node.value ?? node.textContent);",
                &[json!(path)],
            )
            .await?;
        found.with_context(|| format!("there is no field {path}"))
    }

    /// Error at a field of the data; empty when there is none.
    pub async fn field_error(&self, path: &str) -> Result<String> {
        let found: Option<String> = self
            .script(
                "const node = document.getElementById('field-' + arguments[0] + '-error');
                 return node && node.textContent;",
                &[json!(path)],
            )
            .await?;
        found.with_context(|| format!("there is no field {path}"))
    }

    /// Opens the group of fields with this heading, if it is closed.
    pub async fn open_group(&self, title: &str) -> Result<()> {
        self.sheet("measurements").await?;
        let state: Option<bool> = self
            .script(
                "for (const head of document.querySelectorAll('.group-head'))
                   if (head.querySelector('.group-title').textContent.startsWith(arguments[0]))
                     return head.getAttribute('aria-expanded') === 'true';
                 return null;",
                &[json!(title)],
            )
            .await?;
        match state {
            Some(true) => Ok(()),
            Some(false) => self.press_button("#groups", title).await,
            None => bail!("there is no group “{title}”"),
        }
    }

    /// Types a text into a field in the place of what is there, and leaves it with Enter.
    pub async fn enter(&self, path: &str, text: &str) -> Result<()> {
        self.type_text(path, text).await?;
        self.keys(Key::Enter).await
    }

    /// Types a text into a field in the place of what is there.
    pub async fn type_text(&self, path: &str, text: &str) -> Result<()> {
        self.press(&format!("[id=\"field-{path}\"]")).await?;
        self.driver
            .action_chain()
            .key_down(Key::Control)
            .send_keys("a")
            .key_up(Key::Control)
            .send_keys(text)
            .perform()
            .await?;
        self.frame().await
    }

    /// Sends keys to whatever has the focus.
    pub async fn keys(&self, keys: impl Into<TypingData>) -> Result<()> {
        self.driver.action_chain().send_keys(keys).perform().await?;
        self.frame().await
    }

    /// Sends keys while Control is held.
    pub async fn control(&self, keys: &str) -> Result<()> {
        self.driver
            .action_chain()
            .key_down(Key::Control)
            .send_keys(keys)
            .key_up(Key::Control)
            .perform()
            .await?;
        self.frame().await
    }

    /// Numbers at the cursor, as label and value.
    pub async fn readout(&self) -> Result<Vec<(String, String)>> {
        self.script(
            "return [...document.querySelectorAll('#readout .number')].map((row) =>
               [row.querySelector('dt').textContent, row.querySelector('dd').textContent]);",
            &[],
        )
        .await
    }

    /// The picture on a canvas and those over it, as text.
    pub async fn picture(&self, id: &str) -> Result<String> {
        Ok(self.layers(id).await?.join(" "))
    }

    /// What stays of a picture, and what moves on it, each as text; scrolled into the window, for
    /// out of it none is painted.
    pub async fn layers(&self, id: &str) -> Result<Vec<String>> {
        self.sheet_of(&format!("#{id}")).await?;
        self.script::<Option<bool>>(
            "document.getElementById(arguments[0]).scrollIntoView({block: 'center'}); return null;",
            &[json!(id)],
        )
        .await?;
        // One frame tells the page of it, the next one paints.
        self.frame().await?;
        self.frame().await?;
        self.script(
            "const layers = document.getElementById(arguments[0]).parentElement;
             return Array.from(layers.querySelectorAll(':scope > canvas'), layer => layer.toDataURL());",
            &[json!(id)],
        )
        .await
    }
}
