//! Conversion factors against published tables.
//!
//! Source: NIST SP 811 (2008 edition), appendix B.8/B.9, "Factors for units listed alphabetically" and "by kind
//! of quantity", factors to seven figures; quoted from memory of the table, which could not be opened here;
//! 24 of the 37 were compared with the factors of the Python library pint 0.25.3, and agree; the other 13 were not.

use gearswing_units::factors::*;
use gearswing_units::{Quantity, UnitChoice, parse};

fn si(quantity: Quantity, text: &str) -> f64 {
    parse(quantity, UnitChoice::INCH, text)
        .unwrap_or_else(|e| panic!("{text}: {e}"))
        .si
}

/// The table gives seven figures: at most half a unit in the last one may differ.
#[test]
fn factors_agree_with_nist_sp_811_appendix_b() {
    let table: [(Quantity, &str, f64); 37] = [
        (Quantity::Length, "1 in", 2.54e-2),
        (Quantity::Length, "1 ft", 3.048e-1),
        (Quantity::Angle, "1°", 1.745_329e-2),
        (Quantity::Angle, "1'", 2.908_882e-4),
        (Quantity::Angle, "1\"", 4.848_137e-6),
        (Quantity::Mass, "1 lb", 4.535_924e-1),
        (Quantity::Mass, "1 oz", 2.834_952e-2),
        (Quantity::Mass, "1 slug", 1.459_390e1),
        (Quantity::Force, "1 lbf", 4.448_222),
        (Quantity::Force, "1 ozf", 2.780_139e-1),
        (Quantity::Force, "1 kgf", 9.806_65),
        (Quantity::Pressure, "1 psi", 6.894_757e3),
        (Quantity::Pressure, "1 bar", 1e5),
        (Quantity::Pressure, "1 mbar", 1e2),
        (Quantity::Area, "1 in2", 6.4516e-4),
        (Quantity::Area, "1 ft2", 9.290_304e-2),
        (Quantity::Volume, "1 in3", 1.638_706e-5),
        (Quantity::Volume, "1 ft3", 2.831_685e-2),
        (Quantity::Volume, "1 gal", 3.785_412e-3),
        (Quantity::Speed, "1 kt", 5.144_444e-1),
        (Quantity::Speed, "1 mph", 4.4704e-1),
        (Quantity::Speed, "1 km/h", 2.777_778e-1),
        (Quantity::Speed, "1 ft/min", 5.08e-3),
        (Quantity::Speed, "1 ft/s", 3.048e-1),
        (Quantity::StrokeSpeed, "1 in/s", 2.54e-2),
        (Quantity::AngularSpeed, "1 rpm", 1.047_198e-1),
        (Quantity::Density, "1 slug/ft3", 5.153_788e2),
        (Quantity::Density, "1 lb/ft3", 1.601_846e1),
        (Quantity::Density, "1 lb/in3", 2.767_990e4),
        (Quantity::Moment, "1 lbf·in", 1.129_848e-1),
        (Quantity::Moment, "1 lbf·ft", 1.355_818),
        (Quantity::Moment, "1 kgf·m", 9.806_65),
        (Quantity::Stiffness, "1 lbf/in", 1.751_268e2),
        (Quantity::Stiffness, "1 lbf/ft", 1.459_390e1),
        (Quantity::Inertia, "1 lb·ft2", 4.214_011e-2),
        (Quantity::Inertia, "1 lb·in2", 2.926_397e-4),
        (Quantity::Flow, "1 gal/min", 6.309_020e-5),
    ];
    for (quantity, text, published) in table {
        let last_place = 10_f64.powi(published.log10().floor() as i32 - 6);
        let error = (si(quantity, text) - published).abs();
        assert!(
            error <= 0.5001 * last_place,
            "{text}: {} against {published}",
            si(quantity, text)
        );
    }
}

/// Source: U.S. Standard Atmosphere 1976, sea level: 1.2250 kg/m³, 0.0023769 slug/ft³ (from memory).
#[test]
fn sea_level_density_agrees_in_both_systems() {
    let metric = si(Quantity::Density, "1.2250 kg/m³");
    let inch = si(Quantity::Density, "0.0023769 slug/ft³");
    assert!(
        (metric - inch).abs() < 0.5e-7 * 515.3788,
        "{metric} kg/m³ against {inch}"
    );
}

/// The definitions themselves: NIST SP 811 (2008), appendix B, entries in bold type are exact (from memory).
#[test]
fn exact_factors_are_exact() {
    assert_eq!(M_PER_INCH, 0.0254);
    assert_eq!(M_PER_FOOT, 0.3048);
    assert_eq!(KG_PER_LB, 0.453_592_37);
    assert_eq!(STANDARD_GRAVITY, 9.806_65);
    assert_eq!(N_PER_KGF, 9.806_65);
    assert_eq!(N_PER_LBF, 4.448_221_615_260_5);
    assert_eq!(PA_PER_BAR, 100_000.0);
    assert_eq!(M_PER_S_PER_MPH, 0.447_04);
    assert_eq!(M3_PER_US_GALLON, 0.003_785_411_784);
    assert_eq!(M_PER_S_PER_KNOT, 1852.0 / 3600.0);
    assert_eq!(M_PER_S_PER_KM_PER_H, 1.0 / 3.6);
}

/// One source for both: the constants for calculation and the factors of typed text.
#[test]
fn constants_agree_with_typed_units() {
    let pairs = [
        (Quantity::Length, "1 in", M_PER_INCH),
        (Quantity::Length, "1 ft", M_PER_FOOT),
        (Quantity::Angle, "1 deg", RAD_PER_DEG),
        (Quantity::Mass, "1 lb", KG_PER_LB),
        (Quantity::Mass, "1 slug", KG_PER_SLUG),
        (Quantity::Force, "1 lb", N_PER_LBF),
        (Quantity::Pressure, "1 psi", PA_PER_PSI),
        (Quantity::Speed, "1 kt", M_PER_S_PER_KNOT),
        (Quantity::Density, "1 slug/ft3", KG_PER_M3_PER_SLUG_PER_FT3),
    ];
    for (quantity, text, constant) in pairs {
        assert_eq!(si(quantity, text).to_bits(), constant.to_bits(), "{text}");
    }
}

/// Right angles come out as the standard library has them.
#[test]
fn degrees_are_rounded_once() {
    use std::f64::consts::{FRAC_PI_2, FRAC_PI_4, FRAC_PI_6, PI};
    for (text, radians) in [
        ("180", PI),
        ("90°", FRAC_PI_2),
        ("45 deg", FRAC_PI_4),
        ("30", FRAC_PI_6),
    ] {
        assert_eq!(
            si(Quantity::Angle, text).to_bits(),
            radians.to_bits(),
            "{text}"
        );
    }
}
