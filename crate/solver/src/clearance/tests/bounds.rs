//! Bounds of the certificate by hand and against sampling, what is drawn, what is told of skews.
use super::super::rig::{Rig, sagitta};
use super::super::segment::segment_segment;
use super::super::{ClearanceCase, ClearanceOptions, TOLD_SKEW, clearances, skew_losses};
use super::cases::{obstacle, plain, solve};
use super::support::random_leg;
use crate::kinematics::{Linkage, Pose, Sweep};
use crate::model::*;
use crate::result::{SkewLoss, TireState};
use crate::tires::TireSizes;
use gearswing_samples::leg as sample;

/// A point x along and y left of a link, in shares of it, moves by (1 − x) of one end's way, x of the other's
/// and y of what both are apart: of two ends that stray alike by |1 − x| + |x| + 2|y| at most.
#[test]
fn what_a_point_of_a_link_takes_over() {
    let mut leg = sample::leg();
    let Brace::Folding(brace) = leg.brace.clone() else {
        panic!()
    };
    let link = brace.leg_attach - brace.knee;
    leg.actuator.attach_to = AttachTo::LowerLink;
    for (x, y, share) in [
        (0.5, 0.0, 1.0),
        (0.25, 0.1, 1.2),
        (1.5, -0.2, 2.4),
        (-0.5, 0.0, 2.0),
    ] {
        leg.actuator.attach = brace.knee + link * x + Vector::new(-link.y, link.x) * y;
        let found = Rig::new(&leg).carried();
        assert!((found - share).abs() < 1e-12, "{x} {y} {found}");
    }
}

/// Between two poses the ends of a link stray from their straight lines by what is of second order: half the
/// way, a quarter of the straying.
#[test]
fn a_link_strays_by_the_square_of_its_way() {
    let stray = |way: f64| {
        let knee = Vector::new(0.6, 0.8) * way;
        let attach = Vector::new(0.7, 0.75) * way;
        // each on a circle of 1 m: chord²/8
        let sagittas = (knee.norm_squared() + attach.norm_squared()) / 8.0;
        Rig::stray_link(Vector::new(1.0, 0.0), 1.0, (knee, attach), sagittas)
    };
    let ratio = stray(2e-3) / stray(1e-3);
    assert!((ratio - 4.0).abs() < 0.05, "{ratio}");
}

/// The gland of an actuator stays within the bound of its chord between any two poses; most hangs on that
/// where a short actuator turns far.
#[test]
fn a_gland_stays_within_its_bound() {
    let mut short = sample::leg();
    short.brace = Brace::None;
    short.actuator.attach_to = AttachTo::Leg;
    short.actuator.attach = Point::new(0.0, -0.5);
    short.actuator.mount = Point::new(0.1, -0.6);
    let mut legs = sample::kinds();
    legs.push(short);
    let (mut bounded, mut loosest) = (0, 0.0_f64);
    for leg in &legs {
        let (linkage, rig) = (Linkage::new(leg), Rig::new(leg));
        let poses = Sweep::new(leg, &linkage, 16).poses;
        let swings: Vec<&Pose> = poses.iter().filter(|p| p.place.progress >= 0.0).collect();
        for pair in swings.windows(2) {
            let (a, b) = (pair[0], pair[1]);
            let bound = rig.stray_actuator(a, b);
            let (from, to) = (rig.gland(a), rig.gland(b));
            let mut most = 0.0_f64;
            for at in 1..20 {
                let share = f64::from(at) / 20.0;
                let between = a.place.progress + share * (b.place.progress - a.place.progress);
                let gland = rig.gland(&linkage.pose(between).unwrap());
                let off = segment_segment(gland, gland, from, to).distance;
                assert!(off <= bound + 1e-12, "{off} {bound}");
                most = most.max(off);
            }
            bounded += usize::from(bound.is_finite());
            if bound.is_finite() && most > 1e-4 {
                loosest = loosest.max(bound / most);
            }
        }
    }
    assert!(bounded > 100 && loosest < 80.0, "{bounded} {loosest}");
}

