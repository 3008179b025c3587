//! The tire against its own leg and brace, arms of links, skews and room.
use super::super::{
    ClearanceCase, ClearanceError, ClearanceOptions, clearances, leg_outlines, skew_losses,
};
use super::support::Drawn;
use crate::kinematics::Pose;
use crate::model::*;
use crate::result::{Clearance, NotChecked, OwnClearance, OwnNotChecked, Phase, TireState};
use crate::tires::TireSizes;

fn p(x: f64, y: f64) -> Point {
    Point::new(x, y)
}

fn block(x: (f64, f64), y: (f64, f64)) -> Vec<Point> {
    vec![p(x.0, y.0), p(x.1, y.0), p(x.1, y.1), p(x.0, y.1)]
}

/// A leg in front view: axle at x = 0, strut to the right of the wheel from x = 0.1 on, all without
/// brace; tire 0.44 by 0.16 m on a rim of 0.15 m.
fn leg() -> Leg {
    let mut leg = gearswing_samples::leg::leg();
    leg.brace = Brace::None;
    leg.actuator.attach_to = AttachTo::Leg;
    leg.actuator.mount = p(0.4, 0.2);
    leg.actuator.attach = p(0.1, -0.1);
    leg.trunnion = p(0.12, 0.0);
    leg.strut.axle = p(0.0, -0.7);
    leg.strut.axis_bottom = p(0.12, -0.7);
    leg.strut.axis_top = p(0.12, 0.0);
    leg.body.outline = block((0.08, 0.16), (-0.4, 0.05));
    leg.strut.sliding_outline = block((0.1, 0.14), (-0.72, -0.4));
    leg.wheel.tire.diameter = 0.44;
    leg.wheel.tire.width = 0.16;
    leg.wheel.tire.grown = Grown::Given {
        diameter: 0.45,
        width: 0.17,
        basis: Basis::Measured,
    };
    leg
}

fn solve(leg: &Leg) -> Result<Clearance, ClearanceError> {
    let drawn = Drawn {
        leg: leg.clone(),
        sizes: TireSizes::of(&leg.wheel.tire),
    };
    clearances(
        &ClearanceCase {
            leg,
            sizes: &drawn.sizes,
            rule: &ClearanceRule::default(),
            linkage: &drawn.linkage(),
            poses: &drawn.sweep(181).poses,
        },
        &ClearanceOptions::default(),
    )
}

fn row(clearance: &Clearance, part: MovingPart, tire: TireState) -> OwnClearance {
    let mut rows = clearance.own.iter();
    *rows
        .find(|row| row.part == part && row.tire == tire)
        .unwrap_or_else(|| panic!("no row {part:?} {tire:?}"))
}

#[test]
fn a_strut_beside_the_tire_by_hand() {
    let found = solve(&leg()).unwrap();
    let strut = row(&found, MovingPart::SlidingStrut, TireState::New);
    assert!((strut.tightest.clearance - 0.02).abs() < 1e-9, "{strut:?}");
    assert!((strut.tightest.on_part.x - 0.08).abs() < 1e-9);
    assert!((strut.tightest.on_obstacle.x - 0.1).abs() < 1e-9);
    let strut = row(&found, MovingPart::SlidingStrut, TireState::Grown);
    assert!((strut.tightest.clearance - 0.015).abs() < 1e-9, "{strut:?}");
    // 80 mm of air between the top of the tire and the end of the upper leg, at a slant
    let body = row(&found, MovingPart::LegBody, TireState::New);
    let shoulder = p(0.05, -0.51);
    let expected = (p(0.08, -0.4) - shoulder).norm() - 0.03;
    assert!(
        (body.tightest.clearance - expected).abs() < 1e-9,
        "{body:?}"
    );
    assert!(found.own.iter().all(|row| row.first_contact.is_none()));
}

/// A tire 12 in wide stands through the strut beside it.
#[test]
fn a_wide_tire_touches_its_strut_all_the_way() {
    let mut leg = leg();
    leg.wheel.tire.width = 12.0 * 0.0254;
    leg.wheel.tire.grown = Grown::ByRule;
    let found = solve(&leg).unwrap();
    let strut = row(&found, MovingPart::SlidingStrut, TireState::New);
    assert!(strut.tightest.clearance < -0.03, "{strut:?}");
    let contact = strut.first_contact.unwrap();
    assert_eq!((contact.place.travel, contact.bracket), (0.0, 0.0));
}

