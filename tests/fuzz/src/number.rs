//! Any typed text is a finite number or refused with a sentence; plain decimals are what the standard
//! library reads; a number shown exactly is read back to the same bits.
use gearswing_units::{
    AirspeedUnit, MetricPressure, Quantity, UnitChoice, UnitSystem, format, format_bare,
    format_exact, format_signed, parse,
};

/// The first byte says the quantity, the second the units, the rest is the text.
pub fn number(data: &[u8]) {
    let &[quantity, units, ref text @ ..] = data else {
        return;
    };
    let Ok(text) = std::str::from_utf8(text) else {
        return;
    };
    let quantity = Quantity::ALL[usize::from(quantity) % Quantity::ALL.len()];
    let units = choice(units);
    let parsed = parse(quantity, units, text);
    if let Some(value) = plain(text) {
        as_the_library(quantity, units, value, parsed.as_ref().ok().map(|p| p.si));
    }
    let si = match parsed {
        Ok(parsed) => parsed.si,
        Err(error) => {
            assert!(!error.to_string().is_empty());
            return;
        }
    };
    assert!(si.is_finite());
    let exact = format_exact(quantity, units, si);
    let again = parse(quantity, units, &exact).expect("an exact text is read");
    assert!(
        again.si == si,
        "{si:?} shown as {exact} became {:?}",
        again.si
    );
    for shown in [
        format(quantity, units, si),
        format_signed(quantity, units, si),
        format_bare(quantity, units, si),
    ] {
        assert!(!shown.is_empty() && !shown.contains("NaN"), "{shown}");
    }
}

fn choice(byte: u8) -> UnitChoice {
    UnitChoice {
        system: [UnitSystem::Inch, UnitSystem::Metric][usize::from(byte % 2)],
        metric_pressure: [MetricPressure::Bar, MetricPressure::Megapascal]
            [usize::from(byte / 2 % 2)],
        airspeed: [
            AirspeedUnit::Knot,
            AirspeedUnit::MilePerHour,
            AirspeedUnit::KilometrePerHour,
        ][usize::from(byte / 4 % 3)],
    }
}

/// The value of a text that is nothing but figures with a point between them.
fn plain(text: &str) -> Option<f64> {
    let (whole, rest) = text.split_once('.')?;
    let figures = |part: &str| {
        (1..=12).contains(&part.len()) && part.bytes().all(|byte| byte.is_ascii_digit())
    };
    (figures(whole) && figures(rest)).then(|| text.parse().expect("a decimal"))
}

/// One rounding here, two there (the unit's factor): some units in the last place.
fn as_the_library(quantity: Quantity, units: UnitChoice, value: f64, si: Option<f64>) {
    match si {
        Some(si) => {
            let wanted = quantity.to_si(units, value);
            let off = (si - wanted).abs();
            assert!(off <= 4.0 * f64::EPSILON * wanted.abs(), "{value}: {si:?}");
        }
        None => assert!(
            quantity == Quantity::Count && value.fract() != 0.0,
            "{value} as {quantity:?} was refused"
        ),
    }
}
