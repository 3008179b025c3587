//! Running other programs: say what is done, time it, turn a failure into one sentence.

use anyhow::{Context, Result, bail};
use std::ffi::OsStr;
use std::path::{Path, PathBuf};
use std::process::{Command, Stdio};
use std::sync::OnceLock;
use std::time::Instant;

/// The project's root directory.
pub(crate) fn root() -> PathBuf {
    let here = Path::new(env!("CARGO_MANIFEST_DIR"));
    here.ancestors().nth(2).unwrap_or(here).to_path_buf()
}

/// Where cargo puts what it builds.
pub(crate) fn target() -> PathBuf {
    match std::env::var_os("CARGO_TARGET_DIR") {
        Some(dir) => root().join(dir),
        None => root().join("target"),
    }
}

/// Tells checks to take their long form.
const LONG: &str = "GEARSWING_LONG";

static IS_LONG: OnceLock<()> = OnceLock::new();

/// From now on checks take their long form.
pub(crate) fn set_long() {
    IS_LONG.get_or_init(|| ());
}

/// Checks take their long form.
pub(crate) fn is_long() -> bool {
    IS_LONG.get().is_some()
}

/// The cargo that started this program, run in the project's root.
pub(crate) fn cargo() -> Command {
    program(std::env::var_os("CARGO").unwrap_or_else(|| "cargo".into()))
}

/// A program run in the project's root.
pub(crate) fn program(name: impl AsRef<OsStr>) -> Command {
    let mut command = Command::new(name);
    command.current_dir(root());
    if is_long() {
        command.env(LONG, "1");
    }
    command
}

/// Runs `what` with a line before it and one with the seconds after it.
pub(crate) fn timed<T>(what: &str, work: impl FnOnce() -> Result<T>) -> Result<T> {
    println!("· {what} …");
    let start = Instant::now();
    let done = work()?;
    println!("  done in {:.1} s", start.elapsed().as_secs_f64());
    Ok(done)
}

/// Runs a command with its output shown; an error names the command.
pub(crate) fn run(command: &mut Command) -> Result<()> {
    let status = command
        .status()
        .with_context(|| format!("could not start {}", shown(command)))?;
    if !status.success() {
        bail!("{} failed ({status})", shown(command));
    }
    Ok(())
}

/// Runs a command and gives what it printed; its error output is part of the error.
pub(crate) fn output(command: &mut Command) -> Result<String> {
    let output = command
        .stdin(Stdio::null())
        .output()
        .with_context(|| format!("could not start {}", shown(command)))?;
    if !output.status.success() {
        let said = String::from_utf8_lossy(&output.stderr);
        bail!("{} failed: {}", shown(command), said.trim());
    }
    Ok(String::from_utf8_lossy(&output.stdout).into_owned())
}

/// The file of a program found on the search path.
pub(crate) fn find(name: &str) -> Option<PathBuf> {
    let path = std::env::var_os("PATH")?;
    std::env::split_paths(&path)
        .map(|dir| dir.join(format!("{name}{}", std::env::consts::EXE_SUFFIX)))
        .find(|file| file.is_file())
}

/// A command as a person would type it.
fn shown(command: &Command) -> String {
    let name = Path::new(command.get_program())
        .file_stem()
        .unwrap_or(command.get_program());
    let mut text = format!("'{}", name.to_string_lossy());
    for argument in command.get_args() {
        text.push(' ');
        text.push_str(&argument.to_string_lossy());
    }
    text.push('\'');
    text
}