/// A wheel of 0.42 m about a trunnion 0.7 m off sweeps from 0.49 to 0.91 m.
#[test]
fn the_wheel_sweeps_a_ring() {
    let envelope = solve(&plain(View::Side), 61).unwrap().wheel_envelope;
    for (line, radius) in envelope.iter().zip([0.91, 0.49]) {
        assert!(line.len() > 10);
        for point in line {
            assert!((point.coords.norm() - radius).abs() < 1e-9, "{point}");
        }
    }
}

/// The middle of the wheel passes a wall by 10 mm in the middle of its way, wherever the stations are.
#[test]
fn the_deepest_contact_lies_between_stations() {
    let mut drawn = plain(View::Side);
    drawn.leg.swing_up = 2.6;
    drawn.leg.well = vec![obstacle(Shape::Surface {
        points: vec![Point::new(0.69, -2.0), Point::new(0.69, 2.0)],
    })];
    for stations in [2, 9, 60] {
        let found = solve(&drawn, stations).unwrap();
        let pair = found.pairs.iter().find(|p| p.tire == Some(TireState::New));
        let clearance = pair.unwrap().tightest.clearance;
        assert!((clearance + 0.21).abs() < 6e-5, "{stations} {clearance}");
    }
}

/// A curve runs along the path, and the least of it is the tightest of its pairs, as near as that is certified.
#[test]
fn curves_run_along_the_path_through_the_tightest_place() {
    let mut compared = 0;
    for seed in 0..12 {
        let drawn = random_leg(seed);
        let linkage = drawn.linkage();
        let case = ClearanceCase {
            leg: &drawn.leg,
            sizes: &drawn.sizes,
            rule: &ClearanceRule::default(),
            linkage: &linkage,
            poses: &drawn.sweep(61).poses,
        };
        let Ok(found) = clearances(&case, &ClearanceOptions::default()) else {
            continue;
        };
        for curve in &found.curves {
            let places = curve.points.windows(2);
            for pair in places {
                assert!(pair[0].progress < pair[1].progress, "{seed} {pair:?}");
            }
            let of = found.pairs.iter();
            let of = of.filter(|p| p.obstacle == curve.obstacle && p.tire == curve.tire);
            let (tightest, certified) = of.fold((f64::INFINITY, 0.0_f64), |(least, to), pair| {
                (
                    least.min(pair.tightest.clearance),
                    to.max(pair.certified_to),
                )
            });
            let points = curve.points.iter().filter(|point| !point.beyond);
            let least = points.map(|point| point.clearance);
            let least = least.fold(f64::INFINITY, f64::min);
            let under = tightest - least;
            assert!((0.0..=certified).contains(&under), "{seed} {under}");
            compared += 1;
        }
    }
    assert!(compared > 20, "{compared}");
}

/// Of a skew that is not measured it is told what 3° of it would take more.
#[test]
fn told_is_what_three_degrees_take_more() {
    let parts = |loss: SkewLoss| [loss.to_well, loss.along_trunnion, loss.to_own_leg];
    let losses = |trunnion, wheel| {
        let mut leg = sample::leg();
        (leg.out_of_plane.trunnion_skew, leg.out_of_plane.wheel_skew) = (trunnion, wheel);
        skew_losses(&leg, &TireSizes::of(&leg.wheel.tire))
    };
    let three = Some(TOLD_SKEW);
    for (given, measured) in [
        ((Some(0.04), None), (Some(0.04), three)),
        ((None, Some(0.02)), (three, Some(0.02))),
        ((None, None), (three, Some(0.0))),
    ] {
        let less = losses(given.0, given.1);
        let more = parts(losses(measured.0, measured.1).grown);
        let exact = more.iter().zip(parts(less.grown)).map(|(a, b)| a - b);
        for (told, exact) in parts(less.told.unwrap()).into_iter().zip(exact) {
            assert!((told - exact).abs() < 1e-15, "{given:?} {told} {exact}");
        }
    }
}

