//! Every link keeps its length at every station, and the path runs from the given pose to up.
use gearswing_gear::model::*;
use gearswing_solver::result::{Phase, Station};
use gearswing_tests::{BraceKind, cases, near, solve};
use std::f64::consts::PI;

const EXACT: f64 = 1e-9;

/// A table of two stations ends where the leg ends, also where something stops it.
#[test]
fn a_short_table_ends_where_the_leg_ends() {
    let mut stopped = 0;
    for case in cases(2, 0, 57) {
        let (whole, short) = (solve(&case.gear, 721), solve(&case.gear, 2));
        let last =
            |result: &gearswing_solver::result::LegResult| result.stations.last().unwrap().progress;
        assert_eq!(last(&whole), last(&short));
        assert!(short.stations.is_sorted_by(|a, b| a.progress < b.progress));
        stopped += u32::from(!whole.jams.is_empty());
    }
    assert!(stopped > 3, "{stopped}");
}

#[test]
fn links_keep_their_lengths() {
    let mut up = 0;
    let mut all = 0;
    for case in cases(6, 0, 1) {
        let leg = case.leg();
        let result = solve(&case.gear, 721);
        let first = &result.stations[0];
        near("down", first.swing, 0.0, 0.0);
        assert!((first.axle - leg.strut.axle).norm() < EXACT);
        assert!((first.actuator_attach - leg.actuator.attach).norm() < EXACT);
        for station in result.stations.iter() {
            lengths(leg, station);
        }
        assert!(
            result
                .stations
                .windows(2)
                .all(|w| w[0].progress < w[1].progress)
        );
        let last = result.stations.last().unwrap();
        all += 1;
        if result.jams.is_empty() {
            near("up", last.swing, leg.swing_up, EXACT);
            up += 1;
        } else {
            near("jam", last.progress, result.jams[0].place.progress, 0.0);
        }
    }
    assert!(all == 288 && up > 200, "{up} of {all} come up");
}

/// Distances between pins of one part, as at gear down.
fn lengths(leg: &Leg, station: &Station) {
    let at = station.progress;
    let kept = |what: &str, now: (Point, Point), down: (Point, Point)| {
        let (now, down) = ((now.0 - now.1).norm(), (down.0 - down.1).norm());
        near(&format!("{what} at {at}"), now, down, EXACT);
    };
    // the axle slides along the strut, which turns
    let axis = (leg.strut.axis_top - leg.strut.axis_bottom).normalize();
    let (sin, cos) = station.swing.sin_cos();
    let arm = leg.strut.axle - leg.trunnion + axis * station.shortening;
    let axle = leg.trunnion + Vector::new(cos * arm.x - sin * arm.y, sin * arm.x + cos * arm.y);
    assert!((axle - station.axle).norm() < EXACT, "axle at {at}");

    let a = &leg.actuator;
    let length = (station.actuator_attach - a.mount).norm();
    near("actuator", station.actuator_length, length, EXACT);
    if a.attach_to == AttachTo::Leg {
        let now = station.actuator_attach;
        kept("P–A1", (leg.trunnion, now), (leg.trunnion, a.attach));
        kept(
            "W–A1",
            (axle, now),
            (leg.strut.axle + axis * station.shortening, a.attach),
        );
    }
    let attach = station.brace_attach;
    match &leg.brace {
        Brace::None => assert!(attach.is_none() && station.knee.is_none()),
        Brace::Sliding(b) => {
            let attach = attach.unwrap();
            kept("P–B1", (leg.trunnion, attach), (leg.trunnion, b.leg_attach));
            let turned = (attach - leg.trunnion).perp(&(b.leg_attach - leg.trunnion));
            let wanted = -station.swing.sin() * (b.leg_attach - leg.trunnion).norm_squared();
            near("B1 turns with the leg", turned, wanted, EXACT);
        }
        Brace::Folding(b) => {
            let (attach, knee) = (attach.unwrap(), station.knee.unwrap());
            let fold = station.fold.unwrap();
            let right_side = match station.phase {
                Phase::Swing => (0.0..=PI).contains(&fold),
                Phase::Shorten | Phase::Unlock => fold < 0.0 || b.folds == Folds::SameSide,
            };
            assert!(right_side, "fold {fold} at {at}");
            kept("P–B1", (leg.trunnion, attach), (leg.trunnion, b.leg_attach));
            kept("B0–K", (b.airframe_pivot, knee), (b.airframe_pivot, b.knee));
            kept("K–B1", (knee, attach), (b.knee, b.leg_attach));
            let now = station.actuator_attach;
            match a.attach_to {
                AttachTo::Leg => kept("B1–A1", (attach, now), (b.leg_attach, a.attach)),
                AttachTo::UpperLink => {
                    kept(
                        "B0–A1",
                        (b.airframe_pivot, now),
                        (b.airframe_pivot, a.attach),
                    );
                    kept("K–A1", (knee, now), (b.knee, a.attach));
                }
                AttachTo::LowerLink => {
                    kept("K–A1", (knee, now), (b.knee, a.attach));
                    kept("B1–A1", (attach, now), (b.leg_attach, a.attach));
                }
            }
        }
    }
}

/// Shortening follows its table: nothing before the swing of a leg that shortens by it, all of it
/// before the swing of a leg that shortens first.
#[test]
fn shortening_follows_its_table() {
    for case in cases(2, 0, 2) {
        let result = solve(&case.gear, 721);
        for station in result.stations.iter() {
            let wanted = match &case.leg().strut.shortening {
                Shortening::None => 0.0,
                Shortening::BeforeSwing { amount } => {
                    // the first phase is shortening alone
                    let start = result.stations[0].progress;
                    amount * (station.progress - start).min(1.0)
                }
                Shortening::WithTravel { table } => {
                    let [a, b, c] = table[..] else {
                        panic!("three rows")
                    };
                    let t = station.travel.clamp(0.0, 1.0);
                    let (from, to) = if t < b.travel { (a, b) } else { (b, c) };
                    let share = (t - from.travel) / (to.travel - from.travel);
                    from.amount + share * (to.amount - from.amount)
                }
            };
            near("shortening", station.shortening, wanted, EXACT);
        }
    }
}

/// The straight pose of an over-center knee is one pose from either side, in which the leg stands
/// still and the knee does not.
#[test]
fn path_does_not_jump_where_the_knee_is_straight() {
    let mut compared = 0;
    for case in cases(8, 0, 3) {
        if case.kind.brace != BraceKind::ThroughCentre {
            continue;
        }
        let linkage = case.linkage();
        let straight = linkage.pose(0.0).unwrap();
        near("leg's rate", straight.rates.swing, 0.0, 0.0);
        assert!(straight.rates.upper != 0.0 && straight.moment_arm().is_none());
        for s in [-1e-9, 1e-9] {
            let beside = linkage.pose(s).unwrap();
            let off = (beside.axle - straight.axle).norm()
                + (beside.knee.unwrap() - straight.knee.unwrap()).norm()
                + (beside.actuator_attach - straight.actuator_attach).norm();
            near("joints", off, 0.0, 1e-7);
        }
        compared += 1;
    }
    assert_eq!(compared, 144);
}
