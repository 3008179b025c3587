//! Source: E. Hairer, G. Wanner, "Solving Ordinary Differential Equations II", 2nd ed. 1996, p. 533 ff.,
//! eq. (7.11), Andrews' squeezing mechanism, and the problem "Andrews" of the test set for initial value
//! solvers. Found: parameters at rdrr.io/cran/deTestSet/man/ex_andrews.html, angles in public copies of
//! the test set (pose 2: a run of the published reference solver at tolerance 1e-14). The points follow
//! from the angles by the loop equations, which close to 7e-17 m.
use gearswing_gear::model::*;
use gearswing_solver::kinematics::{Linkage, Side, circle_circle};
use gearswing_tests::{bare_gear, bare_leg, near, solve};
use std::f64::consts::{FRAC_PI_2, TAU};

const A: Point = Point::new(-0.06934, -0.00227);
const B: Point = Point::new(-0.03635, 0.03273);
const O: Point = Point::new(0.0, 0.0);

/// One published pose: its angles (rad).
struct Angles {
    beta: f64,
    theta: f64,
    gamma: f64,
    phi: f64,
    delta: f64,
    omega: f64,
    epsilon: f64,
}

const POSES: [Angles; 2] = [
    Angles {
        beta: -0.061_713_890_014_276_45,
        theta: 0.0,
        gamma: 0.455_279_819_163_070_4,
        phi: 0.222_668_390_165_885_9,
        delta: 0.487_364_979_543_842_55,
        omega: -0.222_668_390_165_885_9,
        epsilon: 1.230_547_444_549_821_2,
    },
    Angles {
        beta: 15.810_771_196_299_04,
        theta: -15.756_371_059_842_98,
        gamma: 0.040_822_240_130_731_01,
        phi: -0.534_730_116_322_694_8,
        delta: 0.524_409_965_880_530_4,
        omega: 0.534_730_116_322_694_8,
        epsilon: 1.048_080_741_042_263,
    },
];

/// Crank O–K1, coupler K1–C and rocker C–B (m).
const CRANK: f64 = 0.007;
const COUPLER: f64 = 0.028;
const ROCKER: f64 = 0.035;
/// Arms A–K5 and A–K7, links K5–C and K7–C (m).
const ARM: f64 = 0.040;
const LINK: f64 = 0.020;

fn at(angle: f64) -> Vector {
    Vector::new(angle.cos(), angle.sin())
}

fn direction(v: Vector) -> f64 {
    v.y.atan2(v.x)
}

/// The crank pin of a pose, which drives all else.
fn crank_pin(pose: &Angles) -> Point {
    O + at(pose.beta) * CRANK
}

/// Angles may differ by whole turns.
#[track_caller]
fn same_angle(what: &str, got: f64, wanted: f64) {
    let turns = ((got - wanted) / TAU).round();
    near(what, got - turns * TAU, wanted, 2e-13);
}

/// The angles that the loop equations ask for, from the joints.
fn compare(pose: &Angles, k1: Point, c: Point, k5: Point, k7: Point) {
    same_angle("theta", direction(k1 - c) - direction(k1 - O), pose.theta);
    // C − B = ss (sin γ, −cos γ)
    same_angle("gamma", direction(c - B) + FRAC_PI_2, pose.gamma);
    let delta = direction(k5 - A);
    same_angle("delta", delta, pose.delta);
    // C − K5 = e (sin(Φ+δ), −cos(Φ+δ))
    same_angle("phi", direction(c - k5) + FRAC_PI_2 - delta, pose.phi);
    // K7 − A = u (sin ε, −cos ε)
    let epsilon = direction(k7 - A) + FRAC_PI_2;
    same_angle("epsilon", epsilon, pose.epsilon);
    same_angle("omega", direction(c - k7) - epsilon, pose.omega);
}

