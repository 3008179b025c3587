//! The three answers for every leg of a gear file: does it clear, can it be driven, will it lock?
//!
//! `cargo run -p gearswing-solver --example answers -- FILE`; without a file, the demo. What comes out
//! is data in SI units; sentences for people are made from it in another crate.

use gearswing_gear::model::Gear;
use gearswing_solver::{Options, solve_leg};
use std::error::Error;

fn main() -> Result<(), Box<dyn Error>> {
    let text = match std::env::args_os().nth(1) {
        Some(path) => std::fs::read_to_string(path)?,
        None => gearswing_gearfile::DEMO.text.to_owned(),
    };
    let gear = gearswing_gearfile::read(&text)?;
    print!("{}", answers(&gear));
    Ok(())
}

/// One line for each answer, or for each fault of a leg that can't be solved.
fn answers(gear: &Gear) -> String {
    let mut lines = String::new();
    for (index, leg) in gear.legs.iter().enumerate() {
        match solve_leg(gear, index, &Options::default()) {
            Ok(result) => {
                for finding in &result.findings {
                    lines += &format!(
                        "{}: {:?}: {:?}, {:?}\n",
                        leg.name, finding.question, finding.verdict, finding.detail
                    );
                }
            }
            // all of them at once, each with the path of its field
            Err(faults) => {
                for fault in faults.0 {
                    lines += &format!("{}: {}: {:?}\n", leg.name, fault.path, fault.kind);
                }
            }
        }
    }
    lines
}

#[test]
fn every_leg_has_its_answers_or_its_faults() {
    let mut gear = gearswing_gearfile::DEMO.gear().unwrap();
    let lines = answers(&gear);
    assert_eq!(lines.lines().count(), 3 * gear.legs.len());
    gear.legs[0].wheel.mass = -1.0;
    let lines = answers(&gear);
    assert!(
        lines.contains("legs[0].wheel.mass_kg: OutOfRange"),
        "{lines}"
    );
}
