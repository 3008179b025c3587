//! A step that goes on beside others, in a process of its own and behind them.

use crate::process::{find, is_long, program, target};
use crate::steps::Step;
use anyhow::{Context, Result, bail};
use std::fs::{File, create_dir_all, read_to_string};
use std::path::PathBuf;
use std::process::{Child, Command};
use std::time::Instant;

/// How far it stands back behind the steps in front (niceness of POSIX, 0 to 19).
const NICENESS: &str = "10";

/// A step that is under way.
pub(crate) struct Beside {
    child: Child,
    log: PathBuf,
    start: Instant,
}

impl Beside {
    /// Begins a step; what it prints is kept.
    pub(crate) fn begin(step: &Step) -> Result<Self> {
        let own = std::env::current_exe().context("this program does not find itself")?;
        create_dir_all(target())?;
        let log = target().join(format!("{}.txt", step.name));
        let out =
            File::create(&log).with_context(|| format!("{} can't be written", log.display()))?;
        let mut command = behind(own);
        command.arg("test");
        if is_long() {
            command.arg("long");
        }
        command.args(["--only", step.name]);
        command.stdout(out.try_clone()?).stderr(out);
        let child = command
            .spawn()
            .with_context(|| format!("step '{}' could not be started", step.name))?;
        Ok(Self {
            child,
            log,
            start: Instant::now(),
        })
    }

    /// Waits for its end and shows what it printed; gives the seconds that it took.
    pub(crate) fn end(mut self) -> (f64, Result<()>) {
        let status = self.child.wait().context("it could not be waited for");
        let seconds = self.start.elapsed().as_secs_f64();
        let shown = read_to_string(&self.log)
            .map(|text| println!("{text}"))
            .with_context(|| format!("{} can't be read", self.log.display()));
        let done = status.and_then(|status| {
            if status.success() {
                shown
            } else {
                bail!("see its output above ({status})")
            }
        });
        (seconds, done)
    }
}

/// A program that stands back behind others, where the system has a way to say so.
fn behind(own: PathBuf) -> Command {
    match find("nice") {
        Some(nice) => {
            let mut command = program(nice);
            command.args(["-n", NICENESS]).arg(own);
            command
        }
        None => program(own),
    }
}
