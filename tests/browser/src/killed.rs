//! A Chromium that can be killed: a process group of its own over a profile that stays.

use crate::browser::{Browser, SWITCHES};
use anyhow::{Context, Result, bail, ensure};
use std::fs;
use std::os::unix::process::CommandExt;
use std::path::Path;
use std::process::{Child, Command, Stdio};
use std::time::{Duration, Instant};
use tempfile::TempDir;

/// Longest wait for the browser to listen, and for its processes to be gone.
const WAIT: Duration = Duration::from_secs(30);

/// Where the browser writes the port of its tools.
const PORT_FILE: &str = "DevToolsActivePort";

/// Names under which Chromium is found.
const NAMES: [&str; 4] = ["chromium", "chromium-browser", "google-chrome", "chrome"];

/// A profile that outlives its browsers.
pub struct Profile {
    dir: TempDir,
}

/// A running browser with all of its processes.
pub struct Mortal {
    process: Child,
    /// To drive it by.
    pub browser: Browser,
}

impl Profile {
    /// A fresh one.
    pub fn new() -> Result<Self> {
        Ok(Self {
            dir: TempDir::new()?,
        })
    }

    /// Starts a browser on it.
    pub async fn start(&self) -> Result<Mortal> {
        let dir = self.dir.path();
        // what a killed one has left would be taken for the new one's
        let port_file = dir.join(PORT_FILE);
        if port_file.exists() {
            fs::remove_file(&port_file)?;
        }
        let mut process = spawn(dir)?;
        match attach(&port_file).await {
            Ok(browser) => Ok(Mortal { process, browser }),
            Err(error) => {
                kill_group(&mut process)?;
                Err(error)
            }
        }
    }
}

impl Mortal {
    /// Kills every process of the browser at once, without a word of warning, and waits until the
    /// last is gone.
    pub fn kill(mut self) -> Result<()> {
        let killed = kill_group(&mut self.process);
        // no session can be ended in good order any more: that would wait for minutes
        self.browser.driver.clone().leak()?;
        killed
    }
}

impl Drop for Mortal {
    fn drop(&mut self) {
        // Already gone is as good.
        let _ = kill_group(&mut self.process);
    }
}

fn spawn(dir: &Path) -> Result<Child> {
    for name in NAMES {
        let started = Command::new(name)
            .args(SWITCHES)
            .arg("--remote-debugging-port=0")
            .arg("--window-size=1280,800")
            .arg(format!("--user-data-dir={}", dir.display()))
            .arg("about:blank")
            .process_group(0)
            .stdin(Stdio::null())
            .stdout(Stdio::null())
            .stderr(Stdio::null())
            .spawn();
        match started {
            Err(error) if error.kind() == std::io::ErrorKind::NotFound => {}
            other => return other.with_context(|| format!("could not start {name}")),
        }
    }
    bail!("there is none of {}", NAMES.join(", "))
}

async fn attach(port_file: &Path) -> Result<Browser> {
    let start = Instant::now();
    loop {
        let port = fs::read_to_string(port_file)
            .ok()
            .and_then(|text| text.lines().next()?.parse::<u16>().ok());
        if let Some(port) = port {
            return Browser::attach(&format!("127.0.0.1:{port}")).await;
        }
        ensure!(start.elapsed() < WAIT, "Chromium did not begin to listen");
        tokio::time::sleep(Duration::from_millis(20)).await;
    }
}

/// Ends the group and waits for its last process: what still ran could write.
fn kill_group(process: &mut Child) -> Result<()> {
    let group = format!("-{}", process.id());
    let signal = |name: &str| -> Result<bool> {
        let done = Command::new("kill")
            .args([name, "--", &group])
            .stderr(Stdio::null())
            .status()
            .context("there is no kill")?;
        Ok(done.success())
    };
    signal("-KILL")?;
    process.wait()?;
    let start = Instant::now();
    while signal("-0")? {
        ensure!(start.elapsed() < WAIT, "the browser does not end");
        std::thread::sleep(Duration::from_millis(10));
    }
    Ok(())
}
