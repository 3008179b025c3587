//! Whole gears: balances, refinement, order facts of the trade, stalls and what frees them.
use super::super::leg_stages::LegStages;
use super::super::{SupplyError, SupplyOptions, cycle};
use super::tired::tired;
use crate::model::*;
use crate::result::{
    Cycle, Direction, Indication, Run, RunEnd, RunEvent, RunEventKind as Kind, StallCause,
};
use gearswing_samples::pack::gear;

pub(super) fn solved(gear: &Gear) -> Cycle {
    cycle(gear, &SupplyOptions::default()).unwrap()
}

pub(super) fn time(run: &Run, leg: usize, kind: Kind) -> f64 {
    let found = run
        .events
        .iter()
        .find(|e| e.leg == Some(leg) && e.kind == kind);
    found
        .unwrap_or_else(|| panic!("no {kind:?} of {leg}: {:#?}", run.events))
        .time
}

/// The same gear on a battery that is all but empty and cold.
#[test]
fn up_and_down_in_a_few_seconds() {
    let found = solved(&gear());
    for run in [found.up.as_ref().unwrap(), found.down.as_ref().unwrap()] {
        println!("{:?} {} {:?}", run.direction, run.time, run.largest_current);
        for event in &run.events {
            println!(
                "{:8.4} {:?} {:?} {:?}",
                event.time, event.leg, event.kind, event.pressure
            );
        }
        assert_eq!(run.end, RunEnd::Complete);
        assert!((2.0..15.0).contains(&run.time));
    }
}

#[test]
fn fluid_and_energy_balance() {
    let gear = gear();
    let found = solved(&gear);
    let down = found.down.as_ref().unwrap();
    for run in [found.up.as_ref().unwrap(), down] {
        let f = run.fluid;
        let (gives, takes) = (f.pumped + f.drawn, f.swept + f.relieved);
        assert!((gives / takes - 1.0).abs() < 1e-6, "{f:?}");
        let e = run.energy;
        let given = e.given + gear.supply.return_pressure * f.drawn;
        let taken = e.loads + e.lines + e.relief;
        assert!((given / taken - 1.0).abs() < 1e-6, "{e:?}");
        // The loads by a quadrature of their own, over the stroke instead of over time.
        let by_stroke: f64 = (0..gear.legs.len())
            .flat_map(|leg| LegStages::of(&gear, leg, run.direction).stages)
            .map(|stage| stage.load.integral())
            .sum();
        assert!(
            (e.loads / by_stroke - 1.0).abs() < 1e-5,
            "{} {by_stroke}",
            e.loads
        );
        assert!(e.battery > e.wires + e.given);
    }
    // Swept by the cylinders themselves: bore or annulus times stroke, and the jacks.
    let swept: f64 = gear
        .legs
        .iter()
        .map(|leg| {
            let sweep =
                crate::kinematics::Sweep::new(leg, &crate::kinematics::Linkage::new(leg), 5);
            let (first, last) = (sweep.poses[0], sweep.poses[sweep.poses.len() - 1]);
            let stroke = last.actuator_length - first.actuator_length;
            let (bore, annulus) = crate::statics::areas(&leg.actuator);
            stroke.abs() * if stroke > 0.0 { bore } else { annulus } + 3e-4 * 0.05
        })
        .sum();
    assert!((found.up.as_ref().unwrap().fluid.swept / swept - 1.0).abs() < 1e-9);
}

#[test]
fn times_do_not_depend_on_the_time_step() {
    let fine = SupplyOptions {
        tolerance: 1e-12,
        ..SupplyOptions::default()
    };
    for gear in [gear(), tired()] {
        let (a, b) = (solved(&gear), cycle(&gear, &fine).unwrap());
        for (a, b) in [
            (a.up.as_ref().unwrap(), b.up.as_ref().unwrap()),
            (a.down.as_ref().unwrap(), b.down.as_ref().unwrap()),
        ] {
            assert_eq!(a.events.len(), b.events.len());
            for (a, b) in a.events.iter().zip(&b.events) {
                assert_eq!((a.leg, a.kind), (b.leg, b.kind));
                assert!((a.time - b.time).abs() < 1e-6, "{a:?} {b:?}");
            }
        }
    }
}

#[test]
fn struts_shorten_before_the_swing_and_extend_after_it() {
    // common practice
    let found = solved(&gear());
    let down = found.down.unwrap();
    for leg in 0..3 {
        let shortened = time(found.up.as_ref().unwrap(), leg, Kind::StrutDone);
        assert!(shortened <= time(found.up.as_ref().unwrap(), leg, Kind::DownOpen));
        assert!(shortened < time(found.up.as_ref().unwrap(), leg, Kind::SwingDone));
        assert!(time(&down, leg, Kind::SwingDone) <= time(&down, leg, Kind::ShortenedOpen));
        assert!(time(&down, leg, Kind::SwingDone) < time(&down, leg, Kind::StrutDone));
        for sample in &found.up.as_ref().unwrap().samples {
            let leg = &sample.legs[leg];
            assert!(leg.shortened_share == 1.0 || leg.place.travel <= 0.0);
        }
        for sample in &down.samples {
            let leg = &sample.legs[leg];
            assert!(leg.shortened_share == 1.0 || leg.place.travel <= 1e-9);
        }
    }
}

