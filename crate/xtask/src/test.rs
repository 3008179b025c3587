//! `cargo xtask test`: runs the steps, ends at the first failure, prints a table.

use crate::rooms;
use crate::steps::{STEPS, Step};
use anyhow::{Result, bail};
use std::time::Instant;

/// How a step went.
enum Outcome {
    Good(f64),
    Failed(f64),
    Pending,
    NotRun,
}

/// Prints the steps' names.
pub(crate) fn list() {
    for step in STEPS {
        println!("{:<10} {}", step.name, step.what);
    }
}

/// Runs all steps, or the one named.
pub(crate) fn test(only: Option<&str>) -> Result<()> {
    let chosen: Vec<&Step> = STEPS
        .iter()
        .filter(|step| only.is_none_or(|name| name == step.name))
        .collect();
    if chosen.is_empty() {
        let names: Vec<_> = STEPS.iter().map(|step| step.name).collect();
        bail!(
            "there is no step '{}'; the steps are {}",
            only.unwrap_or_default(),
            names.join(", ")
        );
    }
    let start = Instant::now();
    let mut failure = None;
    let mut outcomes = Vec::new();
    for step in &chosen {
        let outcome = if failure.is_some() {
            Outcome::NotRun
        } else {
            match perform(step) {
                (outcome, Ok(())) => outcome,
                (outcome, Err(error)) => {
                    failure = Some((step.name, error));
                    outcome
                }
            }
        };
        outcomes.push(outcome);
    }
    println!("\n{:<10} {:<8} {:>8}", "step", "result", "seconds");
    for (step, outcome) in chosen.iter().zip(&outcomes) {
        let (result, seconds) = match outcome {
            Outcome::Good(seconds) => ("good", format!("{seconds:.1}")),
            Outcome::Failed(seconds) => ("FAILED", format!("{seconds:.1}")),
            Outcome::Pending => ("unwritten", String::new()),
            Outcome::NotRun => ("not run", String::new()),
        };
        println!("{:<10} {result:<9} {seconds:>7}", step.name);
    }
    println!(
        "{:<10} {:<9} {:>7.1}",
        "together",
        "",
        start.elapsed().as_secs_f64()
    );
    match failure {
        Some((name, error)) => bail!("step '{name}' failed: {error:#}"),
        None => Ok(()),
    }
}

/// Runs a step. Its outcome comes with the error, so that the table can show both.
fn perform(step: &Step) -> (Outcome, Result<()>) {
    println!("\n== {}: {}", step.name, step.what);
    match step.room.map_or(Ok(true), rooms::is_there) {
        Ok(true) => {}
        Ok(false) => {
            println!("{} is still to be written", step.room.unwrap_or_default());
            return (Outcome::Pending, Ok(()));
        }
        Err(error) => return (Outcome::Failed(0.0), Err(error)),
    }
    let start = Instant::now();
    let done = (step.work)();
    let seconds = start.elapsed().as_secs_f64();
    match done {
        Ok(()) => (Outcome::Good(seconds), Ok(())),
        Err(error) => (Outcome::Failed(seconds), Err(error)),
    }
}
