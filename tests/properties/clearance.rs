//! Certified clearances against sampled distances: outlines drawn apart from the solver, distances by
//! parry2d-f64 0.31, a general-purpose collision library.
use gearswing_gear::model::{Leg, Shape};
use gearswing_solver::result::{LegResult, PairClearance, Station};
use gearswing_tests::outlines::{Outline, outlines};
use gearswing_tests::{Case, cases, solve};

fn distance(leg: &Leg, all: &[Outline], pair: &PairClearance) -> f64 {
    let outline = all
        .iter()
        .find(|o| o.part == pair.part && o.tire == pair.tire)
        .expect("the part is drawn");
    outline.distance(&leg.well[pair.obstacle].shape)
}

/// The joints at any place of the path.
fn station_at(case: &Case, progress: f64, like: &Station) -> Station {
    let pose = case.linkage().pose(progress).unwrap();
    Station {
        progress,
        swing: pose.place.swing,
        shortening: pose.shortening,
        axle: pose.axle,
        knee: pose.knee,
        brace_attach: pose.brace_attach,
        actuator_attach: pose.actuator_attach,
        ..like.clone()
    }
}

#[test]
fn never_more_room_than_a_sample_shows() {
    let (mut free, mut met) = (0, 0);
    for case in cases(5, 3, 50) {
        let leg = case.leg();
        let result = solve(&case.gear, 101);
        let mut least = vec![f64::INFINITY; result.clearance.pairs.len()];
        for station in result.stations.iter() {
            let all = outlines(leg, station);
            for (least, pair) in least.iter_mut().zip(&result.clearance.pairs) {
                *least = least.min(distance(leg, &all, pair));
            }
        }
        for (pair, sampled) in result.clearance.pairs.iter().zip(least) {
            let clearance = pair.tightest.clearance;
            assert!(
                clearance - pair.certified_to <= sampled + 1e-9,
                "{sampled} was seen, against {pair:?}"
            );
            if sampled == 0.0 {
                assert!(clearance <= 0.0 && pair.first_contact.is_some(), "{pair:?}");
                met += 1;
            }
            if clearance > 0.0 {
                assert!(pair.first_contact.is_none());
                assert!(pair.certified_to <= 1.001e-5, "{pair:?}");
                free += 1;
            }
            at_its_place(&case, &result, pair);
        }
    }
    assert!(free > 2000 && met > 300, "{free} free, {met} met");
}

/// What is told of a place is so at that place.
fn at_its_place(case: &Case, result: &LegResult, pair: &PairClearance) {
    let leg = case.leg();
    let seen = |progress: f64| {
        let station = station_at(case, progress, &result.stations[0]);
        distance(leg, &outlines(leg, &station), pair)
    };
    let clearance = pair.tightest.clearance;
    let solid = matches!(leg.well[pair.obstacle].shape, Shape::Solid { .. });
    let there = seen(pair.tightest.place.progress);
    if clearance > 0.0 {
        assert!((there - clearance).abs() <= 1e-9, "{there} {pair:?}");
    } else if solid {
        // what lies in a solid has no distance from it; a surface may be behind
        assert!(there <= 1e-9, "{there} {pair:?}");
    }
    if let Some(contact) = &pair.first_contact
        && solid
        && contact.place.progress > result.stations[0].progress
    {
        let there = seen(contact.place.progress);
        // no part is faster than some meters per radian, nor a knee than some tens
        assert!(there > 0.0 && there <= 1e-4, "{there} {pair:?}");
    }
}
