//! Rows of the tire's own leg against dense samples of random legs.
use gearswing_samples::Draw;
use proptest::prelude::*;

use super::super::segment::segment_segment;
use super::super::{
    ClearanceCase, ClearanceError, ClearanceOptions, PlacedOutline, clearances, leg_outlines,
};
use super::support::{cases, random_leg};
use crate::kinematics::Pose;
use crate::model::*;
use crate::result::{OwnClearance, TireState};
use crate::tires::TireSizes;

/// The tire's pieces in a pose, drawn anew: above and below the rim against the leg, else whole.
fn tire(
    leg: &Leg,
    sizes: &TireSizes,
    state: TireState,
    part: MovingPart,
    pose: &Pose,
) -> Vec<PlacedOutline> {
    let size = match state {
        TireState::New => sizes.new,
        TireState::Grown => sizes.grown,
    };
    let outline = |core| PlacedOutline {
        part: MovingPart::Wheel,
        tire: Some(state),
        core,
        radius: 0.0,
    };
    if leg.view == View::Side {
        return vec![PlacedOutline {
            radius: 0.5 * size.diameter,
            ..outline(vec![pose.axle])
        }];
    }
    let of_leg = matches!(part, MovingPart::LegBody | MovingPart::SlidingStrut);
    let rim = if of_leg {
        leg.wheel.tire.rim_diameter
    } else {
        0.0
    };
    let ranges = if of_leg { vec![1.0, -1.0] } else { vec![1.0] };
    let angle = leg.wheel.lean + pose.place.swing;
    let (up, across) = (
        Vector::new(-angle.sin(), angle.cos()),
        Vector::new(angle.cos(), angle.sin()),
    );
    ranges
        .into_iter()
        .map(|sign| {
            let half = if of_leg {
                0.25 * (size.diameter - rim)
            } else {
                0.5 * size.diameter
            };
            let middle = pose.axle
                + up * if of_leg {
                    sign * 0.25 * (size.diameter + rim)
                } else {
                    0.0
                };
            let r = size.shoulder_radius.min(half).min(0.5 * size.width);
            let (u, a) = (up * (half - r), across * (0.5 * size.width - r));
            PlacedOutline {
                radius: r,
                ..outline(vec![
                    middle - u - a,
                    middle - u + a,
                    middle + u + a,
                    middle + u - a,
                ])
            }
        })
        .collect()
}

fn edges(core: &[Point]) -> Vec<(Point, Point)> {
    match core {
        [one] => vec![(*one, *one)],
        [a, b] => vec![(*a, *b)],
        more => (0..more.len())
            .map(|i| (more[i], more[(i + 1) % more.len()]))
            .collect(),
    }
}

fn holds(polygon: &[Point], point: Point) -> bool {
    polygon.len() > 2 && super::super::barrier::polygon_contains(polygon, point)
}

/// Gap of two outlines; none where their cores overlap.
fn gap(a: &PlacedOutline, b: &PlacedOutline) -> Option<f64> {
    if holds(&a.core, b.core[0]) || holds(&b.core, a.core[0]) {
        return None;
    }
    let mut least = f64::INFINITY;
    for (p, q) in edges(&a.core) {
        for (r, s) in edges(&b.core) {
            least = least.min(segment_segment(p, q, r, s).distance);
        }
    }
    (least > 0.0).then_some(least - a.radius - b.radius)
}

