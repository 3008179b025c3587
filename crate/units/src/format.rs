//! From SI to text: rounded for reading, or exact for a field.

use crate::choice::UnitChoice;
use crate::exact::{Decimal, Rational};
use crate::quantity::Quantity;
use crate::unit::Unit;

/// Shown where there is no finite value.
pub const NO_VALUE: &str = "–";

/// The minus sign of texts to be read (fields and columns have the plain hyphen).
pub(crate) const MINUS: &str = "−";

/// Decimals are never more than this, however small the value.
const MAX_DECIMALS: i32 = 7;

/// How a quantity is rounded for reading.
enum Precision {
    /// So many decimals.
    Decimals(i32),
    /// So many significant figures; whole numbers are not cut into by it beyond that.
    Figures(i32),
}

/// Length 0.01 in or 0.1 mm, angle 0.1°; force, pressure and most others three figures.
fn precision(quantity: Quantity, unit: &Unit) -> Precision {
    match quantity {
        Quantity::Length if unit.symbol() == "in" => Precision::Decimals(2),
        Quantity::Length | Quantity::Angle | Quantity::Travel | Quantity::Voltage => {
            Precision::Decimals(1)
        }
        Quantity::LoadFactor | Quantity::Time => Precision::Decimals(2),
        Quantity::Count => Precision::Decimals(0),
        _ => Precision::Figures(3),
    }
}

/// The value rounded for reading, with its unit: `0.38 in`, `−12.5°`, `1200 psi`.
#[must_use]
pub fn format(quantity: Quantity, choice: UnitChoice, si: f64) -> String {
    if !si.is_finite() {
        return NO_VALUE.into();
    }
    let size = format_bare(quantity, choice, si.abs());
    let sign = if si < 0.0 && !is_zero_text(&size) {
        MINUS
    } else {
        ""
    };
    quantity.unit(choice).with_number(&format!("{sign}{size}"))
}

/// Like [`format`] with the sign always written, for margins: `+0.12 in`. A value that rounds to zero keeps
/// its sign (`−0.00 in`), since the sign of a margin decides; only zero itself has none.
#[must_use]
pub fn format_signed(quantity: Quantity, choice: UnitChoice, si: f64) -> String {
    if !si.is_finite() {
        return NO_VALUE.into();
    }
    let sign = match si {
        si if si < 0.0 => MINUS,
        si if si > 0.0 => "+",
        _ => "",
    };
    quantity.unit(choice).with_number(&format!(
        "{sign}{}",
        format_bare(quantity, choice, si.abs())
    ))
}

/// The value rounded for reading, without unit and with a plain hyphen for minus: for columns whose head has
/// the unit.
#[must_use]
pub fn format_bare(quantity: Quantity, choice: UnitChoice, si: f64) -> String {
    let unit = quantity.unit(choice);
    if !si.is_finite() {
        return NO_VALUE.into();
    }
    let value = Rational::from_f64(si).over(unit.factor);
    match precision(quantity, unit) {
        Precision::Decimals(decimals) => with_decimals(&value, decimals),
        Precision::Figures(figures) => with_figures(&value, figures),
    }
}

/// The shortest number in the shown unit that [`crate::parse`] turns back into the same bits; without unit,
/// for a field's value. Negative zero is written `0`.
#[must_use]
pub fn format_exact(quantity: Quantity, choice: UnitChoice, si: f64) -> String {
    if !si.is_finite() {
        return NO_VALUE.into();
    }
    let decimal = shortest(quantity.unit(choice), si);
    plain_or_scientific(&decimal)
}

/// `allowed range` in words: `0.5 to 60 in`; an infinite end is left open: `0 in or more`.
#[must_use]
pub fn si_range_text(quantity: Quantity, choice: UnitChoice, min: f64, max: f64) -> String {
    let unit = quantity.unit(choice);
    let bound = |si: f64| rounded_figures(unit, si, 4);
    match (min.is_finite(), max.is_finite()) {
        (true, true) => unit.with_number(&format!("{} to {}", bound(min), bound(max))),
        (true, false) => format!("{} or more", unit.with_number(&bound(min))),
        (false, true) => format!("{} or less", unit.with_number(&bound(max))),
        (false, false) => "any value".into(),
    }
}

