//! Rounding for reading.

use gearswing_units::{
    AirspeedUnit, MetricPressure, NO_VALUE, Quantity, UnitChoice, format, format_bare,
    format_exact, format_field, format_signed, parse, si_range_text,
};

const INCH: UnitChoice = UnitChoice::INCH;
const METRIC: UnitChoice = UnitChoice::METRIC;

#[test]
fn each_quantity_at_its_precision() {
    let mpa = UnitChoice {
        metric_pressure: MetricPressure::Megapascal,
        ..METRIC
    };
    let mph = UnitChoice {
        airspeed: AirspeedUnit::MilePerHour,
        ..INCH
    };
    let cases = [
        (Quantity::Length, INCH, 0.009_525, "0.38 in"),
        (Quantity::Length, METRIC, 0.009_525, "9.5 mm"),
        (Quantity::Length, INCH, -1.524, "−60.00 in"),
        (Quantity::Length, INCH, -0.000_01, "0.00 in"),
        (Quantity::Length, INCH, 0.0, "0.00 in"),
        (Quantity::Length, INCH, 1e20, "3.94e21 in"),
        (Quantity::Angle, INCH, std::f64::consts::FRAC_PI_2, "90.0°"),
        (Quantity::Angle, METRIC, -0.2, "−11.5°"),
        (Quantity::Mass, INCH, 4.082_331_33, "9.00 lb"),
        (Quantity::Force, METRIC, 40.0, "40.0 N"),
        (Quantity::Force, METRIC, 999.6, "1000 N"),
        (Quantity::Force, METRIC, 9.996, "10.0 N"),
        (Quantity::Force, METRIC, 0.099_96, "0.100 N"),
        (Quantity::Force, METRIC, 58_960.4, "59000 N"),
        (Quantity::Force, METRIC, 0.0, "0 N"),
        (Quantity::Force, METRIC, -1e-9, "0 N"),
        (Quantity::Pressure, INCH, 8_273_708.751_802_034, "1200 psi"),
        (Quantity::Pressure, METRIC, 8.2e6, "82.0 bar"),
        (Quantity::Pressure, mpa, 8.2e6, "8.20 MPa"),
        (Quantity::Speed, INCH, 51.444_444_444_444_44, "100 kt"),
        (Quantity::Speed, mph, 51.444_444_444_444_44, "115 mph"),
        (Quantity::Density, METRIC, 1.225, "1.225 kg/m³"),
        (Quantity::Density, INCH, 1.225, "0.002377 slug/ft³"),
        (Quantity::Travel, INCH, 0.423, "42.3 %"),
        (Quantity::Ratio, INCH, 0.12, "0.120"),
        (Quantity::Count, INCH, 3.0, "3"),
        (Quantity::LoadFactor, INCH, 1.5, "1.50 g"),
        (Quantity::Time, INCH, 6.504, "6.50 s"),
    ];
    for (quantity, choice, si, text) in cases {
        assert_eq!(format(quantity, choice, si), text, "{si}");
    }
}

/// Halves as typed go away from zero, whatever the binary digits of the SI value do.
#[test]
fn typed_halves_round_up() {
    for eighth in 0..200 {
        let typed = f64::from(eighth) + 0.125;
        let si = Quantity::Length.to_si(INCH, typed);
        assert_eq!(
            format_bare(Quantity::Length, INCH, si),
            format!("{eighth}.13")
        );
        assert_eq!(
            format_bare(Quantity::Length, INCH, -si),
            format!("-{eighth}.13")
        );
    }
}

#[test]
fn margins_keep_their_sign() {
    let signed = |si| format_signed(Quantity::Length, INCH, si);
    assert_eq!(signed(0.003_175), "+0.13 in");
    assert_eq!(signed(-0.003_175), "−0.13 in");
    assert_eq!(signed(-0.000_01), "−0.00 in");
    assert_eq!(signed(0.000_01), "+0.00 in");
    assert_eq!(signed(0.0), "0.00 in");
    assert_eq!(signed(-0.0), "0.00 in");
}

#[test]
fn no_value_is_shown_as_such() {
    for &quantity in Quantity::ALL {
        for si in [f64::NAN, f64::INFINITY, f64::NEG_INFINITY] {
            for show in [format, format_bare, format_signed, format_exact] {
                assert_eq!(show(quantity, INCH, si), NO_VALUE);
            }
        }
    }
}

