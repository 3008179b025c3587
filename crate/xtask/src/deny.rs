//! Licences, bans, sources and known faults of what we depend on, by cargo-deny.

use crate::process::{program, run};
use crate::tools;
use anyhow::{Result, bail};
use std::path::Path;
use std::process::Command;

/// Signs in cargo-deny's output that the database of known faults could not be had.
const NO_DATABASE: &[&str] = &[
    "failed to fetch",
    "unable to fetch",
    "failed to load advisory database",
    "failed to clone",
];

/// Runs cargo-deny. Known faults are left out, with a line that says so, when their database is out of reach.
pub(crate) fn deny() -> Result<()> {
    let deny = tools::cargo_deny()?;
    run(check(&deny).args(["bans", "licenses", "sources"]))?;
    let advisories = check(&deny).arg("advisories").output()?;
    if advisories.status.success() {
        println!("No known fault in what the project depends on.");
        return Ok(());
    }
    let said = String::from_utf8_lossy(&advisories.stderr);
    if NO_DATABASE.iter().any(|sign| said.contains(sign)) {
        println!(
            "Known faults (advisories) were NOT checked: their database can't be reached from here."
        );
        return Ok(());
    }
    eprintln!("{said}");
    bail!("something that the project depends on has a known fault, see above")
}

/// It finds `.deny.toml` by itself.
fn check(deny: &Path) -> Command {
    let mut command = program(deny);
    command.args(["--workspace", "check"]);
    command
}
