//! How long the page takes, read from the browser's own clock (its grain is 0.1 ms).

use crate::browser::Browser;
use crate::server;
use anyhow::{Context, Result};
use serde::Deserialize;
use serde_json::json;
use std::fmt;

/// Runs in the page before its own scripts: notes when the first answer stands painted.
const NOTE_FIRST_ANSWER: &str = "
    new MutationObserver((_, watch) => {
      const answer = document.querySelector('.answer .verdict');
      if (!answer || answer.textContent === '' || answer.getClientRects().length === 0) return;
      watch.disconnect();
      const painted = new MessageChannel();
      painted.port1.onmessage = () => { window.firstAnswer = performance.now(); };
      requestAnimationFrame(() => painted.port2.postMessage(0));
    }).observe(document, {childList: true, subtree: true, characterData: true, attributes: true});";

/// Notes, for each frame in which the page works: the handlers and the frame's work; the time until
/// the browser has painted it; the time since the last such frame; and, apart from the page, the
/// time between any two frames of the browser and each solving.
const NOTE_FRAMES: &str = "
    const noted = window.noted = {work: [], painted: [], updates: [], frames: [], solving: [], faded: 0};
    if (window.plainFrame) return null;
    window.plainFrame = window.requestAnimationFrame.bind(window);
    let handlers = 0, began = 0, lastUpdate = 0, lastFrame = 0, started = 0;
    window.addEventListener('pointermove', () => { began = performance.now(); }, true);
    window.addEventListener('pointermove', () => { handlers += performance.now() - began; });
    const painted = new MessageChannel();
    painted.port1.onmessage = () => window.noted.painted.push(performance.now() - started);
    window.requestAnimationFrame = (work) => window.plainFrame((time) => {
      started = performance.now();
      work(time);
      window.noted.work.push(performance.now() - started + handlers);
      handlers = 0;
      if (!document.getElementById('faded').hidden) window.noted.faded += 1;
      if (lastUpdate) window.noted.updates.push(time - lastUpdate);
      lastUpdate = time;
      painted.port2.postMessage(0);
    });
    const each = (time) => {
      if (lastFrame) window.noted.frames.push(time - lastFrame);
      lastFrame = time;
      window.plainFrame(each);
    };
    window.plainFrame(each);
    new PerformanceObserver((list) => {
      for (const entry of list.getEntriesByName('solving')) window.noted.solving.push(entry.duration);
    }).observe({type: 'measure'});
    return null;";

/// Times of many like things (ms).
#[derive(Debug, Clone, Default, PartialEq, Deserialize)]
#[serde(transparent)]
pub struct Times(Vec<f64>);

/// Time that the page's thread has had a processor, which other programs do not lengthen much (ms).
#[derive(Debug, Clone, Copy, Default, PartialEq)]
pub struct Busy {
    /// Scripts and the module.
    pub scripts: f64,
    /// Style and layout.
    pub layout: f64,
    /// Everything: those, painting, handing over to the painter's threads.
    pub all: f64,
}

/// What was noted while the page worked.
#[derive(Debug, Clone, Default, PartialEq, Deserialize)]
pub struct Frames {
    /// The page's own work in a frame: handlers, solving, patching, drawing.
    pub work: Times,
    /// From the start of that work until the browser has laid out and painted.
    pub painted: Times,
    /// From one frame in which the page worked to the next.
    pub updates: Times,
    /// From one frame of the browser to the next.
    pub frames: Times,
    /// Solving of the legs that have changed.
    pub solving: Times,
    /// Frames with a model that could not be solved, which is told sooner than solved.
    pub faded: u32,
}

impl Browser {
    /// Opens the page and gives the time from there until its first answer is painted (ms).
    pub async fn time_to_first_answer(&self) -> Result<f64> {
        self.driver.goto("about:blank").await?;
        let script = json!({ "source": NOTE_FIRST_ANSWER });
        let added = self
            .tool("Page.addScriptToEvaluateOnNewDocument", script)
            .await?;
        self.driver.goto(server::address()?).await?;
        self.started().await?;
        self.wait_until("the first answer", "return window.firstAnswer > 0;")
            .await?;
        self.tool("Page.removeScriptToEvaluateOnNewDocument", added)
            .await?;
        self.script("return window.firstAnswer;", &[]).await
    }

