//! The certified minimum and the first contact of random legs against dense samples.
use proptest::prelude::*;

use super::super::{ClearanceCase, ClearanceError, ClearanceOptions, clearance_at, clearances};
use super::support::{Drawn, cases, random_leg};
use crate::kinematics::{Linkage, Pose};
use crate::model::{ClearanceRule, Shape};
use crate::result::{Clearance, PairClearance};

fn solve(drawn: &Drawn, linkage: &Linkage, poses: &[Pose]) -> Option<Clearance> {
    let case = ClearanceCase {
        leg: &drawn.leg,
        sizes: &drawn.sizes,
        rule: &ClearanceRule::default(),
        linkage,
        poses,
    };
    match clearances(&case, &ClearanceOptions::default()) {
        Ok(clearance) => Some(clearance),
        // a leg that cannot be assembled between two stations is rightly refused
        Err(
            ref error @ (ClearanceError::NotFollowed { from, to }
            | ClearanceError::Unresolved { from, to, .. }),
        ) => {
            let broken = (0..=10_000)
                .map(|i| from + (to - from) * f64::from(i) / 10_000.0)
                .any(|s| linkage.pose(s).is_err());
            assert!(broken, "{error}");
            None
        }
        Err(ClearanceError::NotAssembled { progress, .. }) => {
            assert!(linkage.pose(progress).is_err());
            None
        }
        Err(other) => panic!("{other}"),
    }
}

/// The pose at a sample; none where the links miss by a hair over a stretch shorter than that
/// between two stations.
fn sample(linkage: &Linkage, progress: f64) -> Option<Pose> {
    match linkage.pose(progress) {
        Ok(pose) => Some(pose),
        Err(miss) if miss.0 < 1e-4 => None,
        Err(miss) => panic!("{progress} {miss:?}"),
    }
}

fn at(drawn: &Drawn, linkage: &Linkage, progress: f64, pair: &PairClearance) -> f64 {
    let pose = linkage.pose(progress).unwrap();
    of_pair(drawn, &pose, pair)
}

fn of_pair(drawn: &Drawn, pose: &Pose, pair: &PairClearance) -> f64 {
    clearance_at(&drawn.leg, &drawn.sizes, pose)
        .unwrap()
        .iter()
        .find(|c| c.obstacle == pair.obstacle && c.part == pair.part && c.tire == pair.tire)
        .unwrap()
        .tightest
        .clearance
}

