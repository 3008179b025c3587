//! A tired battery: what it slows, which leg it stalls, what frees it.
use super::gears::{solved, time};
use crate::model::*;
use crate::result::{Motion, RunEnd, RunEventKind as Kind, Sample, StallCause};
use crate::{Options, solve_leg};
use gearswing_samples::pack::gear;

pub(super) fn tired() -> Gear {
    let mut gear = gear();
    gear.supply.battery.charge = 0.1;
    gear.supply.battery.internal_resistance = 0.12;
    gear
}

#[test]
fn a_tired_battery_slows_all_and_stalls_the_most_loaded_leg_first() {
    // common practice
    let up = |gear| solved(gear).up.unwrap();
    let (good, tired) = (up(&gear()), up(&tired()));
    assert_eq!(tired.end, RunEnd::Stalled);
    assert_eq!(tired.stalls[0].leg, 2, "the heavier main");
    // it is the first to stand, and the lighter ones come further
    let travels = |s: &Sample| [0, 1, 2].map(|leg| s.legs[leg].place.travel);
    let [_, left, right] = travels(tired.samples.last().unwrap());
    assert!(left > right, "{left} {right}");
    let stands = |leg: usize| {
        let end = travels(tired.samples.last().unwrap())[leg];
        let there = |s: &&Sample| travels(s)[leg] >= end - 1e-3;
        tired.samples.iter().find(there).unwrap().time
    };
    assert!(stands(2) < stands(1), "{} {}", stands(2), stands(1));
    for leg in 0..3 {
        let slower = time(&tired, leg, Kind::StrutDone) / time(&good, leg, Kind::StrutDone);
        assert!(slower > 1.0, "{leg}: {slower}");
    }
    assert!(time(&tired, 0, Kind::SwingDone) > time(&good, 0, Kind::SwingDone));
    let at = tired.stalls[0].place;
    assert!(at.travel < 1.0);
}

/// A leg that has stood and that the most of the pump does not start stays where it is, as "Can it be driven?"
/// has it; just below that it comes up as if it had never stood. Up from down, and down from up.
#[test]
fn a_leg_that_does_not_start_stays() {
    let gear = gear();
    let at_start = |break_out: f64, motion: Motion| {
        let mut gear = gear.clone();
        gear.legs[1].actuator.seal_break_out = Some(break_out);
        let force = solve_leg(&gear, 1, &Options::default()).unwrap().force;
        match motion {
            Motion::Retract => force.peak,
            Motion::Extend => force.extend_peak,
        }
        .unwrap()
    };
    for motion in [Motion::Retract, Motion::Extend] {
        // the friction at which the margin there is nothing: it is a straight line of it
        let (few, many) = (at_start(6e3, motion), at_start(9e3, motion));
        assert_eq!(few.place, many.place);
        let per_newton = (few.margin - many.margin) / 3e3;
        let just = 6e3 + few.margin / per_newton;
        let run = |share: f64| {
            let mut gear = gear.clone();
            gear.legs[1].actuator.seal_break_out = Some(just * share);
            let cycle = solved(&gear);
            match motion {
                Motion::Retract => cycle.up.unwrap(),
                Motion::Extend => cycle.down.unwrap(),
            }
        };
        let starts = run(0.999);
        assert_eq!(starts.end, RunEnd::Complete, "{motion:?}");
        let mut free = gear.clone();
        free.legs[1].actuator.seal_break_out = Some(0.0);
        let never = solved(&free);
        let never = match motion {
            Motion::Retract => never.up.unwrap(),
            Motion::Extend => never.down.unwrap(),
        };
        assert!((starts.time - never.time).abs() < 1e-9);
        let stays = run(1.001);
        assert_eq!(stays.end, RunEnd::Stalled, "{motion:?}");
        assert_eq!(stays.stalls[0].leg, 1);
        let travel = stays.stalls[0].place.travel;
        let from = f64::from(u8::from(motion == Motion::Extend));
        assert!((travel - from).abs() < 1e-3, "{travel}");
    }
}

#[test]
fn what_would_free_it_frees_it() {
    let gear = tired();
    let StallCause::Pressure {
        needed,
        available,
        thrust_over,
        volts_short,
        relief_too_low,
        switch_too_low,
    } = solved(&gear).up.as_ref().unwrap().stalls[0].cause
    else {
        panic!()
    };
    assert!(needed > available && thrust_over.unwrap() > 0.0 && !relief_too_low && !switch_too_low);
    let volts = volts_short.unwrap();
    assert!(volts > 0.0);
    let with_volts = |volts: f64| {
        let mut gear = gear.clone();
        let now = super::super::open_circuit_voltage(&gear.supply.battery);
        gear.supply.battery.open_circuit_voltage = Some(now + volts);
        solved(&gear).up.as_ref().unwrap().end
    };
    // A hundredth more for the flow that is still wanted at the worst place.
    assert_eq!(with_volts(volts * 1.02 + 0.02), RunEnd::Complete);
    assert_eq!(with_volts(volts * 0.97), RunEnd::Stalled);
    let with_relief = |relief: f64| {
        let mut gear = gearswing_samples::pack::gear();
        if let Source::MotorPump(pump) = &mut gear.supply.source {
            pump.relief_pressure = relief;
        }
        solved(&gear).up.unwrap()
    };
    assert_eq!(with_relief(needed * 1.01).end, RunEnd::Complete);
    let low = with_relief(needed * 0.98);
    assert_eq!(low.end, RunEnd::Stalled);
    assert!(low.events.iter().any(|e| e.kind == Kind::ReliefOpen));
    let cause = low.stalls[0].cause;
    assert!(matches!(
        cause,
        StallCause::Pressure {
            relief_too_low: true,
            volts_short: None,
            ..
        }
    ));
}