#[test]
fn shows_in_transit_until_the_up_switch_makes() {
    // common practice
    let mut gear = gear();
    gear.legs[1].drive.switches.up = 0.97;
    let found = solved(&gear);
    for (leg, kind, run) in [
        (0, Kind::UpMade, found.up.as_ref().unwrap()),
        (1, Kind::UpMade, found.up.as_ref().unwrap()),
        (2, Kind::DownMade, found.down.as_ref().unwrap()),
    ] {
        let made = time(run, leg, kind);
        for sample in &run.samples {
            let shown = sample.legs[leg].indication;
            let moving = match run.direction {
                Direction::Up => sample.legs[leg].place.travel > 1e-3,
                Direction::Down => sample.legs[leg].place.travel < 0.999,
            };
            if sample.time < made && moving {
                assert_eq!(shown, Indication::InTransit, "{}", sample.time);
            }
            if sample.time > made {
                let end = match run.direction {
                    Direction::Up => Indication::Up,
                    Direction::Down => Indication::DownAndLocked,
                };
                assert_eq!(shown, end);
            }
        }
    }
    let early = found
        .up
        .as_ref()
        .unwrap()
        .events
        .iter()
        .find(|e| e.leg == Some(1) && e.kind == Kind::UpMade);
    assert!((early.unwrap().place.unwrap().travel - 0.97).abs() < 1e-9);
}

#[test]
fn pressure_stays_between_return_and_most() {
    let gear = gear();
    let found = solved(&gear);
    for run in [found.up.as_ref().unwrap(), found.down.as_ref().unwrap()] {
        for sample in &run.samples {
            let pressure = sample.pressure.unwrap();
            assert!(pressure >= gear.supply.return_pressure);
            assert!(pressure <= run.largest_pressure.unwrap());
        }
    }
}

#[test]
fn electric_actuators_take_their_own_time() {
    let mut gear = gear();
    gear.supply.source = Source::ElectricActuators;
    gear.supply.battery.internal_resistance = 0.0;
    gear.supply.battery.wire_resistance = 0.0;
    for leg in &mut gear.legs {
        leg.drive.electric = Some(ElectricActuator {
            free_speed: 0.03,
            stall_force: 9e3,
            rated_voltage: 12.6,
            idle_current: 2.0,
            locked_current: 40.0,
            back_drive: None,
        });
    }
    // pressure tells them nothing
    gear.supply.pressure_switch = Some(5e6);
    let found = solved(&gear).up.unwrap();
    assert_eq!(found.end, RunEnd::Complete);
    assert_eq!(found.events.last().unwrap().kind, Kind::SwitchesStop);
    // Without wire resistance each is alone: t = ∫dx/(v0·(1 − F/Fs)), by the midpoint rule.
    let track = LegStages::of(&gear, 2, Direction::Up);
    let stage = track.stages.last().unwrap();
    let steps = 200_000;
    let h = stage.extent / f64::from(steps);
    let exact: f64 = (0..steps)
        .map(|at| {
            let force = stage.load.value((f64::from(at) + 0.5) * h).max(0.0);
            h / (0.03 * (1.0 - force / 9e3))
        })
        .sum();
    let found_time = time(&found, 2, Kind::SwingDone);
    assert!(
        (found_time / exact - 1.0).abs() < 1e-6,
        "{found_time} {exact}"
    );
    gear.supply.battery.wire_resistance = 0.1;
    let slow = solved(&gear).up.unwrap();
    assert!(slow.time > found.time);
    for leg in &mut gear.legs {
        leg.drive.electric.as_mut().unwrap().stall_force = 1.2e3;
    }
    let stalled = solved(&gear).up.unwrap();
    assert_eq!(stalled.end, RunEnd::Stalled, "{:?}", stalled.stalls);
    assert!(
        matches!(stalled.stalls[0].cause, StallCause::Force { needed, available, .. } if needed > available)
    );
}

