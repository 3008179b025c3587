//! A cause is built into the gear, the run against time (or a closed form) says where it stops the
//! leg and what can be read, and the file without that cause is asked what explains it.
use super::super::explain_stop;
use crate::model::*;
use crate::result::{
    Check, Direction, Explanation, Finds, Fit, Run, RunEnd, StopCause, StopExplained,
};
use crate::supply::LegStages;
use crate::supply::{SLOWEST_PACE, SupplyOptions, cycle};
use gearswing_samples::pack::gear;

const LEG: usize = 2;

/// A gear of one leg, and a pump that stalls a little above what it needs.
pub(super) fn one_leg() -> Gear {
    let mut gear = gear();
    gear.legs = vec![gear.legs.swap_remove(LEG)];
    gear.supply.battery.breaker_rating = None;
    if let Source::MotorPump(pump) = &mut gear.supply.source {
        pump.stall_pressure = 3.6e6;
    }
    gear
}

fn up(gear: &Gear) -> Run {
    cycle(gear, &SupplyOptions::default()).unwrap().up.unwrap()
}

/// The stop of a run and what can be read at it.
pub(super) fn seen_in(run: &Run) -> SeenStop {
    assert_eq!(run.end, RunEnd::Stalled, "{:#?}", run.events);
    let stall = run.stalls.first().unwrap();
    let last = run.samples.last().unwrap();
    SeenStop {
        pressure: last.pressure,
        voltage: last.bus_voltage,
        pump: PumpSeen::Running,
        pressure_within: 1e5,
        forces_within: 0.05,
        ..SeenStop::at(HowFar::Travel {
            travel: Some(stall.place.travel),
            within: 0.01,
        })
    }
}

pub(super) fn explained(gear: &Gear, seen: SeenStop) -> StopExplained {
    let mut gear = gear.clone();
    gear.legs[0].seen_stop = Some(seen);
    let found = explain_stop(&gear, 0).unwrap();
    for one in &found.explanations {
        println!("{:6.2} {:?} {:?}", one.score, one.fit, one.cause);
    }
    found
}

pub(super) fn of(found: &StopExplained, is: impl Fn(&StopCause) -> bool) -> &Explanation {
    found
        .explanations
        .iter()
        .find(|one| is(&one.cause))
        .unwrap()
}

fn peak_travel(gear: &Gear) -> f64 {
    let found = crate::solve_leg(gear, 0, &crate::Options::default()).unwrap();
    found.force.peak.unwrap().place.travel
}

#[test]
fn a_tired_battery_is_found_with_its_voltage() {
    let fresh = one_leg();
    let mut tired = fresh.clone();
    let volts = 11.0;
    tired.supply.battery.open_circuit_voltage = Some(volts);
    let run = up(&tired);
    let seen = seen_in(&run);
    let found = explained(&fresh, seen);
    let best = &found.explanations[0];
    let StopCause::BatteryLow {
        open_circuit, file, ..
    } = best.cause
    else {
        panic!("{best:?}");
    };
    assert_eq!(best.fit, Fit::Fits);
    // The place is known to 1 %, so the load and with it the voltage to a few per cent.
    assert!((open_circuit - volts).abs() < 0.1, "{open_circuit}");
    assert!(file > 12.0);
    // a battery of higher resistance reads the same under load, and another voltage at rest
    assert!(!found.told_apart);
    let StopCause::BatteryResists { extra } = found.explanations[1].cause else {
        panic!("{:?}", found.explanations[1]);
    };
    assert!(extra > 0.0);
    let next = found.next_check.unwrap();
    assert_eq!((next.check, next.second), (Check::RestVolts, 1));
    assert!(matches!(next.if_first, Finds::Voltage(v) if (v - volts).abs() < 0.1));
    assert!(matches!(next.if_second, Finds::Voltage(v) if (v - file).abs() < 1e-9));
    // Whatever goes to the most that the pump makes is ruled out by gauge and posts.
    for one in &found.explanations {
        if matches!(
            one.cause,
            StopCause::HeldThere { .. } | StopCause::Friction { .. }
        ) {
            assert_eq!(one.fit, Fit::RuledOut, "{one:?}");
        }
    }
}

#[test]
fn a_bad_contact_is_told_from_a_tired_battery_by_the_posts() {
    let sound = one_leg();
    let mut bad = sound.clone();
    bad.supply.battery.wire_resistance += 0.02;
    let found = explained(&sound, seen_in(&up(&bad)));
    let best = &found.explanations[0];
    let StopCause::BadContact { extra } = best.cause else {
        panic!("{best:?}");
    };
    assert!((extra / 0.02 - 1.0).abs() < 0.1, "{extra}");
    assert!(of(&found, |c| matches!(c, StopCause::BatteryLow { .. })).fit == Fit::RuledOut);
}

#[test]
fn a_weak_pump_is_told_by_gauge_and_posts() {
    let sound = one_leg();
    let mut weak = sound.clone();
    if let Source::MotorPump(pump) = &mut weak.supply.source {
        pump.relief_pressure = 2.4e6;
    }
    let found = explained(&sound, seen_in(&up(&weak)));
    // A contact behind the posts reads the same there: the voltage at the motor tells.
    let is = |one: &Explanation| match one.cause {
        StopCause::SourceWeak { .. } => Some(true),
        StopCause::BadContact { .. } => Some(false),
        _ => None,
    };
    let best: Vec<_> = found.explanations.iter().take(2).map(is).collect();
    assert!(best.contains(&Some(true)) && best.contains(&Some(false)));
    assert!(!found.told_apart);
    assert_eq!(found.next_check.unwrap().check, Check::MotorVolts);
    assert_eq!(found.explanations[2].fit, Fit::RuledOut);
}

