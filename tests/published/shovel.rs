//! Source: R. C. Hibbeler, "Engineering Mechanics: Statics", 14th ed., problem 6-91 (prepscholar.com, chapter
//! 6 problem 91P). Found: 1.25 Mg, arms 0.5 m and 1.5 sin 30° m: cylinder EF 8,175 N. Cylinder AD, arms
//! 0.25 cos 40° m and 0.5 + 2 cos 10° m: computed 158,130 N (the book's 158 kN from memory).
use gearswing_gear::model::*;
use gearswing_tests::{bare_gear, bare_leg, near, solve};

/// A part that pivots at the origin with the shovel's weight `load_arm` to the right, held by a
/// cylinder that meets it `distance` from the pivot at `degrees` to the part.
fn thrust(load_arm: f64, distance: f64, degrees: f64) -> f64 {
    let (sin, cos) = degrees.to_radians().sin_cos();
    let mut leg = bare_leg();
    leg.strut.axle = Point::new(load_arm, 0.0);
    leg.wheel.mass = 1250.0;
    leg.actuator.attach = Point::new(distance, 0.0);
    leg.actuator.mount = leg.actuator.attach - Vector::new(cos, sin);
    let mut gear = bare_gear(leg);
    // the book takes 9.81 m/s2
    gear.conditions.load_factor = 9.81 / 9.80665;
    solve(&gear, 721).stations[0].force.unwrap().holding
}

#[test]
fn bucket_cylinder() {
    near("EF", thrust(0.5, 1.5, 30.0), 8175.0, 1e-6);
}

#[test]
fn arm_cylinder() {
    let load_arm = 0.5 + 2.0 * 10_f64.to_radians().cos();
    near("AD", thrust(load_arm, 0.25, 50.0), 158_130.0, 5.1);
}
