//! Stations to be read: some of them, some columns, in the units chosen.
use gearswing_solver::result::{DrivenBy, Phase, Station, StationForce};
use gearswing_units::{NO_VALUE, Quantity, format_bare};

use super::{Align, Column, aligned};
use crate::subject::Subject;

/// The stations table as text, `rows` stations at most, the first and the last among them.
#[must_use]
pub fn stations_text(subject: &Subject, rows: usize) -> String {
    let stations = chosen(&subject.result.stations, rows);
    let number = |quantity: Quantity, value: &dyn Fn(&Station) -> Option<f64>| {
        stations
            .iter()
            .map(|station| match value(station) {
                Some(si) => format_bare(quantity, subject.units, si).replace('-', "−"),
                None => NO_VALUE.to_owned(),
            })
            .collect::<Vec<_>>()
    };
    let column = |name: &str, quantity: Quantity, value: &dyn Fn(&Station) -> Option<f64>| {
        let unit = quantity.unit_label(subject.units);
        Column::new(
            format!("{name} {unit}").trim_end(),
            Align::Right,
            number(quantity, value),
        )
    };
    let force = |value: fn(&StationForce) -> Option<f64>| {
        move |station: &Station| station.force.as_ref().and_then(value)
    };
    let words = stations
        .iter()
        .map(|station| phase_words(station.phase).to_owned())
        .collect();
    let mut columns = vec![
        Column::new("", Align::Left, words),
        column("travel", Quantity::Travel, &|s| Some(s.travel)),
        column("swing", Quantity::Angle, &|s| Some(s.swing)),
        column("actuator", Quantity::Length, &|s| Some(s.actuator_length)),
        column("arm", Quantity::Length, &|s| s.moment_arm.map(f64::abs)),
        column("force", Quantity::Force, &force(|f| f.retract_effort)),
        column(
            match subject.result.force.driven_by {
                DrivenBy::Fluid => "pressure",
                DrivenBy::Electricity => "drive",
            },
            subject.drive(),
            &force(|f| f.retract_pressure),
        ),
        column(
            "mount",
            Quantity::Force,
            &force(|f| f.retract_reactions.map(|r| r.mount.norm())),
        ),
    ];
    if stations.iter().any(|station| station.fold.is_some()) {
        columns.push(column("fold", Quantity::Angle, &|s| s.fold));
    }
    if stations.iter().any(|station| station.shortening != 0.0) {
        columns.push(column("shortened", Quantity::Length, &|s| {
            Some(s.shortening)
        }));
    }
    aligned("  ", &columns)
}

fn phase_words(phase: Phase) -> &'static str {
    match phase {
        Phase::Shorten => "strut in",
        Phase::Unlock => "unlock",
        Phase::Swing => "swing",
    }
}

/// At most `rows` of the stations, evenly spread, both ends kept.
fn chosen(stations: &[Station], rows: usize) -> Vec<&Station> {
    let last = stations.len().saturating_sub(1);
    if rows >= stations.len() {
        return stations.iter().collect();
    }
    match rows {
        0 => Vec::new(),
        1 => stations.last().into_iter().collect(),
        _ => (0..rows)
            .filter_map(|row| stations.get((row * last + (rows - 1) / 2) / (rows - 1)))
            .collect(),
    }
}
