//! What a change would do: the tire of each leg grows until something touches.
//!
//! `cargo run -p gearswing-solver --example what_if -- FILE`; without a file, the demo. The model is
//! plain data: change it and solve again.

use gearswing_gear::model::{Gear, Grown};
use gearswing_solver::faults::Faults;
use gearswing_solver::{Options, solve_leg};
use std::error::Error;

/// Step of the diameter (m).
const STEP: f64 = 0.005;

/// Largest diameter that is tried, in diameters of the tire fitted (ratio).
const MOST: f64 = 1.5;

fn main() -> Result<(), Box<dyn Error>> {
    let text = match std::env::args_os().nth(1) {
        Some(path) => std::fs::read_to_string(path)?,
        None => gearswing_gearfile::DEMO.text.to_owned(),
    };
    let gear = gearswing_gearfile::read(&text)?;
    for (index, leg) in gear.legs.iter().enumerate() {
        match touching_diameter(&gear, index) {
            Ok(Some(diameter)) => println!("{}: touches at {diameter:.3} m", leg.name),
            Ok(None) => println!("{}: touches with none that was tried", leg.name),
            Err(faults) => println!("{}: {faults}", leg.name),
        }
    }
    Ok(())
}

/// The smallest diameter tried with which the leg touches something (m); the tire keeps its width, and
/// does not grow in service beyond it.
fn touching_diameter(gear: &Gear, leg: usize) -> Result<Option<f64>, Faults> {
    let mut gear = gear.clone();
    let Some(fitted) = gear.legs.get(leg).map(|leg| leg.wheel.tire.diameter) else {
        return Ok(None);
    };
    let mut diameter = fitted;
    while diameter < MOST * fitted {
        if let Some(leg) = gear.legs.get_mut(leg) {
            let tire = &mut leg.wheel.tire;
            tire.diameter = diameter;
            tire.grown = Grown::Given {
                diameter,
                width: tire.width,
                basis: tire.basis,
            };
        }
        let result = solve_leg(&gear, leg, &Options::default())?;
        if result.clearance.touches() {
            return Ok(Some(diameter));
        }
        diameter += STEP;
    }
    Ok(None)
}

/// A leg that clears with the tire fitted touches first with a larger one, and the step before is clear.
#[test]
fn a_larger_tire_touches_where_the_smaller_cleared() {
    let example = gearswing_gearfile::find_example("folding_side").unwrap();
    let mut gear = example.gear().unwrap();
    let diameter = touching_diameter(&gear, 0).unwrap().unwrap();
    let fitted = gear.legs[0].wheel.tire.diameter;
    assert!(diameter > fitted, "{diameter} {fitted}");
    let tire = &mut gear.legs[0].wheel.tire;
    tire.diameter = diameter - STEP;
    tire.grown = Grown::Given {
        diameter: tire.diameter,
        width: tire.width,
        basis: tire.basis,
    };
    let result = solve_leg(&gear, 0, &Options::default()).unwrap();
    assert!(!result.clearance.touches());
}
