//! From SI to text: rounded for reading, or exact for a field.

use crate::choice::{UnitChoice, UnitSystem};
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

/// A limit with more figures than these is told with [`ROUND_LIMIT`], on its inner side.
const RANGE_FIGURES: i32 = 4;
/// Figures of a limit that is not round in the shown unit.
const ROUND_LIMIT: usize = 2;

/// How a quantity is rounded for reading.
enum Precision {
    /// So many decimals.
    Decimals(i32),
    /// So many significant figures.
    Figures(i32),
}

/// Length 0.01 in or 0.1 mm, hole 0.001 in or 0.01 mm, pitch of a thread
/// 0.0001 in or 0.001 mm, angle 0.1°; force, pressure and most others three figures.
fn precision(quantity: Quantity, unit: &Unit) -> Precision {
    match quantity {
        Quantity::Pitch if unit.symbol() == "in" => Precision::Decimals(4),
        Quantity::Pitch => Precision::Decimals(3),
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

/// The allowed range in words: `0.5 to 60 in`. A limit that has more than four figures in the shown unit is
/// rounded to two, to the inner side, so that what is told is always taken: 20 m are `780 in`. An infinite
/// end is left open: `0 in or more`.
#[must_use]
pub fn si_range_text(quantity: Quantity, choice: UnitChoice, min: f64, max: f64) -> String {
    let unit = quantity.unit(choice);
    let bound = |si: f64, upper: bool| limit(unit, si, upper).to_text().replace('-', MINUS);
    match (min.is_finite(), max.is_finite()) {
        (true, true) => unit.with_number(&format!("{} to {}", bound(min, false), bound(max, true))),
        (true, false) => format!("{} or more", unit.with_number(&bound(min, false))),
        (false, true) => format!("{} or less", unit.with_number(&bound(max, true))),
        (false, false) => "any value".into(),
    }
}

/// A limit as it is told: never beyond the true one.
fn limit(unit: &Unit, si: f64, upper: bool) -> Decimal {
    let exact = Decimal::clean(unit.from_si(si));
    let few = exact.rounded(RANGE_FIGURES);
    if few.to_text() == exact.to_text() {
        return few;
    }
    // an upper limit loses size where it is positive, a lower one where it is negative
    if exact.negative == upper {
        exact.rounded_up(ROUND_LIMIT)
    } else {
        exact.cut(ROUND_LIMIT)
    }
}

/// Text of a stored number for a field: what can have been typed is written out, in inches as a fraction
/// where it is one of the rule's; anything else comes from other units or was worked out, and is rounded to
/// what such a number carries. For reading only: the number itself stays as it is.
#[must_use]
pub fn format_field(quantity: Quantity, choice: UnitChoice, si: f64) -> String {
    if !si.is_finite() {
        return NO_VALUE.into();
    }
    let unit = quantity.unit(choice);
    let number = shortest(unit, si);
    let sixty_fourths = match quantity {
        Quantity::Length => whole_sixty_fourths(unit_of_inch(), si),
        _ => None,
    };
    let figures = number.figures();
    let decimals = (figures - 1 - number.exponent).max(0);
    let typed = match (quantity, choice.system) {
        (Quantity::Length, UnitSystem::Inch) => {
            if let Some(count) = sixty_fourths {
                return fraction(count);
            }
            decimals <= 4
        }
        (Quantity::Length, UnitSystem::Metric) => {
            decimals <= if sixty_fourths.is_some() { 2 } else { 3 }
        }
        (Quantity::Hole | Quantity::Pitch, UnitSystem::Inch) => decimals <= 4,
        (Quantity::Pitch, UnitSystem::Metric) => decimals <= 3,
        (Quantity::Hole, UnitSystem::Metric) => decimals <= 2,
        _ => figures <= TYPED_FIGURES,
    };
    if typed {
        return number.to_text();
    }
    let clean = Decimal::clean(unit.from_si(si));
    let kept = match precision(quantity, unit) {
        Precision::Decimals(decimals) => (clean.exponent + 1 + decimals).max(LEAST_FIGURES),
        Precision::Figures(figures) => figures.max(clean.exponent + 1),
    };
    clean.rounded(kept).to_text()
}

/// Figures that a person types of anything but a length.
const TYPED_FIGURES: i32 = 5;
/// Figures that a small number keeps where its decimals would leave fewer.
const LEAST_FIGURES: i32 = 2;
/// Finest mark of a rule in inches: 1/64.
const RULE: u32 = 64;
/// Beyond so many marks no rule reaches.
const LONGEST_RULE: f64 = 1e6;

fn unit_of_inch() -> &'static Unit {
    Quantity::Length.unit(UnitChoice::INCH)
}

/// A length as a whole number of 1/64 in, when it is one to the last bit.
fn whole_sixty_fourths(inch: &Unit, si: f64) -> Option<i32> {
    let count = (inch.from_si(si) * f64::from(RULE)).round();
    if count.abs() > LONGEST_RULE {
        return None;
    }
    let exact = Decimal::shortest(count / f64::from(RULE));
    #[expect(
        clippy::cast_possible_truncation,
        reason = "a whole number below a million"
    )]
    (exact.value().times(inch.factor).to_f64() == si).then_some(count as i32)
}

/// A number of 1/64 as whole and fraction: `59 1/16`, `-3/8`, `22`.
fn fraction(count: i32) -> String {
    let sign = if count < 0 { "-" } else { "" };
    let count = count.unsigned_abs();
    let (whole, mut part) = (count / RULE, count % RULE);
    let mut of = RULE;
    while part != 0 && part.is_multiple_of(2) {
        (part, of) = (part / 2, of / 2);
    }
    match (whole, part) {
        (whole, 0) => format!("{sign}{whole}"),
        (0, part) => format!("{sign}{part}/{of}"),
        (whole, part) => format!("{sign}{whole} {part}/{of}"),
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