#[test]
fn extra_friction_is_found_with_its_size() {
    let smooth = one_leg();
    let mut rough = smooth.clone();
    rough.legs[0].actuator.seal_friction = Some(rough.legs[0].actuator.seals() + 300.0);
    let run = up(&rough);
    let mut seen = seen_in(&run);
    // The gauge stands where the motor does: p/Ps = V/Vn, V = E − R·I(p).
    let (e, r, i0, i1) = (12.6, 0.02, 15.0, 135.0 / 3.6e6);
    let dead = (e - r * i0) / (12.0 / 3.6e6 + r * i1);
    // The run ends with a last trickle of flow, as much short of it.
    let short = 1.0 - seen.pressure.unwrap() / dead;
    assert!((0.0..=1.01 * SLOWEST_PACE).contains(&short), "{short}");
    let found = explained(&smooth, seen.clone());
    let friction = of(&found, |c| matches!(c, StopCause::Friction { .. }));
    assert_eq!(friction.fit, Fit::Fits);
    let StopCause::Friction {
        extra_thrust,
        extra_moment,
        pin_factor,
        ..
    } = friction.cause
    else {
        unreachable!()
    };
    assert!((extra_thrust / 300.0 - 1.0).abs() < 0.05, "{extra_thrust}");
    assert!(extra_moment.is_some_and(|moment| moment > 0.0));
    assert_eq!(pin_factor, None, "no pin of the file rubs");
    // Nothing that was read speaks against something that holds it there; two numbers were chosen
    // for it, so it stands behind.
    let held = of(&found, |c| matches!(c, StopCause::HeldThere { .. }));
    assert!(held.score > friction.score);
    assert!(of(&found, |c| matches!(c, StopCause::BatteryLow { .. })).fit == Fit::RuledOut);
    // Past the peak of the load the same extra friction would have stopped it earlier.
    seen.how_far = HowFar::Travel {
        travel: Some(1.0 - 0.5 * (1.0 - peak_travel(&smooth))),
        within: 0.01,
    };
    let found = explained(&smooth, seen);
    let friction = of(&found, |c| matches!(c, StopCause::Friction { .. }));
    assert_ne!(friction.fit, Fit::Fits, "{friction:?}");
}

#[test]
fn rubbing_pins_give_a_factor_that_stalls_the_leg() {
    let mut smooth = one_leg();
    smooth.legs[0].pins.trunnion = Pin::rubbing(0.02, 0.15);
    let mut rough = smooth.clone();
    rough.legs[0].pins.trunnion = rough.legs[0].pins.trunnion.times(8.0);
    let run = up(&rough);
    let found = explained(&smooth, seen_in(&run));
    let friction = of(&found, |c| matches!(c, StopCause::Friction { .. }));
    let StopCause::Friction { pin_factor, .. } = friction.cause else {
        unreachable!()
    };
    let factor = pin_factor.unwrap();
    assert!((factor / 8.0 - 1.0).abs() < 0.1, "{factor}");
}

#[test]
fn a_leg_that_lacks_force_is_found_without_choosing_a_number() {
    let mut weak = one_leg();
    if let Source::MotorPump(pump) = &mut weak.supply.source {
        pump.relief_pressure = 2.4e6;
    }
    let found = explained(&weak, seen_in(&up(&weak)));
    let best = &found.explanations[0];
    assert!(
        matches!(best.cause, StopCause::ForceShort { .. }),
        "{best:?}"
    );
    assert_eq!((best.fit, best.fitted), (Fit::Fits, 0));
    assert_eq!(best.tests(), 4);
}

#[test]
fn down_is_explained_too() {
    let mut gear = one_leg();
    gear.legs[0].drive.switches.down = 0.05;
    let seen = SeenStop {
        selected: Direction::Down,
        pump: PumpSeen::Stopped,
        ..SeenStop::at(HowFar::Travel {
            travel: Some(0.05),
            within: 0.02,
        })
    };
    let found = explained(&gear, seen);
    let best = &found.explanations[0];
    assert!(
        matches!(best.cause, StopCause::SwitchEarly { .. }),
        "{best:?}"
    );
    assert_eq!(best.fitted, 0, "the file has the switch there");
}

/// No supply stalls a leg that its own weight moves: what is left is friction, or something there.
#[test]
fn a_leg_that_its_weight_drives_is_not_stalled_by_the_supply() {
    let mut gear = one_leg();
    gear.supply.return_pressure = 0.0;
    gear.legs[0].actuator.seal_friction = Some(0.0);
    let track = LegStages::of(&gear, 0, Direction::Down);
    let stage = track.stages.iter().find(|stage| !stage.is_strut).unwrap();
    let driven = stage.places.iter().find(|row| row[2] < 0.5).unwrap();
    assert!(stage.load.value(driven[0]) < 0.0);
    let travel = driven[2];
    let seen = SeenStop {
        selected: Direction::Down,
        ..SeenStop::at(HowFar::Travel {
            travel: Some(travel),
            within: 0.001,
        })
    };
    let found = explained(&gear, seen);
    let by_supply = |one: &Explanation| {
        matches!(
            one.cause,
            StopCause::BatteryLow { .. }
                | StopCause::BadContact { .. }
                | StopCause::SourceWeak { .. }
                | StopCause::PressureSwitchLow { .. }
        )
    };
    assert!(!found.explanations.iter().any(by_supply));
    of(&found, |c| matches!(c, StopCause::Friction { .. }));
}