    /// Time that the page's thread has been busy; only differences mean something.
    pub async fn busy(&self) -> Result<Busy> {
        let domain = json!({ "timeDomain": "threadTicks" });
        self.tool("Performance.enable", domain).await?;
        let metrics = self.tool("Performance.getMetrics", json!({})).await?;
        let ms = |name: &str| {
            let metrics = metrics["metrics"].as_array();
            let found = metrics.and_then(|all| all.iter().find(|metric| metric["name"] == name));
            let seconds = found.and_then(|metric| metric["value"].as_f64());
            Ok::<f64, anyhow::Error>(1000.0 * seconds.with_context(|| format!("no {name}"))?)
        };
        Ok(Busy {
            scripts: ms("ScriptDuration")?,
            layout: ms("RecalcStyleDuration")? + ms("LayoutDuration")?,
            all: ms("TaskDuration")?,
        })
    }

    /// From now on notes how long the page's frames take; forgets what was noted before.
    pub async fn time_frames(&self) -> Result<()> {
        self.script::<Option<bool>>(NOTE_FRAMES, &[]).await?;
        Ok(())
    }

    /// What was noted.
    pub async fn frames(&self) -> Result<Frames> {
        let mut noted: Frames = self.script("return window.noted;", &[]).await?;
        for times in [
            &mut noted.work,
            &mut noted.painted,
            &mut noted.updates,
            &mut noted.frames,
            &mut noted.solving,
        ] {
            times.0.sort_by(f64::total_cmp);
        }
        Ok(noted)
    }
}

impl Times {
    /// How many there are.
    #[must_use]
    pub fn count(&self) -> usize {
        self.0.len()
    }

    /// The time that this share of them does not exceed (ms): 0 the shortest, 1 the longest; not a
    /// number when there are none.
    #[must_use]
    pub fn share(&self, share: f64) -> f64 {
        let last = self.0.len().saturating_sub(1);
        #[allow(
            clippy::cast_possible_truncation,
            clippy::cast_sign_loss,
            clippy::cast_precision_loss,
            reason = "a place in a list of some thousand"
        )]
        let place = (share.clamp(0.0, 1.0) * last as f64).round() as usize;
        self.0.get(place).copied().unwrap_or(f64::NAN)
    }

    /// Their mean (ms); not a number when there are none.
    #[must_use]
    pub fn mean(&self) -> f64 {
        #[allow(clippy::cast_precision_loss, reason = "a count of some thousand")]
        let count = self.0.len() as f64;
        self.0.iter().sum::<f64>() / count
    }

    /// Share of them that is longer than a limit (ratio).
    #[must_use]
    pub fn over(&self, limit_ms: f64) -> f64 {
        let over = self.0.iter().filter(|time| **time > limit_ms).count();
        #[allow(clippy::cast_precision_loss, reason = "a count of some thousand")]
        let share = over as f64 / self.0.len() as f64;
        share
    }
}

impl From<Vec<f64>> for Times {
    fn from(mut times: Vec<f64>) -> Self {
        times.sort_by(f64::total_cmp);
        Self(times)
    }
}

impl fmt::Display for Times {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(
            f,
            "least {:.2}, median {:.2}, 95 % below {:.2}, 99 % below {:.2}, longest {:.2} ms ({} times)",
            self.share(0.0),
            self.share(0.5),
            self.share(0.95),
            self.share(0.99),
            self.share(1.0),
            self.count()
        )
    }
}

#[cfg(test)]
mod tests {
    use super::Times;

    #[test]
    fn shares_count_from_the_shortest() {
        let times = Times::from((0..=100).rev().map(f64::from).collect::<Vec<_>>());
        assert_eq!(times.share(0.0), 0.0);
        assert_eq!(times.share(0.5), 50.0);
        assert_eq!(times.share(0.99), 99.0);
        assert_eq!(times.share(1.0), 100.0);
        assert_eq!(times.mean(), 50.0);
        assert_eq!(times.over(90.0), 10.0 / 101.0);
        assert!(Times::default().share(0.5).is_nan());
    }
}
