//! Texts that are refused, and what is said.

use gearswing_units::{MAX_TEXT_LENGTH, ParseError, Quantity, UnitChoice, parse};
use proptest::prelude::*;

fn error(quantity: Quantity, text: &str) -> ParseError {
    match parse(quantity, UnitChoice::INCH, text) {
        Err(error) => error,
        Ok(read) => panic!("“{text}” was taken as {read:?}"),
    }
}

#[test]
fn what_is_said() {
    let cases = [
        (
            Quantity::Length,
            "",
            "nothing typed; write a length, for example 1 3/8 in",
        ),
        (
            Quantity::Angle,
            " \u{a0}",
            "nothing typed; write an angle, for example 12.5°",
        ),
        (
            Quantity::Length,
            "abc",
            "“abc” is not a number; write for example 1 3/8 in",
        ),
        (
            Quantity::Length,
            "3/8/2",
            "“3/8/2” is not a number; write for example 1 3/8 in",
        ),
        (
            Quantity::Length,
            "3/0",
            "“3/0” divides by zero; write for example 1 3/8 in",
        ),
        (
            Quantity::Length,
            "1 3/0 in",
            "“1 3/0” divides by zero; write for example 1 3/8 in",
        ),
        (
            Quantity::Length,
            "3 furlong",
            "“furlong” is no known unit; use in, ft, mm, cm or m",
        ),
        (
            Quantity::Length,
            "12 psi",
            "“psi” is a unit of pressure, but a length is needed here; use in, ft, mm, cm or m",
        ),
        (
            Quantity::Length,
            "3 m2",
            "“m2” is a unit of area or drag area, but a length is needed here; use in, ft, mm, cm or m",
        ),
        (
            Quantity::Pressure,
            "9 lb",
            "“lb” is a unit of mass or force, but a pressure is needed here; use psi, bar, MPa, kPa, Pa or mbar",
        ),
        (
            Quantity::Mass,
            "9 lbf",
            "“lbf” is a unit of force, but a mass is needed here; use lb, oz, kg, g or slug",
        ),
        (
            Quantity::Force,
            "4 kg",
            "“kg” is a unit of mass, but a force is needed here; use lb, oz, N, daN, kN or kgf",
        ),
        (
            Quantity::Count,
            "2 in",
            "“in” is a unit of length, but a whole number is needed here; use no unit",
        ),
        (
            Quantity::Length,
            "1,200",
            "“1,200” can be read in two ways; write 1200 for thousands, or 1.200 for a decimal",
        ),
        (
            Quantity::Length,
            "1 - 3/8",
            "“1 - 3/8” can be read in two ways; write 1 3/8 for the mixed number; sums are not worked out",
        ),
        (
            Quantity::Pressure,
            "8.2 mPa",
            "“mPa” can be read in two ways; a capital M is a million, a small m a thousandth; write MPa",
        ),
        (
            Quantity::Length,
            "2' 3",
            "“2' 3” can't be put together; write the unit after each number",
        ),
        (
            Quantity::Length,
            "2 in 3 ft",
            "“2 in 3 ft” can't be put together; ft can't follow in",
        ),
        (
            Quantity::Length,
            "2.5 ft 3 in",
            "“2.5 ft 3 in” can't be put together; the number of ft must be whole when in follow",
        ),
        (
            Quantity::Count,
            "2.5",
            "“2.5” is not a whole number; write for example 2",
        ),
        (
            Quantity::Length,
            "1e999",
            "“1e999” is beyond any number that can be worked with; check its size and exponent",
        ),
    ];
    for (quantity, text, message) in cases {
        assert_eq!(error(quantity, text).to_string(), message, "{text}");
    }
}