proptest! {
    #![proptest_config(cases(300))]

    /// Never above a sample by more than its own bound, never below what is reached at its place.
    #[test]
    fn minimum_is_certified(seed: u64) {
        let drawn = random_leg(seed);
        let linkage = drawn.linkage();
        let sweep = drawn.sweep(721);
        prop_assume!(sweep.poses.len() > 60);
        let Some(clearance) = solve(&drawn, &linkage, &sweep.poses) else { return Ok(()) };
        let from = sweep.poses[0].place.progress;
        let to = sweep.poses[sweep.poses.len() - 1].place.progress;
        // other places than the stations
        let steps = 331;
        let mut least = vec![f64::INFINITY; clearance.pairs.len()];
        for i in 0..=steps {
            let progress = (from + (to - from) * f64::from(i) / f64::from(steps)).min(to);
            let Some(pose) = sample(&linkage, progress) else { continue };
            let here = clearance_at(&drawn.leg, &drawn.sizes, &pose).unwrap();
            prop_assert_eq!(here.len(), clearance.pairs.len());
            for (least, here) in least.iter_mut().zip(&here) {
                *least = least.min(here.tightest.clearance);
            }
        }
        for (pair, sampled) in clearance.pairs.iter().zip(least) {
            let got = pair.tightest.clearance;
            prop_assert!(got - pair.certified_to <= sampled + 1e-9,
                "{got} sampled {sampled} {pair:?}");
            // 1e-5 asked for; depths of contact to 1e-4
            let allowed = if got <= 0.0 { 1e-4 } else { 1.001e-5 };
            prop_assert!(pair.certified_to <= allowed || got <= 0.0, "{pair:?}");
            let reached = at(&drawn, &linkage, pair.tightest.place.progress, pair);
            prop_assert!((reached - got).abs() <= if got <= 0.0 { 1e-4 } else { 1e-9 },
                "{reached} {pair:?}");
        }
    }

    /// Free at the place told and everywhere before, touching within the bracket.
    #[test]
    fn first_contact_is_bracketed(seed: u64) {
        let drawn = random_leg(seed);
        let linkage = drawn.linkage();
        let sweep = drawn.sweep(721);
        prop_assume!(sweep.poses.len() > 60);
        let Some(clearance) = solve(&drawn, &linkage, &sweep.poses) else { return Ok(()) };
        for pair in &clearance.pairs {
            let Some(contact) = pair.first_contact else {
                prop_assert!(pair.tightest.clearance > 0.0);
                continue;
            };
            prop_assert!(pair.tightest.clearance <= 0.0);
            prop_assert!(contact.bracket <= 1e-6);
            let start = sweep.poses[0].place.progress;
            let progress = contact.place.progress;
            if progress == start {
                prop_assert!(at(&drawn, &linkage, start, pair) <= 0.0);
                continue;
            }
            for i in 0..=200 {
                let s = start + (progress - start) * f64::from(i) / 200.0;
                let Some(pose) = sample(&linkage, s) else { continue };
                prop_assert!(of_pair(&drawn, &pose, pair) > 0.0, "{s} {pair:?}");
            }
            // brackets are 9e-7 of progress wide at most; 1e-8 m stands for a graze. Where three
            // features of a surface are all but equally far, which of them is the nearest (and so
            // the side) is settled a little early.
            let late: &[f64] = match drawn.leg.well[pair.obstacle].shape {
                Shape::Solid { .. } => &[9e-7],
                Shape::Surface { .. } => &[9e-7, 1e-5, 1e-4],
            };
            let touched = late
                .iter()
                .filter_map(|late| sample(&linkage, progress + late))
                .map(|pose| of_pair(&drawn, &pose, pair))
                .reduce(f64::min);
            // nothing to look at where the contact comes just before such a stretch
            prop_assert!(touched.is_none_or(|touched| touched <= 1e-8), "{touched:?} {pair:?}");
        }
    }

    #[test]
    fn curves_and_governing_row(seed: u64) {
        let drawn = random_leg(seed);
        let linkage = drawn.linkage();
        let sweep = drawn.sweep(181);
        prop_assume!(sweep.poses.len() > 20);
        let Some(clearance) = solve(&drawn, &linkage, &sweep.poses) else { return Ok(()) };
        let governing = &clearance.pairs[clearance.governing.unwrap()];
        for pair in &clearance.pairs {
            // the deepest contact governs; without one, the least spare
            if governing.tightest.clearance <= 0.0 {
                prop_assert!(governing.tightest.clearance <= pair.tightest.clearance);
            } else {
                prop_assert!(pair.tightest.clearance > 0.0 && governing.spare() <= pair.spare());
            }
        }
        for curve in &clearance.curves {
            let pairs: Vec<&PairClearance> = clearance.pairs.iter()
                .filter(|p| p.obstacle == curve.obstacle && p.tire == curve.tire)
                .collect();
            let least = pairs.iter().map(|p| p.tightest.clearance).fold(f64::INFINITY, f64::min);
            let lowest = curve.points.iter().map(|p| p.clearance).fold(f64::INFINITY, f64::min);
            prop_assert!((lowest - least).abs() <= 1e-4, "{lowest} {least}");
            prop_assert!(curve.points.windows(2).all(|w| w[0].progress < w[1].progress));
            for point in curve.points.iter().step_by(7) {
                let here = pairs.iter()
                    .map(|pair| at(&drawn, &linkage, point.progress, pair))
                    .fold(f64::INFINITY, f64::min);
                if point.beyond {
                    prop_assert!(here >= point.clearance - 1e-9);
                } else {
                    prop_assert!((here - point.clearance).abs() <= 1e-4, "{here} {point:?}");
                }
            }
        }
    }
}

/// Over a wide patch the corner of one edge and the middle of another are all but equally far: the
/// side of the surface is then a matter of micrometers in a depth of a meter.
#[test]
fn depth_far_behind_a_bent_surface_is_found() {
    let drawn = random_leg(1_832_046_897_465_450_452);
    let linkage = drawn.linkage();
    let clearance = solve(&drawn, &linkage, &drawn.sweep(121).poses);
    assert_eq!(clearance.map(|c| c.pairs.len()), Some(27));
}

/// A strut that ends its way 6 µm off a corner of a solid: nearer than what a clearance is worked
/// out to, yet no touch.
#[test]
fn near_miss_is_no_contact() {
    let drawn = random_leg(8_610_035_308_536_180_708);
    let clearance = solve(&drawn, &drawn.linkage(), &drawn.sweep(721).poses).unwrap();
    let near: Vec<_> = clearance
        .pairs
        .iter()
        .filter(|pair| pair.tightest.clearance.abs() < 1e-5)
        .collect();
    let [miss] = near[..] else { panic!("{near:?}") };
    assert!(miss.tightest.clearance > 6e-6 && miss.first_contact.is_none());
    assert!(miss.certified_to < miss.tightest.clearance, "{miss:?}");
}
