//! One Chromium with a fresh profile, and the frame that every journey runs in.

use crate::chromedriver::Chromedriver;
use crate::server;
use anyhow::{Context, Result, bail};
use futures_util::FutureExt;
use serde::de::DeserializeOwned;
use serde_json::{Value, json};
use std::fs;
use std::panic::{AssertUnwindSafe, resume_unwind};
use std::path::PathBuf;
use std::time::{Duration, Instant};
use tempfile::TempDir;
use thirtyfour::prelude::*;

/// Longest wait for a sign from the page.
const WAIT: Duration = Duration::from_secs(15);

/// Pause between two looks at the page.
const LOOK_AGAIN: Duration = Duration::from_millis(25);

/// The screen that the page is shown on.
#[derive(Debug, Clone, Copy)]
pub struct Device {
    /// Width of the page's window (CSS px).
    pub width: u32,
    /// Height of the page's window (CSS px).
    pub height: u32,
    /// Screen pixels per CSS pixel.
    pub pixel_ratio: f64,
    /// A touch screen instead of a mouse.
    pub touch: bool,
    /// The person prefers a dark page.
    pub dark: bool,
}

impl Device {
    /// A desk screen.
    pub const DESK: Self = Self {
        width: 1280,
        height: 800,
        pixel_ratio: 1.0,
        touch: false,
        dark: false,
    };

    /// A phone held upright.
    pub const PHONE: Self = Self {
        width: 390,
        height: 800,
        pixel_ratio: 3.0,
        touch: true,
        dark: false,
    };
}

/// A running browser.
pub struct Browser {
    /// The WebDriver session: find elements, click, type, run scripts.
    pub driver: WebDriver,
    downloads: TempDir,
    _profile: TempDir,
    _program: Chromedriver,
}

/// Runs a journey on a desk screen. Panics when it fails or the console shows an error.
pub fn journey(name: &str, test: impl AsyncFnOnce(&Browser) -> Result<()>) {
    journey_on(Device::DESK, name, test);
}

/// Runs a journey on the given screen. Panics when it fails or the console shows an error.
pub fn journey_on(device: Device, name: &str, test: impl AsyncFnOnce(&Browser) -> Result<()>) {
    if let Err(error) = outcome_on(device, name, test) {
        panic!("{name}: {error:#}");
    }
}

/// Runs a journey on the given screen and gives its outcome.
pub fn outcome_on(
    device: Device,
    name: &str,
    test: impl AsyncFnOnce(&Browser) -> Result<()>,
) -> Result<()> {
    tokio::runtime::Builder::new_current_thread()
        .enable_all()
        .build()
        .context("no runtime")?
        .block_on(in_browser(device, name, test))
}

/// Runs `test` in a browser of its own; also for a second, unrelated one within a journey.
///
/// Whatever happens inside, the browser is ended. Errors and warnings in the console are failures.
pub async fn in_browser(
    device: Device,
    name: &str,
    test: impl AsyncFnOnce(&Browser) -> Result<()>,
) -> Result<()> {
    let browser = Browser::start(device).await?;
    let outcome = AssertUnwindSafe(async {
        test(&browser).await?;
        let said = browser.console().await?;
        if !said.is_empty() {
            bail!("the console is not empty: {}", said.join(" | "));
        }
        Ok(())
    })
    .catch_unwind()
    .await;
    if !matches!(outcome, Ok(Ok(()))) {
        match browser.screenshot(name).await {
            Ok(file) => eprintln!("{name}: screenshot in {}", file.display()),
            Err(error) => eprintln!("{name}: no screenshot: {error:#}"),
        }
        if let Ok(said) = browser.console().await {
            eprintln!("{name}: console: {}", said.join(" | "));
        }
    }
    let ended = browser.driver.quit().await;
    match outcome {
        Ok(done) => done.and_then(|()| ended.context("the browser did not end")),
        Err(panic) => resume_unwind(panic),
    }
}

/// What Chromium is started with, whoever starts it.
pub(crate) const SWITCHES: [&str; 9] = [
    "--headless=new",
    "--no-sandbox",
    "--disable-gpu",
    "--disable-dev-shm-usage",
    "--disable-quic",
    "--no-first-run",
    "--disable-background-networking",
    "--disable-component-update",
    "--disable-sync",
];

