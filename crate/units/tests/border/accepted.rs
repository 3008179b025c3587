//! Texts that are taken, and what they mean.

use gearswing_units::{Quantity, UnitChoice, parse};
use proptest::prelude::*;

fn check(quantity: Quantity, choice: UnitChoice, cases: &[(&str, f64, &str)]) {
    for &(text, si, echo) in cases {
        let read = parse(quantity, choice, text).unwrap_or_else(|e| panic!("{text}: {e}"));
        assert_eq!(
            read.si.to_bits(),
            si.to_bits(),
            "{text}: {} against {si}",
            read.si
        );
        assert_eq!(read.echo, echo, "{text}");
    }
}

// The values are decimals worked out by hand from 1 in = 25.4 mm, which the compiler rounds once too.

#[test]
fn lengths_with_the_inch_chosen() {
    check(
        Quantity::Length,
        UnitChoice::INCH,
        &[
            ("3/8", 0.009_525, "3/8 in = 0.375 in = 9.5 mm"),
            ("1 3/8", 0.034_925, "1 3/8 in = 1.375 in = 34.9 mm"),
            ("1-3/8 in", 0.034_925, "1 3/8 in = 1.375 in = 34.9 mm"),
            ("1 1/2\"", 0.0381, "1 1/2 in = 1.5 in = 38.1 mm"),
            (
                "2' 3 1/4\"",
                0.692_15,
                "2 ft 3 1/4 in = 27.25 in = 692.2 mm",
            ),
            ("2 ft 3 in", 0.6858, "2 ft 3 in = 27 in = 685.8 mm"),
            ("2 ft. 3 in.", 0.6858, "2 ft 3 in = 27 in = 685.8 mm"),
            ("2 ft, .5 in", 0.6223, "2 ft .5 in = 24.5 in = 622.3 mm"),
            ("2ft3in", 0.6858, "2 ft 3 in = 27 in = 685.8 mm"),
            ("2′-3½″", 0.6985, "2 ft 3 1/2 in = 27.5 in = 698.5 mm"),
            ("-2' 3\"", -0.6858, "−2 ft 3 in = −27 in = −685.8 mm"),
            ("9.5 mm", 0.0095, "9.5 mm = 0.37402 in"),
            ("9,5 mm", 0.0095, "9,5 mm = 0.37402 in"),
            ("0.95cm", 0.0095, "0.95 cm = 0.37402 in = 9.5 mm"),
            ("1e-3 m", 0.001, "1e-3 m = 0.03937 in = 1.0 mm"),
            (".5", 0.0127, ".5 in = 12.7 mm"),
            ("5.", 0.127, "5. in = 127.0 mm"),
            ("-3/8", -0.009_525, "−3/8 in = −0.375 in = −9.5 mm"),
            ("−1-3/8", -0.034_925, "−1 3/8 in = −1.375 in = −34.9 mm"),
            ("+ 3/8", 0.009_525, "3/8 in = 0.375 in = 9.5 mm"),
            ("½", 0.0127, "1/2 in = 0.5 in = 12.7 mm"),
            ("1⅜”", 0.034_925, "1 3/8 in = 1.375 in = 34.9 mm"),
            ("3⁄8", 0.009_525, "3/8 in = 0.375 in = 9.5 mm"),
            (
                "1\u{a0}3/8\u{2009}in",
                0.034_925,
                "1 3/8 in = 1.375 in = 34.9 mm",
            ),
            (
                "\u{200e}3 / 8 in.\t",
                0.009_525,
                "3/8 in = 0.375 in = 9.5 mm",
            ),
            ("5''", 0.127, "5 in = 127.0 mm"),
            ("5'", 1.524, "5 ft = 60 in = 1524.0 mm"),
            ("12 IN", 0.3048, "12 in = 304.8 mm"),
            ("0.00001", 0.000_000_254, "0.00001 in = 0.000254 mm"),
            ("0", 0.0, "0 in = 0.0 mm"),
            ("-0", 0.0, "0 in = 0.0 mm"),
        ],
    );
}

