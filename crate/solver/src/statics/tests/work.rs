//! Virtual work against free bodies, energy, equilibrium as a whole.
use super::super::*;
use super::{legs, windy};
use crate::kinematics::{Linkage, Sweep};
use crate::model::*;
use gearswing_samples::leg as sample;

#[test]
fn virtual_work_agrees_with_free_bodies() {
    let conditions = windy();
    let mut compared = 0;
    for leg in legs() {
        let linkage = Linkage::new(&leg);
        let (g, w) = (gravity(leg.view, &conditions), wind(leg.view, &conditions));
        for pose in &Sweep::new(&leg, &linkage, 61).poses {
            let loads = Loads::new(&leg, &linkage, pose, g, w);
            let Some(bodies) = free_bodies(&leg, &linkage, pose, &loads) else {
                continue;
            };
            // near a dead point both grow without bound and lose figures alike
            if pose.rates.actuator.abs() < 1e-3 {
                continue;
            }
            let work = -loads.power(&leg, &linkage, pose) / pose.rates.actuator;
            let scale = work.abs().max(loads.wheel.1.norm());
            assert!(
                (work - bodies.thrust).abs() < 1e-9 * scale,
                "{:?} {:?} at {}: {work} {}",
                leg.brace,
                leg.actuator.attach_to,
                pose.place.progress,
                bodies.thrust
            );
            compared += 1;
        }
    }
    assert!(compared > 1000, "{compared}");
}

#[test]
fn reactions_carry_all_outside_loads() {
    let conditions = windy();
    for leg in legs() {
        let linkage = Linkage::new(&leg);
        let (g, w) = (gravity(leg.view, &conditions), wind(leg.view, &conditions));
        for pose in &Sweep::new(&leg, &linkage, 31).poses {
            let loads = Loads::new(&leg, &linkage, pose, g, w);
            let Some(bodies) = free_bodies(&leg, &linkage, pose, &loads) else {
                continue;
            };
            let r = bodies.reactions;
            let sum = loads.body.1
                + loads.wheel.1
                + loads.leg_air.1
                + [loads.upper, loads.lower, loads.actuator]
                    .into_iter()
                    .flatten()
                    .sum::<Vector>()
                + loads.springs.leg.force
                + loads.springs.sliding.force
                + loads.springs.upper.force
                + loads.springs.lower.force
                + r.trunnion
                + r.brace_pivot.unwrap_or_default()
                + r.mount;
            let scale = r.mount.norm() + r.trunnion.norm() + loads.wheel.1.norm();
            assert!(sum.norm() < 1e-9 * scale, "{sum} of {scale}");
        }
    }
}

/// Work of the holding thrust (trapezoids over 4,000 stations) over a stroke equals the rise of the weights (work–energy theorem).
#[test]
fn thrust_works_what_the_weights_gain() {
    let leg = sample::leg();
    let conditions = Conditions::default();
    let linkage = Linkage::new(&leg);
    let (g, w) = (gravity(leg.view, &conditions), wind(leg.view, &conditions));
    let sweep = Sweep::new(&leg, &linkage, 4001);
    let supply = Supply::constant(7e6);
    let Brace::Folding(brace) = &leg.brace else {
        panic!()
    };
    let height = |pose: &crate::kinematics::Pose| {
        let loads = Loads::new(&leg, &linkage, pose, g, w);
        let mut sum = -loads.body.1.dot(&loads.body.0.coords);
        sum -= loads.wheel.1.dot(&loads.wheel.0.coords);
        let (knee, attach) = (pose.knee.unwrap(), pose.brace_attach.unwrap());
        sum -= (loads.upper[1] + loads.lower[0]).dot(&knee.coords);
        sum -= loads.lower[1].dot(&attach.coords);
        sum - loads.actuator[1].dot(&pose.actuator_attach.coords)
    };
    assert!(brace.upper.mass > 0.0);
    let mut work = 0.0;
    for pair in sweep.poses.windows(2) {
        let thrust = |p| {
            station_force(&leg, &supply, &linkage, p, g, w)
                .unwrap()
                .holding
        };
        let mean = 0.5 * (thrust(&pair[0]) + thrust(&pair[1]));
        work += mean * (pair[1].actuator_length - pair[0].actuator_length);
    }
    let gain = height(sweep.poses.last().unwrap()) - height(&sweep.poses[0]);
    assert!((work - gain).abs() < 1e-5 * gain.abs(), "{work} {gain}");
}
