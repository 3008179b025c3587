//! Samples against time for other programs: comma-separated, SI, one row for each leg at each
//! instant (RFC 4180, with plain line feeds).
use std::fmt::Write as _;

use gearswing_gear::model::Gear;
use gearswing_solver::result::{Cycle, Direction, Indication, Run};

use crate::name::cell;
use crate::table::phase_key;

const HEAD: &str = "file,selected,time_s,pressure_pa,flow_m3_s,current_a,bus_voltage_v,leg,phase,\
progress,travel,swing_rad,shortened_share,shortened_switch,up_switch,down_switch,indication\n";

/// The line of column heads, with its line end.
#[must_use]
pub fn times_csv_head() -> String {
    HEAD.to_owned()
}

/// The rows of a cycle; what does not exist is left empty.
#[must_use]
pub fn times_csv_rows(file: &str, gear: &Gear, cycle: &Cycle) -> String {
    let mut rows = String::new();
    for run in cycle.up.iter().chain(&cycle.down) {
        run_rows(&mut rows, file, gear, run);
    }
    rows
}

fn run_rows(rows: &mut String, file: &str, gear: &Gear, run: &Run) {
    let selected = match run.direction {
        Direction::Up => "up",
        Direction::Down => "down",
    };
    let number = |into: &mut String, value: Option<f64>| {
        into.push(',');
        if let Some(value) = value.filter(|value| value.is_finite()) {
            // Shortest text that reads back as the same number.
            let _ = write!(into, "{value:?}");
        }
    };
    for sample in &run.samples {
        let mut front = format!("{},{selected}", cell(file));
        for value in [
            Some(sample.time),
            sample.pressure,
            sample.flow,
            sample.current,
            sample.bus_voltage,
        ] {
            number(&mut front, value);
        }
        for (model, leg) in gear.legs.iter().zip(&sample.legs) {
            rows.push_str(&front);
            let _ = write!(
                rows,
                ",{},{}",
                cell(&model.name),
                phase_key(leg.place.phase)
            );
            for value in [
                leg.place.progress,
                leg.place.travel,
                leg.place.swing,
                leg.shortened_share,
            ] {
                number(rows, Some(value));
            }
            for made in [leg.shortened, leg.up, leg.down] {
                rows.push_str(if made { ",1" } else { ",0" });
            }
            rows.push_str(match leg.indication {
                Indication::DownAndLocked => ",down_and_locked\n",
                Indication::InTransit => ",in_transit\n",
                Indication::Up => ",up\n",
            });
        }
    }
}
