//! Accumulators and stage valves.
use super::super::{SupplyOptions, cycle};
use super::runs::{event, hand, run, short_of, track};
use crate::model::{Accumulator, Gear, StrutJack, Supply};
use crate::result::{Run, RunEnd, RunEventKind as Kind, Sample, StallCause};
use gearswing_samples::pack::gear;

/// One liter of nitrogen at 3 MPa, charged to 10 MPa.
const GAS: Accumulator = Accumulator {
    gas_volume: 1e-3,
    precharge: 3e6,
    charged: 10e6,
    exponent: 1.4,
};

fn alone(gas: Accumulator) -> Supply {
    Supply {
        accumulator: Some(gas),
        ..Supply::constant(gas.charged)
    }
}

/// Gauge pressure when the gas has grown by `out` from its charge (p·V^n constant, textbook).
fn after(gas: &Accumulator, out: f64) -> f64 {
    let (full, base) = (gas.charged + 101_325.0, gas.precharge + 101_325.0);
    let volume = gas.gas_volume * (base / full).powf(1.0 / gas.exponent);
    full * (volume / (volume + out)).powf(gas.exponent) - 101_325.0
}

fn balances(run: &Run, back: f64) {
    let f = run.fluid;
    let (gives, takes) = (f.pumped + f.drawn + f.accumulator, f.swept + f.relieved);
    assert!((gives / takes - 1.0).abs() < 1e-6, "{f:?}");
    let e = run.energy;
    let given = e.given + e.accumulator + back * f.drawn;
    let taken = e.loads + e.lines + e.relief;
    assert!((given / taken - 1.0).abs() < 1e-6, "{e:?}");
}

/// ∫ f from 0 to an end, by Simpson's rule.
fn simpson(f: impl Fn(f64) -> f64, end: f64) -> f64 {
    let count = 2_000;
    let step = end / f64::from(count);
    let sum: f64 = (0..=count)
        .map(|at| {
            let weight = match at {
                0 => 1.0,
                at if at == count => 1.0,
                at if at % 2 == 1 => 4.0,
                _ => 2.0,
            };
            weight * f(f64::from(at) * step)
        })
        .sum();
    sum * step / 3.0
}

#[test]
fn gas_alone_drives_a_stroke_in_its_time() {
    let (swept, c, load) = (2e-4, 5e-9, 4e6);
    let run = run(&alone(GAS), vec![track(swept, c, |_| load)]);
    assert_eq!(run.end, RunEnd::Complete);
    let last = run.samples.last().unwrap().pressure.unwrap();
    assert!((last / after(&GAS, swept) - 1.0).abs() < 1e-8, "{last}");
    // t = ∫ dV/(c·√(p(V) − load)), by Simpson's rule of its own.
    let rate = |out: f64| 1.0 / (c * (after(&GAS, out) - load).sqrt());
    let exact = simpson(rate, swept);
    assert!(
        (run.time / exact - 1.0).abs() < 1e-7,
        "{} {exact}",
        run.time
    );
    // Work of the gas: (p1·V1 − p2·V2)/(n − 1), less what the air outside takes (textbook).
    let (p1, p2) = (GAS.charged + 101_325.0, last + 101_325.0);
    let v1 = GAS.gas_volume * ((GAS.precharge + 101_325.0) / p1).powf(1.0 / 1.4);
    let work = (p1 * v1 - p2 * (v1 + swept)) / 0.4 - 101_325.0 * swept;
    assert!((run.energy.accumulator / work - 1.0).abs() < 1e-6);
    balances(&run, 0.0);
}

#[test]
fn a_load_above_what_is_left_stalls() {
    let run = run(&alone(GAS), vec![track(4e-4, 5e-9, |_| 8e6)]);
    assert_eq!(run.end, RunEnd::Stalled);
    let (needed, available, _) = short_of(&run);
    assert!((needed / 8e6 - 1.0).abs() < 1e-12, "{needed}");
    assert!((available - 8e6).abs() < 1e3, "{available}");
    balances(&run, 0.0);
}

#[test]
fn an_empty_accumulator_leaves_the_pump_alone() {
    let small = Accumulator {
        gas_volume: 1e-4,
        ..GAS
    };
    let supply = Supply {
        accumulator: Some(small),
        ..hand(2e-5, 1.0, 12e6)
    };
    let run = run(&supply, vec![track(2e-4, 4e-8, |_| 2e6)]);
    assert_eq!(run.end, RunEnd::Complete);
    let empty = event(&run, None, Kind::AccumulatorEmpty);
    assert!(empty.time > 0.0 && empty.time < run.time);
    // What it held, V0·(1 − (p0/p)^(1/n)), has come out.
    let held = 1e-4 * (1.0 - (3_101_325.0_f64 / 10_101_325.0).powf(1.0 / 1.4));
    assert!((run.fluid.accumulator / held - 1.0).abs() < 1e-6);
    // From then on the flow is the pump's: the rest takes as long as its volume at 20 cm3/s.
    let rest = 2e-4 - held - 2e-5 * empty.time;
    assert!((run.time - empty.time - rest / 2e-5).abs() < 1e-5 * run.time);
    balances(&run, 0.0);
}

