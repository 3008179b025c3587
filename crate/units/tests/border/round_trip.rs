//! What is written is read back, bit for bit, in every unit.

use gearswing_units::{
    AirspeedUnit, MetricPressure, Quantity, UnitChoice, UnitSystem, format, format_exact,
    format_field, parse,
};
use proptest::prelude::*;

fn any_choice() -> impl Strategy<Value = UnitChoice> {
    let (systems, pressures) = (UnitSystem::ALL, MetricPressure::ALL);
    let all = (
        prop::sample::select(systems),
        prop::sample::select(pressures),
        prop::sample::select(AirspeedUnit::ALL),
    );
    all.prop_map(|(system, metric_pressure, airspeed)| UnitChoice {
        system,
        metric_pressure,
        airspeed,
    })
}

fn any_quantity() -> impl Strategy<Value = Quantity> {
    let all: Vec<_> = Quantity::ALL
        .iter()
        .copied()
        .filter(|q| *q != Quantity::Count)
        .collect();
    prop::sample::select(all)
}

/// Values of the sizes met in the trade, and any finite float at all.
fn any_value() -> impl Strategy<Value = f64> {
    let usual = prop_oneof![-1e-6..1e-6, -1.0..1.0, -1e4..1e4, -1e8..1e8];
    prop_oneof![4 => usual, 1 => any::<f64>().prop_filter("finite", |v| v.is_finite())]
}

fn read(quantity: Quantity, choice: UnitChoice, text: &str) -> f64 {
    parse(quantity, choice, text)
        .unwrap_or_else(|e| panic!("{quantity:?} {text}: {e}"))
        .si
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(4000))]

    #[test]
    fn exact_text_is_read_back(quantity in any_quantity(), choice in any_choice(), si in any_value()) {
        let text = format_exact(quantity, choice, si);
        let back = read(quantity, choice, &text);
        prop_assert_eq!(back.to_bits(), (si + 0.0).to_bits(), "{}", text);
    }

    /// A change of units writes the same value anew; nothing creeps, however often.
    #[test]
    fn changing_units_leaves_the_value(quantity in any_quantity(), choices in prop::collection::vec(any_choice(), 8), si in any_value()) {
        let mut value = si;
        for choice in choices {
            value = read(quantity, choice, &format_exact(quantity, choice, value));
        }
        prop_assert_eq!(value.to_bits(), (si + 0.0).to_bits());
    }

    /// What a person typed with few figures is written with the same figures.
    #[test]
    fn short_numbers_stay_short(quantity in any_quantity(), choice in any_choice(), figures in -99_999_999_i64..100_000_000, decimals in 0_usize..6) {
        let sign = if figures < 0 { "-" } else { "" };
        let digits = format!("{:0width$}", figures.abs(), width = decimals + 1);
        let (whole, part) = digits.split_at(digits.len() - decimals);
        let point = if part.trim_end_matches('0').is_empty() { "" } else { "." };
        let shortest = format!("{sign}{whole}{point}{}", part.trim_end_matches('0'));
        let si = read(quantity, choice, &format!("{sign}{whole}.{part}"));
        prop_assert_eq!(format_exact(quantity, choice, si), if si == 0.0 { "0".into() } else { shortest });
    }

    /// `to_si` is what typing the number gives; `from_si` is its inverse but for the last places.
    #[test]
    fn numbers_convert_as_texts_do(quantity in any_quantity(), choice in any_choice(), value in -1e6..1e6) {
        let si = quantity.to_si(choice, value);
        prop_assert_eq!(si.to_bits(), read(quantity, choice, &format!("{value}")).to_bits());
        prop_assert!((quantity.from_si(choice, si) - value).abs() <= 4.0 * f64::EPSILON * value.abs());
    }

    /// What a field shows is read back within what it shows: half of 0.01 in or 0.1 mm, or a twentieth
    /// of a small number.
    #[test]
    fn shown_field_is_read_back_roughly(choice in any_choice(), si in any_value()) {
        let text = format_field(Quantity::Length, choice, si);
        let back = read(Quantity::Length, choice, &text);
        let place = if choice.system == UnitSystem::Inch { 0.005 * 0.0254 } else { 0.05 * 0.001 };
        prop_assert!((back - si).abs() <= place * 1.000_001 + 1e-14 * si.abs(), "{text} {si}");
        prop_assert!((back - si).abs() <= 0.051 * si.abs() || si.abs() < 1e-300, "{text} {si}");
    }

    /// Sixteenths, and thousandths of an inch, stand in their field as they are.
    #[test]
    fn what_a_rule_reads_stays(sixty_fourths in -64_000..64_000_i32, thousandths in -100_000..100_000_i32) {
        let field = |si| format_field(Quantity::Length, UnitChoice::INCH, si);
        let si = read(Quantity::Length, UnitChoice::INCH, &format!("{}", f64::from(sixty_fourths) / 64.0));
        prop_assert_eq!(read(Quantity::Length, UnitChoice::INCH, &field(si)).to_bits(), si.to_bits());
        prop_assert!(!field(si).contains('.'));
        let si = read(Quantity::Length, UnitChoice::INCH, &format!("{}e-3", thousandths));
        prop_assert_eq!(read(Quantity::Length, UnitChoice::INCH, &field(si)).to_bits(), si.to_bits());
    }

    /// The text for reading is read back within what it shows: half its last place.
    #[test]
    fn shown_text_is_read_back_roughly(choice in any_choice(), si in -100.0..100.0) {
        let back = read(Quantity::Length, choice, &format(Quantity::Length, choice, si));
        prop_assert!((back - si).abs() <= 0.005_000_1 * 0.0254, "{} {}", back, si);
    }
}

/// The ends of f64 go through every unit.
#[test]
fn extreme_values_are_read_back() {
    let values = [
        f64::MAX,
        f64::MIN,
        f64::MIN_POSITIVE,
        5e-324,
        -5e-324,
        2.225_073_858_507_201e-308,
        1.0 + f64::EPSILON,
    ];
    for &quantity in Quantity::ALL.iter().filter(|q| **q != Quantity::Count) {
        for choice in [UnitChoice::INCH, UnitChoice::METRIC] {
            for si in values {
                let text = format_exact(quantity, choice, si);
                assert_eq!(
                    read(quantity, choice, &text).to_bits(),
                    si.to_bits(),
                    "{quantity:?} {text}"
                );
            }
        }
    }
}

#[test]
fn keys_are_read_back() {
    for &system in UnitSystem::ALL {
        for &metric_pressure in MetricPressure::ALL {
            for &airspeed in AirspeedUnit::ALL {
                let choice = UnitChoice {
                    system,
                    metric_pressure,
                    airspeed,
                };
                assert_eq!(choice.to_string().parse(), Ok(choice));
            }
        }
    }
    for &quantity in Quantity::ALL {
        assert_eq!(quantity.as_str().parse(), Ok(quantity));
    }
    for wrong in [
        "",
        "inch",
        "inch bar",
        "inch bar kt kt",
        "Inch bar kt",
        "inch  bar kt",
    ] {
        assert!(wrong.parse::<UnitChoice>().is_err(), "{wrong}");
    }
    assert_eq!(UnitChoice::default(), UnitChoice::INCH);
}
