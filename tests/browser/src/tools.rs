//! The browser's own tools: touch, mouse without a driver's pauses, memory.

use crate::browser::Browser;
use crate::page::Spot;
use anyhow::{Context, Result};
use base64::Engine;
use futures_util::{StreamExt, TryStreamExt, stream};
use serde_json::{Value, json};

/// Moves sent before the first of them is answered.
const UNDER_WAY: usize = 3;

/// Memory of the page (bytes), after its rubbish has been collected.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Memory {
    /// Objects of the scripts and of the document.
    pub heap: f64,
    /// The module's own memory; it never shrinks.
    pub module: f64,
}

impl Browser {
    /// Calls one of the browser's tools by its name in the DevTools protocol.
    pub(crate) async fn tool(&self, name: &str, values: Value) -> Result<Value> {
        self.driver
            .cdp()
            .send_raw(name, values)
            .await
            .with_context(|| format!("{name} failed"))
    }

    /// Puts fingers down, moves them or (none) lifts them; `kind` as `Input.dispatchTouchEvent`
    /// has it.
    pub async fn fingers(&self, kind: &str, at: &[Spot]) -> Result<()> {
        let points: Vec<Value> = at
            .iter()
            .enumerate()
            .map(|(id, spot)| json!({"x": spot.x, "y": spot.y, "id": id}))
            .collect();
        let values = json!({"type": kind, "touchPoints": points});
        self.tool("Input.dispatchTouchEvent", values).await?;
        Ok(())
    }

    /// Prints the page on paper of this size (in) as the browser does; the file.
    pub async fn printed(&self, width_in: f64, height_in: f64) -> Result<Vec<u8>> {
        let values = json!({"paperWidth": width_in, "paperHeight": height_in});
        let answer = self.tool("Page.printToPDF", values).await?;
        let data = answer.get("data").and_then(Value::as_str);
        let data = data.context("nothing was printed")?;
        Ok(base64::engine::general_purpose::STANDARD.decode(data)?)
    }

    /// Shows the page as it goes on paper, or on the screen again.
    pub async fn on_paper(&self, on: bool) -> Result<()> {
        let media = if on { "print" } else { "" };
        self.tool("Emulation.setEmulatedMedia", json!({"media": media}))
            .await?;
        Ok(())
    }

    /// Runs a script in every page that is loaded from now on, before its own.
    pub async fn before_the_page(&self, script: &str) -> Result<()> {
        let values = json!({ "source": script });
        self.tool("Page.addScriptToEvaluateOnNewDocument", values)
            .await?;
        Ok(())
    }

    /// Moves, presses or releases the mouse; `kind` as `Input.dispatchMouseEvent` has it.
    pub async fn mouse(&self, kind: &str, at: Spot) -> Result<()> {
        let held = i32::from(kind != "mouseReleased");
        let values = json!({
            "type": kind, "x": at.x, "y": at.y, "button": "left", "buttons": held, "clickCount": 1,
        });
        self.tool("Input.dispatchMouseEvent", values).await?;
        Ok(())
    }

    /// Types one letter into whatever has the focus; done when the page has had it.
    pub async fn letter(&self, letter: char) -> Result<()> {
        let values = json!({"type": "char", "text": letter.to_string()});
        self.tool("Input.dispatchKeyEvent", values).await?;
        Ok(())
    }

    /// Puts a text in at once, as from the clipboard; done when the page has had it.
    pub async fn insert(&self, text: &str) -> Result<()> {
        self.tool("Input.insertText", json!({ "text": text }))
            .await?;
        Ok(())
    }

    /// Presses and releases a key that types nothing, by its name in a keyboard event, with Control
    /// held or without.
    pub async fn plain_key(&self, key: &str, control: bool) -> Result<()> {
        for kind in ["rawKeyDown", "keyUp"] {
            let values =
                json!({"type": kind, "key": key, "modifiers": if control { 2 } else { 0 }});
            self.tool("Input.dispatchKeyEvent", values).await?;
        }
        Ok(())
    }

    /// Moves the pressed mouse from spot to spot, one a frame where the page keeps up: the browser
    /// answers a move when the page has had it, and the next ones are on their way by then.
    pub async fn glide(&self, spots: impl IntoIterator<Item = Spot>) -> Result<()> {
        stream::iter(spots)
            .map(|spot| self.mouse("mouseMoved", spot))
            .buffered(UNDER_WAY)
            .try_collect()
            .await
    }

    /// Memory in use.
    pub async fn memory(&self) -> Result<Memory> {
        self.tool("HeapProfiler.collectGarbage", json!({})).await?;
        let heap = self.tool("Runtime.getHeapUsage", json!({})).await?;
        Ok(Memory {
            heap: heap["usedSize"].as_f64().context("no heap size")?,
            module: self.script("return gearswing.bytes();", &[]).await?,
        })
    }
}
