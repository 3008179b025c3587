//! Turns about an axis that is square to no view: the rotations that the checks of skewed trunnions
//! use.
//!
//! Source: "How to install retractable landing gear", a magazine of model aviation, Aug 2012, p. 37
//! (read): leg raked 10° forward when down, 20° aft in plan when up, wheel flat. Axes and angles
//! computed apart from this project from these inputs; the closed form of the aft-retracting leg
//! likewise. Chai and Mason, "Landing gear integration in aircraft conceptual design", 6.3.1 (read):
//! with the leg alone the axis is the cross product of its two places.
//!
//! Frame: x forward, y outboard, z up.
use gearswing_tests::spatial::{V3, turn_between, turned};

const NEAR: f64 = 5e-7;

fn raked(outboard: f64) -> ([V3; 2], [V3; 2]) {
    let (ten, twenty) = (10_f64.to_radians(), 20_f64.to_radians());
    let down = [V3::new(ten.sin(), 0.0, -ten.cos()), V3::y()];
    let up = [
        V3::new(-twenty.sin(), outboard * twenty.cos(), 0.0),
        V3::new(0.0, 0.0, outboard),
    ];
    (down, up)
}

fn same(a: V3, b: [f64; 3], within: f64) {
    assert!((a - V3::from(b)).norm() < within, "{a:?} {b:?}");
}

#[test]
fn a_raked_leg_whose_wheel_lies_flat_inboard() {
    let (down, up) = raked(-1.0);
    let (axis, angle) = turn_between(down, up);
    same(axis, [-0.935_113, 0.250_563, -0.250_563], 2.0 * NEAR);
    assert!((angle.to_degrees() - 93.840_966).abs() < NEAR);
    // leg and axle keep their angles to the axis
    for (vector, degrees) in [(0, 85.159_885), (1, 75.489_181)] {
        for pose in [down, up] {
            let to_axis = pose[vector].dot(&axis).acos().to_degrees();
            assert!((to_axis - degrees).abs() < NEAR, "{to_axis}");
        }
    }
    let plan = (axis.y / -axis.x).atan().to_degrees();
    let elevation = axis.z.abs().asin().to_degrees();
    assert!((plan - 15.0).abs() < NEAR && (elevation - 14.510_819).abs() < NEAR);
    let half = |v: V3| turned(axis, 0.5 * angle, v);
    same(
        half(down[0]),
        [-0.086_639, -0.697_714, -0.711_118],
        2.0 * NEAR,
    );
    same(
        half(down[1]),
        [0.108_741, 0.702_914, -0.702_914],
        2.0 * NEAR,
    );
    for (from, to) in down.into_iter().zip(up) {
        assert!((turned(axis, angle, from) - to).norm() < 1e-14);
        assert!((turned(axis, -angle, to) - from).norm() < 1e-14);
    }
}

#[test]
fn the_same_leg_outboard() {
    let (down, up) = raked(1.0);
    let (axis, angle) = turn_between(down, up);
    same(axis, [0.935_113, 0.250_563, 0.250_563], 2.0 * NEAR);
    assert!((angle.to_degrees() - 93.840_966).abs() < NEAR);
}

/// An axis from the leg alone leaves the wheel off flat.
#[test]
fn an_axis_from_the_leg_alone() {
    let (down, up) = raked(-1.0);
    let cross = down[0].cross(&up[0]);
    let (axis, angle) = (cross.normalize(), down[0].dot(&up[0]).acos());
    same(axis, [-0.927_053, 0.337_420, -0.163_464], 2.0 * NEAR);
    assert!((angle.to_degrees() - 93.404_867).abs() < NEAR);
    assert!((turned(axis, angle, down[0]) - up[0]).norm() < 1e-14);
    let off = turned(axis, angle, down[1]).dot(&up[1]).acos().to_degrees();
    assert!((off - 10.3117).abs() < 5e-5, "{off}");
}

#[test]
fn an_aft_leg_whose_wheel_turns_flat() {
    let (down, up) = ([-V3::z(), V3::y()], [-V3::x(), V3::z()]);
    let (axis, angle) = turn_between(down, up);
    let third = 1.0 / 3_f64.sqrt();
    same(axis, [third; 3], 1e-14);
    assert!((angle - 2.0 * std::f64::consts::FRAC_PI_3).abs() < 1e-14);
}
