//! What is summed up over a stroke, and the small parts of which it is made.
use super::super::eliminate::Eliminated;
use super::super::friction::pin_loads;
use super::super::*;
use super::friction::bar;
use crate::model::*;
use crate::result::{LoadCase, Motion};
use crate::{Options, solve_leg};
use gearswing_samples::leg as sample;

/// ½ρV² (NACA symbol table): sea-level air at 40 m/s, by hand.
#[test]
fn dynamic_pressure_by_hand() {
    let conditions = Conditions {
        airspeed: 40.0,
        air_density: 1.225,
        ..Conditions::default()
    };
    assert!((dynamic_pressure(&conditions) - 980.0).abs() < 1e-9);
}

/// A triangle of equations has the product of its diagonal for a determinant; one with two rows exchanged has
/// it with the other sign; by hand x = 1, 2, 3, 4.
#[test]
fn four_equations_by_hand() {
    let rows = [
        [2.0, 1.0, 0.0, 0.0],
        [0.0, 3.0, 0.0, 1.0],
        [0.0, 0.0, 4.0, 0.0],
        [0.0, 0.0, 0.0, 5.0],
    ];
    let right = [4.0, 10.0, 12.0, 20.0];
    let (mut exchanged, mut exchanged_right) = (rows, right);
    exchanged.swap(0, 2);
    exchanged_right.swap(0, 2);
    for (rows, right, determinant) in [(rows, right, 120.0), (exchanged, exchanged_right, -120.0)] {
        let eliminated = Eliminated::new(rows).unwrap();
        let found = eliminated.determinant;
        assert!((found - determinant).abs() < 1e-12 * 120.0, "{found}");
        let solved = eliminated.solve(&right);
        for (found, exact) in solved.iter().zip([1.0, 2.0, 3.0, 4.0]) {
            assert!((found - exact).abs() < 1e-12, "{solved:?}");
        }
        // any other right side too, by putting the solution back in
        let other = [1.0, -2.0, 0.5, 3.0];
        let solved = eliminated.solve(&other);
        for (row, wanted) in rows.iter().zip(other) {
            let given: f64 = row.iter().zip(&solved).map(|(a, x)| a * x).sum();
            assert!((given - wanted).abs() < 1e-12, "{solved:?}");
        }
    }
    assert!(Eliminated::new([rows[0], rows[0], rows[2], rows[3]]).is_none());
}

fn gear(leg: Leg) -> Gear {
    Gear {
        legs: vec![leg],
        ..gearswing_samples::pack::gear()
    }
}

/// An arm of 0.2 m that turns by half a radian, its rod from a mount 0.4 m below its end: law of cosines.
#[test]
fn stroke_used_is_from_the_longest_to_the_shortest() {
    let leg = bar(0.2, 0.5, 0.4);
    let to_mount = 0.2_f64.hypot(0.4);
    // at down the angle between arm and line to the mount has a tangent of 2
    let length = |turned: f64| {
        let angle = 2.0_f64.atan() - turned;
        (0.04 + to_mount * to_mount - 0.4 * to_mount * angle.cos()).sqrt()
    };
    assert!((length(0.0) - 0.4).abs() < 1e-12);
    let result = solve_leg(&gear(leg), 0, &Options::default()).unwrap();
    let used = result.force.stroke_used;
    let exact = length(0.0) - length(0.5);
    assert!((used - exact).abs() < 1e-9, "{used} {exact}");
}

/// The largest load of each joint is that of some station, rub the pins or not, and none is larger.
#[test]
fn joint_loads_are_the_largest_of_the_stroke() {
    for friction in [0.0, 0.1] {
        let mut leg = sample::leg();
        leg.pins = super::pins(friction);
        let result = solve_leg(&gear(leg), 0, &Options::default()).unwrap();
        let loads = &result.force.joint_loads;
        assert_eq!(loads.len(), Joint::ALL.len());
        for (at, load) in loads.iter().enumerate() {
            assert_eq!(load.joint, Joint::ALL[at]);
            let in_motion = |motion| {
                let forces = result.stations.iter().filter_map(|s| s.force.as_ref());
                let all = forces.filter_map(move |force| force.reactions_in(motion).copied());
                let sizes = all.map(|reactions| pin_loads(&reactions)[at].norm());
                sizes.fold(0.0, f64::max)
            };
            let most = in_motion(Motion::Retract).max(in_motion(Motion::Extend));
            assert!(load.load >= most * (1.0 - 1e-12), "{load:?} {most}");
            if load.case == LoadCase::AsSet {
                let own = in_motion(load.motion);
                assert!((load.load / own - 1.0).abs() < 1e-12, "{load:?} {own}");
            }
        }
    }
}
