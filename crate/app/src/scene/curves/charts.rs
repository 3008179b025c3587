//! The charts of a leg as data: what is drawn over what.
use gearswing_gear::model::{Joint, Vector};
use gearswing_report::page::curves as words;
use gearswing_report::{drive_quantity, joint_words};
use gearswing_solver::numeric::sort_by;
use gearswing_solver::result::{
    ClearanceCurve, Motion, Reactions, Station, StationForce, TireState,
};
use gearswing_units::Quantity;

use crate::scene::Role;
use crate::state::Good;
use crate::view::obstacle_text;

/// A curve: pieces of (progress, SI value).
#[derive(Clone, Debug)]
pub(crate) struct Series {
    pub(crate) role: Role,
    /// Name at its end, or empty.
    pub(crate) name: String,
    pub(crate) pieces: Vec<Vec<(f64, f64)>>,
}

/// A level line: SI value and name.
#[derive(Clone, Debug)]
pub(crate) struct Level {
    pub(crate) role: Role,
    pub(crate) name: String,
    pub(crate) value: f64,
}

/// One chart.
#[derive(Clone, Debug)]
pub(crate) struct Chart {
    pub(crate) title: String,
    /// How the lines are told apart, or empty.
    pub(crate) key: String,
    pub(crate) quantity: Quantity,
    pub(crate) height_px: f64,
    pub(crate) series: Vec<Series>,
    pub(crate) levels: Vec<Level>,
    /// Highest value shown [SI]; infinite = all.
    pub(crate) ceiling: f64,
    /// Below zero is contact.
    pub(crate) contact_below_zero: bool,
}

/// All charts of a leg, with the curves of the state before over them.
pub(crate) fn charts(good: &Good, before: Option<&Good>) -> Vec<Chart> {
    let mut charts = vec![
        clearance(good, before),
        pressure(good, before),
        thrust(good),
        pins(good),
    ];
    let stations = &good.result.stations;
    let transmission = series(Role::Curve, stations, |s| s.transmission);
    if !transmission.pieces.is_empty() {
        charts.push(plain(words::TRANSMISSION, Quantity::Angle, transmission));
    }
    let mut arm = plain(
        words::MOMENT_ARM,
        Quantity::Length,
        series(Role::Curve, stations, |s| s.moment_arm),
    );
    arm.ceiling = usual(&arm.series);
    charts.push(arm);
    charts.retain(|chart| !chart.series.is_empty());
    charts
}

/// Three times what a curve keeps below over most of the path: beside a toggle it has no end.
fn usual(series: &[Series]) -> f64 {
    let points = series.iter().flat_map(|s| s.pieces.iter().flatten());
    let mut sizes: Vec<f64> = points.map(|(_, value)| value.abs()).collect();
    sort_by(&mut sizes, f64::total_cmp);
    match sizes.get(sizes.len() * 3 / 4) {
        Some(&size) if size > 0.0 => 3.0 * size,
        _ => f64::INFINITY,
    }
}

fn plain(title: &str, quantity: Quantity, series: Series) -> Chart {
    Chart {
        title: title.to_owned(),
        key: String::new(),
        quantity,
        height_px: 110.0,
        series: vec![series],
        levels: Vec::new(),
        ceiling: f64::INFINITY,
        contact_below_zero: false,
    }
}

/// A number of the stations over the path, in pieces where it is absent.
pub(in crate::scene) fn series(
    role: Role,
    stations: &[Station],
    get: impl Fn(&Station) -> Option<f64>,
) -> Series {
    let mut pieces: Vec<Vec<(f64, f64)>> = Vec::new();
    let mut piece = Vec::new();
    let last = stations.len().saturating_sub(1);
    let value = |station: &Station| get(station).filter(|v| v.is_finite());
    for (at, station) in stations.iter().enumerate() {
        let is_end =
            || piece.is_empty() || at == last || stations.get(at + 1).and_then(value).is_none();
        match value(station) {
            // the screen shows no more than every other station, but where a curve begins and ends
            Some(value) if at % 2 == 0 || is_end() => piece.push((station.progress, value)),
            Some(_) => {}
            None if !piece.is_empty() => pieces.push(std::mem::take(&mut piece)),
            None => {}
        }
    }
    if !piece.is_empty() {
        pieces.push(piece);
    }
    Series {
        role,
        name: String::new(),
        pieces,
    }
}

pub(in crate::scene) fn clearance_series(
    curve: &ClearanceCurve,
    role: Role,
    name: String,
) -> Series {
    let mut pieces: Vec<Vec<(f64, f64)>> = Vec::new();
    let mut piece = Vec::new();
    for point in &curve.points {
        if point.beyond {
            if !piece.is_empty() {
                pieces.push(std::mem::take(&mut piece));
            }
        } else {
            piece.push((point.progress, point.clearance));
        }
    }
    if !piece.is_empty() {
        pieces.push(piece);
    }
    Series { role, name, pieces }
}

/// Clearances above this are not what the chart is for (m).
const CLEARANCE_CEILING: f64 = 0.12;

