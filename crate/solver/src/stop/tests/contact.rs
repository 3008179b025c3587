//! Contact, too long a strut, and mirror images.
use super::causes::{explained, of, one_leg};
use crate::kinematics::{Linkage, Sweep};
use crate::model::*;
use crate::result::{Check, Finds, Fit, StopCause};
use gearswing_samples::pack::skin_over_the_wheel;

/// Side view, wheel a disc of radius R under a level skin: it touches when the axle has risen to R
/// below it, whatever the angle.
pub(super) fn under_a_skin(travel: f64) -> Gear {
    let mut gear = one_leg();
    let leg = &mut gear.legs[0];
    leg.view = View::Side;
    leg.wheel.lean = 0.0;
    leg.wheel.tire.grown = Grown::Given {
        diameter: leg.wheel.tire.diameter,
        width: leg.wheel.tire.width,
        basis: Basis::Unstated,
    };
    let pose = Linkage::new(leg)
        .pose(Linkage::new(leg).progress_at_travel(travel))
        .unwrap();
    let radius = 0.5 * leg.wheel.tire.diameter;
    let skin = pose.axle.y + radius;
    leg.well = vec![skin_over_the_wheel(3.0, skin)];
    gear
}

#[test]
fn contact_is_found_where_it_begins() {
    let travel = 0.8;
    let gear = under_a_skin(travel);
    let mut seen = SeenStop::at(HowFar::Travel {
        travel: Some(travel),
        within: 0.01,
    });
    let found = explained(&gear, seen.clone());
    let best = &found.explanations[0];
    let StopCause::Touches {
        obstacle: 0,
        part: MovingPart::Wheel,
        clearance,
        ..
    } = best.cause
    else {
        panic!("{best:?}");
    };
    assert!(clearance.abs() < 1e-3, "{clearance}");
    assert_eq!(best.fit, Fit::Fits);
    assert_eq!(best.fitted, 0);
    // An early switch comes next: it would have stopped the pump, which costs nothing to notice.
    assert_eq!(found.next_check.unwrap().check, Check::PumpRuns);
    assert!(!found.told_apart);
    // It ran on: what is left is something that is not drawn. Only the chosen numbers speak against
    // it, and no check of a number can tell.
    seen.pump = PumpSeen::Running;
    let found = explained(&gear, seen.clone());
    assert!(matches!(
        found.explanations[0].cause,
        StopCause::Touches { .. }
    ));
    assert!(matches!(
        found.explanations[1].cause,
        StopCause::HeldThere { .. }
    ));
    assert!(found.next_check.is_none());
    // Seen less well, a weak source is in the running: a look with a lamp decides.
    seen.how_far = HowFar::Travel {
        travel: Some(travel),
        within: 0.3,
    };
    let found = explained(&gear, seen.clone());
    assert_eq!(found.next_check.unwrap().check, Check::Contact);
    assert_eq!(found.next_check.unwrap().if_first, Finds::Yes);
    // The pump had stopped: a leg that touches does not do that.
    seen.pump = PumpSeen::Stopped;
    let found = explained(&gear, seen);
    assert!(matches!(
        found.explanations[0].cause,
        StopCause::SwitchEarly { .. }
    ));
    // one look may be wrong
    assert_eq!(
        of(&found, |c| matches!(c, StopCause::Touches { .. })).fit,
        Fit::Doubtful
    );
}

#[test]
fn a_leg_far_from_the_skin_does_not_touch_it() {
    let gear = under_a_skin(0.8);
    let seen = SeenStop::at(HowFar::Travel {
        travel: Some(0.6),
        within: 0.01,
    });
    let found = explained(&gear, seen);
    assert_eq!(
        of(&found, |c| matches!(c, StopCause::Touches { .. })).fit,
        Fit::RuledOut
    );
}

/// A strut that stays longer by m carries the wheel further out; the travel at which it then comes
/// to a wall is found by the pose of the longer leg and the radius of the disc.
#[test]
fn a_long_strut_is_found_with_what_is_missing() {
    let missing = 0.02;
    let mut gear = under_a_skin(0.999);
    let leg = &mut gear.legs[0];
    let radius = 0.5 * leg.wheel.tire.diameter;
    leg.swing_up = 1.2;
    // With the whole shortening it stays 10 mm clear at up.
    let wall = Linkage::new(leg).pose(1.0).unwrap().axle.x + radius + 0.01;
    leg.well[0].shape = Shape::Surface {
        points: vec![Point::new(wall, -3.0), Point::new(wall, 3.0)],
    };
    let mut long = leg.clone();
    long.strut.shortening = Shortening::BeforeSwing {
        amount: 0.05 - missing,
    };
    let sweep = Sweep::new(&long, &Linkage::new(&long), 2001);
    let touches = sweep.poses.iter().find(|pose| pose.axle.x + radius >= wall);
    let seen = SeenStop::at(HowFar::Travel {
        travel: Some(touches.unwrap().place.travel),
        within: 0.006,
    });
    let found = explained(&gear, seen);
    let strut = of(&found, |c| matches!(c, StopCause::StrutLong { .. }));
    let StopCause::StrutLong {
        missing: m, amount, ..
    } = strut.cause
    else {
        unreachable!()
    };
    assert_eq!(strut.fit, Fit::Fits);
    assert_eq!(amount, 0.05);
    assert!((m - missing).abs() < 1e-3, "{m}");
}

#[test]
fn mirror_images_are_explained_alike() {
    let gear = under_a_skin(0.7);
    let seen = SeenStop {
        pressure: Some(4.9e6),
        ..SeenStop::at(HowFar::Travel {
            travel: Some(0.71),
            within: 0.02,
        })
    };
    let mut mirrored = gear.clone();
    mirror(&mut mirrored.legs[0]);
    let (a, b) = (explained(&gear, seen.clone()), explained(&mirrored, seen));
    for (a, b) in a.explanations.iter().zip(&b.explanations) {
        assert_eq!(
            std::mem::discriminant(&a.cause),
            std::mem::discriminant(&b.cause)
        );
        assert!(
            (a.score - b.score).abs() < 1e-6 * a.score.max(1.0),
            "{a:?} {b:?}"
        );
    }
}

/// x to −x, and the swing with it.
fn mirror(leg: &mut Leg) {
    let flip = |point: &mut Point| point.x = -point.x;
    leg.swing_up = -leg.swing_up;
    flip(&mut leg.trunnion);
    flip(&mut leg.body.centre);
    flip(&mut leg.strut.axle);
    flip(&mut leg.strut.axis_bottom);
    flip(&mut leg.strut.axis_top);
    flip(&mut leg.actuator.mount);
    flip(&mut leg.actuator.attach);
    if let Brace::Folding(brace) = &mut leg.brace {
        flip(&mut brace.airframe_pivot);
        flip(&mut brace.knee);
        flip(&mut brace.leg_attach);
    }
    for obstacle in &mut leg.well {
        if let Shape::Surface { points } = &mut obstacle.shape {
            points.iter_mut().for_each(flip);
            // The free side stays the free side.
            points.reverse();
        }
    }
}
