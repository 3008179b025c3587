//! Closed forms against sampling, and against the distances of parry2d-f64 0.31, a general-purpose
//! collision library (`query::distance` for disjoint shapes).
use gearswing_samples::Draw;
use parry2d_f64::math::{Pose as Isometry, Vector as Glam};
use parry2d_f64::query::distance;
use parry2d_f64::shape::{ConvexPolygon, Polyline, Segment};
use proptest::prelude::*;

use super::super::arc::{Arc, RadialSegment};
use super::super::barrier::{Barrier, polygon_contains};
use super::super::segment::segment_segment;
use super::super::signed::signed_clearance;
use super::super::sweep::{Span, lines_cross, nearest_lines};
use super::super::turning::{RadialBarrier, TurningCore, sliding_nearest};
use super::support::{cases, one_of, random_leg};
use crate::model::{Point, Vector};

fn glam(p: Point) -> Glam {
    Glam::new(p.x, p.y)
}

fn drawn_point(draw: &mut Draw, size: f64) -> Point {
    Point::new(draw.between(-size, size), draw.between(-size, size))
}

fn rotated(p: Point, centre: Point, angle: f64) -> Point {
    let (sin, cos) = angle.sin_cos();
    let v = p - centre;
    centre + Vector::new(cos * v.x - sin * v.y, sin * v.x + cos * v.y)
}

