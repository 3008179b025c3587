//! The headless command on a gear file that the page has exported.

use crate::server::root;
use anyhow::{Context, Result, bail};
use serde_json::Value;
use std::fs;
use std::process::Command;
use tempfile::TempDir;

/// Results that the command prints for a gear file's text, in inches: one object as its JSON
/// format describes it.
pub fn gearswing(gear_file: &[u8]) -> Result<Value> {
    let dir = TempDir::new()?;
    let path = dir.path().join("gear.json");
    fs::write(&path, gear_file)?;
    let cargo = std::env::var_os("CARGO").unwrap_or_else(|| "cargo".into());
    let done = Command::new(cargo)
        .args(["run", "--quiet", "--package", "gearswing", "--"])
        .args(["--format", "json"])
        .arg(&path)
        .current_dir(root())
        .output()
        .context("could not start the command")?;
    // 1 = some answer is bad, which is no failure of the command.
    if !matches!(done.status.code(), Some(0 | 1)) {
        bail!(
            "the command ended with {}: {}",
            done.status,
            String::from_utf8_lossy(&done.stderr)
        );
    }
    serde_json::from_slice(&done.stdout).context("the command printed no JSON")
}

/// A file of `fixtures/`, without the white space around it.
pub fn fixture(path: &str) -> Result<String> {
    let path = root().join("fixtures").join(path);
    let text = fs::read_to_string(&path).with_context(|| path.display().to_string())?;
    Ok(text.trim().to_owned())
}