/// No sample of the way of a random leg is below a row by more than its bound, and each row is
/// reached where it says.
fn rows_hold(seed: u64, side: bool) -> Result<(), TestCaseError> {
    let mut drawn = random_leg(seed);
    drawn.leg.view = if side { View::Side } else { View::Front };
    drawn.leg.out_of_plane.own_leg = OwnLeg::All;
    drawn.leg.well.clear();
    // far enough from the strut on some of the legs
    let mut draw = Draw::from_state(seed ^ 7);
    let off = draw.between(-0.25, 0.25);
    drawn.leg.strut.axle.x += off;
    drawn.sizes.new.width = draw.between(0.06, 0.2);
    drawn.sizes.grown.width = drawn.sizes.new.width * 1.04;
    let linkage = drawn.linkage();
    let sweep = drawn.sweep(181);
    prop_assume!(sweep.poses.len() > 20);
    let case = ClearanceCase {
        leg: &drawn.leg,
        sizes: &drawn.sizes,
        rule: &ClearanceRule::default(),
        linkage: &linkage,
        poses: &sweep.poses,
    };
    let found = match clearances(&case, &ClearanceOptions::default()) {
        Ok(found) => found,
        Err(ClearanceError::NotAssembled { .. } | ClearanceError::NotFollowed { .. }) => {
            return Ok(());
        }
        Err(other) => return Err(TestCaseError::fail(other.to_string())),
    };
    prop_assert!(!found.own.is_empty());
    let from = sweep.poses[0].place.progress;
    let to = sweep.poses[sweep.poses.len() - 1].place.progress;
    let at = |row: &OwnClearance, pose: &Pose| -> Option<f64> {
        let parts = leg_outlines(&drawn.leg, &drawn.sizes, pose);
        let part = parts.iter().find(|o| o.part == row.part).unwrap();
        let mut least = f64::INFINITY;
        for piece in tire(&drawn.leg, &drawn.sizes, row.tire, row.part, pose) {
            least = least.min(gap(&piece, part)?);
        }
        Some(least)
    };
    let poses: Vec<Pose> = (0..=400)
        .filter_map(|i| {
            linkage
                .pose((from + (to - from) * f64::from(i) / 400.0).min(to))
                .ok()
        })
        .collect();
    for row in &found.own {
        let told = row.tightest.clearance;
        let mut least = f64::INFINITY;
        let mut overlaps = false;
        for pose in &poses {
            match at(row, pose) {
                Some(gap) => least = least.min(gap),
                None => overlaps = true,
            }
        }
        if overlaps {
            prop_assert!(told < 0.0 && row.first_contact.is_some(), "{row:?}");
            continue;
        }
        // pieces are drawn a micrometer larger than they are
        prop_assert!(
            told - row.certified_to <= least + 1e-8,
            "{told} {least} {row:?}"
        );
        if told > 0.0 {
            prop_assert!(row.certified_to <= 1.1e-5_f64.max(0.012 * told), "{row:?}");
        }
        let pose = linkage.pose(row.tightest.place.progress).unwrap();
        if let Some(reached) = at(row, &pose) {
            let within = if told > 0.0 { 5e-6 } else { 1e-4 };
            prop_assert!((reached - told).abs() < within, "{reached} {row:?}");
            let between = (row.tightest.on_obstacle - row.tightest.on_part).norm();
            // in a wheel whose middle a part runs through, no way out is the shortest: both are there
            let through_the_middle = told < 0.0 && between == 0.0;
            let is_told = (between - told.abs()).abs() < 0.5 * within;
            prop_assert!(is_told || through_the_middle, "{between} {row:?}");
        }
        if let Some(contact) = row.first_contact {
            let before =
                (0..=60).map(|i| from + (contact.place.progress - from) * f64::from(i) / 60.0);
            for progress in before.filter(|&s| s < contact.place.progress) {
                let Ok(pose) = linkage.pose(progress) else {
                    continue;
                };
                prop_assert!(
                    at(row, &pose).is_some_and(|gap| gap > -2e-6),
                    "{progress} {row:?}"
                );
            }
        }
    }
    Ok(())
}

/// Legs whose least gap is far below that of the nearest node: they are certified to a share of
/// what they have, not of what the nodes have.
#[test]
fn a_gap_between_nodes_is_certified_to_its_own_share() {
    for (seed, side) in [
        (11_680_677_349_501_913_307, false),
        (2_952_796_500_063_057_531, false),
        (14_071_447_138_851_968_889, true),
        (2_750_332_647_287_610_063, false),
    ] {
        rows_hold(seed, side).unwrap();
    }
}

proptest! {
    #![proptest_config(cases(150))]

    #[test]
    fn rows_of_the_own_leg_are_certified(seed: u64, side: bool) {
        rows_hold(seed, side)?;
    }
}
