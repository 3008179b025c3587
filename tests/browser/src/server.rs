//! The page's server: built and started once, ended with this process.

use anyhow::{Context, Result, anyhow, bail};
use std::io::{BufRead, BufReader};
use std::path::{Path, PathBuf};
use std::process::{Child, Command, Stdio};
use std::sync::OnceLock;

/// Where the page lies on the server: a sub-path, so that an address from the root fails a journey.
const UNDER: &str = "some/place";

/// The running server. It ends when its standard input closes, that is, with this process.
struct Server {
    address: String,
    _process: Child,
}

static SERVER: OnceLock<Result<Server, String>> = OnceLock::new();

/// Address of the page, with a slash at the end.
///
/// Builds the page and starts `cargo xtask serve` on the first call.
pub fn address() -> Result<&'static str> {
    match SERVER.get_or_init(|| start().map_err(|error| format!("{error:#}"))) {
        Ok(server) => Ok(&server.address),
        Err(error) => Err(anyhow!("the page's server did not start: {error}")),
    }
}

/// The project's root directory.
pub(crate) fn root() -> PathBuf {
    let here = Path::new(env!("CARGO_MANIFEST_DIR"));
    here.ancestors().nth(2).unwrap_or(here).to_path_buf()
}

/// Where the built page lies, once [`address`] was asked for.
pub(crate) fn built() -> PathBuf {
    let target = std::env::var_os("CARGO_TARGET_DIR").unwrap_or_else(|| "target".into());
    root().join(target).join("site")
}

fn start() -> Result<Server> {
    let cargo = std::env::var_os("CARGO").unwrap_or_else(|| "cargo".into());
    let mut process = Command::new(cargo)
        .args(["xtask", "serve", "--port", "0", "--under", UNDER])
        .arg("--end-with-input")
        .current_dir(root())
        .stdin(Stdio::piped())
        .stdout(Stdio::piped())
        .spawn()
        .context("could not start cargo xtask serve")?;
    let output = process.stdout.take().context("it has no output")?;
    for line in BufReader::new(output).lines() {
        let line = line?;
        let address = line
            .split_whitespace()
            .find(|word| word.starts_with("http://127.0.0.1:"));
        if let Some(address) = address {
            return Ok(Server {
                address: address.to_owned(),
                _process: process,
            });
        }
    }
    let status = process.wait()?;
    bail!("it ended without an address ({status})")
}
