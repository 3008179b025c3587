//! Will it lock: where one verdict ends and the next begins, and what each rests on.
use super::support::fall;
use crate::answer::{
    LATCH_GAP, LEAST_AFTER_PLAY, LEAST_KNEE_PUSH, LEAST_OVER_CENTRE, LockCase, PRINTED_OVER_CENTER,
    locks,
};
use crate::lock::{Centre, DownLock, LoadedKnee};
use crate::model::EmergencyWay;
use crate::result::{
    Assumption, AxleLoadEffect, Excursion, Fall, FindingDetail, InertiaBasis, Verdict, WayDown,
};

/// A way down that is as good as can be.
const COMES_DOWN: WayDown = WayDown {
    way: EmergencyWay::FreeFall,
    verdict: Verdict::Good,
    hand_pump: None,
};

fn verdict(offset: f64, into_lock: f64, knee_push: f64) -> Verdict {
    locks(&case(&lock(offset, into_lock, knee_push), None)).verdict
}

fn case<'a>(lock: &'a DownLock, fall: Option<&'a Fall>) -> LockCase<'a> {
    LockCase {
        lock,
        springs: false,
        fall,
        way_down: Some(&COMES_DOWN),
        excursion: None,
        down: None,
        break_out_from_memory: false,
        own_times: false,
        down_switch: 0.0,
        shares_drive: false,
    }
}

fn over_centre(offset: f64, less_play: Option<f64>, knee: Option<LoadedKnee>) -> DownLock {
    DownLock::OverCentre {
        centre: Centre { offset, past: 0.02 },
        less_play,
        knee,
    }
}

fn knee(into_lock: f64, push: f64, push_at_gear_speed: Option<f64>) -> LoadedKnee {
    LoadedKnee {
        ground_load: AxleLoadEffect { into_lock },
        axle_loads: Vec::new(),
        push,
        push_at_gear_speed,
    }
}

fn lock(offset: f64, into_lock: f64, knee_push: f64) -> DownLock {
    over_centre(offset, None, Some(knee(into_lock, knee_push, None)))
}

/// 0.06 in: just below the printed ranges; 5 N: our own figure. The smallest printed offset,
/// 0.062 in (main side brace of light singles), is not held to be too small.
#[test]
fn offset_ground_and_dead_weight_must_all_hold() {
    assert_eq!(verdict(0.0016, 0.01, 5.0), Verdict::Good);
    assert_eq!(verdict(0.062 * 0.0254, 0.01, 5.0), Verdict::Good);
    assert_eq!(verdict(0.059 * 0.0254, 0.01, 5.0), Verdict::Marginal);
    assert_eq!(verdict(0.0015, 0.01, 50.0), Verdict::Marginal);
    assert_eq!(verdict(0.0030, -0.01, 50.0), Verdict::Marginal);
    assert_eq!(verdict(0.0030, 0.01, 4.9), Verdict::Marginal);
    assert_eq!(verdict(0.0030, 0.01, 0.0), Verdict::NotShown);
    assert_eq!(verdict(0.0030, 0.01, -3.0), Verdict::NotShown);
}

/// Play that leaves next to nothing, air that takes the knee off its stop, and a switch that tells
/// of a lock before it is there, each take the plain yes away.
#[test]
fn play_air_and_an_early_switch_are_not_sure() {
    let held = lock(0.003, 0.01, 50.0);
    assert_eq!(locks(&case(&held, None)).verdict, Verdict::Good);
    for (left, verdict) in [
        (0.0, Verdict::Marginal),
        (0.0007, Verdict::Marginal),
        (0.0009, Verdict::Good),
    ] {
        let slack = over_centre(0.003, Some(left), Some(knee(0.01, 50.0, None)));
        assert_eq!(locks(&case(&slack, None)).verdict, verdict, "{left}");
    }
    for (push, verdict) in [
        (-20.0, Verdict::Marginal),
        (4.0, Verdict::Marginal),
        (30.0, Verdict::Good),
    ] {
        let blown = over_centre(0.003, None, Some(knee(0.01, 50.0, Some(push))));
        assert_eq!(locks(&case(&blown, None)).verdict, verdict, "{push}");
    }
    let early = LockCase {
        down_switch: 0.03,
        ..case(&held, None)
    };
    assert_eq!(locks(&early).verdict, Verdict::Marginal);
}

/// What is just as much as is asked for is enough: over center, left after play, push at the knee, a ground
/// load that does nothing to the knee.
#[test]
fn as_much_as_is_asked_for_is_enough() {
    let enough = over_centre(
        LEAST_OVER_CENTRE,
        Some(LEAST_AFTER_PLAY),
        Some(knee(0.0, LEAST_KNEE_PUSH, Some(LEAST_KNEE_PUSH))),
    );
    assert_eq!(locks(&case(&enough, None)).verdict, Verdict::Good);
}

/// An inch is 25.4 mm: printed are 0.062 to 0.281 in, asked for is a little less than the least of them.
#[test]
fn the_printed_offsets_are_in_inches() {
    let is = |length: f64, millimeters: f64| {
        assert!((1e3 * length - millimeters).abs() < 1e-9, "{length}");
    };
    is(PRINTED_OVER_CENTER.0, 1.5748);
    is(PRINTED_OVER_CENTER.1, 7.1374);
    is(LEAST_OVER_CENTRE, 1.524);
}