/// The branches are those of the published points of pose 1; pose 2 must lie on the same ones.
#[test]
fn dyads_assemble_both_poses_on_the_same_branches() {
    for pose in &POSES {
        let k1 = crank_pin(pose);
        let c = circle_circle(k1, COUPLER, B, ROCKER, Side::Left).unwrap();
        let k5 = circle_circle(A, ARM, c, LINK, Side::Left).unwrap();
        let k7 = circle_circle(A, ARM, c, LINK, Side::Right).unwrap();
        compare(pose, k1, c, k5, k7);
    }
}

/// A leg that turns `arm` about `trunnion` by `swing`, and whose brace folds on at `knee`.
fn leg(trunnion: Point, arm: Point, pivot: Point, knee: Point, swing: f64) -> Leg {
    let link = Link {
        thickness: 0.001,
        mass: 0.0,
    };
    let mut leg = bare_leg();
    leg.trunnion = trunnion;
    leg.swing_up = swing;
    leg.brace = Brace::Folding(FoldingBrace {
        airframe_pivot: pivot,
        knee,
        leg_attach: arm,
        folds: Folds::SameSide,
        unlocked_by: UnlockedBy::Separate,
        knee_given: Default::default(),
        excursion_allowed: None,
        upper: link,
        lower: link,
    });
    leg
}

/// Joints of pose 1, from its published angles.
fn pose_1() -> [Point; 4] {
    let pose = &POSES[0];
    let k1 = crank_pin(pose);
    let c = k1 - at(pose.beta + pose.theta) * COUPLER;
    let k5 = A + at(pose.delta) * ARM;
    let k7 = A + at(pose.epsilon - FRAC_PI_2) * ARM;
    [k1, c, k5, k7]
}

/// Crank as leg and coupler and rocker as brace, then the rocker as leg and either pair of links as
/// brace: each swung from pose 1 to pose 2 through more than half a turn of the crank.
#[test]
fn legs_swing_from_pose_1_to_pose_2() {
    let [k1, c, k5, k7] = pose_1();
    let [from, to] = &POSES;
    // two whole turns less
    let swing = to.beta - from.beta - 2.0 * TAU;
    let crank = solve(&bare_gear(leg(O, k1, B, c, swing)), 721);
    assert!(crank.jams.is_empty(), "{:?}", crank.jams);
    let last = crank.stations.last().unwrap();
    let (k1_up, c_up) = (last.brace_attach.unwrap(), last.knee.unwrap());
    let rocker = |knee: Point| {
        let result = solve(&bare_gear(leg(B, c, A, knee, to.gamma - from.gamma)), 721);
        assert!(result.jams.is_empty(), "{:?}", result.jams);
        let last = result.stations.last().unwrap();
        assert!((last.brace_attach.unwrap() - c_up).norm() < 1e-14);
        last.knee.unwrap()
    };
    compare(to, k1_up, c_up, rocker(k5), rocker(k7));
}

/// Pose 1 is an exact dead center: crank and coupler in one line, dγ/dβ = 0, the angle between
/// coupler and rocker 119.62156°.
#[test]
fn pose_1_is_a_dead_centre() {
    let [k1, c, ..] = pose_1();
    let mut crank = leg(O, k1, B, c, 3.0);
    let linkage = Linkage::new(&crank);
    let rates = linkage.pose(0.0).unwrap().rates;
    near("dγ/dβ", rates.upper / rates.swing, 0.0, 1e-13);
    assert!((linkage.pose(0.1).unwrap().rates.upper / rates.swing).abs() > 1e-3);

    // an actuator that drives the rocker there has no arm on the crank, and no force is claimed
    crank.actuator.attach_to = AttachTo::UpperLink;
    crank.actuator.attach = c;
    crank.actuator.mount = c + Vector::new(0.05, -0.03);
    crank.wheel.mass = 1.0;
    let result = solve(&bare_gear(crank), 721);
    let first = &result.stations[0];
    near("arm", first.moment_arm.unwrap(), 0.0, 1e-14);
    assert!(first.force.is_none(), "{:?}", first.force);
    assert!(result.stations[1].force.is_some());
    near(
        "transmission angle",
        first.transmission.unwrap().to_degrees(),
        180.0 - 119.621_56,
        6e-6,
    );
}
