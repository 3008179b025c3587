//! A sentence for every kind of fault.
use gearswing_gear::model::MovingPart;
use gearswing_solver::clearance::ClearanceError;
use gearswing_solver::faults::{Fault, FaultKind};
use gearswing_units::UnitChoice;

use super::fault_text;
use crate::sample::full_gear;

fn fault(path: &str, kind: FaultKind) -> Fault {
    Fault {
        leg: path.starts_with("legs[0]").then_some(0),
        path: path.to_owned(),
        kind,
    }
}

fn faults() -> Vec<Fault> {
    let other = |name: &str| format!("legs[0].{name}");
    vec![
        fault("legs[0].trunnion_m[0]", FaultKind::NotFinite),
        fault(
            "conditions.air_density_kg_m3",
            FaultKind::OutOfRange {
                value: -1.0,
                min: 0.0,
                max: 2.0,
            },
        ),
        fault(
            "legs[0].swing_up_rad",
            FaultKind::OutOfRange {
                value: 7.0,
                min: 0.01,
                max: std::f64::consts::TAU,
            },
        ),
        fault(
            "legs[0].wheel.mass_kg",
            FaultKind::OutOfRange {
                value: 0.0,
                min: 0.01,
                max: f64::INFINITY,
            },
        ),
        fault(
            "legs[0].actuator.rod_m",
            FaultKind::NotBelow {
                value: 0.031,
                other: other("actuator.bore_m"),
                limit: 0.03,
            },
        ),
        fault(
            "legs[0].brace.folding.knee_m",
            FaultKind::Coincident {
                other: other("brace.folding.airframe_pivot_m"),
                distance: 0.00002,
                least: 0.001,
            },
        ),
        fault(
            "legs[0].actuator",
            FaultKind::LengthAtDown {
                length: 0.45,
                shortest: 0.2,
                longest: 0.4,
            },
        ),
        fault(
            "legs[0].body.outline_m",
            FaultKind::SelfCrossing {
                edge: 1,
                other_edge: 3,
            },
        ),
        fault(
            "legs[0].well[0].shape.solid.points_m",
            FaultKind::TooFewPoints {
                count: 1,
                needed: 3,
            },
        ),
        fault(
            "legs[0].well[1].shape.surface.points_m",
            FaultKind::TooMany {
                count: 900,
                allowed: 400,
            },
        ),
        fault(
            "legs[0].well[0].shape.solid.points_m",
            FaultKind::RepeatedPoint { point: 2 },
        ),
        fault("legs[0].well[0].shape.solid.points_m", FaultKind::NoArea),
        fault(
            "legs[0].strut.shortening.with_travel.table",
            FaultKind::NotRising { row: 2 },
        ),
        fault(
            "legs[1].drive.start_travel",
            FaultKind::NotReached { reaches: 0.62 },
        ),
        fault("legs", FaultKind::NoLegs),
        fault(
            "legs[0].springs[2].kind.gas.shortest_m",
            FaultKind::LengthOnTheWay {
                length: 0.28,
                travel: 0.62,
                shortest: 0.3,
                longest: 0.5,
            },
        ),
        fault(
            "legs[0].springs[0].kind.linear.second.body",
            FaultKind::SameBody,
        ),
        fault(
            "legs[0].springs[0].kind.linear.second.body",
            FaultKind::NeedsFoldingBrace,
        ),
        fault(
            "legs[0].springs[3].kind.torsion.joint",
            FaultKind::NoSuchJoint,
        ),
        fault(
            "legs[0].springs[0].kind.linear.rate_n_m",
            FaultKind::OutOfRange {
                value: -5.0,
                min: 0.0,
                max: 1e7,
            },
        ),
        fault(
            "legs[0].pins.knee.friction",
            FaultKind::OutOfRange {
                value: 1.6,
                min: 0.0,
                max: 1.5,
            },
        ),
        fault("legs[0].actuator.attach_to", FaultKind::NeedsFoldingBrace),
        fault(
            "legs[0].brace.folding.knee_m",
            FaultKind::CannotStraighten {
                reach: 0.7,
                largest_span: 0.65,
            },
        ),
        fault(
            "legs[0].brace.folding.knee_m",
            FaultKind::StraightensPastDeadPoint,
        ),
        fault("legs[0].brace.folding.knee_m", FaultKind::KneeOnLine),
        fault("legs[0].drive.electric", FaultKind::Missing),
        fault(
            "supply.battery.wires_ohm",
            FaultKind::OutOfRange {
                value: -0.02,
                min: 0.0,
                max: 100.0,
            },
        ),
        fault(
            "legs[0].well[0]",
            FaultKind::Unresolved {
                error: ClearanceError::Unresolved {
                    part: MovingPart::Wheel,
                    obstacle: 0,
                    from: 0.31,
                    to: 0.32,
                },
            },
        ),
    ]
}

#[test]
fn every_kind_in_both_systems() {
    let gear = full_gear();
    for (name, units) in [("inch", UnitChoice::INCH), ("metric", UnitChoice::METRIC)] {
        let lines: Vec<_> = faults()
            .iter()
            .map(|fault| fault_text(fault, &gear, units))
            .collect();
        insta::assert_snapshot!(format!("faults_{name}"), lines.join("\n"));
    }
}
