//! Numbers worked out from the fields, shown beside them.
use gearswing_gear::model::{Brace, Grown, Leg, Point};
use gearswing_report::published::{GROWTH_RULE, OVER_CENTER_LENGTH, OVER_CENTER_PRINTED};
use gearswing_solver::result::FallOutcome;
use gearswing_solver::tires::{TireSizes, lateral_allowance};
use gearswing_solver::{LEAST_OVER_CENTRE, PRINTED_OVER_CENTER};
use gearswing_units::{Quantity, UnitChoice, format, format_signed};

use crate::state::State;

/// Path, label, text and help of a number that is worked out.
pub(crate) type Worked = (String, &'static str, String, &'static str);

pub(super) fn length(units: UnitChoice, si: f64) -> String {
    format(Quantity::Length, units, si)
}

fn span(units: UnitChoice, a: Point, b: Point) -> String {
    length(units, (b - a).norm())
}

/// Numbers worked out for a group.
pub(crate) fn rows(state: &State, index: usize, id: &str) -> Vec<Worked> {
    let units = state.session.units;
    let Some(leg) = state.gear().legs.get(index) else {
        return Vec::new();
    };
    let path = |key: &str| format!("worked[{index}].{id}.{key}");
    let mut found: Vec<Worked> = Vec::new();
    match id {
        "wheel" => tire_rows(&leg.wheel.tire, units, &path, &mut found),
        "former" => {
            if let Some(tire) = &leg.wheel.former {
                tire_rows(tire, units, &path, &mut found);
            }
        }
        "fall" => fall_rows(state, index, &path, &mut found),
        "brace" => brace_rows(state, index, leg, &path, &mut found),
        "actuator" => actuator_rows(state, index, leg, &path, &mut found),
        "strut" => found.push((
            path("axle"),
            "Trunnion to axle",
            span(units, leg.trunnion, leg.strut.axle),
            "Worked out with the strut extended: check it with a tape.",
        )),
        _ => {}
    }
    found
}

fn tire_rows(
    tire: &gearswing_gear::model::Tire,
    units: UnitChoice,
    path: &dyn Fn(&str) -> String,
    found: &mut Vec<Worked>,
) {
    let sizes = TireSizes::of(tire);
    if tire.grown == Grown::ByRule {
        found.push((
            path("grown_diameter"),
            "Grown diameter, by the rule",
            length(units, sizes.grown.diameter),
            GROWTH_RULE,
        ));
        found.push((
            path("grown_width"),
            "Grown width, by the rule",
            length(units, sizes.grown.width),
            GROWTH_RULE,
        ));
    }
    found.push((
        path("side_allowance"),
        "Side clearance in tire handbooks",
        length(units, lateral_allowance(sizes.grown.width)),
        "For information, from memory and not confirmed: no answer rests on it.",
    ));
}

/// The printed range, and what stands out of it.
fn printed_over_center(units: UnitChoice, offset: f64) -> String {
    let (least, most) = PRINTED_OVER_CENTER;
    let flag = if (0.0..LEAST_OVER_CENTRE).contains(&offset) {
        ": yours is less"
    } else if offset > most {
        ": yours is more"
    } else {
        ""
    };
    format!("{} to {}{flag}", length(units, least), length(units, most))
}

fn brace_rows(
    state: &State,
    index: usize,
    leg: &Leg,
    path: &dyn Fn(&str) -> String,
    found: &mut Vec<Worked>,
) {
    let units = state.session.units;
    match &leg.brace {
        Brace::None => {}
        Brace::Folding(b) => {
            found.push((
                path("upper"),
                "Upper link, pin to pin",
                span(units, b.airframe_pivot, b.knee),
                "Worked out from the pins: check it with a tape.",
            ));
            found.push((
                path("lower"),
                "Lower link, pin to pin",
                span(units, b.knee, b.leg_attach),
                OVER_CENTER_LENGTH,
            ));
            let offset = state
                .derived
                .good(index)
                .and_then(|good| good.result.lock.over_centre);
            if let Some(offset) = offset {
                found.extend([
                    (
                        path("over_centre"),
                        "Knee over center",
                        length(units, offset),
                        "Positive is over center. Check it with a straightedge from pin to pin.",
                    ),
                    (
                        path("over_center_printed"),
                        "Printed for light airplanes",
                        printed_over_center(units, offset),
                        OVER_CENTER_PRINTED,
                    ),
                ]);
            }
        }
        Brace::Sliding(b) => found.push((
            path("down"),
            "Length at gear down",
            span(units, b.airframe_pivot, b.leg_attach),
            "Worked out from the pins: check it with a tape.",
        )),
    }
}

fn actuator_rows(
    state: &State,
    index: usize,
    leg: &Leg,
    path: &dyn Fn(&str) -> String,
    found: &mut Vec<Worked>,
) {
    let units = state.session.units;
    found.push((
        path("down"),
        "Length at gear down",
        span(units, leg.actuator.mount, leg.actuator.attach),
        "Pin to pin, worked out from the points: check it with a tape.",
    ));
    let Some(good) = state.derived.good(index) else {
        return;
    };
    if let Some(last) = good.result.stations.last() {
        found.push((
            path("end"),
            "Length at the end of the way up",
            length(units, last.actuator_length),
            "Pin to pin with the gear up, or where it stops.",
        ));
    }
    let force = &good.result.force;
    let area = |si| format(Quantity::Area, units, si);
    found.push((
        path("stroke"),
        "Stroke used",
        length(units, force.stroke_used),
        "Difference of the lengths from down to up.",
    ));
    found.push((
        path("areas"),
        "Areas: full bore, and bore less rod",
        format!("{}, {}", area(force.bore_area), area(force.annulus_area)),
        "Force is pressure times area; pulling has the rod's area less.",
    ));
}

fn fall_rows(state: &State, index: usize, path: &dyn Fn(&str) -> String, found: &mut Vec<Worked>) {
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
            "Free-falls to down and locked in",
            format(Quantity::Time, units, arrival.time),
            "Without power or pressure, let go at up.",
        ));
        found.push((
            path("fastest"),
            "Fastest axle on the way",
            format(Quantity::StrokeSpeed, units, arrival.largest_axle_speed),
            "Without power or pressure, let go at up.",
        ));
    }
    if let Some(least) = &fall.least_moment {
        found.push((
            path("moment"),
            "Least moment on the way",
            format_signed(Quantity::Moment, units, least.moment),
            "About the trunnion, toward down, friction taken off; negative: only speed carries it on.",
        ));
    }
    if let Some(least) = &fall.least_knee_push {
        found.push((
            path("knee"),
            "Least push at the knee",
            format_signed(Quantity::Force, units, least.push),
            "Into the lock while the knee is nearly straight; negative: only speed or a spring takes it over.",
        ));
    }
    if let Some(limit) = fall.seal_friction_limit {
        found.push((
            path("seal"),
            "Friction of the actuator that stops it short",
            format(Quantity::Force, units, limit),
            "All else as given: compare it with a spring scale on the rod, lines open, power off.",
        ));
    }
}
