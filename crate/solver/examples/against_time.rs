//! The gear against time: what happens on the way up and down again, and when.
//!
//! `cargo run -p gearswing-solver --example against_time -- FILE`; without a file, the demo. The file has
//! to name a pump, electric actuators or orifices.

use gearswing_gear::model::Gear;
use gearswing_solver::result::{Direction, Run};
use gearswing_solver::supply::{SupplyError, SupplyOptions, cycle, is_timed};
use std::error::Error;

fn main() -> Result<(), Box<dyn Error>> {
    let text = match std::env::args_os().nth(1) {
        Some(path) => std::fs::read_to_string(path)?,
        None => gearswing_gearfile::DEMO.text.to_owned(),
    };
    let gear = gearswing_gearfile::read(&text)?;
    if !is_timed(&gear) {
        println!("Nothing in the file says how fast the gear moves.");
        return Ok(());
    }
    print!("{}", runs(&gear)?);
    Ok(())
}

/// The events of both ways, one a line: seconds, leg, what.
fn runs(gear: &Gear) -> Result<String, SupplyError> {
    let cycle = cycle(gear, &SupplyOptions::default())?;
    let mut lines = String::new();
    for direction in [Direction::Up, Direction::Down] {
        match (cycle.run(direction), cycle.error(direction)) {
            (Some(run), _) => lines += &events(gear, run),
            (None, Some(error)) => lines += &format!("{direction:?}: {error}\n"),
            (None, None) => lines += &format!("{direction:?}: not followed\n"),
        }
    }
    Ok(lines)
}

fn events(gear: &Gear, run: &Run) -> String {
    let mut lines = format!(
        "{:?}: {:?} after {:.2} s\n",
        run.direction, run.end, run.time
    );
    for event in &run.events {
        let leg = event.leg.and_then(|leg| gear.legs.get(leg));
        let name = leg.map_or("supply", |leg| &leg.name);
        lines += &format!("  {:6.2} s  {name}: {:?}\n", event.time, event.kind);
    }
    lines
}

#[test]
fn both_ways_are_told() {
    let gear = gearswing_gearfile::DEMO.gear().unwrap();
    let lines = runs(&gear).unwrap();
    assert!(lines.starts_with("Up: "), "{lines}");
    assert!(lines.contains("\nDown: "), "{lines}");
    assert!(lines.contains("  0.00 s  supply: Selected"), "{lines}");
}