proptest! {
    #![proptest_config(cases(500))]

    /// Source of the reference: parry2d-f64 0.31 `distance` of two segments.
    #[test]
    fn segment_segment_agrees_with_parry(seed: u64) {
        let mut d = Draw::from_state(seed);
        let p: Vec<Point> = (0..4).map(|_| drawn_point(&mut d, 1.0)).collect();
        let pair = segment_segment(p[0], p[1], p[2], p[3]);
        let outside = distance(
            &Isometry::identity(),
            &Segment::new(glam(p[0]), glam(p[1])),
            &Isometry::identity(),
            &Segment::new(glam(p[2]), glam(p[3])),
        )
        .unwrap()
        .distance;
        prop_assert!((pair.distance - outside).abs() < 1e-12);
        let line = Barrier::of_points(p[2..].to_vec(), false);
        let near = nearest_lines(&p[..2], &line, f64::INFINITY).unwrap();
        prop_assert!((near.distance - outside).abs() < 1e-12);
        prop_assert!(((near.first - near.second).norm() - near.distance).abs() < 1e-12);
        prop_assert!(((pair.first - pair.second).norm() - pair.distance).abs() < 1e-12);
    }

    /// Dense sampling of the arc: never below the closed form, and not above it by more than half
    /// a step of the arc.
    #[test]
    fn arc_segment_is_the_least_of_all_samples(seed: u64) {
        let mut d = Draw::from_state(seed);
        let centre = drawn_point(&mut d, 0.5);
        let (a, b) = (drawn_point(&mut d, 1.0), drawn_point(&mut d, 1.0));
        let from = drawn_point(&mut d, 1.0) - centre;
        let low = d.between(-3.0, 3.0);
        let span = match one_of(&mut d, 4) {
            0 => 0.0,
            1 => d.between(0.0, 0.6),
            2 => d.between(0.5, 3.3),
            _ => d.between(3.0, std::f64::consts::TAU),
        };
        let turn = |angle: f64| { let (s, c) = angle.sin_cos(); (c, s) };
        let arc = Arc::new(from, turn(low), turn(low + span), span);
        let (least, direction) = arc
            .nearest(&RadialSegment::new(centre, a, b), f64::INFINITY)
            .unwrap();
        let at = |angle: f64| {
            let p = rotated(centre + from, centre, angle);
            segment_segment(p, p, a, b).distance
        };
        let steps = 4000;
        let sampled = (0..=steps)
            .map(|i| at(low + span * f64::from(i) / f64::from(steps)))
            .fold(f64::INFINITY, f64::min);
        prop_assert!(least <= sampled + 1e-12, "{least} {sampled}");
        prop_assert!(least >= sampled - 0.5 * from.norm() * span / f64::from(steps) - 1e-12);
        // the place told is where it is reached
        let angle = arc.angle_to(direction);
        let angle = if angle > span + 1e-6 { angle - std::f64::consts::TAU } else { angle };
        prop_assert!((at(low + angle) - least).abs() < 1e-7, "{} {least}", at(low + angle));
    }

    /// A turning polygon against a polyline, sampled; both kinds of corner matter.
    #[test]
    fn turning_core_is_the_least_of_all_samples(seed: u64) {
        let drawn = random_leg(seed);
        let core = &drawn.leg.body.outline;
        let centre = drawn.leg.trunnion;
        let low = [0.0, 1.2, -1.5][(seed % 3) as usize];
        let high = low + 0.9;
        let turning = TurningCore::new(core, centre, low, high);
        for obstacle in &drawn.leg.well {
            let barrier = Barrier::new(obstacle);
            // lines that cross all the way have no corner that touches
            let first: Vec<Point> = core.iter().map(|&p| rotated(p, centre, low)).collect();
            if lines_cross(&first, &barrier) {
                continue;
            }
            let (least, angle) = turning.nearest(&RadialBarrier::new(&barrier, centre)).unwrap();
            let at = |angle: f64| {
                let placed: Vec<Point> = core.iter().map(|&p| rotated(p, centre, angle)).collect();
                nearest_lines(&placed, &barrier, f64::INFINITY).unwrap().distance
            };
            let sampled = (0..=600)
                .map(|i| at(low + (high - low) * f64::from(i) / 600.0))
                .fold(f64::INFINITY, f64::min);
            prop_assert!(least <= sampled + 1e-12);
            prop_assert!((at(angle) - least).abs() < 1e-9, "{} {least}", at(angle));
        }
    }

    #[test]
    fn sliding_core_is_the_least_of_all_samples(seed: u64) {
        let drawn = random_leg(seed);
        let core = &drawn.leg.strut.sliding_outline;
        let way = Vector::new(0.1, 0.25);
        for obstacle in &drawn.leg.well {
            let barrier = Barrier::new(obstacle);
            // lines that cross all the way have no corner that touches
            if lines_cross(core, &barrier) {
                continue;
            }
            let (least, share) = sliding_nearest(core, way, &barrier).unwrap();
            let at = |share: f64| {
                let placed: Vec<Point> = core.iter().map(|p| p + way * share).collect();
                nearest_lines(&placed, &barrier, f64::INFINITY).unwrap().distance
            };
            let sampled = (0..=400)
                .map(|i| at(f64::from(i) / 400.0))
                .fold(f64::INFINITY, f64::min);
            prop_assert!(least <= sampled + 1e-12);
            prop_assert!((at(share) - least).abs() < 1e-9);
        }
    }

    /// The bound of an interval holds for a core whose points run straight.
    #[test]
    fn lower_bound_holds_on_straight_runs(seed: u64) {
        let mut d = Draw::from_state(seed);
        let from: Vec<Point> = (0..3).map(|_| drawn_point(&mut d, 0.5)).collect();
        let size = d.between(0.0, 0.3);
        let to: Vec<Point> = from.iter().map(|p| p + drawn_point(&mut d, size).coords).collect();
        let drawn = random_leg(seed);
        for obstacle in &drawn.leg.well {
            let barrier = Barrier::new(obstacle);
            if nearest_lines(&from, &barrier, f64::INFINITY).unwrap().distance == 0.0 {
                continue;
            }
            let span = Span { from: &from, to: &to, stray: 0.0 };
            let bound = span.lower_bound(&barrier, f64::NEG_INFINITY, f64::INFINITY);
            for i in 0..=100 {
                let share = f64::from(i) / 100.0;
                let core: Vec<Point> =
                    from.iter().zip(&to).map(|(a, b)| a + (b - a) * share).collect();
                let distance = nearest_lines(&core, &barrier, f64::INFINITY).unwrap().distance;
                prop_assert!(distance >= bound - 1e-12, "{distance} {bound}");
            }
        }
    }

    /// Placed outlines apart from an obstacle, against parry2d-f64 0.31 `distance`: a bar as a
    /// segment, a quadrilateral as a convex polygon, the obstacle as a polyline.
    #[test]
    fn clearance_at_a_pose_agrees_with_parry(seed: u64) {
        let drawn = random_leg(seed);
        for obstacle in &drawn.leg.well {
            let barrier = Barrier::new(obstacle);
            let mut points: Vec<Glam> = obstacle.shape.points().iter().map(|&p| glam(p)).collect();
            if obstacle.shape.is_closed() {
                points.push(points[0]);
            }
            let line = Polyline::new(points, None);
            let here = Isometry::identity();
            let quad = &drawn.leg.strut.sliding_outline;
            let hull = ConvexPolygon::from_convex_hull(&quad.iter().map(|&p| glam(p)).collect::<Vec<_>>()).unwrap();
            let got = signed_clearance(quad, 0.0, &barrier).unwrap().unwrap().clearance;
            let outside = distance(&here, &hull, &here, &line).unwrap().distance;
            if got > 0.0 {
                prop_assert!((got - outside).abs() < 1e-9, "{got} {outside}");
            }
            let bar = [drawn.leg.actuator.mount, drawn.leg.actuator.attach];
            let got = signed_clearance(&bar, 0.02, &barrier).unwrap().unwrap().clearance;
            let outside = distance(&here, &Segment::new(glam(bar[0]), glam(bar[1])), &here, &line).unwrap().distance;
            if got > -0.02 {
                prop_assert!((got - (outside - 0.02)).abs() < 1e-9, "{got} {outside}");
            }
        }
    }

    /// Depth at one pose, against a dense sample of both lines.
    #[test]
    fn depth_is_the_greatest_of_all_samples(seed: u64) {
        let drawn = random_leg(seed);
        let core = &drawn.leg.body.outline;
        for obstacle in &drawn.leg.well {
            // put the obstacle's middle on the leg, so that they meet
            let points = obstacle.shape.points();
            let middle = points.iter().map(|p| p.coords).sum::<Vector>() / points.len() as f64;
            let shift = core[2].coords - middle;
            let moved: Vec<Point> = points.iter().map(|p| p + shift).collect();
            let barrier = Barrier::of_points(moved, obstacle.shape.is_closed());
            let signed = signed_clearance(core, 0.0, &barrier).unwrap().unwrap();
            let own = Barrier::of_points(core.clone(), true);
            let sample = |line: &Barrier, other: &Barrier| {
                line.edges
                    .iter()
                    .flat_map(|e| (0..=400).map(move |i| e.a + (e.b - e.a) * (f64::from(i) / 400.0)))
                    .map(|p| -other.signed(p).0)
                    .fold(f64::NEG_INFINITY, f64::max)
            };
            let depth = sample(&own, &barrier).max(sample(&barrier, &own));
            if depth > 0.0 {
                prop_assert!(signed.clearance < 0.0);
                prop_assert!(-signed.clearance > depth - 2.1e-5, "{} {depth}", signed.clearance);
                // sampled every 1/400 of an edge of up to 0.5 m
                prop_assert!(-signed.clearance < depth + 1.3e-3, "{} {depth}", signed.clearance);
            }
        }
    }
}

#[test]
fn crossing_number_on_a_concave_polygon() {
    let horseshoe: Vec<Point> = [
        (0.0, 0.0),
        (3.0, 0.0),
        (3.0, 3.0),
        (2.0, 3.0),
        (2.0, 1.0),
        (1.0, 1.0),
        (1.0, 3.0),
        (0.0, 3.0),
    ]
    .map(|(x, y)| Point::new(x, y))
    .to_vec();
    for (x, y, inside) in [
        (0.5, 2.0, true),
        (1.5, 2.0, false),
        (1.5, 0.5, true),
        (2.5, 2.9, true),
        (3.5, 0.5, false),
        (-0.5, 0.5, false),
    ] {
        assert_eq!(polygon_contains(&horseshoe, Point::new(x, y)), inside);
        let mut back = horseshoe.clone();
        back.reverse();
        assert_eq!(polygon_contains(&back, Point::new(x, y)), inside);
    }
}
