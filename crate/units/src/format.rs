//! From SI to text: rounded for reading, or exact for a field.

use crate::choice::UnitChoice;
use crate::exact::{Decimal, Rational};
use crate::quantity::Quantity;
use crate::unit::Unit;

/// Shown where there is no finite value.
pub const NO_VALUE: &str = "–";

/// The minus sign of texts to be read (fields and columns have the plain hyphen).
pub(crate) const MINUS: &str = "−";

/// Values below 1e-7 of the shown unit read as 0, values from 1e15 up are written with a power of ten.
const SMALLEST_EXPONENT: i32 = -7;
const LARGEST_EXPONENT: i32 = 14;

/// Figures of a limit in a range text.
const RANGE_FIGURES: i32 = 4;

/// How a quantity is rounded for reading.
enum Precision {
    /// So many decimals.
    Decimals(i32),
    /// So many significant figures.
    Figures(i32),
}

/// Length 0.01 in or 0.1 mm, hole 0.001 in or 0.01 mm, angle 0.1°; force, pressure and most others three figures.
fn precision(quantity: Quantity, unit: &Unit) -> Precision {
    match quantity {
        Quantity::Hole if unit.symbol() == "in" => Precision::Decimals(3),
        Quantity::Length if unit.symbol() == "in" => Precision::Decimals(2),
        Quantity::Hole => Precision::Decimals(2),
        Quantity::Length | Quantity::Angle | Quantity::Travel | Quantity::Voltage => {
            Precision::Decimals(1)
        }
        Quantity::LoadFactor | Quantity::Time => Precision::Decimals(2),
        Quantity::Count => Precision::Decimals(0),
        Quantity::Density => Precision::Figures(4),
        _ => Precision::Figures(3),
    }
}

/// The value rounded for reading, with its unit: `0.38 in`, `−12.5°`, `1200 psi`.
#[must_use]
pub fn format(quantity: Quantity, choice: UnitChoice, si: f64) -> String {
    if !si.is_finite() {
        return NO_VALUE.into();
    }
    let number = rounded(quantity, choice, si).replace('-', MINUS);
    quantity.unit(choice).with_number(&number)
}

/// Like [`format()`] with the sign always written, for margins: `+0.12 in`. A value that rounds to zero keeps
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
    let size = rounded(quantity, choice, si.abs());
    quantity.unit(choice).with_number(&format!("{sign}{size}"))
}

/// The value rounded for reading, without unit and with a plain hyphen for minus: for columns whose head has
/// the unit.
#[must_use]
pub fn format_bare(quantity: Quantity, choice: UnitChoice, si: f64) -> String {
    if si.is_finite() {
        rounded(quantity, choice, si)
    } else {
        NO_VALUE.into()
    }
}

/// The shortest number in the shown unit that [`crate::parse`] turns back into the same bits; without unit,
/// for a field's value. Negative zero is written `0`.
#[must_use]
pub fn format_exact(quantity: Quantity, choice: UnitChoice, si: f64) -> String {
    if si.is_finite() {
        shortest(quantity.unit(choice), si).to_text()
    } else {
        NO_VALUE.into()
    }
}

/// Like [`format_exact`], but rounded to `figures` figures where it has more; what stands before the point
/// is kept whole. For numbers that nobody typed.
#[must_use]
pub fn format_figures(quantity: Quantity, choice: UnitChoice, si: f64, figures: i32) -> String {
    if si.is_finite() {
        let number = shortest(quantity.unit(choice), si);
        number.rounded(figures.max(number.exponent + 1)).to_text()
    } else {
        NO_VALUE.into()
    }
}

/// The allowed range in words, limits to four figures: `0.5 to 60 in`; an infinite end is left open:
/// `0 in or more`.
#[must_use]
pub fn si_range_text(quantity: Quantity, choice: UnitChoice, min: f64, max: f64) -> String {
    let unit = quantity.unit(choice);
    let bound = |si: f64| rounded_figures(unit, si, RANGE_FIGURES);
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
    let exact = Rational::from_f64(si).over(unit.factor);
    let figures = exact.to_decimal(25);
    let leads_back = |d: &Decimal| d.value().times(unit.factor).to_f64() == si;
    // Fewer figures than the value has can't lead back; the cheap test spares the exact one.
    let near = |d: &Decimal| close(d.roughly(), unit.from_si(si));
    let mut tries = (1..17).map(|count| figures.rounded(count));
    tries
        .find(|d| near(d) && leads_back(d))
        .unwrap_or_else(|| exact.to_decimal(17))
}

/// Within some dozens of units in the last place, or too small or large to tell.
fn close(a: f64, b: f64) -> bool {
    (a - b).abs() <= 64.0 * f64::EPSILON * b.abs()
        || b.abs() < f64::MIN_POSITIVE / f64::EPSILON
        || !b.is_finite()
}

/// The value in `unit` with at most `figures` figures, no zeros at the end.
pub(crate) fn rounded_figures(unit: &Unit, si: f64, figures: i32) -> String {
    Decimal::clean(unit.from_si(si))
        .rounded(figures)
        .to_text()
        .replace('-', MINUS)
}

/// The value in the shown unit at the quantity's precision, zeros kept; zero without sign.
fn rounded(quantity: Quantity, choice: UnitChoice, si: f64) -> String {
    let unit = quantity.unit(choice);
    let value = Decimal::clean(unit.from_si(si));
    if value.exponent > LARGEST_EXPONENT {
        return value.rounded(3).to_text();
    }
    match precision(quantity, unit) {
        Precision::Decimals(decimals) => {
            let mut number = value.rounded(value.exponent + 1 + decimals);
            number.negative &= !number.is_zero();
            number.to_fixed(usize::try_from(decimals).unwrap_or(0))
        }
        Precision::Figures(_) if value.is_zero() || value.exponent < SMALLEST_EXPONENT => {
            "0".into()
        }
        Precision::Figures(figures) => {
            let number = value.rounded(figures);
            number.to_fixed(usize::try_from(figures - 1 - number.exponent).unwrap_or(0))
        }
    }
}
