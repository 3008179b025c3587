//! Programs that the checks need beside Rust: brought here where that is possible, named where not.

use crate::process::{cargo, find, output, program, root, run, target, timed};
use anyhow::{Context, Result, bail};
use std::fs;
use std::path::PathBuf;
use std::process::{Command, Stdio};

/// Chromium and its driver, for the browser tests.
pub(crate) fn ensure_chromium() -> Result<()> {
    if has_chromium() {
        return Ok(());
    }
    install(&["chromium", "chromium-driver"])
        .context("the browser tests need Chromium (or Chrome) and chromedriver on the search path; on Debian: apt-get install chromium chromium-driver")?;
    if !has_chromium() {
        bail!("chromium and chromium-driver are installed, but not on the search path");
    }
    Ok(())
}

/// Poppler's readers of printed files, for what the browser has printed.
pub(crate) fn ensure_poppler() -> Result<()> {
    let is_there = || {
        ["pdftotext", "pdftoppm"]
            .iter()
            .all(|name| find(name).is_some())
    };
    if is_there() {
        return Ok(());
    }
    install(&["poppler-utils"]).context(
        "what is printed is read back by pdftotext and pdftoppm; on Debian: apt-get install poppler-utils",
    )?;
    if !is_there() {
        bail!("poppler-utils is installed, but not on the search path");
    }
    Ok(())
}

fn has_chromium() -> bool {
    // On a Mac the driver finds Chrome among the applications.
    let browser = [
        "chromium",
        "chromium-browser",
        "google-chrome",
        "google-chrome-stable",
        "chrome",
    ]
    .iter()
    .any(|name| find(name).is_some());
    find("chromedriver").is_some() && (browser || cfg!(target_os = "macos"))
}

/// A Python of its own in `target/venv` with the packages of a requirements file.
pub(crate) fn python(requirements: &str) -> Result<PathBuf> {
    let venv = target().join("venv");
    let python = venv.join(if cfg!(windows) {
        "Scripts/python.exe"
    } else {
        "bin/python"
    });
    let wanted = fs::read_to_string(root().join(requirements))
        .with_context(|| format!("could not read {requirements}"))?;
    let stamp = venv.join("installed-requirements.txt");
    let runs = output(program(&python).arg("--version")).is_ok();
    if runs && fs::read_to_string(&stamp).is_ok_and(|installed| installed == wanted) {
        return Ok(python);
    }
    if venv.exists() {
        fs::remove_dir_all(&venv).context("could not remove the former virtual environment")?;
    }
    timed("making a virtual environment for Python", || {
        make_venv(&venv)
    })?;
    timed(
        &format!("installing the packages of {requirements}"),
        || {
            let pip = [
                "-m",
                "pip",
                "install",
                "--quiet",
                "--disable-pip-version-check",
                "--only-binary",
                ":all:",
            ];
            run(program(&python).args(pip).args(["-r", requirements]))
                .context("the Python packages could not be installed; is there a network?")
        },
    )?;
    fs::write(&stamp, wanted)?;
    Ok(python)
}

fn make_venv(venv: &PathBuf) -> Result<()> {
    let make = || output(program("python3").args(["-m", "venv"]).arg(venv));
    if find("python3").is_some() && make().is_ok() {
        return Ok(());
    }
    // Debian's python3 comes without the venv module's other half.
    install(&["python3", "python3-venv"])
        .context("the reference checks need Python 3 with venv; on Debian: apt-get install python3 python3-venv")?;
    if venv.exists() {
        fs::remove_dir_all(venv)?;
    }
    make().map(drop)
}

/// `cargo deny`, from the search path or compiled once into `target/tools`.
pub(crate) fn cargo_deny() -> Result<PathBuf> {
    if let Some(found) = find("cargo-deny") {
        return Ok(found);
    }
    let place = target().join("tools");
    let file = place
        .join("bin")
        .join(format!("cargo-deny{}", std::env::consts::EXE_SUFFIX));
    if file.is_file() {
        return Ok(file);
    }
    timed("compiling cargo-deny, once, for some minutes", || {
        run(cargo()
            .args([
                "install",
                "cargo-deny",
                "--locked",
                "--quiet",
                "--version",
                DENY,
                "--debug",
                "--root",
            ])
            .arg(&place)
            .env("CARGO_TARGET_DIR", target().join("tools").join("build"))
            .env("CARGO_PROFILE_DEV_DEBUG", "0"))
        .context("cargo-deny could not be installed; is there a network?")
    })?;
    // A gigabyte that nobody needs again.
    fs::remove_dir_all(place.join("build"))
        .context("could not remove what cargo-deny was built from")?;
    Ok(file)
}

/// The version that is installed when there is none.
const DENY: &str = "0.20.2";

/// Installs Debian packages where this is Debian (or a relative) and we may.
fn install(packages: &[&str]) -> Result<()> {
    if find("apt-get").is_none() {
        bail!("no apt-get here");
    }
    if output(program("id").arg("-u"))?.trim() != "0" {
        bail!("not root, so nothing was installed");
    }
    timed(
        &format!("installing {} with apt-get", packages.join(" and ")),
        || {
            let first = quiet(
                apt()
                    .args(["install", "--no-install-recommends"])
                    .args(packages),
            );
            if first.is_ok() {
                return Ok(());
            }
            // No or old package lists.
            quiet(apt().arg("update"))?;
            quiet(
                apt()
                    .args(["install", "--no-install-recommends"])
                    .args(packages),
            )
        },
    )
}

fn apt() -> Command {
    let mut command = program("apt-get");
    command
        .args(["--yes", "--quiet"])
        .env("DEBIAN_FRONTEND", "noninteractive");
    command
}

/// Runs a command whose chatter is of interest only when it fails.
fn quiet(command: &mut Command) -> Result<()> {
    output(command.stdin(Stdio::null())).map(drop)
}
