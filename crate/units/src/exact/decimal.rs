//! Decimal figures, rounded as a person rounds them.

use super::Rational;

/// Figures of an f64 worked out in a few steps that carry no noise of the binary digits.
const CLEAN_FIGURES: usize = 15;

/// Decimal figures `d.ddd × 10^exponent`; at least one digit.
#[derive(Clone, Debug, PartialEq, Eq)]
pub(crate) struct Decimal {
    pub(crate) negative: bool,
    pub(crate) digits: String,
    pub(crate) exponent: i32,
}

impl Decimal {
    pub(crate) fn zero() -> Self {
        Self {
            negative: false,
            digits: "0".into(),
            exponent: 0,
        }
    }

    /// A finite f64 to fifteen figures, so that 0.374 999 999 999 999 94 is the 0.375 that was meant.
    pub(crate) fn clean(value: f64) -> Self {
        Self::read(&format!("{:.*e}", CLEAN_FIGURES - 1, value))
    }

    /// The shortest decimal that is read as this finite f64: 0.1 for the f64 nearest to it.
    pub(crate) fn shortest(value: f64) -> Self {
        Self::read(&format!("{value:e}"))
    }

    /// Reads what the standard library writes in the form `-d.ddde-5`.
    fn read(text: &str) -> Self {
        let (figures, exponent) = text.split_once('e').unwrap_or((text, "0"));
        let digits: String = figures.chars().filter(char::is_ascii_digit).collect();
        let decimal = Self {
            negative: figures.starts_with('-'),
            digits,
            exponent: exponent.parse().unwrap_or(0),
        };
        if decimal.is_zero() {
            Self::zero()
        } else {
            decimal
        }
    }

    pub(crate) fn is_zero(&self) -> bool {
        self.digits.bytes().all(|b| b == b'0')
    }

    /// Rounded to at most `figures` figures, halves away from zero. With no figures left: zero, or one in the
    /// place above.
    pub(crate) fn rounded(&self, figures: i32) -> Self {
        let kept = usize::try_from(figures.max(0)).unwrap_or(0);
        if kept >= self.digits.len() {
            return self.clone();
        }
        let up = figures >= 0 && self.digits.as_bytes().get(kept).is_some_and(|&b| b >= b'5');
        let mut digits: Vec<u8> = self.digits.bytes().take(kept).collect();
        let mut carry = up;
        for digit in digits.iter_mut().rev() {
            if !carry {
                break;
            }
            carry = *digit == b'9';
            *digit = if carry { b'0' } else { *digit + 1 };
        }
        let mut exponent = self.exponent;
        if carry {
            digits.insert(0, b'1');
            digits.truncate(kept.max(1));
            exponent += 1;
        }
        if digits.is_empty() {
            return Self::zero();
        }
        let digits = digits.into_iter().map(char::from).collect();
        Self {
            negative: self.negative,
            digits,
            exponent,
        }
    }

    /// Figures without zeros at the end; of zero one.
    pub(crate) fn figures(&self) -> i32 {
        let count = self.digits.trim_end_matches('0').len().max(1);
        i32::try_from(count).unwrap_or(i32::MAX)
    }

    /// Cut after `figures` figures, 1 or more.
    pub(crate) fn cut(&self, figures: usize) -> Self {
        let mut cut = self.clone();
        cut.digits.truncate(figures.max(1));
        cut
    }

    /// The next number with `figures` figures, 1 or more, that is no smaller in size.
    pub(crate) fn rounded_up(&self, figures: usize) -> Self {
        let cut = self.cut(figures);
        if cut.figures() == self.figures() || self.is_zero() {
            return cut;
        }
        // a half more in the last place kept, and rounded: halves go away from zero
        let mut above = cut;
        above.digits.push('5');
        above.rounded(i32::try_from(figures).unwrap_or(i32::MAX))
    }

    /// The exact value.
    pub(crate) fn value(&self) -> Rational {
        let figures = i32::try_from(self.digits.len()).unwrap_or(i32::MAX);
        let mut value = Rational::decimal(&self.digits, self.exponent + 1 - figures);
        value.negative = self.negative;
        value
    }

    /// The value to a dozen units in the last place of an f64, for sizes from 1e-290 to 1e300.
    pub(crate) fn roughly(&self) -> f64 {
        let kept = self.digits.bytes().take(17);
        let figures = kept.fold(0.0, |sum, digit| 10.0 * sum + f64::from(digit - b'0'));
        let count = i32::try_from(self.digits.len().min(17)).unwrap_or(17);
        let size = figures * 10_f64.powi(self.exponent + 1 - count);
        if self.negative { -size } else { size }
    }

    /// Digits written out from 1e-7 to 1e15, with a power of ten beyond; no zeros at the end.
    pub(crate) fn to_text(&self) -> String {
        let digits = self.digits.trim_end_matches('0');
        if digits.is_empty() {
            return "0".into();
        }
        let sign = if self.negative { "-" } else { "" };
        if (-7..15).contains(&self.exponent) {
            return format!("{sign}{}", written_out(digits, self.exponent));
        }
        let (first, rest) = digits.split_at(1);
        let point = if rest.is_empty() { "" } else { "." };
        format!("{sign}{first}{point}{rest}e{}", self.exponent)
    }

    /// Written out with exactly `decimals` decimals: cut or filled with zeros, so round first.
    pub(crate) fn to_fixed(&self, decimals: usize) -> String {
        let text = written_out(&self.digits, self.exponent);
        let (whole, part) = text.split_once('.').unwrap_or((&text, ""));
        let sign = if self.negative { "-" } else { "" };
        let point = if decimals == 0 { "" } else { "." };
        let part: String = part
            .chars()
            .chain(std::iter::repeat('0'))
            .take(decimals)
            .collect();
        format!("{sign}{whole}{point}{part}")
    }
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

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn roughly_is_near() {
        for value in [0.375, -1.0 / 3.0, 1.234_567_890_123_456_7e-290, 9.87e299] {
            let roughly = Decimal::shortest(value).roughly();
            assert!(
                (roughly - value).abs() <= 5e-15 * value.abs(),
                "{value} {roughly}"
            );
        }
        assert_eq!(Decimal::zero().roughly(), 0.0);
    }

    #[test]
    fn rounds_halves_away_and_carries() {
        let rounded = |value: f64, figures| Decimal::clean(value).rounded(figures).to_text();
        assert_eq!(rounded(0.375, 2), "0.38");
        assert_eq!(rounded(0.374_999_999_999_999_94, 2), "0.38");
        assert_eq!(rounded(-9.996, 3), "-10");
        assert_eq!(rounded(0.05, 0), "0.1");
        assert_eq!(rounded(0.04, 0), "0");
        assert_eq!(rounded(0.9, -1), "0");
        assert_eq!(rounded(12.0, 9), "12");
    }
}