/// A tire of 0.45 by 0.16 m with shoulders of 0.03 m has R = 0.195 m, W = 0.05 m; turned by 0.05 rad about its
/// own middle it reaches R·sin − W·(1 − cos) farther where it is seen edge on, and W·sin − R·(1 − cos) as a disc.
#[test]
fn a_turned_tire_reaches_farther_by_hand() {
    let (r, w, turned) = (0.195_f64, 0.05_f64, 0.05_f64);
    let [edge_on, as_disc] =
        [(r, w), (w, r)].map(|(a, b)| a * turned.sin() - b * (1.0 - turned.cos()));
    for (view, seen, beside) in [
        (View::Front, edge_on, as_disc),
        (View::Side, as_disc, edge_on),
    ] {
        let mut leg = sample::leg();
        leg.view = view;
        leg.out_of_plane.trunnion_skew = Some(0.0);
        leg.out_of_plane.wheel_skew = Some(turned);
        let new = skew_losses(&leg, &TireSizes::of(&leg.wheel.tire)).new;
        assert!((new.to_well - seen).abs() < 1e-15, "{view:?} {new:?}");
        assert!((new.to_own_leg - seen).abs() < 1e-15, "{view:?} {new:?}");
        assert!(
            (new.along_trunnion - beside).abs() < 1e-15,
            "{view:?} {new:?}"
        );
    }
}

/// How far two points are at least from both of their straight ways at one common parameter (m), less what lies
/// between the parameters that are tried.
fn strays(((ka, kb), (ba, bb)): ((Point, Point), (Point, Point)), (k, b): (Point, Point)) -> f64 {
    let (dk, db) = (kb - ka, bb - ba);
    let off = |t: f64| (k - (ka + dk * t)).norm().max((b - (ba + db * t)).norm());
    let tried = (0..=2_000).map(|i| off(f64::from(i) / 2_000.0));
    tried.fold(f64::INFINITY, f64::min) - dk.norm().max(db.norm()) / 4_000.0
}

/// Both ends of the lower link stay within its bound at one common parameter between any two poses, and the bound
/// is no more than some times what they stray: it decides how fine the certificate has to look.
#[test]
fn a_lower_link_stays_within_its_bound() {
    let (mut seen, mut loosest) = (0, 0.0_f64);
    for leg in sample::kinds() {
        let (linkage, rig) = (Linkage::new(&leg), Rig::new(&leg));
        let poses = Sweep::new(&leg, &linkage, 64).poses;
        let swings: Vec<&Pose> = poses.iter().filter(|p| p.place.progress >= 0.0).collect();
        for pair in swings.windows(2) {
            let (a, b) = (pair[0], pair[1]);
            let ends = |pose: &Pose| pose.knee.zip(pose.brace_attach);
            let (Some((ka, ba)), Some((kb, bb))) = (ends(a), ends(b)) else {
                continue;
            };
            let bound = rig.stray_lower(a, b);
            let mut most = 0.0_f64;
            for at in 1..12 {
                let share = f64::from(at) / 12.0;
                let between = a.place.progress + share * (b.place.progress - a.place.progress);
                let (k, b1) = ends(&linkage.pose(between).unwrap()).unwrap();
                let strays = strays(((ka, kb), (ba, bb)), (k, b1));
                assert!(strays <= bound, "{strays} {bound}");
                most = most.max(strays);
            }
            if bound.is_finite() && most > 1e-5 {
                seen += 1;
                loosest = loosest.max(bound / most);
            }
        }
    }
    assert!(seen > 100 && loosest < 6.0, "{seen} {loosest}");
}