#[test]
fn an_accumulator_shortens_the_swing_of_a_gear() {
    let options = SupplyOptions::default();
    let without = cycle(&gear(), &options).unwrap();
    let mut with = gear();
    with.supply.accumulator = Some(Accumulator {
        gas_volume: 2e-4,
        precharge: 2e6,
        charged: 4.5e6,
        exponent: 1.4,
    });
    let found = cycle(&with, &options).unwrap();
    assert_eq!(found.up.as_ref().unwrap().end, RunEnd::Complete);
    assert!(found.up.as_ref().unwrap().time < without.up.as_ref().unwrap().time);
    balances(found.up.as_ref().unwrap(), 1e5);
    balances(found.down.as_ref().unwrap(), 1e5);
}

#[test]
fn stage_valves_hold_every_swing_until_the_struts_are_short() {
    // common practice: a sequence valve set above what the first stage takes
    let options = SupplyOptions::default();
    let mut gear = gear();
    for leg in &mut gear.legs {
        leg.drive.stage_valve = Some(3e6);
    }
    let run = cycle(&gear, &options).unwrap().up.unwrap();
    assert_eq!(run.end, RunEnd::Complete);
    let times = |kind| {
        let found = run.events.iter().filter(move |e| e.kind == kind);
        found.map(|e| e.time).collect::<Vec<f64>>()
    };
    let last_strut = times(Kind::StrutDone).into_iter().fold(0.0, f64::max);
    let first_swing = times(Kind::DownOpen).into_iter().fold(f64::MAX, f64::min);
    assert!(first_swing >= last_strut, "{first_swing} {last_strut}");
    for sample in run.samples.iter().filter(|s| s.time > last_strut + 1e-9) {
        let moving = sample.legs.iter().any(|leg| !leg.up);
        assert!(!moving || sample.pressure.unwrap() >= 3e6 - 1.0);
    }
    balances(&run, 1e5);
    // Set above what the pump makes it never opens, and no lighter leg would help.
    for leg in &mut gear.legs {
        leg.drive.stage_valve = Some(9e6);
    }
    let run = cycle(&gear, &options).unwrap().up.unwrap();
    assert_eq!(run.end, RunEnd::Stalled);
    assert!(matches!(
        run.stalls[0].cause,
        StallCause::Pressure {
            needed: 9e6,
            thrust_over: None,
            ..
        }
    ));
}

/// A pump gives nothing against gas above its own pressure, or above the switch that stops it; from
/// there down it gives what is taken.
#[test]
fn gas_above_the_pump_stops_it() {
    let slow = hand(2e-5, 1.0, 4e6);
    let switched = Supply {
        pressure_switch: Some(4e6),
        ..hand(2e-5, 1.0, 12e6)
    };
    for supply in [slow, switched] {
        let supply = Supply {
            accumulator: Some(GAS),
            ..supply
        };
        let above = run(&supply, vec![track(1e-4, 5e-9, |_| 2e6)]);
        assert_eq!(above.end, RunEnd::Complete);
        assert!(above.fluid.pumped < 1e-9, "{:?}", above.fluid);
        let last = above.samples.last().unwrap().pressure.unwrap();
        assert!((last / after(&GAS, 1e-4) - 1.0).abs() < 1e-6, "{last}");
        // to where the gas stands at 4 MPa it gives all
        let below = run(&supply, vec![track(8e-4, 5e-9, |_| 2e6)]);
        assert_eq!(below.end, RunEnd::Complete);
        assert!(below.fluid.pumped > 1e-5, "{:?}", below.fluid);
        balances(&above, 0.0);
        balances(&below, 0.0);
    }
}