/// The axle, drawn as a part of the strut, reaches into the wheel: that is no contact of the tire.
#[test]
fn the_axle_may_reach_into_the_hub() {
    let mut leg = leg();
    let plain = solve(&leg).unwrap();
    leg.strut.sliding_outline = vec![
        p(0.1, -0.72),
        p(0.14, -0.72),
        p(0.14, -0.4),
        p(0.1, -0.4),
        p(0.1, -0.68),
        p(-0.06, -0.68),
        p(-0.06, -0.715),
        p(0.1, -0.715),
    ];
    let stub = solve(&leg).unwrap();
    for tire in [TireState::New, TireState::Grown] {
        let part = MovingPart::SlidingStrut;
        let (a, b) = (row(&plain, part, tire), row(&stub, part, tire));
        assert!((a.tightest.clearance - b.tightest.clearance).abs() < 1e-9);
    }
    // as thick as the tire is high it is one
    for point in &mut leg.strut.sliding_outline[4..6] {
        point.y = -0.6;
    }
    let thick = solve(&leg).unwrap();
    let strut = row(&thick, MovingPart::SlidingStrut, TireState::New);
    assert!(strut.tightest.clearance < 0.0, "{strut:?}");
}

/// A strut that shortens takes the tire toward the upper leg.
#[test]
fn shortening_brings_the_tire_to_the_leg() {
    let mut leg = leg();
    leg.body.outline = block((-0.04, 0.16), (-0.4, 0.05));
    let gap = |leg: &Leg| row(&solve(leg).unwrap(), MovingPart::LegBody, TireState::New).tightest;
    assert!((gap(&leg).clearance - 0.08).abs() < 1e-9);
    leg.strut.shortening = Shortening::BeforeSwing { amount: 0.06 };
    let short = gap(&leg);
    assert!((short.clearance - 0.02).abs() < 2e-4, "{short:?}");
    // shortest in the middle of the way, by more than there is
    let rows = [(0.0, 0.0), (0.5, 0.1), (1.0, 0.05)];
    leg.strut.shortening = Shortening::WithTravel {
        table: rows
            .map(|(travel, amount)| ShorteningRow { travel, amount })
            .to_vec(),
    };
    let through = row(&solve(&leg).unwrap(), MovingPart::LegBody, TireState::New);
    assert!(
        (through.tightest.clearance + 0.02).abs() < 2e-4,
        "{through:?}"
    );
    assert!((through.tightest.place.travel - 0.5).abs() < 1e-3);
    let first = through.first_contact.unwrap().place.travel;
    assert!((first - 0.4).abs() < 1e-3, "{first}");
}

#[test]
fn what_is_not_checked_is_told() {
    let mut leg = gearswing_samples::leg::leg();
    leg.out_of_plane.own_leg = OwnLeg::ByView;
    leg.body.outline = block((-0.02, 0.02), (-0.3, 0.02));
    leg.strut.sliding_outline = block((-0.01, 0.01), (-0.72, -0.3));
    let told = |leg: &Leg| {
        let found = solve(leg).unwrap();
        let parts: Vec<MovingPart> = found.own.iter().map(|row| row.part).collect();
        (parts.len(), found.own_not_checked)
    };
    leg.view = View::Side;
    let (rows, skipped) = told(&leg);
    assert_eq!((rows, skipped.len()), (0, 7));
    assert!(skipped.iter().all(|s| s.why == NotChecked::BesideWheel));
    leg.out_of_plane.own_leg = OwnLeg::All;
    let (rows, skipped) = told(&leg);
    assert_eq!((rows, skipped.len()), (12, 1));
    assert_eq!(skipped[0].part, MovingPart::SlidingStrut);
    leg.view = View::Front;
    assert_eq!(told(&leg), (14, vec![]));
    leg.out_of_plane.own_leg = OwnLeg::ByView;
    assert_eq!(told(&leg), (14, vec![]));
    for (own_leg, rows) in [(OwnLeg::Leg, 4), (OwnLeg::Brace, 10), (OwnLeg::None, 0)] {
        leg.out_of_plane.own_leg = own_leg;
        let (got, skipped) = told(&leg);
        assert_eq!((got, skipped.len()), (rows, 7 - rows / 2));
        assert!(skipped.iter().all(|s| s.why == NotChecked::LeftOut));
    }
    leg.out_of_plane.own_leg = OwnLeg::ByView;
    leg.body.outline.clear();
    let (rows, skipped) = told(&leg);
    assert_eq!((rows, skipped.len()), (12, 1));
    assert_eq!(skipped[0].why, NotChecked::NoOutline);
}

