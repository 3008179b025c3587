//! Source: engineering statics sheet "Frames and machines", scribd.com/document/486236933, toggle pliers.
//! Found: 150 N, 10°, handle 100 mm, link 20 mm, jaw arms 20 and 60 mm; pin 4,103.46 N, clamp 1,367.82 N,
//! gain 9.12. The readable text lost its signs; Ay·20 sin a = P (100 cos a − 20 sin a) reproduces its
//! numbers. Other angles: computed from the same formula. Symmetric toggle, end thrust = F/(2 tan a):
//! textbook statics (Shigley, Norton) from memory, ratios computed.
use gearswing_gear::model::*;
use gearswing_tests::{bare_gear, bare_leg, near, solve};

/// A link in the plane without weight.
const LINK: Link = Link {
    thickness: 0.002,
    mass: 0.0,
};

/// The upper half of the pliers, upside down so that the clamp force is a weight (N). The jaw is the
/// leg: 60 mm to the weight, 20 mm to the pin A. The handle is the lower link, from A over the link's
/// 20 mm to B, where symmetry lets it move along the middle line only: a link square to that line does
/// the same at this instant. The hand is the actuator, square to the middle line at the handle's end.
fn pliers(degrees: f64, clamp: f64) -> Gear {
    let (sin, cos) = degrees.to_radians().sin_cos();
    let pin = Point::new(0.020, 0.0);
    let middle = pin + Vector::new(0.020 * sin, 0.020 * cos);
    let hand = pin + Vector::new(0.100 * cos, -0.100 * sin);
    let mut leg = bare_leg();
    leg.strut.axle = Point::new(-0.060, 0.0);
    leg.wheel.mass = clamp / 9.80665;
    leg.brace = Brace::Folding(FoldingBrace {
        airframe_pivot: middle + Vector::new(0.0, 0.3),
        knee: middle,
        leg_attach: pin,
        folds: Folds::SameSide,
        unlocked_by: UnlockedBy::Separate,
        knee_given: Default::default(),
        excursion_allowed: None,
        upper: LINK,
        lower: LINK,
    });
    leg.swing_up = -0.02;
    leg.actuator.attach_to = AttachTo::LowerLink;
    leg.actuator.attach = hand;
    leg.actuator.mount = hand - Vector::new(0.0, 0.2);
    bare_gear(leg)
}

#[test]
fn pliers_as_published() {
    let result = solve(&pliers(10.0, 1367.82), 721);
    let force = result.stations[0].force.unwrap();
    near("hand", force.holding, 150.0, 1e-3);
    let pin = force.reactions.brace_attach.unwrap();
    near("pin", pin.y, -4103.46, 0.02);
    near("pin, along", pin.x, 0.0, 1e-6);
    near("gain", 1367.82 / force.holding, 9.12, 5.1e-3);
}

#[test]
fn pliers_towards_dead_centre() {
    for (degrees, pin) in [
        (20.0, 1910.6),
        (15.0, 2649.0),
        (10.0, 4103.5),
        (5.0, 8422.5),
        (2.0, 21_327.0),
        (1.0, 42_817.0),
    ] {
        // the formula is linear in the load: 150 N must hold the clamp that belongs to this pin force
        let result = solve(&pliers(degrees, pin / 3.0), 721);
        let force = result.stations[0].force.unwrap();
        // four or five figures are printed
        near(
            &format!("hand at {degrees}°"),
            force.holding,
            150.0,
            150.0 * 3e-5,
        );
    }
}

/// A brace of two equal links with the knee `degrees` past the straight line from end to end, and a
/// weight that presses on it with 1,000 N along that line: what must push at the knee to bring it back.
fn knee_push(degrees: f64) -> f64 {
    let a = degrees.to_radians();
    let (pivot, attach) = (Point::new(0.4, -0.3), Point::new(0.0, -0.3));
    let mut leg = bare_leg();
    // B0–B1 is square to the leg's arm of 0.3 m: 300 N·m about the trunnion press 1,000 N on it
    leg.strut.axle = Point::new(-0.3, -0.5);
    leg.wheel.mass = 1000.0 / 9.80665;
    leg.brace = Brace::Folding(FoldingBrace {
        airframe_pivot: pivot,
        knee: Point::new(0.2, -0.3 - 0.2 * a.tan()),
        leg_attach: attach,
        folds: Folds::ThroughCentre,
        unlocked_by: UnlockedBy::Separate,
        knee_given: Default::default(),
        excursion_allowed: None,
        upper: LINK,
        lower: LINK,
    });
    leg.swing_up = 0.5;
    leg.actuator.mount = Point::new(0.5, 1.0);
    solve(&bare_gear(leg), 721).lock.knee_push.unwrap()
}

/// End thrust over push at the middle: 2.836, 5.715, 28.645.
#[test]
fn symmetric_toggle() {
    for (degrees, gain) in [(10.0, 2.836), (5.0, 5.715), (1.0, 28.645)] {
        let push = knee_push(degrees);
        near(&format!("{degrees}°"), 1000.0 / push, gain, 5.1e-4);
    }
}
