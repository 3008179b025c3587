//! One gear file for each fault, each jam and each supply that moves nothing: opens, and gets that
//! answer from the solver.
#![allow(clippy::unwrap_used, reason = "a test stops at what it cannot read")]
use std::collections::BTreeSet;

use gearswing_gear::model::Gear;
use gearswing_gearfile::read;
use gearswing_samples::fixtures::{file, files};
use gearswing_solver::faults::{Fault, check_gear};
use gearswing_solver::result::Jam;
use gearswing_solver::supply::{SupplyError, SupplyOptions, cycle};
use gearswing_solver::{Options, solve_leg};
use serde::Serialize;
use serde_json::Value;

fn open(folder: &str, name: &str) -> Gear {
    read(&file(folder, name)).unwrap_or_else(|e| panic!("{name}: {e}"))
}

/// Names of the files of a folder, without their ending.
fn names(folder: &str) -> BTreeSet<String> {
    let all = files(folder, "json").into_iter();
    all.map(|(name, _)| name).collect()
}

/// Key of an enum value as it stands in JSON.
fn key<T: Serialize>(value: &T) -> String {
    match serde_json::to_value(value).unwrap() {
        Value::String(key) => key,
        Value::Object(map) => map.keys().next().unwrap().clone(),
        other => panic!("{other}"),
    }
}

/// File, and its faults: path and kind.
const FAULTS: &[(&str, &[(&str, &str)])] = &[
    (
        "accumulator",
        &[
            ("supply.accumulator.exponent", "out_of_range"),
            ("supply.accumulator.gas_volume_m3", "out_of_range"),
            ("supply.accumulator.precharge_pa", "not_below"),
            ("supply.accumulator.charged_pa", "not_below"),
        ],
    ),
    (
        "brace_length_at_down",
        &[("legs[0].brace.sliding.longest_m", "length_at_down")],
    ),
    (
        "cannot_straighten",
        &[("legs[0].brace.folding.knee_m", "cannot_straighten")],
    ),
    (
        "coincident",
        &[
            ("legs[0].actuator.mount_m", "coincident"),
            ("legs[0].actuator.shortest_m", "length_at_down"),
        ],
    ),
    (
        "impossible_pack",
        &[
            ("supply.battery.internal_ohm", "out_of_range"),
            ("supply.return_pressure_pa", "not_below"),
            ("supply.source.motor_pump.free_flow_m3_s", "out_of_range"),
            ("supply.source.motor_pump.idle_a", "not_below"),
        ],
    ),
    (
        "knee_on_line",
        &[("legs[0].brace.folding.knee_m", "knee_on_line")],
    ),
    (
        "length_at_down",
        &[("legs[0].actuator.longest_m", "length_at_down")],
    ),
    (
        "needs_folding_brace",
        &[("legs[0].actuator.attach_to", "needs_folding_brace")],
    ),
    (
        "length_on_the_way",
        &[(
            "legs[0].springs[0].kind.gas.shortest_m",
            "length_on_the_way",
        )],
    ),
    ("missing", &[("legs[0].drive.electric", "missing")]),
    (
        "negative_resistance",
        &[
            ("supply.battery.internal_ohm", "out_of_range"),
            ("supply.battery.wires_ohm", "out_of_range"),
        ],
    ),
    ("no_area", &[("legs[0].strut.sliding_outline_m", "no_area")]),
    ("no_legs", &[("legs", "no_legs")]),
    (
        "no_such_joint",
        &[("legs[0].springs[0].kind.torsion.joint", "no_such_joint")],
    ),
    ("not_below", &[("legs[0].actuator.rod_m", "not_below")]),
    (
        "not_rising",
        &[("legs[0].strut.shortening.with_travel.table", "not_rising")],
    ),
    (
        "out_of_range",
        &[("legs[0].actuator.bore_m", "out_of_range")],
    ),
    (
        "repeated_point",
        &[("legs[0].body.outline_m", "repeated_point")],
    ),
    (
        "same_body",
        &[("legs[0].springs[0].kind.linear.second.body", "same_body")],
    ),
    (
        "self_crossing",
        &[("legs[0].well[1].shape.solid.points_m", "self_crossing")],
    ),
    (
        "several",
        &[
            ("supply.available_pressure_pa", "out_of_range"),
            ("legs[0].wheel.tire.width_m", "out_of_range"),
            ("legs[0].actuator.rod_m", "not_below"),
            ("legs[1].swing_up_rad", "out_of_range"),
        ],
    ),
    (
        "size_negative",
        &[("legs[0].wheel.tire.width_m", "out_of_range")],
    ),
    (
        "straightens_past_dead_point",
        &[(
            "legs[0].brace.folding.knee_m",
            "straightens_past_dead_point",
        )],
    ),
    (
        "springs_and_pins",
        &[
            ("legs[0].pins.trunnion.radius_m", "out_of_range"),
            ("legs[0].pins.knee.friction", "out_of_range"),
            ("legs[0].springs[0].kind.linear.rate_n_m", "out_of_range"),
            (
                "legs[0].springs[1].kind.linear.second.point_m",
                "coincident",
            ),
            ("legs[0].springs[2].kind.gas.force_longest_n", "not_below"),
        ],
    ),
    (
        "swing_over_a_turn",
        &[("legs[0].swing_up_rad", "out_of_range")],
    ),
    ("swing_zero", &[("legs[0].swing_up_rad", "out_of_range")]),
    (
        "too_few_points",
        &[("legs[0].well[0].shape.surface.points_m", "too_few_points")],
    ),
    (
        "too_many",
        &[("legs[0].well[0].shape.surface.points_m", "too_many")],
    ),
    (
        "zero_flow",
        &[("supply.source.motor_pump.free_flow_m3_s", "out_of_range")],
    ),
];

