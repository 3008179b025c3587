//! Place and crossing against closed forms.
use super::super::fit::{WRONG_LOOK, crossing};
use super::super::place::{Stood, stood};
use super::super::{StopError, explain_stop};
use crate::kinematics::{Linkage, Sweep};
use crate::model::{HowFar, Joint, Pin, Point, SeenStop};
use crate::result::{Fit, Phase, Place, StopCause};
use gearswing_samples::pack::gear;

fn stood_at(travel: f64, uncertainty: f64) -> Stood {
    Stood {
        place: Place {
            phase: Phase::Swing,
            progress: travel,
            travel,
            swing: travel,
        },
        uncertainty,
    }
}

/// h = a − b·s against s = s0: the weighted mean of both, textbook (least squares of two readings).
#[test]
fn crossing_of_a_straight_line_is_the_weighted_mean() {
    let (a, b, s0, u, w) = (0.9, 1.5, 0.55, 0.02, 0.03);
    let line = (0..=20).map(|i| {
        let s = f64::from(i) / 20.0;
        (s, a - b * s)
    });
    let found = crossing(line, &stood_at(s0, u), w).unwrap();
    let (p, q) = (1.0 / (u * u), (b / w) * (b / w));
    let mean = (p * s0 + q * a / b) / (p + q);
    assert!((found.travel - mean).abs() < 1e-12, "{found:?} {mean}");
    // The sum of squares of two readings is their difference over both uncertainties.
    let squares = (s0 - a / b).powi(2) / (u * u + (w / b).powi(2));
    assert!((found.squares - squares).abs() < 1e-9);
}

/// A leg that has passed a lower place cannot stop at a higher one.
#[test]
fn only_a_record_stops() {
    let valley = [(0.0, 3.0), (0.3, 1.0), (0.6, 2.0), (1.0, 0.5)];
    // Seen in the middle of the rise: the ends of the rise are the nearest places.
    let found = crossing(valley, &stood_at(0.45, 0.01), 1.0).unwrap();
    assert!((found.travel - 0.3).abs() < 1e-12, "{found:?}");
    // On the second fall it must first come below 1, at 0.6 + 0.4·(1/1.5).
    let found = crossing(valley, &stood_at(0.8, 1e-4), 1e3).unwrap();
    let below = 0.6 + 0.4 / 1.5;
    assert!((found.travel - below).abs() < 1e-9, "{found:?}");
}

#[test]
fn a_wrong_look_weighs_one_in_fifty() {
    assert!((WRONG_LOOK - (-2.0 * 0.02_f64.ln()).sqrt()).abs() < 1e-15);
}

/// Distances taken from a pose lead back to it.
#[test]
fn distances_lead_back_to_travel() {
    let gear = gear();
    let leg = &gear.legs[2];
    let linkage = Linkage::new(leg);
    let sweep = Sweep::new(leg, &linkage, 721);
    let from = Point::new(0.4, 0.1);
    for travel in [0.2, 0.5, 0.83, 0.97] {
        let pose = linkage.pose(linkage.progress_at_travel(travel)).unwrap();
        let by = |how_far| {
            let found = stood(leg, &linkage, &sweep, &SeenStop::at(how_far)).unwrap();
            assert!(
                (found.place.travel - travel).abs() < 1e-5,
                "{:?} {travel}",
                found.place
            );
            found.uncertainty
        };
        by(HowFar::Angle {
            angle: Some(travel * leg.swing_up.abs()),
            within: 0.01,
        });
        let within = 0.001;
        let pins = by(HowFar::ActuatorPins {
            distance: Some(pose.actuator_length),
            within,
        });
        // To first order the half-width goes with the slope of the length.
        let arm = pose.moment_arm().unwrap().abs() * leg.swing_up.abs();
        assert!((2.0 * pins / (within / arm) - 1.0).abs() < 0.05);
        by(HowFar::AxleFrom {
            from,
            distance: Some((pose.axle - from).norm()),
            within,
        });
    }
}

#[test]
fn a_distance_that_is_nowhere_or_twice_says_so() {
    let mut gear = gear();
    let leg = &mut gear.legs[0];
    let how_far = |distance| HowFar::AxleFrom {
        from: Point::new(0.5, -0.5),
        distance: Some(distance),
        within: 0.002,
    };
    leg.seen_stop = Some(SeenStop::at(how_far(5.0)));
    assert!(matches!(
        explain_stop(&gear, 0),
        Err(StopError::NotOnTheWay { seen, .. }) if seen == 5.0
    ));
    // Level with the middle of the arc the axle comes nearer and goes away again.
    let leg = &mut gear.legs[0];
    leg.seen_stop = Some(SeenStop::at(how_far(0.25)));
    let found = explain_stop(&gear, 0);
    assert!(
        matches!(found, Err(StopError::Ambiguous { first, second, .. }) if first < second),
        "{found:?}"
    );
    gear.legs[0].seen_stop = Some(SeenStop::at(HowFar::Angle {
        angle: None,
        within: 0.02,
    }));
    assert_eq!(explain_stop(&gear, 0), Err(StopError::HowFarNotEntered));
    gear.legs[0].seen_stop = None;
    assert_eq!(explain_stop(&gear, 0), Err(StopError::NothingSeen));
}

/// Pins that bind from the start keep a leg from swinging (see the tests of pin friction): what moves its strut
/// alone brings it nowhere, and no cause that needs it to have come by explains a place on the way.
#[test]
fn a_strut_that_moves_alone_explains_no_place() {
    let mut gear = gear();
    let jack = |leg: &crate::model::Leg| leg.drive.strut_jack.is_some();
    let leg = gear.legs.iter().position(jack).unwrap();
    gear.legs[leg].pins.trunnion = Pin::rubbing(0.45, 1.4);
    let mut fitting = |travel: f64| {
        gear.legs[leg].seen_stop = Some(SeenStop::at(HowFar::Travel {
            travel: Some(travel),
            within: 0.01,
        }));
        let found = explain_stop(&gear, leg).unwrap().explanations;
        let fits = found.into_iter().filter(|one| one.fit != Fit::RuledOut);
        fits.map(|one| one.cause).collect::<Vec<_>>()
    };
    assert_eq!(fitting(0.5), []);
    let joint = Joint::Trunnion;
    assert!(fitting(0.0).contains(&StopCause::Binds { joint }));
}
