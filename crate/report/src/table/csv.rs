//! Stations for other programs: comma-separated, SI, the unit in each column head (RFC 4180, with
//! plain line feeds).
use std::fmt::Write as _;

use gearswing_gear::model::{Point, Vector};
use gearswing_solver::result::{DrivenBy, LegResult, Phase, Reactions, Station, StationForce};

use crate::name::cell;

/// Column heads in order.
const HEAD: &[&str] = &[
    "file",
    "leg",
    "phase",
    "progress",
    "travel",
    "swing_rad",
    "shortening_m",
    "axle_x_m",
    "axle_y_m",
    "knee_x_m",
    "knee_y_m",
    "brace_attach_x_m",
    "brace_attach_y_m",
    "actuator_attach_x_m",
    "actuator_attach_y_m",
    "actuator_length_m",
    "moment_arm_m",
    "fold_rad",
    "transmission_rad",
    "holding_n",
    "retract_effort_n",
    "extend_effort_n",
    "retract_pressure_pa",
    "extend_pressure_pa",
    "trunnion_x_n",
    "trunnion_y_n",
    "brace_pivot_x_n",
    "brace_pivot_y_n",
    "knee_x_n",
    "knee_y_n",
    "brace_attach_x_n",
    "brace_attach_y_n",
    "mount_x_n",
    "mount_y_n",
    "actuator_attach_x_n",
    "actuator_attach_y_n",
    "retract_trunnion_x_n",
    "retract_trunnion_y_n",
    "retract_brace_pivot_x_n",
    "retract_brace_pivot_y_n",
    "retract_knee_x_n",
    "retract_knee_y_n",
    "retract_brace_attach_x_n",
    "retract_brace_attach_y_n",
    "retract_mount_x_n",
    "retract_mount_y_n",
    "retract_actuator_attach_x_n",
    "retract_actuator_attach_y_n",
    "extend_trunnion_x_n",
    "extend_trunnion_y_n",
    "extend_brace_pivot_x_n",
    "extend_brace_pivot_y_n",
    "extend_knee_x_n",
    "extend_knee_y_n",
    "extend_brace_attach_x_n",
    "extend_brace_attach_y_n",
    "extend_mount_x_n",
    "extend_mount_y_n",
    "extend_actuator_attach_x_n",
    "extend_actuator_attach_y_n",
    "retract_drive_n",
    "extend_drive_n",
];

/// The line of column heads, with its line end.
#[must_use]
pub fn stations_csv_head() -> String {
    format!("{}\n", HEAD.join(","))
}

/// The rows of one leg; what does not exist at a station is left empty.
#[must_use]
pub fn stations_csv_rows(file: &str, result: &LegResult) -> String {
    let names = format!("{},{}", cell(file), cell(&result.name));
    let mut rows = String::new();
    for station in result.stations.iter() {
        rows.push_str(&names);
        row(&mut rows, station, result.force.driven_by);
        rows.push('\n');
    }
    rows
}

/// The stations of one leg with their head.
#[must_use]
pub fn stations_csv(file: &str, result: &LegResult) -> String {
    stations_csv_head() + &stations_csv_rows(file, result)
}

fn row(into: &mut String, station: &Station, driven_by: DrivenBy) {
    into.push(',');
    into.push_str(phase_key(station.phase));
    let force = station.force.as_ref();
    let point = |p: Point| [Some(p.x), Some(p.y)];
    let maybe_point = |p: Option<Point>| [p.map(|p| p.x), p.map(|p| p.y)];
    let forces = |of: fn(&StationForce) -> Option<&Reactions>| {
        let on = force.and_then(of);
        [
            on.map(|r| r.trunnion),
            on.and_then(|r| r.brace_pivot),
            on.and_then(|r| r.knee),
            on.and_then(|r| r.brace_attach),
            on.map(|r| r.mount),
            on.map(|r| r.actuator_attach),
        ]
        .map(|v: Option<Vector>| [v.map(|v| v.x), v.map(|v| v.y)])
    };
    let (still, retract, extend) = (
        forces(|f| Some(&f.reactions)),
        forces(|f| f.retract_reactions.as_ref()),
        forces(|f| f.extend_reactions.as_ref()),
    );
    // what its drive must give is a pressure of fluid, or a force
    let gives = [
        force.and_then(|f| f.retract_pressure),
        force.and_then(|f| f.extend_pressure),
    ];
    let (pressures, drives) = match driven_by {
        DrivenBy::Fluid => (gives, [None; 2]),
        DrivenBy::Electricity => ([None; 2], gives),
    };
    let groups: [&[Option<f64>]; 12] = [
        &[
            Some(station.progress),
            Some(station.travel),
            Some(station.swing),
            Some(station.shortening),
        ],
        &point(station.axle),
        &maybe_point(station.knee),
        &maybe_point(station.brace_attach),
        &point(station.actuator_attach),
        &[
            Some(station.actuator_length),
            station.moment_arm,
            station.fold,
            station.transmission,
        ],
        &[
            force.map(|f| f.holding),
            force.and_then(|f| f.retract_effort),
            force.and_then(|f| f.extend_effort),
        ],
        &pressures,
        still.as_flattened(),
        retract.as_flattened(),
        extend.as_flattened(),
        &drives,
    ];
    for value in groups.into_iter().flatten() {
        into.push(',');
        if let Some(value) = value.filter(|value| value.is_finite()) {
            // Shortest text that reads back as the same number.
            let _ = write!(into, "{value:?}");
        }
    }
}

/// Key of a phase, as in JSON.
pub(crate) fn phase_key(phase: Phase) -> &'static str {
    match phase {
        Phase::Shorten => "shorten",
        Phase::Unlock => "unlock",
        Phase::Swing => "swing",
    }
}
