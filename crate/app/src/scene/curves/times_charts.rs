//! The charts of a run as data: travel of the legs, pressure, flow, current, voltage.
use gearswing_gear::model::{Gear, Source};
use gearswing_report::page::times as words;
use gearswing_solver::result::{Run, Sample};
use gearswing_units::Quantity;

use super::charts::{Chart, Level, Series};
use crate::scene::Role;

/// Lines of the legs, in turn; names stand at their ends.
const LINES: [Role; 4] = [
    Role::CurveNew,
    Role::CurveGrown,
    Role::CurveParts,
    Role::Curve,
];

/// The line of a leg.
pub(super) fn line_of(leg: usize) -> Role {
    LINES.get(leg % LINES.len()).copied().unwrap_or(Role::Curve)
}

fn series(role: Role, run: &Run, get: impl Fn(&Sample) -> Option<f64>) -> Series {
    let points: Vec<(f64, f64)> = run
        .moving()
        .iter()
        .filter_map(|sample| Some((sample.time, get(sample)?)))
        .collect();
    Series {
        role,
        name: String::new(),
        pieces: if points.is_empty() {
            Vec::new()
        } else {
            vec![points]
        },
    }
}

fn chart(title: &str, quantity: Quantity, series: Vec<Series>, levels: Vec<Level>) -> Chart {
    Chart {
        title: title.to_owned(),
        key: String::new(),
        quantity,
        height_px: 96.0,
        series: series
            .into_iter()
            .filter(|series| !series.pieces.is_empty())
            .collect(),
        levels,
        ceiling: f64::INFINITY,
        contact_below_zero: false,
    }
}

fn level(name: &str, value: Option<f64>) -> Option<Level> {
    Some(Level {
        role: Role::CurveAvailable,
        name: name.to_owned(),
        value: value?,
    })
}

/// All charts of a run.
pub(super) fn charts(gear: &Gear, run: &Run) -> Vec<Chart> {
    let travel = gear
        .legs
        .iter()
        .enumerate()
        .map(|(at, leg)| Series {
            name: leg.name.clone(),
            ..series(line_of(at), run, |sample| {
                Some(sample.legs.get(at)?.place.travel)
            })
        })
        .collect();
    let relief = match &gear.supply.source {
        Source::MotorPump(pump) => Some(pump.relief_pressure),
        _ => None,
    };
    let pressures = [
        level(words::RELIEF, relief),
        level(words::PRESSURE_SWITCH, gear.supply.pressure_switch),
    ];
    let one = |get: fn(&Sample) -> Option<f64>| vec![series(Role::Curve, run, get)];
    let breaker = level(words::BREAKER, gear.supply.battery.breaker_rating);
    let mut charts = vec![
        chart(words::TRAVEL, Quantity::Travel, travel, Vec::new()),
        chart(
            words::PRESSURE,
            Quantity::Pressure,
            one(|sample| sample.pressure),
            pressures.into_iter().flatten().collect(),
        ),
        chart(words::FLOW, Quantity::Flow, one(|s| s.flow), Vec::new()),
        chart(
            words::CURRENT,
            Quantity::Current,
            one(|sample| sample.current),
            breaker.into_iter().collect(),
        ),
        chart(
            words::VOLTAGE,
            Quantity::Voltage,
            one(|sample| sample.bus_voltage),
            Vec::new(),
        ),
    ];
    charts.retain(|chart| !chart.series.is_empty());
    charts
}
