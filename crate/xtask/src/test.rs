//! `cargo xtask test`: runs the steps of the extent asked for, ends at the first failure, prints a table.

use crate::arguments::{Check, Extent};
use crate::beside::Beside;
use crate::process;
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

/// Runs the check that is asked for, or names its steps.
pub(crate) fn test(check: &Check) -> Result<()> {
    if check.extent == Extent::Long {
        process::set_long();
    }
    if check.list {
        list(check.extent);
        return Ok(());
    }
    run(check)
}

fn list(extent: Extent) {
    for step in STEPS.iter().filter(|step| step.is_in(extent)) {
        println!("{:<10} {}", step.name, step.what);
    }
}

/// Runs all steps of the extent, or the one named, which may be of another.
fn run(check: &Check) -> Result<()> {
    let only = check.only.as_deref();
    let chosen: Vec<&Step> = STEPS
        .iter()
        .filter(|step| only.map_or(step.is_in(check.extent), |name| name == step.name))
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
    let mut beside = Vec::new();
    for (at, step) in chosen.iter().enumerate() {
        if failure.is_some() {
            outcomes.push(Outcome::NotRun);
            continue;
        }
        if let Some(ready) = step.beside.filter(|_| only.is_none()) {
            println!("\n== {}: goes on beside the steps after it", step.name);
            match ready().and_then(|()| Beside::begin(step)) {
                Ok(one) => beside.push((at, step.name, one)),
                Err(error) => failure = Some((step.name, error)),
            }
            // until it is done
            outcomes.push(Outcome::NotRun);
            continue;
        }
        let (outcome, done) = perform(step);
        failure = done.err().map(|error| (step.name, error));
        outcomes.push(outcome);
    }
    for (at, name, one) in beside {
        let (seconds, done) = one.end();
        outcomes[at] = match done {
            Ok(()) => Outcome::Good(seconds),
            Err(error) => {
                failure = failure.or(Some((name, error)));
                Outcome::Failed(seconds)
            }
        };
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

#[cfg(test)]
mod tests {
    use super::*;

    fn names(extent: Extent) -> Vec<&'static str> {
        let steps = STEPS.iter().filter(|step| step.is_in(extent));
        steps.map(|step| step.name).collect()
    }

    #[test]
    fn the_quick_check_is_short_and_leaves_nothing_to_itself() {
        assert_eq!(names(Extent::Quick), ["format", "tidy", "lint", "unit"]);
        assert_eq!(names(Extent::Usual), names(Extent::Long));
        // the tests of the whole check hold those of the quick one
        let all: Vec<&str> = STEPS.iter().map(|step| step.name).collect();
        assert_eq!(names(Extent::Usual).len() + 1, all.len());
        assert!(names(Extent::Usual).contains(&"tests"));
    }
}
