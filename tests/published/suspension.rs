//! Source: engineering statics sheet "Frames and machines", scribd.com/document/486236933, item 2. Found:
//! wheel load 3,600 N, link CD rising 60 over 280 (12.09°), 3600 × 165 = CD (305 cos a + 70 sin a): CD
//! 1,898 N, B 1,856 and 4,000 N, 4,410 N together. Computed: 1898.39, 1856.25, 3997.77 (the book rounds).
//! Its spring EF is left out: the arms on the lower link could not be read.
use gearswing_gear::model::*;
use gearswing_tests::{bare_gear, bare_leg, near, solve};

/// The knuckle pivots at B as a leg does; the link CD, loaded along itself only, is the actuator. Drawn
/// upside down, for the wheel's load to be a weight.
#[test]
fn knuckle_between_link_and_pivot() {
    let mut leg = bare_leg();
    leg.strut.axle = Point::new(0.165, -0.1);
    leg.wheel.mass = 3600.0 / 9.80665;
    leg.actuator.attach = Point::new(-0.070, -0.305);
    leg.actuator.mount = leg.actuator.attach + Vector::new(0.280, -0.060);
    let result = solve(&bare_gear(leg), 721);
    let force = result.stations[0].force.unwrap();
    // the link is pulled
    near("CD", force.holding, -1898.39, 0.006);
    let pivot = force.reactions.trunnion;
    near("Bx", pivot.x, -1856.25, 0.006);
    near("By", pivot.y, 3997.77, 0.006);
    near("B as printed", pivot.norm(), 4410.0, 5.0);
}
