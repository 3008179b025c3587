//! Closure, rates against differences, over-center path, ends and driving by length.
use super::*;
use crate::model::*;
use crate::result::{JamCause, MechanismEventKind, Phase};
use gearswing_samples::leg::leg;

#[test]
fn loop_closes_and_path_runs_through_the_straight_pose() {
    let leg = leg();
    let linkage = Linkage::new(&leg);
    assert!(linkage.path().unlocks);
    let sweep = Sweep::new(&leg, &linkage, 181);
    assert!(sweep.jams.is_empty(), "{:?}", sweep.jams);
    let Brace::Folding(brace) = &leg.brace else {
        panic!()
    };
    let upper = (brace.knee - brace.airframe_pivot).norm();
    let lower = (brace.leg_attach - brace.knee).norm();
    let mut last = f64::NEG_INFINITY;
    for pose in &sweep.poses {
        let (k, b1) = (pose.knee.unwrap(), pose.brace_attach.unwrap());
        assert!(((k - brace.airframe_pivot).norm() - upper).abs() < 1e-9);
        assert!(((b1 - k).norm() - lower).abs() < 1e-9);
        assert!(pose.place.progress > last);
        last = pose.place.progress;
    }
    let excursion = sweep.excursion.unwrap();
    assert!(
        excursion.swing < 0.0 && excursion.swing > -0.02,
        "{excursion:?}"
    );
    assert_eq!(sweep.events[0].kind, MechanismEventKind::KneeStraight);
    assert!((sweep.poses.last().unwrap().place.travel - 1.0).abs() < 1e-12);
    let first = sweep.poses[0];
    assert_eq!((first.place.phase, first.place.swing), (Phase::Unlock, 0.0));
    assert!((first.knee.unwrap() - brace.knee).norm() == 0.0);
}

#[test]
fn rates_agree_with_differences() {
    for attach_to in [AttachTo::Leg, AttachTo::UpperLink, AttachTo::LowerLink] {
        let mut leg = leg();
        leg.actuator.attach_to = attach_to;
        leg.actuator.attach = match attach_to {
            AttachTo::Leg => Point::new(0.05, -0.2),
            AttachTo::UpperLink => Point::new(0.30, -0.11),
            AttachTo::LowerLink => Point::new(0.12, -0.25),
        };
        leg.strut.shortening = Shortening::WithTravel {
            table: vec![
                ShorteningRow {
                    travel: 0.0,
                    amount: 0.0,
                },
                ShorteningRow {
                    travel: 1.0,
                    amount: 0.04,
                },
            ],
        };
        let linkage = Linkage::new(&leg);
        for s in [-0.7, -0.2, 0.05, 0.3, 0.6, 0.95] {
            let h = 3e-5;
            let (a, m, b) = (
                linkage.pose(s - h).unwrap(),
                linkage.pose(s).unwrap(),
                linkage.pose(s + h).unwrap(),
            );
            let (d_swing, d_length) = (
                b.place.swing - a.place.swing,
                b.actuator_length - a.actuator_length,
            );
            let cross = m.rates.swing * d_length - m.rates.actuator * d_swing;
            let scale = m.rates.swing.hypot(m.rates.actuator) * d_swing.hypot(d_length);
            assert!(
                cross.abs() < 1e-6 * scale,
                "{attach_to:?} at {s}: {cross} of {scale}"
            );
            assert!(
                m.rates.swing * d_swing > 0.0,
                "{attach_to:?} at {s}: direction"
            );
        }
    }
}

#[test]
fn driving_by_length_finds_the_pose_again() {
    let leg = leg();
    let linkage = Linkage::new(&leg);
    let sweep = Sweep::new(&leg, &linkage, 181);
    for s in [-0.5, 0.2, 0.77] {
        let pose = linkage.pose(s).unwrap();
        let found = sweep.at_actuator_length(&linkage, pose.actuator_length);
        assert!(
            found.iter().any(|p| (p.place.progress - s).abs() < 1e-9),
            "{s}: {:?}",
            found.iter().map(|p| p.place.progress).collect::<Vec<_>>()
        );
    }
}

#[test]
fn actuator_end_stops_the_leg_where_its_length_says() {
    let mut leg = leg();
    let free = Linkage::new(&leg);
    let up = free.pose(1.0).unwrap().actuator_length;
    let down = free.pose(-1.0).unwrap().actuator_length;
    let stop = 0.3 * down + 0.7 * up;
    if up > down {
        leg.actuator.longest = stop;
    } else {
        leg.actuator.shortest = stop;
    }
    let sweep = Sweep::new(&leg, &free, 181);
    let jam = sweep.jams[0];
    assert!(matches!(
        jam.cause,
        JamCause::ActuatorEndsLong { .. } | JamCause::ActuatorEndsShort { .. }
    ));
    let end = sweep.poses.last().unwrap();
    assert!(
        (end.actuator_length - stop).abs() < 2e-6,
        "{} {stop}",
        end.actuator_length
    );
    assert!(jam.cause.miss() > 0.0);
}

#[test]
fn brace_that_cannot_close_says_by_how_much() {
    let mut leg = leg();
    leg.swing_up = -1.2; // outward: B0–B1 would have to grow
    let linkage = Linkage::new(&leg);
    let sweep = Sweep::new(&leg, &linkage, 181);
    let jam = sweep.jams[0];
    let JamCause::BraceTooShort { reach, span } = jam.cause else {
        panic!("{jam:?}")
    };
    assert!(span > reach + 0.01);
}

/// Trunnion at the origin, B1 on a circle of r = 0.7 m, B0 at d = 1 m: the span is least, d − r, where they
/// lie in one line, and a brace of u − l = d − r + 5 µm does not close over 4 mrad, by the law of cosines;
/// no station lies there.
#[test]
fn brace_that_does_not_close_between_two_stations_stops_the_leg() {
    let (d, r, at, lower) = (1.0_f64, 0.7_f64, 1.2375_f64, 0.6);
    let least = d - r + 5e-6;
    let mut leg = leg();
    leg.trunnion = Point::new(0.0, 0.0);
    leg.swing_up = 1.5;
    let attach = Point::new(0.0, -r);
    // B1 turns counter-clockwise by `at` from straight down to the line to B0
    let pivot = Point::new(d * at.sin(), -d * at.cos());
    let knee = circle_circle(pivot, least + lower, attach, lower, Side::Left).unwrap();
    leg.brace = match leg.brace {
        Brace::Folding(brace) => Brace::Folding(FoldingBrace {
            airframe_pivot: pivot,
            knee,
            leg_attach: attach,
            folds: Folds::SameSide,
            ..brace
        }),
        other => other,
    };
    leg.actuator.attach_to = AttachTo::Leg;
    leg.actuator.attach = Point::new(0.05, -0.2);
    (leg.actuator.shortest, leg.actuator.longest) = (0.0, 9.0);
    let linkage = Linkage::new(&leg);
    let half = ((d * d + r * r - least * least) / (2.0 * d * r)).acos();
    for stations in [61, 181] {
        let sweep = Sweep::new(&leg, &linkage, stations);
        let JamCause::BraceTooLong { least: asked, span } = sweep.jams[0].cause else {
            panic!("{:?}", sweep.jams)
        };
        assert!((asked - least).abs() < 1e-12 && (span - (d - r)).abs() < 1e-12);
        let end = sweep.poses.last().unwrap().place.swing;
        assert!((end - (at - half)).abs() < 1e-6, "{end} {}", at - half);
    }
}