/// A pump that gives 20 cm3/s whatever stands against it fills the gas to 6 MPa while a leg draws on
/// both; then it gives no more than the leg takes at that pressure, which stays.
#[test]
fn a_pump_fills_the_gas_and_no_further() {
    let (flow, most, load, c, swept) = (2e-5, 6e6, 2e6, 5e-9, 1e-4);
    let gas = Accumulator {
        charged: 5e6,
        gas_volume: 2e-4,
        ..GAS
    };
    let slow = hand(flow, 1.0, most);
    let switched = Supply {
        pressure_switch: Some(most),
        ..hand(flow, 1.0, 12e6)
    };
    let gap = {
        let held = |p: f64| 1.0 - (3_101_325.0 / (p + 101_325.0_f64)).powf(1.0 / 1.4);
        2e-4 * (held(most) - held(5e6))
    };
    let taken = |filled: f64| c * (after(&gas, -filled) - load).sqrt();
    let full_at = simpson(|filled| 1.0 / (flow - taken(filled)), gap);
    let rest = swept - (flow * full_at - gap);
    let exact = full_at + rest / taken(gap);
    for supply in [slow, switched] {
        let supply = Supply {
            accumulator: Some(gas),
            ..supply
        };
        let run = run(&supply, vec![track(swept, c, |_| load)]);
        assert_eq!(run.end, RunEnd::Complete);
        let full = event(&run, None, Kind::AccumulatorFull);
        assert!(
            (full.time / full_at - 1.0).abs() < 1e-7,
            "{} {full_at}",
            full.time
        );
        assert!(
            (run.time / exact - 1.0).abs() < 1e-7,
            "{} {exact}",
            run.time
        );
        let pumped = swept + gap;
        assert!(
            (run.fluid.pumped / pumped - 1.0).abs() < 1e-7,
            "{:?}",
            run.fluid
        );
        let last = run.samples.last().unwrap().pressure.unwrap();
        assert!((last / most - 1.0).abs() < 1e-7, "{last}");
        balances(&run, 0.0);
    }
}

/// An accumulator alone that has run empty leaves nothing but the pressure of the return line.
#[test]
fn an_empty_accumulator_has_nothing_to_spare() {
    let small = Accumulator {
        gas_volume: 6e-5,
        precharge: 6e6,
        ..GAS
    };
    let run = run(&alone(small), vec![track(1e-4, 5e-9, |_| 1e6)]);
    assert_eq!(run.end, RunEnd::Stalled);
    event(&run, None, Kind::AccumulatorEmpty);
    let (needed, available, thrust_over) = short_of(&run);
    assert!((needed / 1e6 - 1.0).abs() < 1e-12, "{needed}");
    assert_eq!(available, 0.0);
    assert!(thrust_over.unwrap() > 0.0);
}

/// The gear on its motor pump, with an accumulator that a switch at `set` lets the pump fill.
fn switched(set: f64, charged: f64) -> Gear {
    let mut gear = gear();
    gear.supply.pressure_switch = Some(set);
    gear.supply.accumulator = Some(Accumulator { charged, ..GAS });
    gear
}

/// No more volts free a leg where the switch stops the pump.
#[test]
fn a_switch_below_the_load_is_what_is_too_low() {
    let mut gear = switched(3.2e6, 3.1e6);
    for leg in &mut gear.legs {
        leg.wheel.mass += 30.0;
    }
    let run = cycle(&gear, &SupplyOptions::default()).unwrap().up.unwrap();
    assert_eq!(run.end, RunEnd::Stalled);
    let StallCause::Pressure {
        needed,
        available,
        volts_short,
        switch_too_low,
        ..
    } = run.stalls[0].cause
    else {
        panic!("{:?}", run.stalls);
    };
    assert!(needed > available && (available - 3.2e6).abs() < 1.0);
    assert!(switch_too_low && volts_short.is_none());
}

/// A pump that its switch keeps off takes no current.
#[test]
fn a_stopped_pump_takes_no_current() {
    let run = cycle(&switched(4e6, 4.9e6), &SupplyOptions::default())
        .unwrap()
        .up
        .unwrap();
    let first = &run.samples[0];
    assert!(first.pressure.unwrap() > 4.8e6);
    assert_eq!(first.current, Some(0.0));
    if run.fluid.pumped < 1e-9 {
        assert_eq!(run.energy.battery, 0.0);
    }
    // below the switch it runs
    let run = cycle(&switched(4e6, 3.5e6), &SupplyOptions::default())
        .unwrap()
        .up
        .unwrap();
    assert!(run.samples[0].current.unwrap() > 15.0);
}

/// A switch below the first load stops the pump at once, and nothing is read beyond it.
#[test]
fn a_switch_below_the_first_load_is_not_passed() {
    let mut gear = gear();
    for leg in &mut gear.legs {
        if let Some(jack) = &mut leg.drive.strut_jack {
            jack.shorten_pressure = 2e6;
        }
    }
    let set = 1.5e6;
    gear.supply.pressure_switch = Some(set);
    gear.legs[0].drive.strut_jack = gear.legs[0].drive.strut_jack.map(|jack| StrutJack {
        shorten_pressure: 1.0e6,
        ..jack
    });
    let run = cycle(&gear, &SupplyOptions::default()).unwrap().up.unwrap();
    assert_eq!(run.end, RunEnd::PressureSwitch);
    let most = |get: fn(&Sample) -> Option<f64>| {
        let all = run.samples.iter().filter_map(get);
        all.fold(0.0, f64::max)
    };
    assert!(most(|s| s.pressure) <= set * (1.0 + 1e-9));
    // the motor line of the file
    let current = 15.0 + (150.0 - 15.0) * set / 7e6;
    assert!(most(|s| s.current) <= current * (1.0 + 1e-9));
    assert!(run.largest_current.unwrap() <= current * (1.0 + 1e-9));
}
