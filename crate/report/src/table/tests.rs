//! Stations as CSV and as text.
use gearswing_solver::result::{DrivenBy, LegResult};
use gearswing_units::UnitChoice;

use super::{stations_csv, stations_text};
use crate::sample::{full_gear, result, subject};

#[test]
fn csv_has_a_value_for_every_head_and_reads_back() {
    let mut result = result();
    result.name = "Right, \"main\"\n".to_owned();
    let csv = stations_csv("a,b.json", &result);
    let mut lines = csv.lines();
    let heads: Vec<_> = lines.next().unwrap().split(',').collect();
    assert_eq!(lines.clone().count(), result.stations.len());
    for (line, station) in lines.zip(result.stations.iter()) {
        let rest = line
            .strip_prefix("\"a,b.json\",\"Right, \"\"main\"\"\",")
            .expect("quoted names");
        let cells: Vec<_> = rest.split(',').collect();
        assert_eq!(cells.len() + 2, heads.len());
        let cell = |head: &str| {
            let column = heads.iter().position(|h| *h == head).unwrap();
            cells[column - 2]
        };
        let number = |head: &str| cell(head).parse::<f64>().unwrap();
        assert_eq!(cell("phase"), "swing");
        assert_eq!(number("swing_rad"), station.swing);
        assert_eq!(number("axle_y_m"), station.axle.y);
        assert_eq!(number("knee_x_m"), station.knee.unwrap().x);
        assert_eq!(number("actuator_length_m"), station.actuator_length);
        assert_eq!(number("transmission_rad"), station.transmission.unwrap());
        match station.force {
            Some(force) => {
                assert_eq!(number("holding_n"), force.holding);
                assert_eq!(Some(number("retract_pressure_pa")), force.retract_pressure);
                assert_eq!(Some(number("extend_pressure_pa")), force.extend_pressure);
                assert_eq!(number("trunnion_x_n"), force.reactions.trunnion.x);
                assert_eq!(number("brace_attach_y_n"), -2.0);
                assert_eq!(cell("knee_x_n"), "");
                assert_eq!(number("mount_y_n"), -400.0);
            }
            None => assert_eq!((cell("holding_n"), cell("mount_y_n")), ("", "")),
        }
    }
}

/// Newtons never stand in a column of pascals.
#[test]
fn csv_tells_pressures_and_drive_forces_apart() {
    let mut result = result();
    let columns = |result: &LegResult, head: &str| -> Vec<String> {
        let csv = stations_csv("a.json", result);
        let mut lines = csv.lines().map(|line| line.split(',').collect::<Vec<_>>());
        let heads = lines.next().unwrap();
        let at = heads.iter().position(|h| *h == head).unwrap();
        lines.map(|cells| cells[at].to_owned()).collect()
    };
    for (pressure, drive) in [
        ("retract_pressure_pa", "retract_drive_n"),
        ("extend_pressure_pa", "extend_drive_n"),
    ] {
        result.force.driven_by = DrivenBy::Fluid;
        let given = columns(&result, pressure);
        assert!(given.iter().any(|cell| !cell.is_empty()));
        assert!(columns(&result, drive).iter().all(String::is_empty));
        result.force.driven_by = DrivenBy::Electricity;
        assert!(columns(&result, pressure).iter().all(String::is_empty));
        assert_eq!(columns(&result, drive), given);
    }
}

#[test]
fn text_keeps_both_ends_and_lines_up() {
    let (gear, result) = (full_gear(), result());
    let text = stations_text(&subject(&gear, &result, UnitChoice::INCH), 4);
    insta::assert_snapshot!(text);
    let all = stations_text(&subject(&gear, &result, UnitChoice::INCH), 100);
    assert_eq!(all.lines().count(), 1 + result.stations.len());
    for rows in 0..9 {
        let text = stations_text(&subject(&gear, &result, UnitChoice::METRIC), rows);
        assert_eq!(text.lines().count(), 1 + rows);
    }
}

/// An electric actuator has no pressure: what its drive must make is a force.
#[test]
fn an_electric_leg_has_no_pressure() {
    let (gear, mut result) = (full_gear(), result());
    for units in [UnitChoice::INCH, UnitChoice::METRIC] {
        result.force.driven_by = DrivenBy::Fluid;
        let fluid = stations_text(&subject(&gear, &result, units), 4);
        assert!(
            fluid.contains("pressure psi") || fluid.contains("pressure bar"),
            "{fluid}"
        );
        result.force.driven_by = DrivenBy::Electricity;
        let electric = stations_text(&subject(&gear, &result, units), 4);
        assert!(!electric.contains("pressure"), "{electric}");
        assert!(
            electric.contains("drive lb") || electric.contains("drive N"),
            "{electric}"
        );
    }
}
