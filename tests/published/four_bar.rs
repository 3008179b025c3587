//! Source: four-bar example in the manner of R. L. Norton, "Design of Machinery", ch. 4: crank 40,
//! coupler 120, rocker 80, ground 100, crank at 40°. Source and the printed 20.30°, 57.33°, −60.98°,
//! −98.01° from memory, not confirmed; every value below is computed apart from this project, with a
//! loop residual below 2e-13.
use gearswing_gear::model::*;
use gearswing_solver::kinematics::{Linkage, Side, circle_circle};
use gearswing_tests::{bare_gear, bare_leg, near, solve};
use std::f64::consts::{FRAC_PI_2, TAU};

const CRANK: f64 = 0.040;
const COUPLER: f64 = 0.120;
const ROCKER: f64 = 0.080;
const GROUND: Point = Point::new(0.100, 0.0);

/// The crank is the leg, at `start` (rad) when down; the rocker is the upper link of its brace, the
/// coupler the lower one. Open branch: the pin between them lies left of crank pin to ground.
fn leg(start: f64, swing: f64, side: Side) -> Leg {
    let pin = Point::new(CRANK * start.cos(), CRANK * start.sin());
    let knee = circle_circle(pin, COUPLER, GROUND, ROCKER, side).unwrap();
    let link = Link {
        thickness: 0.005,
        mass: 0.0,
    };
    let mut leg = bare_leg();
    leg.swing_up = swing;
    leg.brace = Brace::Folding(FoldingBrace {
        airframe_pivot: GROUND,
        knee,
        leg_attach: pin,
        folds: Folds::SameSide,
        unlocked_by: UnlockedBy::Separate,
        knee_given: Default::default(),
        excursion_allowed: None,
        upper: link,
        lower: link,
    });
    leg
}

fn degrees(v: Vector) -> f64 {
    v.y.atan2(v.x).to_degrees()
}

/// Crank, coupler and rocker angle (°), and their speeds over that of the crank (ratio).
const OPEN: [(f64, f64, f64, f64, f64); 6] = [
    (0.0, 36.336_06, 62.720_39, -0.666_67, -0.666_67),
    (40.0, 20.297_88, 57.324_88, -0.164_84, 0.279_92),
    (90.0, 18.887_90, 80.256_91, 0.064_27, 0.538_98),
    (135.0, 24.330_93, 103.696_68, 0.176_22, 0.475_99),
    (180.0, 34.771_94, 121.188_62, 0.285_71, 0.285_71),
    (270.0, 62.490_72, 123.859_73, 0.211_59, -0.263_12),
];

#[test]
fn open_branch_over_three_quarters_of_a_turn() {
    let leg = leg(0.0, 1.5 * std::f64::consts::PI, Side::Left);
    let linkage = Linkage::new(&leg);
    // a station every 5°
    let result = solve(&bare_gear(leg), 55);
    assert!(result.jams.is_empty(), "{:?}", result.jams);
    assert_eq!(result.stations.len(), 55);
    for (crank, coupler, rocker, coupler_speed, rocker_speed) in OPEN {
        let station = &result.stations[(crank / 5.0) as usize];
        near("crank", station.swing.to_degrees(), crank, 1e-11);
        let (knee, pin) = (station.knee.unwrap(), station.brace_attach.unwrap());
        near("coupler", degrees(knee - pin), coupler, 5.1e-6);
        near("rocker", degrees(knee - GROUND), rocker, 5.1e-6);
        let rates = linkage.pose(station.progress).unwrap().rates;
        near("ω3/ω2", rates.lower / rates.swing, coupler_speed, 5.1e-6);
        near("ω4/ω2", rates.upper / rates.swing, rocker_speed, 5.1e-6);
    }
}

#[test]
fn both_branches_at_40_degrees() {
    for (side, coupler, rocker) in [
        (Side::Left, 20.297_883, 57.324_880),
        (Side::Right, -60.977_967, -98.004_964),
    ] {
        // swung there from 0°, so that it is the branch that is followed
        let result = solve(&bare_gear(leg(0.0, 40_f64.to_radians(), side)), 2);
        let up = result.stations.last().unwrap();
        let (knee, pin) = (up.knee.unwrap(), up.brace_attach.unwrap());
        near("coupler", degrees(knee - pin), coupler, 5.1e-7);
        near("rocker", degrees(knee - GROUND), rocker, 5.1e-7);
    }
}

/// By the law of cosines the extremes lie where the crank is in line with the ground.
#[test]
fn transmission_angle_over_a_whole_turn() {
    let result = solve(&bare_gear(leg(0.0, TAU, Side::Left)), 721);
    assert!(result.jams.is_empty(), "{:?}", result.jams);
    let angles = result
        .stations
        .iter()
        .map(|s| s.transmission.unwrap().to_degrees());
    let least = angles.clone().fold(f64::INFINITY, f64::min);
    let largest = angles.fold(0.0, f64::max);
    near("least", least, 26.384_33, 5.1e-6);
    near("largest", largest, 86.416_68, 5.1e-6);
    let at = |station: usize| result.stations[station].transmission.unwrap().to_degrees();
    near("at 0°", at(0), least, 1e-9);
    near("at 180°", at(360), largest, 1e-9);
    let leg = leg(40_f64.to_radians(), 0.1, Side::Left);
    let down = solve(&bare_gear(leg), 2);
    near(
        "at 40°",
        down.stations[0].transmission.unwrap().to_degrees(),
        37.0270,
        5.1e-5,
    );
}

/// Torque gain 3.572457 at 40°: a weight on the crank, held by a cylinder square to the rocker. The
/// reactions come from the equilibrium of each body, the thrust from velocities: both must show it.
#[test]
fn torque_gain_at_40_degrees() {
    const GAIN: f64 = 3.572_457;
    let start = 40_f64.to_radians();
    let mut leg = leg(start, 0.1, Side::Left);
    let Brace::Folding(brace) = &leg.brace else {
        panic!("no brace")
    };
    let rocker = brace.knee - brace.airframe_pivot;
    let square = Vector::new(-rocker.y, rocker.x) / ROCKER;
    leg.actuator.attach_to = AttachTo::UpperLink;
    leg.actuator.attach = brace.knee;
    leg.actuator.mount = brace.knee - square * 0.2;
    leg.wheel.mass = 10.0;
    let on_crank = 10.0 * 9.80665 * leg.strut.axle.x;
    let down = solve(&bare_gear(leg), 721);
    let force = down.stations[0].force.unwrap();
    // the weight turns the crank down, the cylinder holds the rocker up
    near(
        "gain",
        force.holding * ROCKER / on_crank,
        GAIN,
        5.1e-7 * GAIN,
    );
    // the coupler carries it along itself
    let coupler = force.reactions.brace_attach.unwrap();
    near(
        "coupler",
        degrees(coupler).rem_euclid(180.0),
        20.297_883,
        1e-6,
    );
    let (sin, cos) = (start - FRAC_PI_2).sin_cos();
    let turning = coupler.dot(&Vector::new(-cos, -sin));
    near("on the crank", turning * CRANK, on_crank, 1e-9 * on_crank);
}
