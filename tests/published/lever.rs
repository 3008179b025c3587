//! Source: J. L. Meriam, L. G. Kraige, "Engineering Mechanics: Statics", problem 2/46 (attribution from
//! memory; figures found in a worked solution, askfilo.com "the small crane is mounted along the side of
//! a pickup bed") and, 9th ed., problem 4/122 (inputs found at mecademyai.com/problem/statics/ch4/4_122,
//! outputs computed). Cylinder bores and rods: an industrial cylinder manual, somanuals.com "1-1-2002 User
//! Manual", found; their areas: fluid power handbooks, from memory.
use gearswing_gear::model::*;
use gearswing_solver::result::Stroke;
use gearswing_tests::{bare_gear, bare_leg, near, solve};
use gearswing_units::factors::{KG_PER_LB, M_PER_FOOT, M_PER_INCH, N_PER_LBF, PA_PER_PSI};

/// Cylinder from 360 mm under the pivot to 340 mm along a boom at 40°: length 634.472 mm and arm
/// 147.783 mm (computed); 4.5 kN make 665.02 N·m (computed; the page prints 667, then 0.67 kN·m).
#[test]
fn crane_boom() {
    let boom = 40_f64.to_radians();
    let along = |length: f64| Point::new(length * boom.cos(), length * boom.sin());
    let mut leg = bare_leg();
    leg.actuator.mount = Point::new(0.0, -0.360);
    leg.actuator.attach = along(0.340);
    leg.strut.axle = along(1.0);
    leg.wheel.mass = 665.02 / (9.80665 * boom.cos());
    let result = solve(&bare_gear(leg), 721);
    let down = &result.stations[0];
    near("length", down.actuator_length, 0.634_472, 5.1e-7);
    // counter-clockwise: the cylinder lifts the boom by pushing
    near("arm", down.moment_arm.unwrap(), 0.147_783, 5.1e-7);
    assert_eq!(result.force.stroke, Stroke::Push);
    let force = down.force.unwrap();
    near("thrust", force.holding, 4500.0, 0.04);
    near(
        "published moment",
        force.holding * down.moment_arm.unwrap(),
        670.0,
        5.0,
    );
    near("mount", force.reactions.mount.norm(), 4500.0, 0.04);
}

/// 6,000 lb at 14.3 ft; pins at (−0.6, 3.6) ft on the boom and (−2.4, −3.6) ft on the frame; piston
/// 4.72 in: 7.4216 ft long (found), arm 1.455214 ft, 58,960.4 lb, 3,369.7 psi.
#[test]
fn boom_cylinder_from_weight_to_pressure() {
    let feet = |x: f64, y: f64| Point::new(x * M_PER_FOOT, y * M_PER_FOOT);
    let mut leg = bare_leg();
    leg.actuator.mount = feet(-2.4, -3.6);
    leg.actuator.attach = feet(-0.6, 3.6);
    leg.actuator.bore = 4.72 * M_PER_INCH;
    // a pushing cylinder turns this boom clockwise, so the load hangs on the left
    leg.strut.axle = feet(-14.3, 0.0);
    leg.swing_up = -0.2;
    leg.wheel.mass = 6000.0 * KG_PER_LB;
    let result = solve(&bare_gear(leg), 721);
    let down = &result.stations[0];
    near("length", down.actuator_length / M_PER_FOOT, 7.4216, 5.1e-5);
    near(
        "arm",
        down.moment_arm.unwrap() / M_PER_FOOT,
        -1.455_214,
        5.1e-7,
    );
    let force = down.force.unwrap();
    near("thrust", force.holding / N_PER_LBF, 58_960.4, 0.06);
    near(
        "effort",
        force.retract_effort.unwrap() / N_PER_LBF,
        58_960.4,
        0.06,
    );
    near(
        "pressure",
        force.retract_pressure.unwrap() / PA_PER_PSI,
        3369.7,
        0.06,
    );
}

/// Bore, rod, bore area and area less rod, in and in² as handbooks round them.
#[allow(
    clippy::approx_constant,
    reason = "a 2 in bore has π in² by chance of its size"
)]
#[test]
fn cylinder_areas() {
    for (bore, rod, full, annulus) in [
        (1.5, 0.625, 1.767, 1.460),
        (2.0, 0.625, 3.142, 2.835),
        (2.0, 1.0, 3.142, 2.356),
        (2.5, 1.0, 4.909, 4.123),
        (3.25, 1.375, 8.296, 6.811),
        (4.0, 1.375, 12.566, 11.081),
    ] {
        let mut leg = bare_leg();
        leg.actuator.bore = bore * M_PER_INCH;
        leg.actuator.rod = rod * M_PER_INCH;
        let force = solve(&bare_gear(leg), 2).force;
        let in2 = M_PER_INCH * M_PER_INCH;
        near("bore", force.bore_area / in2, full, 6e-4);
        near("annulus", force.annulus_area / in2, annulus, 6e-4);
    }
}

/// Pushing works on the full bore and pulling on the bore less the rod, each against the back
/// pressure on the other side (same sources: force = pressure × area).
#[test]
fn pull_works_on_the_annulus() {
    // 2 in bore, 1 in rod: 2.356 in2 pulling; 1,000 psi would give 2,356 lbf
    let mut leg = bare_leg();
    leg.actuator.bore = 2.0 * M_PER_INCH;
    leg.actuator.rod = 1.0 * M_PER_INCH;
    leg.actuator.mount = Point::new(0.5, 1.0);
    leg.strut.axle = Point::new(0.5, 0.0);
    leg.wheel.mass = 2356.0 * KG_PER_LB;
    let mut gear = bare_gear(leg);
    let result = solve(&gear, 721);
    assert_eq!(result.force.stroke, Stroke::Pull);
    let force = result.stations[0].force.unwrap();
    near("pull", force.holding / N_PER_LBF, -2356.0, 1e-6);
    near(
        "pressure",
        force.retract_pressure.unwrap() / PA_PER_PSI,
        1000.0,
        0.3,
    );
    // 100 psi back pressure on the full bore, 3.142 in2, ask for 314.2 lbf more
    gear.supply.return_pressure = 100.0 * PA_PER_PSI;
    let more = solve(&gear, 721).stations[0]
        .force
        .unwrap()
        .retract_pressure
        .unwrap()
        - force.retract_pressure.unwrap();
    near("back pressure", more / PA_PER_PSI, 314.2 / 2.356, 0.1);
}