/// The arm from its link to the attach point runs into a block that link and actuator pass by.
#[test]
fn an_arm_of_a_link_is_a_moving_part() {
    for attach_to in [AttachTo::UpperLink, AttachTo::LowerLink] {
        let mut leg = gearswing_samples::leg::leg();
        let Brace::Folding(brace) = leg.brace.clone() else {
            panic!()
        };
        let (from, to) = match attach_to {
            AttachTo::UpperLink => (brace.airframe_pivot, brace.knee),
            _ => (brace.knee, brace.leg_attach),
        };
        let along = (to - from).normalize();
        let aside = Vector::new(along.y, -along.x);
        leg.actuator.attach_to = attach_to;
        leg.actuator.attach = from + along * 0.1 + aside * 0.12;
        leg.actuator.mount = leg.actuator.attach + aside * 0.4;
        let drawn = |leg: &Leg, pose: &Pose| {
            leg_outlines(leg, &TireSizes::of(&leg.wheel.tire), pose)
                .into_iter()
                .find(|o| o.part == MovingPart::LinkArm)
        };
        let linkage = crate::kinematics::Linkage::new(&leg);
        let pose = linkage.pose(0.37).unwrap();
        let arm = drawn(&leg, &pose).unwrap();
        assert_eq!(arm.radius, 0.015);
        assert!((arm.core[1] - pose.actuator_attach).norm() < 1e-12);
        assert!(((arm.core[1] - arm.core[0]).norm() - 0.12).abs() < 1e-12);
        // a small block on the middle of the arm as it stands there
        let middle = arm.core[0] + (arm.core[1] - arm.core[0]) * 0.6;
        leg.well = vec![Obstacle {
            name: "Block".into(),
            shape: Shape::Solid {
                points: block(
                    (middle.x - 0.003, middle.x + 0.003),
                    (middle.y - 0.003, middle.y + 0.003),
                ),
            },
            required_clearance: None,
            ignores: vec![],
        }];
        let found = solve(&leg).unwrap();
        let pair = found
            .pairs
            .iter()
            .find(|pair| pair.part == MovingPart::LinkArm)
            .unwrap();
        assert!(pair.tightest.clearance <= -0.015, "{pair:?}");
        assert!(pair.first_contact.is_some());
        // on the link's line there is no arm
        leg.actuator.attach = from + along * 0.1;
        assert!(drawn(&leg, &linkage.pose(0.0).unwrap()).is_none());
        assert!(
            solve(&leg)
                .unwrap()
                .pairs
                .iter()
                .all(|pair| pair.part != MovingPart::LinkArm)
        );
    }
}