impl Browser {
    async fn start(device: Device) -> Result<Self> {
        let profile = TempDir::new()?;
        let downloads = TempDir::new()?;
        let program = Chromedriver::start()?;
        let mut wanted = DesiredCapabilities::chrome();
        for argument in SWITCHES {
            wanted.add_arg(argument)?;
        }
        wanted.add_arg(&format!("--user-data-dir={}", profile.path().display()))?;
        wanted.add_arg(&format!("--window-size={},{}", device.width, device.height))?;
        wanted.add_experimental_option(
            "prefs",
            json!({ "download.default_directory": downloads.path(), "download.prompt_for_download": false }),
        )?;
        wanted.set("goog:loggingPrefs", json!({ "browser": "ALL" }))?;
        // The page's own sign is waited for: the driver loses count when a page changes its
        // fragment while it loads.
        wanted.set("pageLoadStrategy", json!("none"))?;
        let driver = connect(&program.address(), wanted).await?;
        let browser = Self {
            driver,
            downloads,
            _profile: profile,
            _program: program,
        };
        browser.set_device(device).await?;
        Ok(browser)
    }

    /// Takes over a Chromium that was started elsewhere, by the address that its tools listen on.
    pub(crate) async fn attach(tools: &str) -> Result<Self> {
        let program = Chromedriver::start()?;
        let mut wanted = DesiredCapabilities::chrome();
        wanted.add_experimental_option("debuggerAddress", tools)?;
        wanted.set("goog:loggingPrefs", json!({ "browser": "ALL" }))?;
        wanted.set("pageLoadStrategy", json!("none"))?;
        let driver = connect(&program.address(), wanted).await?;
        let browser = Self {
            driver,
            downloads: TempDir::new()?,
            _profile: TempDir::new()?,
            _program: program,
        };
        browser.set_device(Device::DESK).await?;
        Ok(browser)
    }

    /// Changes the screen while the page is shown.
    pub async fn set_device(&self, device: Device) -> Result<()> {
        let tools = self.driver.cdp();
        let size = json!({
            "width": device.width, "height": device.height,
            "deviceScaleFactor": device.pixel_ratio, "mobile": device.touch,
        });
        tools
            .send_raw("Emulation.setDeviceMetricsOverride", size)
            .await?;
        let touch = json!({ "enabled": device.touch });
        tools
            .send_raw("Emulation.setTouchEmulationEnabled", touch)
            .await?;
        let scheme = if device.dark { "dark" } else { "light" };
        let media = json!({ "features": [{ "name": "prefers-color-scheme", "value": scheme }] });
        tools.send_raw("Emulation.setEmulatedMedia", media).await?;
        Ok(())
    }

    /// Opens the page with what follows its address (`""`, `"#…"`) and waits until it has started.
    pub async fn open(&self, rest: &str) -> Result<()> {
        self.open_at(&format!("{}{rest}", server::address()?)).await
    }

    /// Opens the page at an address and waits until it has started.
    pub async fn open_at(&self, address: &str) -> Result<()> {
        // Off the page first: a change of the fragment alone would not load it.
        self.driver.goto("about:blank").await?;
        self.wait_until("an empty page", "return location.href === 'about:blank';")
            .await?;
        self.driver.goto(address).await?;
        self.started().await
    }

    /// Takes the network away.
    pub async fn without_network(&self) -> Result<()> {
        let none = json!({
            "offline": true, "latency": 0, "downloadThroughput": 0, "uploadThroughput": 0,
        });
        let tools = self.driver.cdp();
        tools
            .send_raw("Network.emulateNetworkConditions", none)
            .await?;
        Ok(())
    }

    /// Loads the page once more and waits until it has started.
    pub async fn reload(&self) -> Result<()> {
        self.script::<Option<bool>>(
            "delete document.documentElement.dataset.started; return null;",
            &[],
        )
        .await?;
        self.driver.refresh().await?;
        self.started().await
    }

    /// Waits until the page has started; fails at once with the reason when it says that it can't.
    pub async fn started(&self) -> Result<()> {
        let sign = "const notice = document.getElementById('start-notice');
            if (notice && notice.getAttribute('role') === 'alert') return 'failed: ' + notice.textContent;
            return document.documentElement.dataset.started || '';";
        let start = Instant::now();
        let mut between = String::new();
        while start.elapsed() < WAIT {
            let said: String = match self.script(sign, &[]).await {
                Ok(said) => said,
                // the former document goes away under the script
                Err(error) => {
                    between = format!(": {error:#}");
                    String::new()
                }
            };
            match said.strip_prefix("failed: ") {
                Some(reason) => bail!("the page did not start: {}", reason.trim()),
                None if said.is_empty() => tokio::time::sleep(LOOK_AGAIN).await,
                None => return self.settled().await,
            }
        }
        bail!(
            "the page gave no sign of having started in {} s{between}",
            WAIT.as_secs()
        )
    }