/// The fewest decimal figures in `unit` that lead back to `si`. Seventeen always do: they are finer than the
/// f64 numbers lie.
pub(crate) fn shortest(unit: &Unit, si: f64) -> Decimal {
    let value = Rational::from_f64(si).over(unit.factor);
    let leads_back = |d: &Decimal| decimal_value(d).times(unit.factor).to_f64() == si;
    let tries = (1..=17).map(|figures| value.to_decimal(figures));
    tries
        .into_iter()
        .find(leads_back)
        .unwrap_or_else(|| value.to_decimal(17))
}

/// The exact value of decimal figures.
pub(crate) fn decimal_value(d: &Decimal) -> Rational {
    let figures = i32::try_from(d.digits.len()).unwrap_or(i32::MAX);
    let mut value = Rational::decimal(&d.digits, d.exponent + 1 - figures);
    value.negative = d.negative;
    value
}

/// The value in `unit` with at most `figures` figures, no zeros at the end.
pub(crate) fn rounded_figures(unit: &Unit, si: f64, figures: i32) -> String {
    let decimal = Rational::from_f64(si).over(unit.factor).to_decimal(figures);
    plain_or_scientific(&decimal).replace('-', MINUS)
}

/// Digits written out from 1e-7 to 1e15, with a power of ten beyond; no zeros at the end.
fn plain_or_scientific(d: &Decimal) -> String {
    let digits = d.digits.trim_end_matches('0');
    let digits = if digits.is_empty() { "0" } else { digits };
    let sign = if d.negative { "-" } else { "" };
    if (-7..15).contains(&d.exponent) {
        return format!("{sign}{}", written_out(digits, d.exponent));
    }
    let (first, rest) = digits.split_at(1);
    let point = if rest.is_empty() { "" } else { "." };
    format!("{sign}{first}{point}{rest}e{}", d.exponent)
}

/// Digits `d.ddd × 10^exponent` without power of ten.
fn written_out(digits: &str, exponent: i32) -> String {
    let lead = usize::try_from(-exponent).unwrap_or(0);
    let digits = format!("{}{digits}", "0".repeat(lead));
    let whole = usize::try_from(exponent).unwrap_or(0) + 1;
    if digits.len() <= whole {
        return format!("{digits}{}", "0".repeat(whole - digits.len()));
    }
    let (whole, part) = digits.split_at(whole);
    format!("{whole}.{part}")
}

/// Rounded to a fixed number of decimals, zeros kept.
fn with_decimals(value: &Rational, decimals: i32) -> String {
    // The figures before the point vary, so the figures asked for follow from the exponent.
    let lead = value.to_decimal(1).exponent;
    if lead >= 15 {
        return plain_or_scientific(&value.to_decimal(3));
    }
    let figures = value.to_decimal(17).exponent + 1 + decimals;
    let rounded = if figures >= 1 {
        value.to_decimal(figures)
    } else {
        rounds_to_last_place(value, decimals)
    };
    fixed(&rounded, decimals)
}

/// A value below the last place shown: zero, or one in that place.
fn rounds_to_last_place(value: &Rational, decimals: i32) -> Decimal {
    let first = value.to_decimal(17);
    let up = first.exponent == -decimals - 1 && first.digits.as_str() >= "5";
    let digits = if up { "1" } else { "0" };
    Decimal {
        negative: value.negative && up,
        digits: digits.into(),
        exponent: -decimals,
    }
}

/// Figures `d` with exactly `decimals` decimals; they must not have more.
fn fixed(d: &Decimal, decimals: i32) -> String {
    let text = written_out(&d.digits, d.exponent.max(-MAX_DECIMALS));
    let (whole, part) = text.split_once('.').unwrap_or((&text, ""));
    let wanted = usize::try_from(decimals).unwrap_or(0);
    let sign = if d.negative { "-" } else { "" };
    let part: String = part
        .chars()
        .chain(std::iter::repeat('0'))
        .take(wanted)
        .collect();
    if wanted == 0 {
        format!("{sign}{whole}")
    } else {
        format!("{sign}{whole}.{part}")
    }
}

/// Rounded to significant figures, zeros kept: `40.0`, `0.500`, `59000`.
fn with_figures(value: &Rational, figures: i32) -> String {
    let rounded = value.to_decimal(figures);
    if value.is_zero() || rounded.exponent < -MAX_DECIMALS {
        return "0".into();
    }
    if rounded.exponent >= 15 {
        return plain_or_scientific(&rounded);
    }
    let decimals = (figures - 1 - rounded.exponent).clamp(0, MAX_DECIMALS + figures);
    fixed(&rounded, decimals)
}

fn is_zero_text(text: &str) -> bool {
    !text.contains(|c: char| ('1'..='9').contains(&c))
}
