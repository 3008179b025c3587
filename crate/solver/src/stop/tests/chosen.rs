//! Small errors of the file, and legs that never left: the truth must not be ruled out.
use super::super::{StopError, explain_stop};
use super::causes::{explained, of, one_leg};
use super::contact::under_a_skin;
use crate::model::*;
use crate::prepared::PreparedGear;
use crate::result::{Check, Direction, Fit, Motion, StopCause};

fn seen_at(travel: f64) -> SeenStop {
    SeenStop {
        pump: PumpSeen::Running,
        ..SeenStop::at(HowFar::Travel {
            travel: Some(travel),
            within: 0.01,
        })
    }
}

/// Length of the actuator at a travel (m).
fn length_at(gear: &Gear, travel: f64) -> f64 {
    let linkage = crate::kinematics::Linkage::new(&gear.legs[0]);
    let progress = linkage.progress_at_travel(travel);
    linkage.pose(progress).unwrap().actuator_length
}

/// The real actuator runs out of stroke at 95 %; the file's has 4 mm more.
#[test]
fn a_stroke_that_is_shorter_than_in_the_file() {
    let mut file = one_leg();
    file.legs[0].actuator.longest = length_at(&file, 0.95) + 4e-3;
    let found = explained(&file, seen_at(0.95));
    let ends = of(&found, |c| matches!(c, StopCause::ActuatorEnds { .. }));
    let StopCause::ActuatorEnds { left } = ends.cause else {
        panic!("{ends:?}");
    };
    assert!((left - 4e-3).abs() < 1e-4, "{left}");
    assert_ne!(ends.fit, Fit::RuledOut, "{ends:?}");
}

/// The real skin is 15 mm nearer than drawn.
#[test]
fn a_skin_that_is_nearer_than_drawn() {
    let drawn = under_a_skin(0.8);
    // where the drawing has some millimeters left
    let nearest = [0.785, 0.775, 0.765, 0.755].into_iter().find_map(|travel| {
        let found = explained(&drawn, seen_at(travel));
        let mut all = found.explanations.into_iter();
        all.find(|one| one.fitted == 1 && matches!(one.cause, StopCause::Touches { .. }))
    });
    let nearest = nearest.unwrap();
    assert_eq!(nearest.fit, Fit::Fits, "{nearest:?}");
    let StopCause::Touches { clearance, .. } = nearest.cause else {
        panic!("{nearest:?}");
    };
    assert!(clearance > 0.0 && clearance < 0.025, "{clearance}");
}

/// A leg that never left stands for any supply that is too weak and any friction that is too large.
#[test]
fn a_leg_that_never_left_gives_bounds() {
    let gear = one_leg();
    let mut seen = seen_at(0.0);
    seen.pressure = Some(3e5);
    let found = explained(&gear, seen);
    let weak = of(&found, |c| matches!(c, StopCause::SourceWeak { .. }));
    assert_eq!(weak.fit, Fit::Fits, "{weak:?}");
    assert!(matches!(
        weak.cause,
        StopCause::SourceWeak { or_less: true, .. }
    ));
    let friction = of(&found, |c| matches!(c, StopCause::Friction { .. }));
    assert!(matches!(
        friction.cause,
        StopCause::Friction { or_more: true, .. }
    ));
    // the strut that the swing waits for is among them, and so is its length
    let strut = of(&found, |c| matches!(c, StopCause::StrutStays { .. }));
    assert_eq!(strut.fitted, 1);
    let found = explained(&gear, seen_at(0.0));
    let strut = of(&found, |c| matches!(c, StopCause::StrutStays { .. }));
    assert_eq!(strut.fit, Fit::Fits, "{strut:?}");
}

/// A leg at its end whose pump runs on stands there by itself.
#[test]
fn a_leg_at_its_end_is_not_held() {
    let found = explained(&one_leg(), seen_at(1.0));
    assert_eq!(found.explanations[0].cause, StopCause::AtItsEnd);
    let mut seen = seen_at(0.0);
    seen.selected = Direction::Down;
    let found = explained(&one_leg(), seen);
    assert_eq!(found.explanations[0].cause, StopCause::AtItsEnd);
}

/// Friction all the way against something at one place: a swing by hand tells.
#[test]
fn a_swing_by_hand_tells_drag_from_a_snag() {
    let gear = one_leg();
    let mut seen = seen_at(0.3);
    seen.pressure_within = 2e4;
    seen.forces_within = 0.02;
    seen.pressure =
        Some(crate::statics::available(&PreparedGear::of(&gear), 0, None).most(Motion::Retract));
    let found = explained(&gear, seen);
    let left: Vec<_> = found
        .explanations
        .iter()
        .filter(|one| one.fit != Fit::RuledOut)
        .map(|one| &one.cause)
        .collect();
    if let [StopCause::Friction { .. }, StopCause::HeldThere { .. }, ..]
    | [StopCause::HeldThere { .. }, StopCause::Friction { .. }, ..] = left.as_slice()
    {
        assert_eq!(found.next_check.unwrap().check, Check::DragsAll);
    } else {
        panic!("{left:?}");
    }
}

#[test]
fn what_says_nothing_of_the_place_is_refused() {
    let mut gear = one_leg();
    let swing = gear.legs[0].swing_up.abs();
    gear.legs[0].seen_stop = Some(SeenStop::at(HowFar::Angle {
        angle: Some(2.0 * swing),
        within: 0.02,
    }));
    assert!(matches!(
        explain_stop(&gear, 0),
        Err(StopError::BeyondSwing { .. })
    ));
    // the axle goes round the trunnion: always as far from it, once the strut is short
    let linkage = crate::kinematics::Linkage::new(&gear.legs[0]);
    let pose = linkage.pose(0.5).unwrap();
    let from = gear.legs[0].trunnion;
    gear.legs[0].seen_stop = Some(SeenStop::at(HowFar::AxleFrom {
        from,
        distance: Some((pose.axle - from).norm()),
        within: 2e-3,
    }));
    assert!(matches!(
        explain_stop(&gear, 0),
        Err(StopError::SaysNothing { .. })
    ));
}
