//! Three legs up and down again on a motor pump, with every event. Aim 20 ms on one core.
#![allow(clippy::expect_used, reason = "a benchmark of a sound gear")]
use criterion::{Criterion, criterion_group, criterion_main};
use gearswing_gear::model::{LineOrifice, MotorPump, Source, Supply};
use gearswing_samples::heavy as bench_leg;
use gearswing_solver::result::RunEnd;
use gearswing_solver::supply::{SupplyOptions, cycle};

fn bench(c: &mut Criterion) {
    let mut gear = bench_leg::gear(0.0);
    gear.supply = Supply {
        source: Source::MotorPump(MotorPump {
            free_flow: 5e-5,
            rated_voltage: 12.0,
            stall_pressure: 12e6,
            no_load_current: 15.0,
            stall_current: 150.0,
            relief_pressure: 6.9e6,
        }),
        ..gear.supply
    };
    let orifice = |hole| {
        Some(LineOrifice {
            hole,
            discharge: 0.62,
        })
    };
    gear.legs[0].drive.orifice_up = orifice(1.4e-3);
    gear.legs[0].drive.orifice_down = orifice(0.9e-3);
    for mass in [1.1, 0.7] {
        let mut leg = gear.legs[0].clone();
        leg.wheel.mass *= mass;
        gear.legs.push(leg);
    }
    let found = cycle(&gear, &SupplyOptions::default()).expect("a sound supply");
    assert_eq!(found.up.map(|up| up.end), Some(RunEnd::Complete));
    assert!(found.down.is_some());
    c.bench_function("three legs up and down", |b| {
        b.iter(|| cycle(&gear, &SupplyOptions::default()));
    });
}

criterion_group!(benches, bench);
criterion_main!(benches);