/// Ambiguous: two readings, two numbers.
#[test]
fn two_readings() {
    let texts = [
        "1,200",
        "12,500 mm",
        "123,456",
        "1 200",
        "3 8",
        "2-3",
        "1 -3/8",
        "1- 3/8",
        "1 9/8",
        "1 8/8",
        "2 ft - 3 in",
        "2 ft -3 in",
        "2ft.3in",
        "2 ft,3 in",
    ];
    for text in texts {
        let found = error(Quantity::Length, text);
        assert!(
            matches!(found, ParseError::Ambiguous { .. }),
            "{text}: {found:?}"
        );
    }
    for text in ["1 mpa", "1 mPA", "1 Mbar"] {
        assert!(
            matches!(
                error(Quantity::Pressure, text),
                ParseError::Ambiguous { .. }
            ),
            "{text}"
        );
    }
    for (quantity, text) in [
        (Quantity::Current, "5 MA"),
        (Quantity::Voltage, "5 MV"),
        (Quantity::Resistance, "20 MΩ"),
    ] {
        assert!(
            matches!(error(quantity, text), ParseError::Ambiguous { .. }),
            "{text}"
        );
    }
}

#[test]
fn no_numbers() {
    let texts = [
        "inf",
        "NaN",
        "-",
        "+",
        "--3",
        "+-3",
        "±3",
        ".",
        ",",
        "..",
        "1..2",
        "1.2.3",
        "1,20,000",
        "0,200,000",
        "1,2,3",
        "1.5/2",
        "1/1.5",
        "(3)",
        "3 + 4",
        "½½",
        "3 ½ ½",
        "in 3",
        "٣",
        "３",
        "/8",
        "5 /s",
        "=3",
        "1,200.5,3",
    ];
    for text in texts {
        let found = error(Quantity::Length, text);
        assert!(
            matches!(found, ParseError::NotANumber { .. }),
            "{text}: {found:?}"
        );
    }
}

#[test]
fn a_unit_of_another_quantity_is_named() {
    assert!(matches!(
        error(Quantity::Speed, "100 kN"),
        ParseError::WrongQuantity { .. }
    ));
    assert!(matches!(
        error(Quantity::Length, "2 ft3"),
        ParseError::WrongQuantity { .. }
    ));
    assert!(matches!(
        error(Quantity::Travel, "3 in"),
        ParseError::WrongQuantity { .. }
    ));
    assert!(matches!(
        error(Quantity::StrokeSpeed, "3 kt"),
        ParseError::WrongQuantity { .. }
    ));
}

#[test]
fn out_of_range_both_ways() {
    let long = "9".repeat(MAX_TEXT_LENGTH);
    assert!(parse(Quantity::Length, UnitChoice::INCH, &long).is_ok());
    for text in [
        "1e400",
        "1e-400",
        "1e99999999999999999999",
        "1e-99999999999999999999",
        "2e309 m",
        "1e-330 m",
    ] {
        assert!(
            matches!(error(Quantity::Length, text), ParseError::OutOfRange { .. }),
            "{text}"
        );
    }
}

#[test]
fn long_texts_are_cut_off_and_messages_stay_short() {
    for text in [
        "1".repeat(MAX_TEXT_LENGTH + 1),
        "½".repeat(1_000_000),
        " ".repeat(201) + "3",
    ] {
        assert!(matches!(
            error(Quantity::Length, &text),
            ParseError::TooLong { .. }
        ));
    }
    let message = error(Quantity::Length, &format!("3 {}", "ß".repeat(190))).to_string();
    assert!(message.chars().count() < 100, "{message}");
}

fn any_quantity() -> impl Strategy<Value = Quantity> {
    prop::sample::select(Quantity::ALL)
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(2000))]

    /// Any text gives an answer that is finite, or a sentence.
    #[test]
    fn any_text_is_answered(quantity in any_quantity(), text in any::<String>()) {
        answered(quantity, &text);
    }

    /// The same with signs that nearly make a number.
    #[test]
    fn any_near_number_is_answered(
        quantity in any_quantity(),
        text in "[0-9 \u{a0},./eE½⅜+\u{2212}'\"°%m-]{0,30}( ?(in|ft|psi|MPa|deg|lb|m3|N·m|/))?[0-9/ -]{0,6}",
    ) {
        answered(quantity, &text);
    }
}

fn answered(quantity: Quantity, text: &str) {
    match parse(quantity, UnitChoice::METRIC, text) {
        Ok(read) => assert!(
            read.si.is_finite() && !read.echo.is_empty(),
            "{text}: {read:?}"
        ),
        Err(error) => assert!(!error.to_string().is_empty()),
    }
}
