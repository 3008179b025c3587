//! What a fall has to spare: the verdict against second evaluations, whole solutions of legs that have
//! once and one and a half times the friction.
use gearswing_gear::model::{Brace, Gear, Pin};
use gearswing_solver::result::{Fall, FallOutcome, LegResult, LockKind, Phase, Question, Verdict};
use gearswing_solver::{LEAST_AFTER_PLAY, LEAST_KNEE_PUSH, LEAST_OVER_CENTRE};

use gearswing_tests::{cases, solve, sprung_cases};

/// The same leg with so many times the running friction, what holds it at up left as it is.
fn with_friction(gear: &Gear, times: f64) -> Gear {
    let mut gear = gear.clone();
    let leg = &mut gear.legs[0];
    leg.actuator.seal_break_out = Some(leg.actuator.seals_stood());
    leg.actuator.seal_friction = leg.actuator.seal_friction.map(|friction| friction * times);
    let starts = leg.fall.pins_stood();
    leg.fall.pin_break_out = Some((starts / times).max(1.0));
    for pin in leg.pins.all_mut() {
        *pin = pin.times(times);
    }
    gear
}

fn verdict(result: &LegResult) -> Verdict {
    let locks = |finding: &&gearswing_solver::result::Finding| finding.question == Question::Locks;
    result.findings.iter().find(locks).unwrap().verdict
}

/// Whether anything stands against a plain Yes: what is marginal has a reason.
fn is_doubtful(gear: &Gear, once: &LegResult, more: &Fall) -> bool {
    let (lock, leg) = (&once.lock, &gear.legs[0]);
    let fall = once.fall.as_ref().unwrap();
    let weak = |push: Option<f64>| push.is_some_and(|push| push < LEAST_KNEE_PUSH);
    let by_lock = lock.kind == LockKind::OverCentre
        && (lock.over_centre.unwrap() < LEAST_OVER_CENTRE
            || lock.ground_load.unwrap().into_lock <= 0.0
            || weak(lock.knee_push)
            || weak(lock.knee_push_at_gear_speed)
            || lock
                .over_centre_less_play
                .is_some_and(|left| left < LEAST_AFTER_PLAY));
    let by_fall = !fall.reaches_lock()
        || !more.reaches_lock()
        || fall.start.is_some_and(|start| start.ratio < 1.0)
        || fall.by_speed_alone()
        || fall.at_gear_speed == Some(false)
        || !leg.friction_typed(&gear.supply.source).any();
    by_lock || by_fall || leg.drive.switches.down > 0.0
}

/// A plain Yes is said only of a leg that comes down against one and a half times its friction too, and
/// that starts wherever it is let go; No only of one that does not come down as it is, by more than a
/// hundredth of the weight's moment and a millimeter.
#[test]
fn verdicts_keep_their_margins() {
    let mut seen = [0; 3];
    let plain = cases(2, 0, 71).enumerate();
    let plain = plain.map(|(number, mut case)| {
        let leg = &mut case.gear.legs[0];
        // light enough to fall, for half of them
        if number % 2 == 0 {
            leg.actuator.seal_friction = Some(3.0);
        }
        if number % 3 == 0 {
            leg.pins.trunnion = Pin::tight(0.5);
        }
        case
    });
    for case in plain.chain(sprung_cases(1, 0, 72)) {
        let once = solve(&case.gear, 2);
        let Some(fall) = once.fall else { continue };
        let more = solve(&with_friction(&case.gear, 1.5), 2);
        let more = more.fall.unwrap();
        if let Some(required) = fall.required {
            assert_eq!(required.times, 1.5);
            assert_eq!(required.reaches, more.reaches_lock(), "{:?}", case.leg());
            let factor = fall.friction_factor.or(fall.friction_factor_tried).unwrap();
            assert_eq!(factor >= 1.5, required.reaches);
        }
        match verdict(&once) {
            Verdict::Good => {
                assert!(fall.reaches_lock() && more.reaches_lock());
                assert!(fall.start.is_none_or(|start| start.ratio >= 1.0));
                seen[0] += 1;
            }
            // no brace, or one whose latch is not modeled: the fall may be as sure
            Verdict::NotShown => assert!(fall.reaches_lock() && more.reaches_lock()),
            Verdict::Marginal => {
                assert!(is_doubtful(&case.gear, &once, &more), "{:?}", case.leg());
                seen[1] += 1;
            }
            Verdict::Bad => seen[2] += 1,
        }
        if fall.fails() {
            let little = fall.short.is_some_and(|short| {
                let past_center = match fall.outcome {
                    FallOutcome::StopsShort { place, .. } => {
                        once.lock.kind != LockKind::OverCentre || place.phase == Phase::Unlock
                    }
                    _ => false,
                };
                short.missing_share.is_some_and(|share| share < 0.01)
                    || past_center && short.from_stop < 1e-3
            });
            // a telescoping brace that misses its latch is No besides
            let misses = matches!(case.leg().brace, Brace::Sliding(_));
            if !little {
                assert_eq!(verdict(&once), Verdict::Bad);
            } else if !misses {
                assert_ne!(verdict(&once), Verdict::Good);
            }
        }
    }
    assert!(seen.iter().all(|&count| count > 3), "{seen:?}");
}
