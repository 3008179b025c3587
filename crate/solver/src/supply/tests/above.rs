//! An accumulator that stands above what its pump makes.
use super::super::{SupplyOptions, cycle};
use crate::model::{Accumulator, Gear, HandPump, Source};
use crate::result::{RunEnd, RunEventKind as Kind};
use gearswing_samples::pack::gear;

pub(super) fn with(
    source: Option<Source>,
    set: Option<f64>,
    [precharge, charged]: [f64; 2],
) -> Gear {
    let mut gear = gear();
    if let Some(source) = source {
        gear.supply.source = source;
    }
    gear.supply.pressure_switch = set;
    gear.supply.accumulator = Some(Accumulator {
        gas_volume: 2e-3,
        precharge,
        charged,
        exponent: 1.4,
    });
    gear
}

pub(super) fn hand(largest_pressure: f64) -> Option<Source> {
    Some(Source::HandPump(HandPump {
        stroke_volume: 1e-5,
        stroke_time: 1.0,
        largest_pressure,
    }))
}

/// What stands at the manifold moves the legs, however little the pump makes.
#[test]
fn gas_starts_a_leg_that_its_pump_does_not() {
    let gear = with(hand(5e5), None, [3e6, 9e6]);
    let found = cycle(&gear, &SupplyOptions::default()).unwrap();
    assert_eq!((found.up_error, found.down_error), (None, None));
    let up = found.up.unwrap();
    assert!(up.fluid.accumulator > 1e-5 && up.fluid.pumped < 1e-12);
}

/// Its switch keeps the pump off from first to last: no current, no event of its own.
#[test]
fn a_pump_that_never_runs_passes_no_breaker() {
    let gear = with(None, Some(2e6), [1e6, 4.9e6]);
    let run = cycle(&gear, &SupplyOptions::default()).unwrap().up.unwrap();
    assert_eq!(run.end, RunEnd::Complete);
    let last = run.samples.last().unwrap();
    assert!(last.pressure.unwrap() > 2e6, "{last:?}");
    assert_eq!(run.largest_current, Some(0.0));
    assert_eq!(run.energy.battery, 0.0);
    let own = [Kind::BreakerPassed, Kind::PressureSwitch, Kind::RunsOn];
    assert!(run.events.iter().all(|e| !own.contains(&e.kind)));
}

/// Behind its non-return valve a stalled pump stands at its dead pressure, and takes its stall current
/// there: E − R·I with I = I0 + (Is − I0)·p/Ps (textbook line of a motor), p where Q0·V/Vn is the
/// leak Q0·p/Ps, so p = Ps·V/Vn.
#[test]
fn a_stalled_pump_takes_no_more_than_its_stall_current() {
    let mut gear = with(None, None, [1e6, 9e6]);
    if let Source::MotorPump(pump) = &mut gear.supply.source {
        pump.relief_pressure = 2e7;
    }
    gear.supply.battery.internal_resistance = 0.1;
    gear.supply.battery.open_circuit_voltage = Some(12.0);
    let ohms = 0.1 + 0.01;
    let volts = (12.0 - ohms * 15.0) / (1.0 + ohms * 135.0 / 12.0);
    let stalled = 15.0 + 135.0 * volts / 12.0;
    let run = cycle(&gear, &SupplyOptions::default()).unwrap().up.unwrap();
    let first = &run.samples[0];
    assert!(first.pressure.unwrap() > 8.9e6);
    let current = first.current.unwrap();
    assert!(
        (current / stalled - 1.0).abs() < 1e-9,
        "{current} {stalled}"
    );
    assert!((first.bus_voltage.unwrap() - (12.0 - 0.1 * stalled)).abs() < 1e-9);
    assert!(run.largest_current.unwrap() < stalled * (1.0 + 1e-9));
}

/// An empty accumulator whose gas stands above what the pump makes takes nothing from it.
#[test]
fn a_precharge_above_the_pump_is_never_filled() {
    for gear in [
        with(hand(3e6), None, [4e6, 4.2e6]),
        with(None, Some(3e6), [4e6, 4.2e6]),
    ] {
        let found = cycle(&gear, &SupplyOptions::default()).unwrap();
        for run in [found.up.unwrap(), found.down.unwrap()] {
            let emptied = run.events.iter().find(|e| e.kind == Kind::AccumulatorEmpty);
            let emptied = emptied.map_or(f64::INFINITY, |e| e.time);
            let after = run.samples.iter().filter(|s| s.time > emptied);
            assert!(after.clone().count() > 0 || run.fluid.swept < 2e-4);
            for sample in after {
                assert!(sample.pressure.unwrap() <= 3e6 * (1.0 + 1e-9), "{sample:?}");
            }
            assert!(run.events.iter().all(|e| e.kind != Kind::AccumulatorFull));
            let f = run.fluid;
            let (gives, takes) = (f.pumped + f.drawn + f.accumulator, f.swept + f.relieved);
            assert!((gives / takes - 1.0).abs() < 1e-6, "{f:?}");
        }
    }
}
