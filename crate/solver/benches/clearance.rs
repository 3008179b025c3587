//! Clearances of one leg: 721 stations, 8 outlines, 40 edges, curves included. Aim 0.2 ms, at
//! worst 0.35 ms, on one core.
#![allow(clippy::expect_used, reason = "a benchmark of a sound leg")]
use criterion::{Criterion, criterion_group, criterion_main};
use gearswing_gear::model::View;
use gearswing_samples::heavy as bench_leg;
use gearswing_solver::clearance::{ClearanceCase, ClearanceOptions, clearance_at, clearances};
use gearswing_solver::kinematics::{Linkage, Sweep};
use gearswing_solver::tires::TireSizes;

fn bench(c: &mut Criterion) {
    for (name, rib, view) in [
        ("front view, clear", 0.0, View::Front),
        ("front view, contact", 0.04, View::Front),
        ("side view, contact", 0.0, View::Side),
    ] {
        let mut gear = bench_leg::gear(rib);
        gear.legs[0].view = view;
        let leg = &gear.legs[0];
        let linkage = Linkage::new(leg);
        let sweep = Sweep::new(leg, &linkage, 721);
        let sizes = TireSizes::of(&leg.wheel.tire);
        let case = ClearanceCase {
            leg,
            sizes: &sizes,
            rule: &gear.clearance_rule,
            linkage: &linkage,
            poses: &sweep.poses,
        };
        let edges: usize = leg
            .well
            .iter()
            .map(|o| o.shape.points().len() - usize::from(!o.shape.is_closed()))
            .sum();
        assert_eq!((edges, sweep.jams.len()), (40, 0), "{:?}", sweep.jams);
        let clearance = clearances(&case, &ClearanceOptions::default()).expect("resolved");
        println!("{name}:");
        for pair in &clearance.pairs {
            println!(
                "  {:16} {:14} {:?} {:9.5} m, to {:.1e} m, contact {}",
                pair.obstacle_name,
                format!("{:?}", pair.part),
                pair.tire,
                pair.tightest.clearance,
                pair.certified_to,
                pair.first_contact.is_some(),
            );
        }
        c.bench_function(&format!("clearances, {name}"), |b| {
            b.iter(|| clearances(&case, &ClearanceOptions::default()));
        });
        // without curves: one point only
        let certificate = ClearanceOptions {
            curve_stride: sweep.poses.len(),
            ..ClearanceOptions::default()
        };
        c.bench_function(&format!("certificate alone, {name}"), |b| {
            b.iter(|| clearances(&case, &certificate));
        });
        let pose = sweep.poses[sweep.poses.len() / 2];
        c.bench_function(&format!("clearance at one pose, {name}"), |b| {
            b.iter(|| clearance_at(leg, &sizes, &pose));
        });
    }
}

criterion_group!(benches, bench);
criterion_main!(benches);
