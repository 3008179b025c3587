//! A whole leg: 721 stations of arc and force, clearance curves, certified minimum of every moving
//! outline against a well of 40 edges. Aim 0.5 ms, at worst 1.5 ms, on one core.
#![allow(clippy::expect_used, reason = "a benchmark of a sound leg")]
use criterion::{Criterion, criterion_group, criterion_main};
use gearswing_solver::kinematics::{Linkage, Sweep};
use gearswing_solver::{Options, solve_leg};

#[path = "bench_leg/leg.rs"]
mod bench_leg;

fn bench(c: &mut Criterion) {
    for (name, rib) in [("clear", 0.0), ("contact", 0.04)] {
        let gear = bench_leg::gear(rib);
        assert!(solve_leg(&gear, 0, &Options::default()).is_ok());
        c.bench_function(&format!("whole leg, {name}"), |b| {
            b.iter(|| solve_leg(&gear, 0, &Options::default()));
        });
    }
    let gear = bench_leg::gear(0.0);
    let leg = &gear.legs[0];
    c.bench_function("poses of 721 stations", |b| {
        b.iter(|| Sweep::new(leg, &Linkage::new(leg), 721));
    });
}

criterion_group!(benches, bench);
criterion_main!(benches);
