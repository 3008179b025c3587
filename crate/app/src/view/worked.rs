//! Numbers worked out from the fields, shown beside them.
use gearswing_gear::model::{Brace, Grown, Leg, Point};
use gearswing_report::page::worked::{Worked, printed_over_center};
use gearswing_solver::result::FallOutcome;
use gearswing_solver::tires::{TireSizes, lateral_allowance};
use gearswing_units::{Quantity, UnitChoice, format, format_signed};

use crate::state::State;

/// Path of a number that is worked out, which one it is, and its text.
pub(crate) type Row = (String, Worked, String);

fn length(units: UnitChoice, si: f64) -> String {
    format(Quantity::Length, units, si)
}

fn span(units: UnitChoice, a: Point, b: Point) -> String {
    length(units, (b - a).norm())
}

/// Numbers worked out for a group.
pub(crate) fn rows(state: &State, index: usize, id: &str) -> Vec<Row> {
    let units = state.session.units;
    let Some(leg) = state.gear().legs.get(index) else {
        return Vec::new();
    };
    let path = |key: &str| format!("worked[{index}].{id}.{key}");
    let mut found: Vec<Row> = Vec::new();
    match id {
        "wheel" => tire_rows(&leg.wheel.tire, units, &path, &mut found),
        "fall" => fall_rows(state, index, &path, &mut found),
        "brace" => brace_rows(state, index, leg, &path, &mut found),
        "actuator" => actuator_rows(state, index, leg, &path, &mut found),
        "strut" => found.push((
            path("axle"),
            Worked::Axle,
            span(units, leg.trunnion, leg.strut.axle),
        )),
        _ => {}
    }
    found
}

fn tire_rows(
    tire: &gearswing_gear::model::Tire,
    units: UnitChoice,
    path: &dyn Fn(&str) -> String,
    found: &mut Vec<Row>,
) {
    let sizes = TireSizes::of(tire);
    if tire.grown == Grown::ByRule {
        found.push((
            path("grown_diameter"),
            Worked::GrownDiameter,
            length(units, sizes.grown.diameter),
        ));
        found.push((
            path("grown_width"),
            Worked::GrownWidth,
            length(units, sizes.grown.width),
        ));
    }
    found.push((
        path("side_allowance"),
        Worked::SideAllowance,
        length(units, lateral_allowance(sizes.grown.width)),
    ));
}

fn brace_rows(
    state: &State,
    index: usize,
    leg: &Leg,
    path: &dyn Fn(&str) -> String,
    found: &mut Vec<Row>,
) {
    let units = state.session.units;
    match &leg.brace {
        Brace::None => {}
        Brace::Folding(_) => {
            let offset = state
                .derived
                .good(index)
                .and_then(|good| good.result.lock.over_centre);
            if let Some(offset) = offset {
                found.push((
                    path("over_center_printed"),
                    Worked::OverCenterPrinted,
                    printed_over_center(units, offset),
                ));
            }
        }
        Brace::Sliding(b) => found.push((
            path("down"),
            Worked::BraceDown,
            span(units, b.airframe_pivot, b.leg_attach),
        )),
    }
}

fn actuator_rows(
    state: &State,
    index: usize,
    leg: &Leg,
    path: &dyn Fn(&str) -> String,
    found: &mut Vec<Row>,
) {
    let units = state.session.units;
    found.push((
        path("down"),
        Worked::ActuatorDown,
        span(units, leg.actuator.mount, leg.actuator.attach),
    ));
    let Some(good) = state.derived.good(index) else {
        return;
    };
    if let Some(last) = good.result.stations.last() {
        found.push((
            path("end"),
            Worked::ActuatorEnd,
            length(units, last.actuator_length),
        ));
    }
    let force = &good.result.force;
    let area = |si| format(Quantity::Area, units, si);
    found.push((
        path("stroke"),
        Worked::Stroke,
        length(units, force.stroke_used),
    ));
    found.push((
        path("areas"),
        Worked::Areas,
        format!("{}, {}", area(force.bore_area), area(force.annulus_area)),
    ));
}

fn fall_rows(state: &State, index: usize, path: &dyn Fn(&str) -> String, found: &mut Vec<Row>) {
    let units = state.session.units;
    let Some(fall) = state
        .derived
        .good(index)
        .and_then(|good| good.result.fall.as_ref())
    else {
        return;
    };
    if let FallOutcome::ReachesLock(arrival) = &fall.outcome {
        found.push((
            path("time"),
            Worked::FallTime,
            format(Quantity::Time, units, arrival.time),
        ));
        found.push((
            path("fastest"),
            Worked::FallSpeed,
            format(Quantity::StrokeSpeed, units, arrival.largest_axle_speed),
        ));
    }
    if let Some(least) = &fall.least_moment {
        found.push((
            path("moment"),
            Worked::FallMoment,
            format_signed(Quantity::Moment, units, least.moment),
        ));
    }
    if let Some(least) = &fall.least_knee_push {
        found.push((
            path("knee"),
            Worked::FallPush,
            format_signed(Quantity::Force, units, least.push),
        ));
    }
    if let Some(limit) = fall.seal_friction_limit {
        found.push((
            path("seal"),
            Worked::FallFriction,
            format(Quantity::Force, units, limit),
        ));
    }
}
