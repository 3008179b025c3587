//! `time-legs [--repeat N] FILE...`: least time that the solver takes for each leg of gear files.
//!
//! Prints a JSON array of {"file", "leg", "seconds"}; a leg with faults has no row. The whole call
//! is timed, checks included, with the solver's own default options.
use anyhow::{Context, Result, bail};
use gearswing_gear::model::Gear;
use gearswing_solver::{Options, solve_leg};
use serde::{Deserialize, Serialize};
use std::hint::black_box;
use std::time::Instant;

/// A gear file, of which only the gear matters here.
#[derive(Deserialize)]
struct Envelope {
    gear: Gear,
}

/// One line of the answer.
#[derive(Serialize)]
struct Row<'a> {
    file: &'a str,
    leg: usize,
    seconds: f64,
}

fn main() -> Result<()> {
    let mut repeats = 10_u32;
    let mut files = Vec::new();
    let mut arguments = std::env::args().skip(1);
    while let Some(argument) = arguments.next() {
        if argument == "--repeat" {
            let text = arguments.next().context("--repeat needs a number")?;
            repeats = text
                .parse()
                .with_context(|| format!("--repeat {text}: not a number"))?;
        } else {
            files.push(argument);
        }
    }
    if files.is_empty() || repeats == 0 {
        bail!("usage: time-legs [--repeat N] FILE...");
    }
    let mut rows = Vec::new();
    for file in &files {
        let text = std::fs::read_to_string(file).with_context(|| file.clone())?;
        let envelope: Envelope = serde_json::from_str(&text).with_context(|| file.clone())?;
        for leg in 0..envelope.gear.legs.len() {
            if let Some(seconds) = least_time(&envelope.gear, leg, repeats) {
                rows.push(Row { file, leg, seconds });
            }
        }
    }
    println!("{}", serde_json::to_string(&rows)?);
    Ok(())
}

/// Least time of some solutions of one leg (s); `None` when it has faults.
fn least_time(gear: &Gear, leg: usize, repeats: u32) -> Option<f64> {
    let options = Options::default();
    let mut least = f64::INFINITY;
    for _ in 0..repeats {
        let began = Instant::now();
        let result = solve_leg(black_box(gear), leg, &options);
        let seconds = began.elapsed().as_secs_f64();
        black_box(result).ok()?;
        least = least.min(seconds);
    }
    Some(least)
}