/// A link between two cranks (four-bar linkage, any text on mechanisms): where it hardly turns, as in a
/// parallelogram, its ends still stray by the heights of their arcs, and one lags by what those differ.
#[test]
fn a_link_between_cranks_stays_within_its_bound() {
    let mut seen = 0;
    for (r1, r2) in [(1.0, 1.0), (1.0, 1.02), (1.0, 0.7), (0.4, 1.0)] {
        for (base, length) in [(0.5, 0.5), (0.5, 0.52), (0.8, 0.5), (1.5, 1.4)] {
            for (from, turn) in [
                (0.3, 0.05),
                (0.9, 0.2),
                (1.4, 0.4),
                (2.0, 0.3),
                (-0.8, 0.25),
            ] {
                let ends = |angle: f64| {
                    let knee = Point::new(r1 * angle.cos(), r1 * angle.sin());
                    // where the circles about the knee and about the other pivot cross
                    let across = Point::new(base, 0.0) - knee;
                    let apart = across.norm();
                    let along = (apart * apart + length * length - r2 * r2) / (2.0 * apart);
                    let square = length * length - along * along;
                    let along_side = Vector::new(-across.y, across.x) / apart;
                    (square > 1e-3).then(|| {
                        (
                            knee,
                            knee + across / apart * along + along_side * square.sqrt(),
                        )
                    })
                };
                let (Some((ka, ba)), Some((kb, bb))) = (ends(from), ends(from + turn)) else {
                    continue;
                };
                let (dk, db) = (kb - ka, bb - ba);
                let heights = sagitta(r1, dk.norm()) + sagitta(r2, db.norm());
                let bound = Rig::stray_link(ba - ka, length, (dk, db), heights);
                for at in 1..12 {
                    let Some((k, b)) = ends(from + turn * f64::from(at) / 12.0) else {
                        continue;
                    };
                    let strays = strays(((ka, kb), (ba, bb)), (k, b));
                    assert!(
                        strays <= bound,
                        "{r1} {r2} {base} {length} {from}: {strays} {bound}"
                    );
                    seen += 1;
                }
            }
        }
    }
    assert!(seen > 300, "{seen}");
}

/// By hand, for a tire of 445 by 155 mm with shoulders of 30 mm, 0.7 m from its trunnion, that swings 90° about an
/// axis 3° from square: it turns by ε = 4·asin(sin 45°·sin 1.5°) = 4.243°, which takes 14.11 mm off for its size
/// and 0.7·[(1 − cos ε) + (1 − cos 3°)] = 2.88 mm for its path (spherical trigonometry; the same bound was held
/// against brute force in three dimensions).
#[test]
fn a_skewed_trunnion_costs_what_is_worked_out_by_hand() {
    let mut leg = sample::leg();
    leg.view = View::Front;
    leg.trunnion = Point::new(0.0, 0.0);
    leg.strut.axle = Point::new(0.0, -0.7);
    leg.strut.shortening = Shortening::None;
    leg.swing_up = std::f64::consts::FRAC_PI_2;
    let tire = &mut leg.wheel.tire;
    (tire.diameter, tire.width, tire.shoulder_radius) = (0.445, 0.155, 0.03);
    leg.out_of_plane.trunnion_skew = Some(3.0_f64.to_radians());
    leg.out_of_plane.wheel_skew = Some(0.0);
    let found = skew_losses(&leg, &TireSizes::of(&leg.wheel.tire))
        .new
        .to_well;
    assert!((found - 0.016_99).abs() < 2e-5, "{found}");
    // a strut that shortens carries it no farther; one that lengthens by 0.1 m does, to 0.8 m
    leg.strut.shortening = Shortening::WithTravel {
        table: vec![
            ShorteningRow {
                travel: 0.0,
                amount: 0.0,
            },
            ShorteningRow {
                travel: 1.0,
                amount: -0.1,
            },
        ],
    };
    let longer = skew_losses(&leg, &TireSizes::of(&leg.wheel.tire))
        .new
        .to_well;
    assert!((longer - found - 0.002_88 / 7.0).abs() < 1e-5, "{longer}");
}