#[test]
fn exact_text_for_fields() {
    let exact = |choice, si| format_exact(Quantity::Length, choice, si);
    assert_eq!(exact(INCH, 0.009_525), "0.375");
    assert_eq!(exact(METRIC, 0.009_525), "9.525");
    assert_eq!(exact(METRIC, -1200.0), "-1200000");
    assert_eq!(exact(INCH, -0.0), "0");
    assert_eq!(exact(METRIC, 1e-20), "1e-17");
    assert_eq!(exact(METRIC, 1.5e20), "1.5e23");
}

#[test]
fn ranges() {
    let length = |choice, min, max| si_range_text(Quantity::Length, choice, min, max);
    assert_eq!(length(INCH, 0.0127, 1.524), "0.5 to 60 in");
    assert_eq!(length(METRIC, 0.0127, 1.524), "12.7 to 1524 mm");
    assert_eq!(length(METRIC, 0.0, f64::INFINITY), "0 mm or more");
    assert_eq!(length(METRIC, f64::NEG_INFINITY, 1.0), "1000 mm or less");
    assert_eq!(
        length(METRIC, f64::NEG_INFINITY, f64::INFINITY),
        "any value"
    );
    let turn = std::f64::consts::PI;
    assert_eq!(
        si_range_text(Quantity::Angle, INCH, -turn, turn),
        "−180 to 180°"
    );
}

/// Limits that are not round in the shown unit are told rounded to the inner side: what is told is valid,
/// and the next figure beyond is not.
#[test]
fn limits_that_are_told_hold_as_told() {
    let length = |choice, min, max| si_range_text(Quantity::Length, choice, min, max);
    assert_eq!(length(INCH, 1e-4, 20.0), "0.004 to 780 in");
    assert_eq!(length(METRIC, 1e-4, 20.0), "0.1 to 20000 mm");
    assert_eq!(length(INCH, -100.0, 100.0), "−3900 to 3900 in");
    let mass = si_range_text(Quantity::Mass, INCH, 0.0, 10_000.0);
    assert_eq!(mass, "0 to 22000 lb");
    let pressure = si_range_text(Quantity::Pressure, INCH, 1e3, 1e8);
    assert_eq!(pressure, "0.15 to 14000 psi");
    let below = si_range_text(Quantity::Mass, INCH, -1.0, -0.1);
    assert_eq!(below, "−2.2 to −0.23 lb");
}

/// 25.4 mm to the inch: the marks of a rule in inches, decimals as typed, and what comes from millimeters.
#[test]
fn a_field_shows_what_its_number_carries() {
    let field = |choice, si| format_field(Quantity::Length, choice, si);
    let inch = |text: &str| parse(Quantity::Length, INCH, text).unwrap().si;
    for text in [
        "59 1/16",
        "-3/8",
        "1/64",
        "-22 63/64",
        "22",
        "0",
        "0.3",
        "59.06",
        "59.0551",
        "0.001",
    ] {
        assert_eq!(field(INCH, inch(text)), text);
    }
    assert_eq!(field(INCH, inch("0.375")), "3/8");
    // 1500 mm are 59.055118… in
    assert_eq!(field(INCH, 1.5), "59.06");
    assert_eq!(field(INCH, -0.005), "-0.2");
    assert_eq!(field(INCH, 0.0001), "0.0039");
    assert_eq!(field(METRIC, inch("59 1/16")), "1500.2");
    assert_eq!(field(METRIC, inch("3/16")), "4.8");
    assert_eq!(field(METRIC, inch("1/4")), "6.35");
    assert_eq!(field(METRIC, inch("0.3")), "7.62");
    for (text, si) in [("12.345", 0.012_345), ("1500", 1.5), ("-0.1", -0.0001)] {
        assert_eq!(field(METRIC, si), text);
    }
    let of = |quantity, choice, si| format_field(quantity, choice, si);
    // 8 kg are 17.636981 lb, 7 MPa 1015.2642 psi, 1.6 rad 91.673247°, 45 m/s 87.473 kt
    assert_eq!(of(Quantity::Mass, INCH, 8.0), "17.6");
    assert_eq!(of(Quantity::Mass, METRIC, 8.0), "8");
    assert_eq!(of(Quantity::Pressure, INCH, 7e6), "1015");
    assert_eq!(of(Quantity::Angle, INCH, 1.6), "91.7");
    assert_eq!(of(Quantity::Speed, INCH, 45.0), "87.5");
    assert_eq!(of(Quantity::Hole, INCH, 0.001), "0.039");
    assert_eq!(of(Quantity::Hole, METRIC, 0.001_016), "1.02");
    assert_eq!(of(Quantity::Hole, INCH, 0.001_587_5), "0.0625");
    assert_eq!(of(Quantity::Travel, INCH, 1.0 / 3.0), "33.3");
    assert_eq!(of(Quantity::Length, INCH, f64::NAN), NO_VALUE);
}