/// File, and the error that following its supply on the way up ends with: no field is wrong by
/// itself.
const NO_CYCLE: &[(&str, &str)] = &[
    ("no_flow", "no_flow"),
    ("relief_below_any_load", "nothing_moves"),
    ("stands_beyond", "not_reached"),
];

fn faults_of(gear: &Gear) -> Vec<Fault> {
    check_gear(gear)
        .err()
        .map_or_else(Vec::new, |faults| faults.0)
}

#[test]
fn each_fault_is_told_and_no_other() {
    let listed: BTreeSet<String> = FAULTS.iter().map(|(name, _)| (*name).to_owned()).collect();
    assert_eq!(listed, names("faults"));
    for (name, wanted) in FAULTS {
        let found = faults_of(&open("faults", name));
        let mut found: Vec<(&str, String)> = found
            .iter()
            .map(|f| (f.path.as_str(), key(&f.kind)))
            .collect();
        let mut wanted: Vec<(&str, String)> = wanted
            .iter()
            .map(|(path, kind)| (*path, (*kind).to_owned()))
            .collect();
        found.sort();
        wanted.sort();
        assert_eq!(found, wanted, "{name}");
    }
}

#[test]
fn each_supply_that_moves_nothing_is_told() {
    let listed: BTreeSet<String> = NO_CYCLE
        .iter()
        .map(|(name, _)| (*name).to_owned())
        .collect();
    assert_eq!(listed, names("no_cycle"));
    for (name, wanted) in NO_CYCLE {
        let gear = open("no_cycle", name);
        assert_eq!(faults_of(&gear), [], "{name}");
        // each leg can be worked out all the same
        assert!(solve_leg(&gear, 0, &Options::default()).is_ok(), "{name}");
        let found = match cycle(&gear, &SupplyOptions::default()) {
            Ok(cycle) => cycle.up_error.unwrap(),
            Err(error) => error,
        };
        let kind = match &found {
            SupplyError::Faults(faults) => key(&faults.0[0].kind),
            other => key(other),
        };
        assert_eq!(kind, *wanted, "{name}: {found}");
    }
}

#[test]
fn every_kind_of_fault_has_a_file() {
    let schema = schemars::schema_for!(gearswing_solver::faults::FaultKind);
    let kinds = words(schema.as_value());
    let covered: BTreeSet<String> = FAULTS
        .iter()
        .flat_map(|(_, faults)| faults.iter().map(|(_, kind)| (*kind).to_owned()))
        .chain(NO_CYCLE.iter().map(|(_, kind)| (*kind).to_owned()))
        .filter(|kind| kinds.contains(kind))
        // JSON cannot say NaN or infinity; the other is the solver's own and needs no bad field
        .chain(["not_finite", "unresolved"].map(str::to_owned))
        .collect();
    assert_eq!(kinds, covered);
}

/// The words of an enum, from its schema.
fn words(schema: &Value) -> BTreeSet<String> {
    let text = |v: &Value| v.as_str().map(str::to_owned);
    schema["oneOf"]
        .as_array()
        .unwrap()
        .iter()
        .flat_map(|one| {
            let units = one["enum"].as_array().into_iter().flatten();
            let keyed = one["required"].as_array().into_iter().flatten();
            units
                .chain(keyed)
                .chain(one.get("const"))
                .filter_map(text)
                .collect::<Vec<_>>()
        })
        .collect()
}