#[test]
fn commas_points_and_spaces_that_have_one_meaning() {
    check(
        Quantity::Length,
        UnitChoice::METRIC,
        &[
            ("9,5", 0.0095, "9,5 mm = 9.5 mm = 0.37 in"),
            ("0,375", 0.000_375, "0,375 mm = 0.375 mm = 0.01 in"),
            (",375", 0.000_375, ",375 mm = 0.375 mm = 0.01 in"),
            ("1200,500", 1.2005, "1200,500 mm = 1200.5 mm = 47.26 in"),
            ("1,2000", 0.0012, "1,2000 mm = 1.2 mm = 0.05 in"),
            ("1.200", 0.0012, "1.200 mm = 0.05 in"),
            (
                "1,200,000",
                1200.0,
                "1,200,000 mm = 1200000 mm = 47244.09 in",
            ),
            (
                "1.200.000",
                1200.0,
                "1.200.000 mm = 1200000 mm = 47244.09 in",
            ),
            ("1,200.5", 1.2005, "1,200.5 mm = 1200.5 mm = 47.26 in"),
            ("1.200,5", 1.2005, "1.200,5 mm = 1200.5 mm = 47.26 in"),
            (
                "1\u{202f}200,5",
                1.2005,
                "1 200,5 mm = 1200.5 mm = 47.26 in",
            ),
            ("1\u{a0}200 mm", 1.2, "1 200 mm = 1200 mm = 47.24 in"),
        ],
    );
}

#[test]
fn angles() {
    check(
        Quantity::Angle,
        UnitChoice::INCH,
        &[
            ("12.5°", 0.218_166_156_499_291_2, "12.5°"),
            ("12° 30'", 0.218_166_156_499_291_2, "12° 30′ = 12.5°"),
            ("12°29'60\"", 0.218_166_156_499_291_2, "12° 29′ 60″ = 12.5°"),
            ("12 1/2", 0.218_166_156_499_291_2, "12 1/2° = 12.5°"),
            ("0.2 rad", 0.2, "0.2 rad = 11.459°"),
            ("-90 deg", -std::f64::consts::FRAC_PI_2, "−90°"),
        ],
    );
}

#[test]
fn pressures() {
    check(
        Quantity::Pressure,
        UnitChoice::INCH,
        &[
            ("82 bar", 8.2e6, "82 bar = 1189.3 psi"),
            ("8.2 MPa", 8.2e6, "8.2 MPa = 1189.3 psi = 82.0 bar"),
            ("8.2MPA", 8.2e6, "8.2 MPa = 1189.3 psi = 82.0 bar"),
            ("8.2 Mpa", 8.2e6, "8.2 MPa = 1189.3 psi = 82.0 bar"),
            ("8200 KPA", 8.2e6, "8200 kPa = 1189.3 psi = 82.0 bar"),
            ("8.2 N/mm²", 8.2e6, "8.2 MPa = 1189.3 psi = 82.0 bar"),
            ("8.2 n/MM2", 8.2e6, "8.2 MPa = 1189.3 psi = 82.0 bar"),
            ("8200000 Pa", 8.2e6, "8200000 Pa = 1189.3 psi = 82.0 bar"),
        ],
    );
    let psi = parse(Quantity::Pressure, UnitChoice::METRIC, "1200 PSI").unwrap();
    assert_eq!(psi.echo, "1200 psi = 82.737 bar");
    assert_eq!(
        psi,
        parse(Quantity::Pressure, UnitChoice::METRIC, "1200 lb / sq. in").unwrap()
    );
}

