//! The driver program: one per browser, on a port of its own choice.

use anyhow::{Context, Result, bail};
use std::io::{BufRead, BufReader};
use std::process::{Child, Command, Stdio};

/// Most starts of one driver.
const STARTS: usize = 5;

/// A running chromedriver; ended when dropped.
pub(crate) struct Chromedriver {
    process: Child,
    port: u16,
}

impl Chromedriver {
    /// Starts the driver and waits for the port it took. One that is free by the older protocol of the internet and
    /// taken by the newer ends it: then it is started anew.
    pub(crate) fn start() -> Result<Self> {
        let mut said = Vec::new();
        for _ in 0..STARTS {
            if let Some(driver) = Self::start_once(&mut said)? {
                return Ok(driver);
            }
        }
        bail!("chromedriver ended without naming its port: {said:?}")
    }

    /// `None` where it ends before it listens; what it said then.
    fn start_once(said: &mut Vec<String>) -> Result<Option<Self>> {
        let process = Command::new("chromedriver")
            .arg("--port=0")
            .stdin(Stdio::null())
            .stdout(Stdio::piped())
            .stderr(Stdio::null())
            .spawn()
            .context(
                "could not start chromedriver; on Debian: apt-get install chromium chromium-driver",
            )?;
        // From here on a failure ends the process, by drop.
        let mut driver = Self { process, port: 0 };
        let output = driver
            .process
            .stdout
            .take()
            .context("chromedriver has no output")?;
        let mut lines = BufReader::new(output).lines();
        for line in lines.by_ref() {
            let line = line?;
            if let Some(port) = port_in(&line) {
                driver.port = port;
                // Read on, or a full pipe would stop it.
                std::thread::spawn(move || lines.for_each(drop));
                return Ok(Some(driver));
            }
            said.push(line);
        }
        Ok(None)
    }

    /// Where it listens.
    pub(crate) fn address(&self) -> String {
        format!("http://127.0.0.1:{}", self.port)
    }
}

impl Drop for Chromedriver {
    fn drop(&mut self) {
        // Already gone is as good.
        let _ = self.process.kill();
        let _ = self.process.wait();
    }
}

/// The port in "ChromeDriver was started successfully on port 40123."
fn port_in(line: &str) -> Option<u16> {
    let (_, rest) = line.split_once("successfully on port ")?;
    rest.trim_end_matches('.').trim().parse().ok()
}

#[cfg(test)]
mod tests {
    use super::port_in;

    #[test]
    fn port_is_read_from_its_line_only() {
        let said = "ChromeDriver was started successfully on port 40123.";
        assert_eq!(port_in(said), Some(40123));
        assert_eq!(port_in("Starting ChromeDriver 139.0 on port 0"), None);
    }
}
