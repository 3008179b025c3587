//! The way down by a hand pump.
use super::support::{AVAILABLE, at, bind, binding, case, fall, force, peak};
use crate::answer::{WayDownCase, way_down};
use crate::model::{EmergencyWay, Gear};
use crate::result::{
    Force, HandPumpDown, LeastKneePush, LoadCase, LockKind, Motion, PartnerStands, Verdict, WayDown,
};
use LoadCase::{AsSet, LevelFlight, Turn};

/// A gear that a hand pump of this pressure (Pa) lets down.
fn gear(pump: f64) -> Gear {
    Gear {
        emergency_way: Some(EmergencyWay::HandPump),
        emergency_pump: Some(pump),
        ..gearswing_samples::pack::gear()
    }
}

fn by_pump(force: &Force, dead_point: bool) -> WayDown {
    let (gear, fall) = (gear(AVAILABLE), fall());
    let of = way_down(&WayDownCase {
        gear: &gear,
        leg: &gear.legs[0],
        lock: LockKind::OverCentre,
        force,
        fall: Some(&fall),
        dead_point,
    });
    of.unwrap()
}

/// Over center the knee must be pushed all the way: a push that ends takes the plain Yes away. A knee that goes
/// by itself, or has no center to pass, needs none.
#[test]
fn the_last_way_of_the_knee_is_pushed() {
    let gear = gear(AVAILABLE);
    let mut force = force();
    force.extend_peak = Some(peak(0.5, 0.4));
    for (lock, push, verdict) in [
        (LockKind::OverCentre, Some(3.0), Verdict::Good),
        (LockKind::OverCentre, None, Verdict::Good),
        (LockKind::OverCentre, Some(0.0), Verdict::Marginal),
        (LockKind::OverCentre, Some(-0.1), Verdict::Marginal),
        (LockKind::FoldsOn, Some(-0.1), Verdict::Good),
        (LockKind::SlidingBrace, None, Verdict::Good),
    ] {
        let mut fall = fall();
        let place = at(0.01);
        fall.least_knee_push = push.map(|push| LeastKneePush { push, place });
        let of = way_down(&WayDownCase {
            gear: &gear,
            leg: &gear.legs[0],
            lock,
            force: &force,
            fall: Some(&fall),
            dead_point: false,
        });
        assert_eq!(of.unwrap().verdict, verdict, "{lock:?} {push:?}");
    }
}

/// Margin = (available − needed)/available, of the pump and not of what else drives the leg; a tenth is asked
/// for.
#[test]
fn a_hand_pump_has_its_own_margin() {
    let mut force = force();
    force.extend_peak = Some(peak(0.5, 0.4));
    for (pump, margin, verdict) in [
        (16e6, 0.75, Verdict::Good),
        (5e6, 0.2, Verdict::Good),
        (4.2e6, 0.2 / 4.2, Verdict::Marginal),
        (4e6, 0.0, Verdict::Marginal),
        (3.2e6, -0.25, Verdict::Bad),
    ] {
        let (gear, fall) = (gear(pump), fall());
        let of = way_down(&WayDownCase {
            gear: &gear,
            leg: &gear.legs[0],
            lock: LockKind::OverCentre,
            force: &force,
            fall: Some(&fall),
            dead_point: false,
        });
        let WayDown {
            verdict: is,
            hand_pump: Some(found),
            ..
        } = of.unwrap()
        else {
            panic!("{pump}");
        };
        assert_eq!(is, verdict, "{pump}");
        assert_eq!((found.needed, found.available), (4e6, pump));
        assert!((found.margin - margin).abs() < 1e-12, "{pump}");
    }
}

/// No pressure brings down a leg that binds, or whose partner stands, on the way down, or whose actuator has no
/// arm; what is so on the way up only does not matter.
#[test]
fn what_stands_on_the_way_down_no_pump_moves() {
    let stands = |motion| {
        Some(PartnerStands {
            leg: 1,
            motion,
            place: at(0.3),
        })
    };
    for (as_set, other, partner, dead_point, stopped) in [
        (None, None, None, false, false),
        (Some(Motion::Extend), None, None, false, true),
        (Some(Motion::Retract), None, None, false, false),
        (None, Some(Motion::Extend), None, false, true),
        (None, Some(Motion::Retract), None, false, false),
        (None, None, stands(Motion::Extend), false, true),
        (None, None, stands(Motion::Retract), false, false),
        (None, None, None, true, true),
    ] {
        let mut force = force();
        force.extend_peak = Some(peak(0.5, 0.4));
        force.binds = as_set.map(|motion| bind(motion, 0.2)).into_iter().collect();
        let other = other.map(|motion| binding(Turn, bind(motion, 0.2)));
        force.cases = other.into_iter().collect();
        force.partner_stands = partner;
        let of = by_pump(&force, dead_point);
        let told = format!("{as_set:?} {:?} {partner:?} {dead_point}", force.cases);
        assert_eq!(of.hand_pump.unwrap().stopped, stopped, "{told}");
        let verdict = if stopped { Verdict::Bad } else { Verdict::Good };
        assert_eq!(of.verdict, verdict, "{told}");
    }
}

/// The worst verdict of all cases is told, of those alike what needs most pressure, the first of those that need
/// as much. What a turn asks for is no No.
#[test]
fn the_hardest_case_is_told() {
    for (as_set, others, wanted) in [
        (Some(0.5), vec![], (AsSet, Verdict::Good)),
        (None, vec![(Turn, 0.5)], (Turn, Verdict::Good)),
        (Some(0.5), vec![(Turn, 0.6)], (Turn, Verdict::Good)),
        (Some(0.6), vec![(Turn, 0.5)], (AsSet, Verdict::Good)),
        (Some(0.5), vec![(Turn, 0.5)], (AsSet, Verdict::Good)),
        (Some(1.05), vec![(Turn, 1.2)], (AsSet, Verdict::Bad)),
        (
            None,
            vec![(Turn, 1.2), (LevelFlight, 1.05)],
            (LevelFlight, Verdict::Bad),
        ),
        (Some(0.95), vec![(Turn, 1.2)], (Turn, Verdict::Marginal)),
    ] {
        let mut force = force();
        force.extend_peak = as_set.map(|share| peak(share, 0.4));
        let up = Some(peak(0.7, 0.4));
        let cases = others.iter();
        force.cases = cases
            .map(|&(of, share)| case(of, up, Some(peak(share, 0.4))))
            .collect();
        let of = by_pump(&force, false);
        let HandPumpDown { case, .. } = of.hand_pump.unwrap();
        assert_eq!((case, of.verdict), wanted, "{as_set:?} {others:?}");
    }
    // nothing is worked out on the way down
    let of = by_pump(&force(), false);
    assert_eq!((of.hand_pump, of.verdict), (None, Verdict::NotShown));
}