/// Every spelling of a column means the same.
#[test]
fn spellings_of_one_unit() {
    let rows: [(Quantity, &[&str]); 14] = [
        (
            Quantity::Mass,
            &[
                "9 lb",
                "9lbs",
                "9 lbm",
                "9 LB.",
                "9 pounds",
                "9",
                "8 lb 16 oz",
            ],
        ),
        (Quantity::Force, &["9 lb", "9 lbf", "9 lbs", "9"]),
        (
            Quantity::Force,
            &["39.2266 N", "4 kgf", "4 kp", "0.0392266 kN", "3.92266 daN"],
        ),
        (
            Quantity::Speed,
            &[
                "100 kt",
                "100 kts",
                "100 knots",
                "100 KN",
                "1e2",
                "185.2 km/h",
                "185.2 km / h",
            ],
        ),
        (
            Quantity::Density,
            &[
                "1.225 kg/m3",
                "1.225 kg/m^3",
                "1.225 kg / m³",
                "0.001225 g/cm3",
            ],
        ),
        (
            Quantity::Moment,
            &[
                "150 in-lb",
                "150 in lb",
                "150 lb-in",
                "150 lbf·in",
                "12.5 ft.lbs.",
                "12 1/2 ft-lb",
            ],
        ),
        (
            Quantity::Moment,
            &["17 Nm", "17 N·m", "17 N m", "17 N*m", "17000 N mm"],
        ),
        (
            Quantity::TorsionalStiffness,
            &["2 in-lb/deg", "2 in lb / °", "2 lb·in/deg"],
        ),
        (Quantity::Travel, &["30 %", "30%", "30", "30 percent"]),
        (Quantity::Ratio, &["0.12", "12 %", "3/25", "0,12"]),
        (Quantity::LoadFactor, &["1.5", "1.5 g", "1.5G", "1 1/2"]),
        (
            Quantity::Resistance,
            &["0.02 Ω", "20 mΩ", "0.02 ohm", "20 mohm", "0.02 \u{2126}"],
        ),
        (Quantity::Time, &["65 s", "1 min 5 s", "65000 ms", "65 sec"]),
        (Quantity::Count, &["2", "4/2", "2.0"]),
    ];
    for (quantity, texts) in rows {
        let read: Vec<_> = texts
            .iter()
            .map(|text| {
                parse(quantity, UnitChoice::INCH, text)
                    .unwrap_or_else(|e| panic!("{text}: {e}"))
                    .si
            })
            .collect();
        assert!(
            read.iter().all(|si| si.to_bits() == read[0].to_bits()),
            "{texts:?}: {read:?}"
        );
    }
}

#[test]
fn the_example_in_every_message_is_taken() {
    for &quantity in Quantity::ALL {
        for choice in [UnitChoice::INCH, UnitChoice::METRIC] {
            parse(quantity, choice, quantity.example(choice)).unwrap();
        }
    }
}

proptest! {
    /// Oracle: a quotient of two whole numbers below 2^53 is rounded once by IEEE 754.
    #[test]
    fn mixed_fractions_are_rounded_once(whole in 0_u32..100_000, num in 0_u32..64, den in 64_u32..10_000) {
        let exact = (f64::from(whole) * f64::from(den) + f64::from(num)) * 127.0 / (f64::from(den) * 5000.0);
        let text = format!("{whole} {num}/{den} in");
        let read = parse(Quantity::Length, UnitChoice::METRIC, &text).unwrap();
        prop_assert_eq!(read.si.to_bits(), exact.to_bits());
    }

    /// Oracle: the standard library's float parser on the shifted decimal.
    #[test]
    fn metric_decimals_are_rounded_once(digits in "[0-9]{1,25}", decimals in 1_usize..12) {
        let text = format!("{digits}.{} mm", &"314159265358"[..decimals]);
        let expected: f64 = format!("{}e-3", text.trim_end_matches(" mm")).parse().unwrap();
        prop_assert_eq!(parse(Quantity::Length, UnitChoice::INCH, &text).unwrap().si.to_bits(), expected.to_bits());
    }
}
