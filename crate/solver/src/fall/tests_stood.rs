//! Friction of what has stood, tight pins, and falls against more friction than is given.
use super::fall_of;
use super::tests::{SLIDES, pendulum};
use crate::kinematics::Linkage;
use crate::model::{Conditions, Fluid, Leg, Pin};
use crate::result::{Fall, FallOutcome};
use gearswing_samples::leg::{kinds, pins_of_leg};

const G: f64 = 9.80665;

fn fall(leg: &Leg, times: f64) -> Fall {
    let linkage = Linkage::new(leg);
    fall_of(
        leg,
        &linkage,
        &Fluid::default(),
        &Conditions::default(),
        times,
    )
    .unwrap()
}

/// A pendulum of 8 kg, 0.7 m below a trunnion with a couple C, let go at an angle from hanging. It
/// starts where its weight's moment m·g·l·sin φ is more than the couple that has stood; the work of its
/// weight over the swing is m·g·l·(1 − cos φ), that of the couple C·φ: n is one over the other, and what
/// closes it over what holds it is nothing at the bottom. Statics and energy, textbook.
#[test]
fn a_tight_trunnion_by_statics_and_energy() {
    let (swing, weight) = (1.2_f64, 8.0 * G * 0.7);
    let at_up = weight * swing.sin();
    let with = |couple: f64, break_out: Option<f64>| {
        let mut leg = pendulum(swing);
        leg.pins.trunnion = Pin::tight(couple);
        leg.fall.pin_break_out = break_out;
        fall(&leg, 1.5)
    };
    let work = weight * (1.0 - swing.cos()) / swing;
    // by default half as much again to start
    for (share, break_out, starts) in [
        (0.99 / 1.5, None, true),
        (1.01 / 1.5, None, false),
        (0.99 / 3.0, Some(3.0), true),
        (1.01 / 3.0, Some(3.0), false),
        (0.99, Some(1.0), true),
        (1.01, Some(1.0), false),
    ] {
        let result = with(share * at_up, break_out);
        let stays = result.outcome == FallOutcome::StaysUp;
        assert_eq!(stays, !starts, "{share} {break_out:?} {:?}", result.outcome);
        let stood = share * at_up * break_out.unwrap_or(1.5);
        let left = at_up - stood;
        assert!((result.moment_at_up.unwrap() - left).abs() < 1e-6 * at_up);
    }
    let light = with(0.5 * work, None);
    let FallOutcome::ReachesLock(_) = light.outcome else {
        panic!("{light:?}");
    };
    let factor = light.friction_factor.unwrap();
    assert!((factor / 2.0 - 1.0).abs() < 1e-3, "{factor}");
    assert!(light.required.unwrap().reaches);
    assert!(light.start.unwrap().ratio.abs() < 1e-6);
    assert!(light.energy.residual.abs() < 1e-6);
    let heavy = with(work / 1.4, Some(1.0));
    assert!(!heavy.required.unwrap().reaches);
    assert!((heavy.friction_factor.unwrap() / 1.4 - 1.0).abs() < 1e-3);
    // it stops where the weight's work is used up: 1 − cos φ over the way so far equals C/(m·g·l)
    let short = with(1.1 * work, Some(1.0));
    let FallOutcome::StopsShort { place, .. } = short.outcome else {
        panic!("{short:?}");
    };
    let lost = 1.1 * work * (swing - place.swing.abs());
    let given = weight * (place.swing.cos() - swing.cos());
    assert!((given / lost - 1.0).abs() < 1e-4, "{given} {lost}");
    let missing = short.short.unwrap();
    // most is missing at the bottom, where the weight closes nothing
    assert!((missing.missing_share.unwrap() * at_up / (1.1 * work) - 1.0).abs() < 1e-3);
    let chord = 2.0 * 0.7 * (0.5 * place.swing.abs()).sin();
    assert!((missing.from_stop / chord - 1.0).abs() < 1e-6);
}

/// On legs of every kind, the fall at the required factor is that of a leg with so much friction and the
/// same break-out friction, and the factor that just stops it lies on the same side of it.
#[test]
fn the_required_factor_is_a_whole_fall_of_its_own() {
    let mut compared = [0; 2];
    for (number, mut leg) in kinds().into_iter().enumerate() {
        if number % 2 == 0 {
            leg.pins = pins_of_leg(Pin::rubbing(0.006, 0.1));
        }
        leg.actuator.seal_friction = Some(SLIDES);
        let Some(limit) = fall(&leg, 1.5).seal_friction_limit else {
            continue;
        };
        leg.actuator.seal_break_out = Some(SLIDES);
        for share in [0.3, 0.66, 0.67, 0.9] {
            leg.actuator.seal_friction = Some(share * limit);
            let result = fall(&leg, 1.5);
            let Some(required) = result.required else {
                continue;
            };
            let mut more = leg.clone();
            more.actuator.seal_friction = Some(1.5 * share * limit);
            for pin in more.pins.all_mut() {
                *pin = pin.times(1.5);
            }
            // what holds it at up stays
            more.fall.pin_break_out = Some(1.0);
            let whole = fall(&more, 1.5);
            assert_eq!(required.reaches, whole.reaches_lock(), "{share} {leg:?}");
            match result.friction_factor {
                Some(factor) => assert_eq!(factor >= 1.5, required.reaches, "{factor}"),
                None => assert!(required.reaches),
            }
            compared[usize::from(required.reaches)] += 1;
        }
    }
    assert!(compared.iter().all(|&count| count > 8), "{compared:?}");
}

/// Pins that rub ever more hold the leg where it stands in the end, with no number for what is missing:
/// a load that presses a pin as much as it pushes the leg on never frees it.
#[test]
fn pins_that_bind_leave_no_number() {
    let mut bound = 0;
    for leg in kinds() {
        for friction in [0.1, 0.4, 0.8, 1.2] {
            let mut leg = leg.clone();
            leg.pins = pins_of_leg(Pin::rubbing(0.05, friction));
            leg.fall.pin_break_out = Some(1.0);
            let result = fall(&leg, 1.5);
            if result.moment_at_up.is_none() {
                bound += 1;
                assert_eq!(result.outcome, FallOutcome::StaysUp, "{friction} {leg:?}");
                assert_eq!(result.short.unwrap().missing_share, None);
            } else if let Some(short) = result.short {
                assert!(short.missing_share.unwrap().is_finite());
            }
        }
    }
    assert!(bound > 3, "{bound}");
}
