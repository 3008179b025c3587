//! A whole leg: 721 stations of arc and force, clearance curves, certified minimum of every moving
//! outline against a well of 40 edges. Aim 0.5 ms, at worst 1.5 ms, on one core.
#![allow(clippy::expect_used, reason = "a benchmark of a sound leg")]
use criterion::{Criterion, criterion_group, criterion_main};
use gearswing_gear::model::{Gear, Pin, Pins};
use gearswing_samples::heavy as bench_leg;
use gearswing_solver::fall::fall_of;
use gearswing_solver::kinematics::{Linkage, Sweep};
use gearswing_solver::{Options, solve_leg};

/// Every load case has its own loads.
fn with_cases(mut gear: Gear) -> Gear {
    gear.conditions.gear_speed = Some(45.0);
    gear.conditions.stall_speed = Some(30.0);
    gear.conditions.sideslip = 0.1;
    gear.legs[0].air.wheel_drag_area = 0.03;
    gear.legs[0].air.leg_drag_area = 0.02;
    gear
}

fn with_pins(mut gear: Gear) -> Gear {
    let pin = Pin::rubbing(0.006, 0.15);
    gear.legs[0].pins = Pins {
        trunnion: Pin {
            radius: Some(0.015),
            ..pin
        },
        ..Pins::alike(pin)
    };
    gear
}

fn with_orifice(mut gear: Gear, diameter: f64) -> Gear {
    gear.legs[0].fall.return_orifice = Some(diameter);
    gear
}

fn bench(c: &mut Criterion) {
    let plain = || bench_leg::gear(0.0);
    for (name, gear) in [
        ("clear", plain()),
        ("contact", bench_leg::gear(0.04)),
        ("six cases", with_cases(plain())),
        ("rubbing pins", with_pins(plain())),
        ("rubbing pins, six cases", with_pins(with_cases(plain()))),
        (
            "six cases, orifice",
            with_orifice(with_cases(plain()), 1e-3),
        ),
    ] {
        assert!(solve_leg(&gear, 0, &Options::default()).is_ok());
        c.bench_function(&format!("whole leg, {name}"), |b| {
            b.iter(|| solve_leg(&gear, 0, &Options::default()));
        });
    }
    let gear = plain();
    let leg = &gear.legs[0];
    c.bench_function("poses of 721 stations", |b| {
        b.iter(|| Sweep::new(leg, &Linkage::new(leg), 721));
    });
    for (name, gear) in [
        ("free", plain()),
        ("in the wind", with_cases(plain())),
        ("rubbing pins", with_pins(plain())),
        ("orifice of 2 mm", with_orifice(with_cases(plain()), 2e-3)),
        ("orifice of 1 mm", with_orifice(with_cases(plain()), 1e-3)),
        ("orifice of 0.4 mm", with_orifice(with_cases(plain()), 4e-4)),
    ] {
        let leg = &gear.legs[0];
        let linkage = Linkage::new(leg);
        let fall = || fall_of(leg, &linkage, &gear.fluid, &gear.conditions, 1.5);
        assert!(fall().is_some());
        println!(
            "{name}: {:?}",
            fall().map(|fall| (fall.outcome, fall.airspeed))
        );
        c.bench_function(&format!("fall, {name}"), |b| b.iter(fall));
    }
}

criterion_group!(benches, bench);
criterion_main!(benches);