fn clearance(good: &Good, before: Option<&Good>) -> Chart {
    let clearance = &good.result.clearance;
    let governing = clearance.governing.and_then(|row| clearance.pairs.get(row));
    let mut found: Vec<Series> = clearance
        .curves
        .iter()
        .map(|curve| {
            let obstacle = obstacle_text(good, curve.obstacle);
            let (role, name) = match curve.tire {
                Some(TireState::New) => (Role::CurveNew, String::new()),
                Some(TireState::Grown) => (Role::CurveGrown, obstacle),
                None => (Role::CurveParts, words::parts_line(&obstacle)),
            };
            clearance_series(curve, role, name)
        })
        .collect();
    if let Some(before) = before {
        let grown = |curve: &&ClearanceCurve| curve.tire == Some(TireState::Grown);
        found.extend(
            before
                .result
                .clearance
                .curves
                .iter()
                .filter(grown)
                .map(|curve| {
                    // named once, on the piece that the present tire is judged by
                    let named = governing.is_some_and(|pair| pair.obstacle == curve.obstacle);
                    let name = if named { words::BEFORE } else { "" };
                    clearance_series(curve, Role::Before, name.to_owned())
                }),
        );
    }
    found.retain(|series| !series.pieces.is_empty());
    let levels = governing
        .map(|pair| Level {
            role: Role::Requirement,
            name: words::required_line(pair.part, pair.tire),
            value: pair.requirement.clearance,
        })
        .into_iter()
        .collect();
    let asked = governing.map_or(0.0, |pair| pair.requirement.clearance);
    Chart {
        title: words::CLEARANCE.to_owned(),
        key: words::CLEARANCE_KEY.to_owned(),
        quantity: Quantity::Length,
        height_px: 190.0,
        series: found,
        levels,
        ceiling: CLEARANCE_CEILING.max(5.0 * asked),
        contact_below_zero: true,
    }
}

/// Curves of both motions, and of retracting in the state before.
fn motions(
    good: &Good,
    before: Option<&Good>,
    get: fn(&StationForce) -> [Option<f64>; 2],
) -> Vec<Series> {
    let of = |good: &Good, role, at: usize, name: &str| {
        let value = |s: &Station| get(s.force.as_ref()?)[at];
        Series {
            name: name.to_owned(),
            ..series(role, &good.result.stations, value)
        }
    };
    let mut found = vec![
        of(
            good,
            Role::CurveNeeded,
            0,
            words::motion_line(Motion::Retract),
        ),
        of(
            good,
            Role::CurveParts,
            1,
            words::motion_line(Motion::Extend),
        ),
    ];
    found.extend(before.map(|before| of(before, Role::Before, 0, words::BEFORE)));
    found.retain(|series| !series.pieces.is_empty());
    found
}

fn pressure(good: &Good, before: Option<&Good>) -> Chart {
    let available = good.result.force.available_pressure;
    let driven_by = good.result.force.driven_by;
    // a pressure and a force have no axis in common
    let before = before.filter(|before| before.result.force.driven_by == driven_by);
    Chart {
        title: words::needed(driven_by).to_owned(),
        key: words::MOTIONS_KEY.to_owned(),
        quantity: drive_quantity(driven_by),
        height_px: 120.0,
        series: motions(good, before, |f| [f.retract_pressure, f.extend_pressure]),
        levels: vec![Level {
            role: Role::CurveAvailable,
            name: words::AVAILABLE.to_owned(),
            value: available,
        }],
        // near a dead point the need has no end: the place counts there, not the figure
        ceiling: 2.5 * available,
        contact_below_zero: false,
    }
}

fn thrust(good: &Good) -> Chart {
    let force = &good.result.force;
    Chart {
        title: words::ACTUATOR_FORCE.to_owned(),
        key: words::MOTIONS_KEY.to_owned(),
        quantity: Quantity::Force,
        height_px: 120.0,
        series: motions(good, None, |f| [f.retract_effort, f.extend_effort]),
        levels: Vec::new(),
        ceiling: force.retracting_thrust(2.5 * force.available_pressure),
        contact_below_zero: false,
    }
}

/// Loads of the pins in the case as set.
fn pins(good: &Good) -> Chart {
    type Get = fn(&Reactions) -> Option<Vector>;
    let lines: [(Joint, Role, Get); 5] = [
        (Joint::Trunnion, Role::Curve, |r| Some(r.trunnion)),
        (Joint::BracePivot, Role::CurveGrown, |r| r.brace_pivot),
        (Joint::Knee, Role::CurveAvailable, |r| r.knee),
        (Joint::LegAttach, Role::CurveParts, |r| r.brace_attach),
        (Joint::ActuatorMount, Role::CurveNew, |r| Some(r.mount)),
    ];
    let mut found: Vec<Series> = lines
        .into_iter()
        .map(|(joint, role, get)| {
            let load = |s: &Station| {
                let reactions = s.force.as_ref()?.reactions_in(Motion::Retract)?;
                Some(get(reactions)?.norm())
            };
            Series {
                name: joint_words(joint).to_owned(),
                ..series(role, &good.result.stations, load)
            }
        })
        .collect();
    found.retain(|series| !series.pieces.is_empty());
    Chart {
        title: words::PINS.to_owned(),
        key: words::PINS_KEY.to_owned(),
        quantity: Quantity::Force,
        height_px: 120.0,
        ceiling: usual(&found),
        series: found,
        levels: Vec::new(),
        contact_below_zero: false,
    }
}
