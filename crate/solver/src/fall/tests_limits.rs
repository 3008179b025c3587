//! How far a fall can be driven, against single falls.
use super::drop::{Case, Ending, TOLERANCE, drop};
use super::fall_of::{case, fall_of};
use super::tests::SLIDES;
use super::way::FallWay;
use crate::kinematics::Linkage;
use crate::model::*;
use crate::result::{FallAirspeed, FallOutcome, LegResult, Unpowered, Verdict};
use crate::{Options, solve_leg};
use gearswing_samples::leg::{kinds, leg, pins_of_leg};
use gearswing_samples::pack::on_motors;

/// The friction and the airspeed at which it just stops short bracket what single falls do: to 0.1 %.
#[test]
fn limits_agree_with_single_falls() {
    let mut leg = leg();
    leg.air.wheel_drag_area = 0.02;
    leg.actuator.seal_friction = Some(SLIDES);
    let conditions = Conditions {
        sideslip: 0.3,
        ..Conditions::default()
    };
    for orifice in [None, Some(5e-3)] {
        leg.fall.return_orifice = orifice;
        let linkage = Linkage::new(&leg);
        let track = FallWay::new(&leg, &linkage, &conditions).unwrap();
        let case = case(&leg, &Fluid::default(), &conditions);
        let result = fall_of(&leg, &linkage, &Fluid::default(), &conditions, 1.5).unwrap();
        let limit = result.seal_friction_limit.unwrap();
        let factor = result.friction_factor.unwrap();
        assert!((factor * leg.actuator.seals() / limit - 1.0).abs() < 1e-3);
        for (share, ending) in [(0.999, true), (1.001, false)] {
            let case = Case {
                seal_friction: share * limit,
                ..case
            };
            let ends = drop(&track, &case, TOLERANCE).ending;
            assert_eq!(ends == Ending::Lock, ending, "{share} {orifice:?} {ends:?}");
        }
        if let FallAirspeed::UpTo { airspeed } = result.airspeed {
            for (share, ending) in [(0.999, true), (1.001, false)] {
                let speed = share * airspeed;
                let case = Case {
                    dynamic_pressure: 0.5 * 1.225 * speed * speed,
                    ..case
                };
                let ends = drop(&track, &case, TOLERANCE).ending;
                assert_eq!(ends == Ending::Lock, ending, "{share} {airspeed} {ends:?}");
            }
        } else {
            panic!("{:?}", result.airspeed);
        }
    }
}

/// So do legs of every kind whose pins rub, their loads being those at the limit: to 2 %.
#[test]
fn limits_of_rubbing_legs_agree_with_single_falls() {
    let conditions = Conditions {
        sideslip: 0.3,
        ..Conditions::default()
    };
    let mut compared = [0; 3];
    for mut leg in kinds() {
        for (friction, orifice) in [(0.05, None), (0.2, None), (0.2, Some(4e-3))] {
            let pin = Pin::rubbing(0.006, friction);
            leg.pins = pins_of_leg(pin);
            leg.actuator.seal_friction = Some(SLIDES);
            leg.air.wheel_drag_area = 0.03;
            leg.fall.return_orifice = orifice;
            let linkage = Linkage::new(&leg);
            let falls = |leg: &Leg, conditions: &Conditions| {
                fall_of(leg, &linkage, &Fluid::default(), conditions, 1.5).unwrap()
            };
            // seals that leave factors as a leg in use has
            let limit = falls(&leg, &conditions).seal_friction_limit;
            leg.actuator.seal_friction = Some(0.3 * limit.unwrap());
            let result = falls(&leg, &conditions);
            // what holds it at up is not what a limit changes
            leg.actuator.seal_break_out = Some(leg.actuator.seals_stood());
            for (share, locks) in [(0.98, true), (1.02, false)] {
                let check = |what: usize, leg: &Leg, conditions: &Conditions| {
                    let outcome = falls(leg, conditions).outcome;
                    let reached = matches!(outcome, FallOutcome::ReachesLock(_));
                    assert_eq!(
                        reached, locks,
                        "{what} {share} {friction} {orifice:?} {leg:?}"
                    );
                };
                if let Some(factor) = result.friction_factor {
                    let mut leg = leg.clone();
                    leg.actuator.seal_friction = Some(leg.actuator.seals() * share * factor);
                    leg.fall.pin_break_out = Some(1.0);
                    let pins = &mut leg.pins;
                    for pin in [
                        &mut pins.trunnion,
                        &mut pins.brace_pivot,
                        &mut pins.knee,
                        &mut pins.leg_attach,
                    ] {
                        *pin = pin.times(share * factor);
                    }
                    check(0, &leg, &conditions);
                    compared[0] += 1;
                }
                if let Some(limit) = result.seal_friction_limit {
                    let mut leg = leg.clone();
                    leg.actuator.seal_friction = Some(share * limit);
                    check(1, &leg, &conditions);
                    compared[1] += 1;
                }
                if let FallAirspeed::UpTo { airspeed } = result.airspeed {
                    let conditions = Conditions {
                        airspeed: share * airspeed,
                        ..conditions
                    };
                    check(2, &leg, &conditions);
                    compared[2] += 1;
                }
            }
        }
    }
    assert!(compared.iter().all(|&count| count > 60), "{compared:?}");
}

/// An electric actuator without power holds with what drives it back, as a seal without a restrictor does;
/// one of which that is not known holds nothing, and the answer is not sure.
#[test]
fn electric_actuators_fall_by_what_drives_them_back() {
    let options = Options::default();
    let fall = |gear: &Gear| solve_leg(gear, 0, &options).unwrap();
    let locks = |found: &LegResult| found.findings[2].verdict;
    let mut seals = gearswing_samples::pack::gear();
    let leg = &mut seals.legs[0];
    leg.actuator.seal_friction = Some(60.0);
    leg.drive.orifice_down = None;
    let mut driven = on_motors(seals.clone(), [9e3, 12.0], [0.02, 0.01]);
    let leg = &mut driven.legs[0];
    leg.actuator.seal_friction = Some(200.0);
    leg.fall.return_orifice = Some(3e-4);
    leg.drive.electric = leg.drive.electric.map(|motor| ElectricActuator {
        back_drive: Some(60.0),
        ..motor
    });
    let (by_seals, by_screw) = (fall(&seals), fall(&driven));
    let [a, b] = [&by_seals, &by_screw].map(|found| found.fall.unwrap());
    assert_eq!(b.actuator, Unpowered::DrivenBack);
    assert_eq!(a.outcome, b.outcome);
    assert_eq!(a.seal_friction_limit, b.seal_friction_limit);
    assert_eq!(locks(&by_seals), locks(&by_screw));
    let leg = &mut driven.legs[0];
    leg.drive.electric = leg.drive.electric.map(|motor| ElectricActuator {
        back_drive: None,
        ..motor
    });
    let released = fall(&driven);
    assert_eq!(released.fall.unwrap().actuator, Unpowered::Released);
    assert_ne!(locks(&released), Verdict::Good);
}