#[test]
fn skews_come_off_the_wheel_alone_and_room_is_a_row() {
    let mut leg = leg();
    leg.well = vec![Obstacle {
        name: "Rib".into(),
        shape: Shape::Solid {
            points: block((1.2, 1.4), (-2.0, 2.0)),
        },
        required_clearance: None,
        ignores: vec![],
    }];
    let square = solve(&leg).unwrap();
    assert!(square.room.rows.is_empty());
    assert_eq!(
        (square.room.reach_new, square.room.reach_grown),
        (0.22, 0.225)
    );
    let told = square.skew.told.unwrap();
    assert!(told.to_well > 0.01 && told.to_own_leg == 0.0);
    leg.out_of_plane.trunnion_skew = Some(0.0);
    let zero = solve(&leg).unwrap();
    assert_eq!(zero.pairs, square.pairs);
    leg.out_of_plane.trunnion_skew = Some(super::super::TOLD_SKEW);
    leg.out_of_plane.room_near = Some(0.25);
    leg.out_of_plane.room_far = Some(0.3);
    let skewed = solve(&leg).unwrap();
    let losses = skew_losses(&leg, &TireSizes::of(&leg.wheel.tire));
    assert!((losses.grown.to_well - told.to_well).abs() < 1e-15);
    for (a, b) in square.pairs.iter().zip(&skewed.pairs) {
        let loss = a.tire.map_or(0.0, |tire| losses.of(tire).to_well);
        assert_eq!(b.less_for_skew, loss);
        assert!((a.tightest.clearance - b.tightest.clearance - loss).abs() < 1e-9);
    }
    for (a, b) in square.curves.iter().zip(&skewed.curves) {
        let loss = a.tire.map_or(0.0, |tire| losses.of(tire).to_well);
        for (a, b) in a
            .points
            .iter()
            .zip(&b.points)
            .filter(|(a, b)| !a.beyond && !b.beyond)
        {
            assert!((a.clearance - b.clearance - loss).abs() < 1e-9);
        }
    }
    // the drawing is not changed
    assert_eq!(square.wheel_envelope, skewed.wheel_envelope);
    assert_eq!(skewed.own, square.own);
    let rows: Vec<f64> = skewed.room.rows.iter().map(|row| row.clearance).collect();
    let expected = [
        0.25 - 0.22 - losses.new.along_trunnion,
        0.25 - 0.225 - losses.grown.along_trunnion,
        0.3 - 0.22 - losses.new.along_trunnion,
        0.3 - 0.225 - losses.grown.along_trunnion,
    ];
    assert_eq!(rows, expected);
    // a wheel turned in its fork comes nearer to the fork, too
    leg.out_of_plane.wheel_skew = Some(0.05);
    let turned = solve(&leg).unwrap();
    let (a, b) = (
        square.own[0].tightest.clearance,
        turned.own[0].tightest.clearance,
    );
    assert!((a - b - turned.own[0].less_for_skew).abs() < 1e-6 && a - b > 0.005);
    assert!(
        turned
            .own
            .iter()
            .all(|row| row.tightest.place.phase == Phase::Swing)
    );
}

/// No sound leg of any kind is given up: a bound that is too loose would leave parts unchecked.
#[test]
fn nothing_of_a_sound_leg_is_left_unresolved() {
    let mut rows = 0;
    for mut leg in gearswing_samples::leg::kinds() {
        leg.out_of_plane.own_leg = OwnLeg::All;
        for view in [View::Front, View::Side] {
            leg.view = view;
            let Ok(found) = solve(&leg) else { continue };
            rows += found.own.len();
            let given_up = |s: &&OwnNotChecked| s.why == NotChecked::Unresolved;
            assert_eq!(found.own_not_checked.iter().find(given_up), None);
        }
    }
    assert!(rows > 200, "{rows}");
}

/// A strut that does not move against its wheel is as far from the tire everywhere: half the strut's distance less half
/// the tire's width (plane geometry, the leg's own figures).
#[test]
fn the_curve_of_the_own_leg_is_level_where_nothing_moves_against_the_wheel() {
    let mut leg = leg();
    leg.strut.shortening = Shortening::None;
    let mut gear = gearswing_samples::heavy::gear(0.0);
    gear.legs = vec![leg];
    let prepared = crate::PreparedGear::of(&gear);
    let prepared = prepared.leg(0).unwrap();
    let found = crate::solve_leg(&gear, 0, &crate::Options::default()).unwrap();
    let mut rows = found.clearance.own.iter();
    let row = rows
        .find(|row| row.part == MovingPart::SlidingStrut && row.tire == TireState::New)
        .unwrap();
    let points = prepared.own_curve(row).unwrap();
    assert!(points.len() > 100);
    assert!(
        points
            .windows(2)
            .all(|two| two[0].progress < two[1].progress)
    );
    for point in &points {
        assert!((point.clearance - 0.02).abs() < 1e-9, "{point:?}");
    }
}

/// The certified least is the least of the curve.
#[test]
fn the_curve_of_the_own_leg_has_the_certified_least_at_its_bottom() {
    let gear = gearswing_samples::heavy::gear(0.0);
    let found = crate::solve_leg(&gear, 0, &crate::Options::default()).unwrap();
    let prepared = crate::PreparedGear::of(&gear);
    let prepared = prepared.leg(0).unwrap();
    assert!(!found.clearance.own.is_empty());
    for row in &found.clearance.own {
        let points = prepared.own_curve(row).unwrap();
        let least = points.iter().map(|point| point.clearance);
        let least = least.fold(f64::INFINITY, f64::min);
        let told = row.tightest.clearance;
        assert!(
            least >= told - row.certified_to - 1e-9 && least <= told + 1e-12,
            "{row:?}: {least}"
        );
    }
}