/// A knee that the weight and the springs take off its stop is unlocked; without springs only one that is not
/// given could hold it.
#[test]
fn springs_that_do_not_hold_the_knee_are_a_no() {
    for (springs, knee_push, verdict, counts) in [
        (true, 50.0, Verdict::Good, Assumption::WeightAndSprings),
        (true, 0.0, Verdict::Bad, Assumption::WeightAndSprings),
        (true, -3.0, Verdict::Bad, Assumption::WeightAndSprings),
        (false, -3.0, Verdict::NotShown, Assumption::DeadWeightOnly),
    ] {
        let held = lock(0.003, 0.01, knee_push);
        let finding = locks(&LockCase {
            springs,
            ..case(&held, None)
        });
        assert_eq!(finding.verdict, verdict, "{springs} {knee_push}");
        assert!(finding.assumptions.contains(&counts));
    }
}

/// A knee that the leg moves without, however far over center it stands, is not held on its stop.
#[test]
fn a_knee_without_loads_is_not_held() {
    let held = over_centre(0.01, Some(0.01), None);
    assert_eq!(locks(&case(&held, None)).verdict, Verdict::NotShown);
    let sprung = LockCase {
        springs: true,
        ..case(&held, None)
    };
    assert_eq!(locks(&sprung).verdict, Verdict::Bad);
}

/// No comparison holds of what is not a number: it must not come out as locked.
#[test]
fn what_is_not_a_number_locks_nothing() {
    let none = f64::NAN;
    for lock in [
        over_centre(none, None, Some(knee(0.01, 50.0, None))),
        over_centre(0.003, Some(none), Some(knee(0.01, 50.0, None))),
        over_centre(0.003, None, Some(knee(none, 50.0, None))),
        over_centre(0.003, None, Some(knee(0.01, none, None))),
        over_centre(0.003, None, Some(knee(0.01, 50.0, Some(none)))),
    ] {
        assert_eq!(locks(&case(&lock, None)).verdict, Verdict::NotShown);
    }
    let brace = DownLock::SlidingBrace { end_gap: none };
    assert_eq!(locks(&case(&brace, None)).verdict, Verdict::Bad);
}

/// A telescoping brace has to stand at its latch, which itself is not shown.
#[test]
fn a_telescoping_brace_stands_at_its_latch() {
    for (end_gap, verdict) in [
        (0.0, Verdict::NotShown),
        (LATCH_GAP, Verdict::NotShown),
        (0.0011, Verdict::Bad),
    ] {
        let brace = DownLock::SlidingBrace { end_gap };
        let finding = locks(&case(&brace, None));
        assert_eq!(finding.verdict, verdict, "{end_gap}");
        assert_eq!(finding.detail, FindingDetail::SlidingBrace { end_gap });
    }
}

/// A stop that ends the overtravel which the knee needs to pass the straight line keeps it from locking.
#[test]
fn overtravel_up_to_its_stop_is_enough() {
    let held = lock(0.003, 0.01, 50.0);
    for (allowed, stopped) in [
        (None, false),
        (Some(0.005), false),
        (Some(0.004), false),
        (Some(0.0039), true),
    ] {
        let excursion = Excursion {
            swing: -0.005,
            at_axle: 0.004,
            allowed,
        };
        let finding = locks(&LockCase {
            excursion: Some(&excursion),
            ..case(&held, None)
        });
        let is = matches!(finding.detail, FindingDetail::ExcursionStopped { .. });
        assert_eq!(is, stopped, "{allowed:?}");
        assert_eq!(finding.verdict == Verdict::Bad, stopped, "{allowed:?}");
    }
}

/// What a fall rests on is named where there is one, and only then.
#[test]
fn what_a_fall_rests_on_is_named() {
    use Assumption::{
        BreakOutFromMemory, FallWithoutPressure, FallsAlone, FrictionTimesOwn, InertiaEstimated,
    };
    let held = lock(0.003, 0.01, 50.0);
    let with = |fall: Option<Fall>, sets: bool| {
        let finding = locks(&LockCase {
            own_times: sets,
            break_out_from_memory: sets,
            shares_drive: sets,
            ..case(&held, fall.as_ref())
        });
        let of_lock = [
            Assumption::OverCentreCommonPractice,
            Assumption::DeadWeightOnly,
        ];
        let mut found = finding.assumptions;
        found.retain(|one| !of_lock.contains(one));
        found
    };
    let estimated = Fall {
        inertia: InertiaBasis::UniformRod,
        ..fall()
    };
    let without_friction = Fall {
        required: None,
        ..fall()
    };
    for (fall, sets, named) in [
        (None, true, vec![]),
        (Some(fall()), false, vec![FallWithoutPressure]),
        (
            Some(estimated),
            false,
            vec![FallWithoutPressure, InertiaEstimated],
        ),
        (
            Some(fall()),
            true,
            vec![
                FallWithoutPressure,
                FrictionTimesOwn,
                BreakOutFromMemory,
                FallsAlone,
            ],
        ),
        (
            Some(without_friction),
            true,
            vec![FallWithoutPressure, BreakOutFromMemory, FallsAlone],
        ),
    ] {
        assert_eq!(with(fall, sets), named, "{sets}");
    }
}
