//! Source: NACA Report 485 (1934), ntrs.nasa.gov/citations/19930091559, found: full-scale gears of a
//! 3,000-lb airplane at 100 mph have 13 to 98 lb of drag; computed: 25.58 lbf/ft2, with the sea level
//! density of that time, 0.002378 slug/ft3 (from memory). Coefficients of bare wheel and round strut: M. H.
//! Sadraey, "Aircraft Performance Analysis" ch. 3, found as constants that cite it in a public program.
//! Dynamic pressure ½ρV²: NACA symbol table, found; 80, 100, 120 kt at sea level computed. Sea level air:
//! U.S. Standard Atmosphere 1976, scipp.ucsc.edu/outreach/balloon/atmos, found: 1.225 kg/m3. Densities at
//! height: "Mechanical Engineers' Handbook", vol. 4, p. 23, found: 2,000 m 1.0066 kg/m3.
use gearswing_gear::model::*;
use gearswing_solver::statics::dynamic_pressure;
use gearswing_tests::{bare_gear, bare_leg, near, solve};
use gearswing_units::factors::{
    KG_PER_M3_PER_SLUG_PER_FT3, M_PER_FOOT, M_PER_S_PER_KNOT, M_PER_S_PER_MPH, N_PER_LBF,
};
use std::f64::consts::FRAC_PI_2;

const PA_PER_PSF: f64 = N_PER_LBF / (M_PER_FOOT * M_PER_FOOT);

fn at(airspeed: f64) -> Conditions {
    Conditions {
        airspeed,
        ..Conditions::default()
    }
}

/// As in the report.
fn at_100_mph() -> Conditions {
    Conditions {
        air_density: 0.002_378 * KG_PER_M3_PER_SLUG_PER_FT3,
        ..at(100.0 * M_PER_S_PER_MPH)
    }
}

#[test]
fn dynamic_pressure_at_sea_level() {
    assert_eq!(Conditions::default().air_density, 1.225);
    for (knots, pa, psf) in [
        (80.0, 1037.4, 21.67),
        (100.0, 1621.0, 33.86),
        (120.0, 2334.2, 48.75),
    ] {
        let q = dynamic_pressure(&at(knots * M_PER_S_PER_KNOT));
        near("Pa", q, pa, 0.06);
        near("psf", q / PA_PER_PSF, psf, 6e-3);
    }
    let q = dynamic_pressure(&at_100_mph());
    near("100 mph", q / PA_PER_PSF, 25.58, 6e-3);
    // thinner air at the same true airspeed: in the ratio of the table's densities
    let high = Conditions {
        air_density: 1.0066,
        ..at(120.0 * M_PER_S_PER_KNOT)
    };
    near(
        "2,000 m",
        dynamic_pressure(&high),
        2334.2 * 1.0066 / 1.225,
        0.06,
    );
}

/// A leg that hangs straight down with this drag area at its wheel, at 100 mph: the aftward force on
/// it, as cylinder and trunnion together hold it (lbf).
fn drag(view: View, sideslip: f64, drag_area_ft2: f64) -> f64 {
    let mut leg = bare_leg();
    leg.view = view;
    leg.strut.axle = Point::new(0.0, -1.0);
    leg.strut.axis_bottom = leg.strut.axle;
    leg.actuator.attach = Point::new(0.0, -0.5);
    leg.actuator.mount = Point::new(0.8, -0.3);
    leg.air.wheel_drag_area = drag_area_ft2 * M_PER_FOOT * M_PER_FOOT;
    let mut gear = bare_gear(leg);
    gear.conditions = Conditions {
        sideslip,
        ..at_100_mph()
    };
    let reactions = solve(&gear, 721).stations[0].force.unwrap().reactions;
    let held = reactions.trunnion + reactions.mount;
    near("lift", held.y, 0.0, 1e-9);
    -held.x / N_PER_LBF
}

/// Drag area of one bare leg (ft2) by the published coefficients: 0.30 on diameter times width of the
/// wheel, 1.2 on length times thickness of a round strut, a tenth more for fittings (in).
fn drag_area(tire: [f64; 2], strut: [f64; 2]) -> f64 {
    1.1 * (0.30 * tire[0] * tire[1] + 1.2 * strut[0] * strut[1]) / 144.0
}

/// Two legs each, built up from their parts, have the drag that was weighed in the wind tunnel: from a
/// pair with small wheels on short thin struts to one with large wheels on long struts.
#[test]
fn built_up_gears_have_the_drag_of_measured_ones() {
    let pair = |area: f64| 2.0 * drag(View::Side, 0.0, area);
    // 8.50-10 tires, as on airplanes of that weight at the time (from memory); 36 in of 2.5 in tube
    let usual = pair(drag_area([25.65, 8.70], [36.0, 2.5]));
    let small = pair(drag_area([17.50, 6.25], [18.0, 1.5]));
    let large = pair(drag_area([25.65, 8.70], [48.0, 3.0]));
    assert!(small > 13.0 && large < 98.0, "{small} {large}");
    assert!(small < usual && usual < large);
    // by hand: 1.1 (0.30·25.65·8.70 + 1.2·36·2.5)/144 = 1.336 ft2 and 25.58 psf, twice
    near("usual", usual, 2.0 * 1.3364 * 25.58, 0.02);
}

#[test]
fn what_of_the_wind_is_in_the_plane() {
    let area = drag_area([25.65, 8.70], [36.0, 2.5]);
    // seen from ahead it has no part in the plane, but all of it in a wind from the side
    near("from ahead", drag(View::Front, 0.0, area), 0.0, 1e-9);
    near(
        "from the side",
        drag(View::Front, FRAC_PI_2, area),
        drag(View::Side, 0.0, area),
        1e-9,
    );
}
