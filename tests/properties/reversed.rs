//! A leg given at its upper end and swung down passes the same poses, under the same forces.
use gearswing_gear::model::Shortening;
use gearswing_tests::changes::reversed;
use gearswing_tests::{BraceKind, ShorteningKind, cases, near, solve};

#[test]
fn up_for_down() {
    let mut compared = 0;
    for case in cases(12, 2, 20) {
        // a lock at one end only, and a strut that is short at one end only, have no mirror in time
        if case.kind.brace == BraceKind::ThroughCentre
            || case.kind.shortening != ShorteningKind::None
            || !case.comes_up()
        {
            continue;
        }
        assert_eq!(case.leg().strut.shortening, Shortening::None);
        let there = solve(&case.gear, 721);
        let up = there.stations.last().unwrap();
        let mut gear = reversed(&case.gear, up.knee, up.actuator_attach);
        // a quarter turn is the most that a wheel may lean: side views have none
        let lean = gear.legs[0].wheel.lean;
        gear.legs[0].wheel.lean = if lean.abs() > 1.5 { 0.0 } else { lean };
        let back = solve(&gear, 721);
        assert_eq!(there.stations.len(), back.stations.len());
        for (a, b) in there.stations.iter().zip(back.stations.iter().rev()) {
            near("travel", a.travel, 1.0 - b.travel, 1e-12);
            near("swing", a.swing - case.leg().swing_up, b.swing, 1e-12);
            let off = (a.axle - b.axle).norm()
                + (a.actuator_attach - b.actuator_attach).norm()
                + a.knee.zip(b.knee).map_or(0.0, |(a, b)| (a - b).norm());
            near("joints", off, 0.0, 1e-9);
            let (Some(arm), Some(reverse)) = (a.moment_arm, b.moment_arm) else {
                continue;
            };
            // knees near the straight line turn fast
            let size = arm.abs().max(1.0);
            near("arm", arm, reverse, 1e-8 * size * size);
            let (Some(x), Some(y)) = (a.force, b.force) else {
                continue;
            };
            let size = x.holding.abs().max(100.0);
            let size = size * (size / 1000.0).max(1.0);
            near("holding", x.holding, y.holding, 1e-8 * size);
            // what retracts one way extends the other way
            let (retract, extend) = (x.retract_effort.unwrap(), y.extend_effort.unwrap());
            near("effort", retract, extend, 1e-8 * size);
            compared += 1;
        }
        if lean != gear.legs[0].wheel.lean {
            continue;
        }
        for (a, b) in there.clearance.pairs.iter().zip(&back.clearance.pairs) {
            let within = a.certified_to + b.certified_to + 1e-9;
            near(
                "clearance",
                a.tightest.clearance,
                b.tightest.clearance,
                within,
            );
        }
    }
    assert!(compared > 10_000, "{compared}");
}