#[test]
fn starts_where_the_file_says_and_stops_where_the_switches_say() {
    let mut gear = gear();
    let whole = solved(&gear).up.unwrap();
    gear.legs[0].drive.start_travel = Some(0.5);
    let part = solved(&gear).up.unwrap();
    assert!((part.samples[0].legs[0].place.travel - 0.5).abs() < 1e-9);
    assert_eq!(part.samples[0].legs[0].indication, Indication::InTransit);
    assert!(part.fluid.swept < whole.fluid.swept);
    assert!((part.fluid.pumped / (part.fluid.swept + part.fluid.relieved) - 1.0).abs() < 1e-6);
    for leg in &mut gear.legs {
        leg.drive.switches.up = 0.95;
    }
    let early = solved(&gear).up.unwrap();
    assert_eq!(early.end, RunEnd::SwitchedOff);
    assert!(early.time < part.time);
    // down too: the pump stops short of the locks, but where a jack has still to let its strut out
    for leg in &mut gear.legs {
        leg.drive.switches.down = 0.1;
    }
    let short = solved(&gear).down.unwrap();
    let jacks = gear.legs.iter().any(|leg| leg.drive.strut_jack.is_some());
    assert_eq!(short.end == RunEnd::SwitchedOff, !jacks);
    for leg in &mut gear.legs {
        leg.drive.strut_jack = None;
        leg.strut.shortening = Shortening::None;
    }
    let short = solved(&gear).down.unwrap();
    assert_eq!(short.end, RunEnd::SwitchedOff);
    assert!(
        short
            .samples
            .last()
            .unwrap()
            .legs
            .iter()
            .any(|leg| leg.place.travel > 0.05)
    );
}

/// A leg that starts behind the stage of its jack makes its up switch as any other.
#[test]
fn a_start_behind_the_jack_leaves_no_switch_behind() {
    let mut gear = gear();
    for leg in &mut gear.legs {
        if leg.drive.strut_jack.is_some() {
            leg.drive.start_travel = Some(0.02);
        }
    }
    let up = solved(&gear).up.unwrap();
    let made = |event: &&RunEvent| event.kind == Kind::UpMade;
    assert_eq!(up.events.iter().filter(made).count(), gear.legs.len());
    let last = up.events.last().unwrap();
    assert_eq!(last.kind, Kind::SwitchesStop);
}

#[test]
fn a_leg_that_cannot_come_up_stops_the_run() {
    let mut gear = gear();
    let length = (gear.legs[1].actuator.attach - gear.legs[1].actuator.mount).norm();
    gear.legs[1].actuator.shortest = length - 0.06;
    gear.legs[1].actuator.longest = length + 0.06;
    gear.legs[1].actuator.body_length = 0.2;
    let found = solved(&gear);
    assert_eq!(found.up.as_ref().unwrap().end, RunEnd::Stalled);
    assert_eq!(found.up.as_ref().unwrap().stalls[0].leg, 1);
    assert_eq!(
        found.up.as_ref().unwrap().stalls[0].cause,
        StallCause::EndOfWay
    );
    // it comes down from there
    let stands = found.up.as_ref().unwrap().stalls[0].place.travel;
    let down = found.down.unwrap();
    assert_eq!(down.end, RunEnd::Complete);
    let first = down.samples[0].legs[1].place.travel;
    assert!(
        (first - stands).abs() < 1e-9 && stands > 0.1,
        "{first} {stands}"
    );
}

#[test]
fn impossible_supplies_are_named() {
    let options = SupplyOptions::default();
    let with = |change: &dyn Fn(&mut MotorPump, &mut Battery)| {
        let mut gear = gear();
        if let Source::MotorPump(pump) = &mut gear.supply.source {
            change(pump, &mut gear.supply.battery);
        }
        cycle(&gear, &options).unwrap_err()
    };
    let path = |error: SupplyError| match error {
        SupplyError::Faults(faults) => faults.0[0].path.clone(),
        other => panic!("{other:?}"),
    };
    assert!(path(with(&|p, _| p.free_flow = 0.0)).ends_with("free_flow_m3_s"));
    assert!(path(with(&|_, b| b.internal_resistance = -0.01)).ends_with("internal_ohm"));
    assert!(path(with(&|p, _| p.stall_current = 5.0)).ends_with("idle_a"));
    assert!(path(with(&|p, _| p.relief_pressure = 5e4)).ends_with("return_pressure_pa"));
    assert!(matches!(
        with(&|_, b| b.wire_resistance = 2.0),
        SupplyError::NoFlow { voltage } if voltage < 0.0
    ));
    let mut gear = gear();
    gear.supply.source = Source::ElectricActuators;
    assert!(path(cycle(&gear, &options).unwrap_err()).ends_with("drive.electric"));
}

/// A relief valve that opens below any load up: the gear of a flight that began on a better supply
/// still comes down by its weight.
#[test]
fn nothing_moves_up_and_the_way_down_is_followed() {
    let mut gear = gear();
    if let Source::MotorPump(pump) = &mut gear.supply.source {
        pump.relief_pressure = 5e5;
    }
    let found = solved(&gear);
    assert!(found.up.is_none());
    assert!(matches!(
        found.up_error,
        Some(SupplyError::NothingMoves {
            selected: Direction::Up,
            available: 5e5,
            ..
        })
    ));
    let down = found.down.unwrap();
    assert_eq!(found.down_error, None);
    for (leg, sample) in down.samples[0].legs.iter().enumerate() {
        assert!((sample.place.travel - 1.0).abs() < 1e-9, "{leg}");
    }
    assert!(down.events.iter().any(|e| e.kind == Kind::UpOpen));
}
