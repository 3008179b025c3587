//! What is not there clears nothing: intervals beyond the swept path, a part without points.
use super::super::barrier::Barrier;
use super::super::behind::first_behind;
use super::super::outline::all_parts;
use super::super::part::{Carrier, Part};
use super::super::path_nodes::PathNodes;
use super::super::rig::Rig;
use super::super::sweep::Sweep;
use super::support::random_leg;
use crate::model::Leg;
use crate::result::ClearanceError;

/// Looks at the path of a leg, and at all parts that are carried along it.
fn on_a_path(look: impl Fn(&Leg, &PathNodes, Vec<Part>)) {
    let drawn = random_leg(3);
    let leg = &drawn.leg;
    let linkage = drawn.linkage();
    let poses = drawn.sweep(61).poses;
    let rig = Rig::new(leg);
    let track = PathNodes::new(&linkage, rig, &leg.strut.shortening, &poses).unwrap();
    let parts = all_parts(leg, &rig, &drawn.sizes, None);
    look(leg, &track, parts);
}

#[test]
fn an_interval_that_is_not_there_may_be_anywhere() {
    on_a_path(|leg, track, parts| {
        let barriers: Vec<Barrier> = leg.well.iter().map(Barrier::new).collect();
        assert!(!barriers.is_empty());
        for part in parts {
            let sweep = Sweep::new(&part, track).unwrap();
            let beyond = sweep.len();
            assert!(sweep.range_bounds(0..beyond).is_finite());
            assert!(!sweep.range_bounds(0..beyond + 1).is_finite());
            assert_eq!(sweep.span(beyond).unwrap().stray, f64::INFINITY);
            for (obstacle, barrier) in barriers.iter().enumerate() {
                assert_eq!(sweep.box_gap(beyond, barrier), f64::NEG_INFINITY);
                let bound = sweep
                    .span(beyond)
                    .unwrap()
                    .lower_bound(barrier, 0.0, f64::INFINITY);
                assert_eq!(bound, f64::NEG_INFINITY);
                // the path itself is followed to its end
                assert!(first_behind(track, &sweep, barrier, obstacle).is_ok());
            }
        }
    });
}

/// No point of it comes near anything: it must not count as free.
#[test]
fn a_part_without_points_is_not_checked() {
    on_a_path(|_, track, parts| {
        for mut part in parts {
            let sound = Sweep::new(&part, track).unwrap();
            assert!(sound.core(track.nodes.len()).is_err());
            part.core.clear();
            part.carrier = Carrier::Leg;
            let kind = part.part;
            let wanted = ClearanceError::NothingToCheck { part: kind };
            assert_eq!(Sweep::new(&part, track).err(), Some(wanted), "{kind:?}");
        }
    });
}