    /// Runs a script in the page (`arguments[0]` … are the values given) and reads what it returns.
    pub async fn script<T: DeserializeOwned>(&self, script: &str, values: &[Value]) -> Result<T> {
        let returned = self.driver.execute(script, values).await?;
        returned
            .convert()
            .with_context(|| format!("unexpected answer from: {script}"))
    }

    /// Addresses of what the page has loaded.
    pub async fn loaded(&self) -> Result<Vec<String>> {
        let names = "return performance.getEntriesByType('resource').map(e => e.name);";
        self.script(names, &[]).await
    }

    /// Waits until a script returns true.
    pub async fn wait_until(&self, what: &str, script: &str) -> Result<()> {
        let start = Instant::now();
        let mut between = String::new();
        while start.elapsed() < WAIT {
            match self.script(script, &[]).await {
                Ok(true) => return Ok(()),
                Ok(false) => between.clear(),
                // a page that loads anew goes away under the script
                Err(error) => between = format!(" ({error:#})"),
            }
            tokio::time::sleep(LOOK_AGAIN).await;
        }
        bail!("waited {} s in vain for: {what}{between}", WAIT.as_secs())
    }

    /// Waits for a downloaded file and reads it.
    pub async fn downloaded(&self, file: &str) -> Result<Vec<u8>> {
        let path = self.downloads.path().join(file);
        let start = Instant::now();
        // The browser writes under another name and renames when complete.
        while start.elapsed() < WAIT {
            if path.is_file() {
                return Ok(fs::read(&path)?);
            }
            tokio::time::sleep(LOOK_AGAIN).await;
        }
        bail!(
            "waited {} s in vain for the download {file}",
            WAIT.as_secs()
        )
    }

    /// Waits for the one file that is being downloaded, reads it and takes it away.
    pub async fn only_download(&self) -> Result<Vec<u8>> {
        self.only_download_of("json").await
    }

    /// The same for a file of another kind.
    pub async fn only_download_of(&self, kind: &str) -> Result<Vec<u8>> {
        let start = Instant::now();
        while start.elapsed() < WAIT {
            for entry in fs::read_dir(self.downloads.path())? {
                let path = entry?.path();
                let ready = path.extension().is_some_and(|found| found == kind);
                if ready {
                    let bytes = fs::read(&path)?;
                    fs::remove_file(&path)?;
                    return Ok(bytes);
                }
            }
            tokio::time::sleep(LOOK_AGAIN).await;
        }
        bail!("waited {} s in vain for a download", WAIT.as_secs())
    }

    /// Errors and warnings in the console since the last call: scripts, policy, failed loads.
    pub async fn console(&self) -> Result<Vec<String>> {
        let entries = self.driver.get_log("browser").await?;
        Ok(entries
            .into_iter()
            .filter(|entry| matches!(entry.level.as_str(), "SEVERE" | "WARNING"))
            .map(|entry| format!("{}: {}", entry.level, entry.message))
            .collect())
    }

    /// The same, waited for: what a load that fails leaves there comes behind what the page says of it.
    pub async fn console_said(&self) -> Result<Vec<String>> {
        let start = Instant::now();
        while start.elapsed() < WAIT {
            let said = self.console().await?;
            if !said.is_empty() {
                return Ok(said);
            }
            tokio::time::sleep(LOOK_AGAIN).await;
        }
        bail!("waited {} s in vain for the console", WAIT.as_secs())
    }

    /// Writes a picture of the window to `target/screenshots/` and gives its place.
    pub async fn screenshot(&self, name: &str) -> Result<PathBuf> {
        let target = std::env::var_os("CARGO_TARGET_DIR").unwrap_or_else(|| "target".into());
        let dir = server::root().join(target).join("screenshots");
        fs::create_dir_all(&dir)?;
        let safe = |c: char| if c.is_ascii_alphanumeric() { c } else { '-' };
        let file = dir.join(format!(
            "{}.png",
            name.chars().map(safe).collect::<String>()
        ));
        self.driver.screenshot(&file).await?;
        Ok(file)
    }
}

/// Connects, with a second and third try: the browser's first start can be slow.
async fn connect(address: &str, wanted: thirtyfour::ChromeCapabilities) -> Result<WebDriver> {
    let mut last = None;
    for _ in 0..3 {
        match WebDriver::new(address, wanted.clone()).await {
            Ok(driver) => return Ok(driver),
            Err(error) => last = Some(error),
        }
        tokio::time::sleep(Duration::from_millis(300)).await;
    }
    bail!(
        "Chromium did not start: {}",
        last.map(|error| error.to_string()).unwrap_or_default()
    )
}