/// A number that is wrong hides no fault that has nothing to do with it, and makes none elsewhere.
#[test]
fn faults_of_one_part_leave_the_others_alone() {
    let mut gear = open("faults", "length_on_the_way");
    let before = faults_of(&gear);
    gear.legs[0].drive.switches.up = 1.5;
    let after = faults_of(&gear);
    assert_eq!(after.len(), before.len() + 1, "{after:?}");
    // a follower's hole is not held against a bore that is no bore
    let mut gear = gearswing_gearfile::DEMO.gear().unwrap();
    for leg in &mut gear.legs[1..] {
        leg.shared_drive = "Central".to_owned();
    }
    gear.legs[2].fall.return_orifice = Some(0.001);
    gear.legs[1].actuator.bore = -1.0;
    let faults = faults_of(&gear);
    assert!(
        faults.iter().all(|fault| fault.leg == Some(1)),
        "{faults:?}"
    );
}

#[test]
fn not_finite_is_a_fault_of_a_built_gear() {
    let mut gear = open("starters", "folding_side");
    gear.legs[0].actuator.rod = f64::NAN;
    gear.legs[0].well[1].shape.points_mut()[0].x = f64::INFINITY;
    let found = faults_of(&gear);
    let paths: Vec<&str> = found.iter().map(|f| f.path.as_str()).collect();
    assert_eq!(
        paths,
        [
            "legs[0].actuator.rod_m",
            "legs[0].well[1].shape.solid.points_m[0][0]"
        ]
    );
    assert!(found.iter().all(|f| key(&f.kind) == "not_finite"));
}

/// Angle between two sides of a triangle opposite to the third (law of cosines, Euclid II.12–13).
fn opposite(a: f64, b: f64, c: f64) -> f64 {
    ((a * a + b * b - c * c) / (2.0 * a * b)).acos()
}

/// Swing by which the distance from `mount` to a point at `attach`, both from the trunnion,
/// becomes `end` (rad).
fn swing_to(mount: (f64, f64), attach: (f64, f64), end: f64) -> f64 {
    let (m, a) = (mount.0.hypot(mount.1), attach.0.hypot(attach.1));
    let now = (mount.0 - attach.0).hypot(mount.1 - attach.1);
    opposite(m, a, now) - opposite(m, a, end)
}

#[test]
fn each_jam_is_told() {
    let (mount, attach) = ((0.5, 0.15), (0.0, -0.16));
    let (pivot, slide) = ((0.74, 0.02), (0.02, -0.28));
    let (knee_pivot, knee_attach) = ((0.44_f64, 0.06_f64), (0.03_f64, -0.29_f64));
    let side = |from: (f64, f64), to: (f64, f64)| (from.0 - to.0).hypot(from.1 - to.1);
    // upper and lower link of the two folding files
    let short = side(knee_pivot, (0.204, -0.146)) + side((0.204, -0.146), knee_attach);
    let long = side(knee_pivot, (0.14, -0.1955)) - side((0.14, -0.1955), knee_attach);
    let wanted = [
        ("actuator_ends_long", swing_to(mount, attach, 0.6)),
        ("actuator_ends_short", swing_to(mount, attach, 0.45)),
        ("brace_too_long", swing_to(knee_pivot, knee_attach, long)),
        ("brace_too_short", swing_to(knee_pivot, knee_attach, short)),
        // at its longest when down, but for rounding
        ("sliding_brace_ends_long", 0.0),
        ("sliding_brace_ends_short", swing_to(pivot, slide, 0.6)),
    ];
    let listed: BTreeSet<String> = wanted.iter().map(|(name, _)| (*name).to_owned()).collect();
    assert_eq!(listed, names("jams"));
    let schema = schemars::schema_for!(gearswing_solver::result::JamCause);
    assert_eq!(listed, words(schema.as_value()));
    for (name, swing) in wanted {
        let gear = open("jams", name);
        assert_eq!(faults_of(&gear), [], "{name}");
        let result = solve_leg(&gear, 0, &Options::default()).unwrap();
        let first: &Jam = result.jams.first().unwrap();
        assert_eq!(key(&first.cause), name);
        let at = first.place.swing;
        // an end is held to a micrometer: here that is less than 1e-5 rad
        assert!((at - swing).abs() < 1e-5, "{name}: {at} {swing}");
    }
}
