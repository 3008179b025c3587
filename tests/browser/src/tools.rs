//! The browser's own tools: touch, mouse without a driver's pauses, memory.

use crate::browser::Browser;
use crate::page::Spot;
use anyhow::{Context, Result};
use serde_json::{Value, json};

/// Memory of the page [bytes], after its rubbish has been collected.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Memory {
    /// Objects of the scripts and of the document.
    pub heap: f64,
    /// The module's own memory; it never shrinks.
    pub module: f64,
}

impl Browser {
    async fn tool(&self, name: &str, values: Value) -> Result<Value> {
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

    /// Moves, presses or releases the mouse; `kind` as `Input.dispatchMouseEvent` has it.
    pub async fn mouse(&self, kind: &str, at: Spot) -> Result<()> {
        let held = i32::from(kind != "mouseReleased");
        let values = json!({
            "type": kind, "x": at.x, "y": at.y, "button": "left", "buttons": held, "clickCount": 1,
        });
        self.tool("Input.dispatchMouseEvent", values).await?;
        Ok(())
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

    /// From now on notes how long the page works in each frame.
    pub async fn time_frames(&self) -> Result<()> {
        self.script::<Option<bool>>(
            "window.frameTimes = [];
             if (!window.plainFrame) {
               window.plainFrame = window.requestAnimationFrame.bind(window);
               window.requestAnimationFrame = (work) => window.plainFrame((time) => {
                 const start = performance.now();
                 work(time);
                 window.frameTimes.push(performance.now() - start);
               });
             }
             return null;",
            &[],
        )
        .await?;
        Ok(())
    }

    /// What was noted [ms], shortest first.
    pub async fn frame_times(&self) -> Result<Vec<f64>> {
        let mut times: Vec<f64> = self.script("return window.frameTimes;", &[]).await?;
        times.sort_by(f64::total_cmp);
        Ok(times)
    }
}
