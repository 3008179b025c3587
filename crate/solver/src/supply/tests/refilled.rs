//! The accumulator after the swing.
use super::super::{SupplyOptions, cycle};
use super::runs::{event, hand, run, track};
use crate::model::{Accumulator, Gear, Source, Supply};
use crate::result::{RunEnd, RunEventKind as Kind};
use gearswing_samples::pack::gear;

const GAS: Accumulator = Accumulator {
    gas_volume: 1e-3,
    precharge: 3e6,
    charged: 10e6,
    exponent: 1.4,
};

/// Fluid in it at a gauge pressure: V0·(1 − (p0/p)^(1/n)) (p·V^n constant, textbook).
fn held(pressure: f64) -> f64 {
    let ratio: f64 = (3e6 + 101_325.0) / (pressure + 101_325.0);
    1e-3 * (1.0 - ratio.powf(1.0 / 1.4))
}

/// A pump of one flow takes what has gone out over its flow to fill it again.
#[test]
fn what_has_gone_out_is_pumped_back() {
    let (flow, swept) = (1e-5, 2e-4);
    let supply = Supply {
        accumulator: Some(GAS),
        pressure_switch: Some(10e6),
        ..hand(flow, 1.0, 12e6)
    };
    let run = run(&supply, vec![track(swept, 5e-9, |_| 4e6)]);
    assert_eq!(run.end, RunEnd::Complete);
    let refill = run.refill.unwrap();
    // all that the leg takes is pumped in the end
    let exact = swept / flow;
    assert!(
        (refill.time / exact - 1.0).abs() < 1e-6,
        "{refill:?} {exact}"
    );
    assert!((refill.pressure / 10e6 - 1.0).abs() < 1e-6, "{refill:?}");
    assert!(run.time < 0.9 * refill.time);
    let left = held(10e6) - (swept - flow * run.time);
    let stands = run.moving().last().unwrap().pressure.unwrap();
    assert!((held(stands) / left - 1.0).abs() < 1e-6, "{stands}");
    assert!(run.fluid.accumulator.abs() < 1e-9, "{:?}", run.fluid);
    assert!((run.fluid.pumped / swept - 1.0).abs() < 1e-6);
    let stop = event(&run, None, Kind::PressureSwitch);
    assert_eq!(stop.time, refill.time);
    assert!((run.strokes.unwrap() / (swept / flow) - 1.0).abs() < 1e-6);
}

fn on_its_pack(set: Option<f64>) -> Gear {
    let mut gear = gear();
    gear.supply.pressure_switch = set;
    gear.supply.accumulator = Some(Accumulator {
        charged: 4.5e6,
        precharge: 2e6,
        ..GAS
    });
    gear
}

/// Energy of the filling: E·∫I dt, with I and the flow on the straight lines of the file, by Simpson's
/// rule over the fluid.
#[test]
fn filling_takes_its_energy() {
    let gear = on_its_pack(Some(4.6e6));
    let run = cycle(&gear, &SupplyOptions::default()).unwrap().up.unwrap();
    assert_eq!(run.end, RunEnd::Complete);
    let refill = run.refill.unwrap();
    let Source::MotorPump(pump) = gear.supply.source else {
        panic!()
    };
    let battery = &gear.supply.battery;
    let open = super::super::open_circuit_voltage(battery);
    let ohms = battery.internal_resistance + battery.wire_resistance;
    let current = |p: f64| {
        let rise = pump.stall_current - pump.no_load_current;
        pump.no_load_current + rise * p / pump.stall_pressure
    };
    let flow = |p: f64| {
        let volts = open - ohms * current(p);
        pump.free_flow * (volts / pump.rated_voltage - p / pump.stall_pressure)
    };
    let base = 2e6 + 101_325.0;
    let pressure = |fluid: f64| base * (1.0 - fluid / 1e-3).powf(-1.4) - 101_325.0;
    let held = |p: f64| 1e-3 * (1.0 - (base / (p + 101_325.0_f64)).powf(1.0 / 1.4));
    let from = held(run.moving().last().unwrap().pressure.unwrap());
    let to = held(4.6e6);
    let count = 400;
    let (mut time, mut energy) = (0.0, 0.0);
    for at in 0..=count {
        let weight = match at {
            0 => 1.0,
            at if at == count => 1.0,
            at if at % 2 == 1 => 4.0,
            _ => 2.0,
        };
        let p = pressure(from + (to - from) * f64::from(at) / f64::from(count));
        let share = weight * (to - from) / f64::from(count) / 3.0;
        time += share / flow(p);
        energy += share * open * current(p) / flow(p);
    }
    assert!(to > from);
    let took = refill.time - run.time;
    assert!((took / time - 1.0).abs() < 1e-5, "{took} {time}");
    assert!(
        (refill.battery / energy - 1.0).abs() < 1e-5,
        "{refill:?} {energy}"
    );
    assert!(refill.battery < run.energy.battery);
    let f = run.fluid;
    let (gives, takes) = (f.pumped + f.drawn + f.accumulator, f.swept + f.relieved);
    assert!((gives / takes - 1.0).abs() < 1e-6, "{f:?}");
}

/// Where position switches stop the pump with the legs, nothing fills it.
#[test]
fn a_pump_that_stops_with_the_legs_fills_nothing() {
    let run = cycle(&on_its_pack(None), &SupplyOptions::default())
        .unwrap()
        .up
        .unwrap();
    assert_eq!((run.end, run.refill), (RunEnd::Complete, None));
    event(&run, None, Kind::SwitchesStop);
    assert_eq!(run.moving().len(), run.samples.len());
}
