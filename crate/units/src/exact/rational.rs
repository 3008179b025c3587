//! Signed fractions, rounded to the nearest f64 or to a given number of decimal figures.

use super::{Decimal, Natural};
use crate::factors::Factor;
use std::cmp::Ordering;

/// π to 60 decimals (from memory of the published digits; a test holds the leading ones to `f64::consts`).
const PI_DIGITS: &str = "3141592653589793238462643383279502884197169399375105820974944";
const PI_DECIMALS: usize = 60;

/// A signed fraction; the denominator is never zero.
#[derive(Clone, Debug)]
pub(crate) struct Rational {
    pub(crate) negative: bool,
    num: Natural,
    den: Natural,
}

impl Rational {
    /// `digits × 10^exponent`.
    pub(crate) fn decimal(digits: &str, exponent: i32) -> Self {
        let scale = Natural::power_of_ten(exponent.unsigned_abs() as usize);
        let (num, den) = (Natural::from_digits(digits), Natural::from_u128(1));
        let (num, den) = if exponent < 0 {
            (num, scale)
        } else {
            (num.times(&scale), den)
        };
        Self {
            negative: false,
            num,
            den,
        }
    }

    /// `num / den` from decimal digits; none when the denominator is zero.
    pub(crate) fn fraction(num: &str, den: &str) -> Option<Self> {
        let (num, den) = (Natural::from_digits(num), Natural::from_digits(den));
        (!den.is_zero()).then_some(Self {
            negative: false,
            num,
            den,
        })
    }

    /// The exact value of a finite f64; zero for anything else.
    pub(crate) fn from_f64(value: f64) -> Self {
        let bits = value.to_bits();
        let raw_exponent = i32::try_from(bits >> 52 & 0x7ff).unwrap_or(0);
        let fraction = bits & ((1 << 52) - 1);
        let (mantissa, exponent) = match raw_exponent {
            0x7ff => (0, 0),
            0 => (fraction, -1074),
            normal => (fraction | 1 << 52, normal - 1075),
        };
        let shift = exponent.unsigned_abs() as usize;
        let (num, den) = (Natural::from_u128(mantissa.into()), Natural::from_u128(1));
        let (num, den) = if exponent < 0 {
            (num, den.shifted_left(shift))
        } else {
            (num.shifted_left(shift), den)
        };
        Self {
            negative: value.is_sign_negative() && mantissa != 0,
            num,
            den,
        }
    }

    pub(crate) fn is_zero(&self) -> bool {
        self.num.is_zero()
    }

    /// Whether the size (sign left aside) is below one.
    pub(crate) fn is_below_one(&self) -> bool {
        self.num.compare(&self.den) == Ordering::Less
    }

    pub(crate) fn plus(&self, other: &Self) -> Self {
        let (a, b) = (self.num.times(&other.den), other.num.times(&self.den));
        let den = self.den.times(&other.den);
        if self.negative == other.negative {
            return Self {
                negative: self.negative,
                num: a.plus(&b),
                den,
            };
        }
        match a.compare(&b) {
            Ordering::Less => Self {
                negative: other.negative,
                num: b.minus(&a),
                den,
            },
            Ordering::Equal => Self {
                negative: false,
                num: Natural::from_u128(0),
                den,
            },
            Ordering::Greater => Self {
                negative: self.negative,
                num: a.minus(&b),
                den,
            },
        }
    }

    pub(crate) fn times(&self, factor: Factor) -> Self {
        let mut num = self.num.times(&Natural::from_u128(factor.num));
        let mut den = self.den.times(&Natural::from_u128(factor.den));
        for _ in 0..factor.pi.unsigned_abs() {
            let (pi, one) = (
                Natural::from_digits(PI_DIGITS),
                Natural::power_of_ten(PI_DECIMALS),
            );
            let (up, down) = if factor.pi > 0 { (pi, one) } else { (one, pi) };
            (num, den) = (num.times(&up), den.times(&down));
        }
        Self {
            negative: self.negative,
            num,
            den,
        }
    }

    pub(crate) fn over(&self, factor: Factor) -> Self {
        self.times(Factor {
            num: factor.den,
            den: factor.num,
            pi: -factor.pi,
        })
    }

    /// The nearest f64, ties to even; infinite beyond the range, never negative zero.
    pub(crate) fn to_f64(&self) -> f64 {
        if self.num.is_zero() {
            return 0.0;
        }
        // Scaled to a quotient of 64 or 65 bits: 53 to keep, the rest and the remainder decide the rounding.
        let shift = 64 + bits(&self.den) - bits(&self.num);
        let by = shift.unsigned_abs() as usize;
        let (quotient, rest) = if shift > 0 {
            self.num.shifted_left(by).divided(&self.den)
        } else {
            self.num.divided(&self.den.shifted_left(by))
        };
        let length = 128 - i32::try_from(quotient.leading_zeros()).unwrap_or(0);
        let top_exponent = length - 1 - shift;
        if top_exponent > 1023 {
            return if self.negative {
                f64::NEG_INFINITY
            } else {
                f64::INFINITY
            };
        }
        // Subnormal numbers keep fewer bits.
        let kept = 53 + (top_exponent + 1022).min(0);
        if kept < 0 {
            return 0.0;
        }
        let dropped = length - kept;
        let (mantissa, tail) = (quotient >> dropped, quotient & ((1 << dropped) - 1));
        let half = 1_u128 << (dropped - 1);
        let up = tail > half || (tail == half && (!rest.is_zero() || mantissa & 1 == 1));
        let size = (mantissa + u128::from(up)) as f64 * power_of_two(dropped - shift);
        if self.negative && size > 0.0 {
            -size
        } else {
            size
        }
    }

    /// Rounded to `figures` (1 to 30) significant decimal figures.
    pub(crate) fn to_decimal(&self, figures: i32) -> Decimal {
        if self.num.is_zero() {
            return Decimal {
                negative: false,
                digits: "0".into(),
                exponent: 0,
            };
        }
        // 1233 / 4096 is log10(2) from below; the guess is at most two off.
        let mut exponent = (bits(&self.num) - bits(&self.den)) * 1233 / 4096;
        let mut digits = String::new();
        for _ in 0..6 {
            let scaled = self.scaled_rounded(figures - 1 - exponent);
            digits = scaled.to_string();
            // Nought is no figure.
            let length = scaled
                .checked_ilog10()
                .map_or(0, |log| log.cast_signed() + 1);
            match length.cmp(&figures) {
                Ordering::Less => exponent -= 1,
                Ordering::Greater => exponent += 1,
                Ordering::Equal => break,
            }
        }
        Decimal {
            negative: self.negative,
            digits,
            exponent,
        }
    }

    /// Size × 10^`exponent`, rounded to the nearest whole number.
    fn scaled_rounded(&self, exponent: i32) -> u128 {
        let scale = Natural::power_of_ten(exponent.unsigned_abs() as usize);
        let (quotient, rest, den) = if exponent < 0 {
            let den = self.den.times(&scale);
            let (quotient, rest) = self.num.divided(&den);
            (quotient, rest, den)
        } else {
            let (quotient, rest) = self.num.times(&scale).divided(&self.den);
            (quotient, rest, self.den.clone())
        };
        quotient + u128::from(rest.shifted_left(1).compare(&den) != Ordering::Less)
    }
}

fn bits(n: &Natural) -> i32 {
    i32::try_from(n.bit_length()).unwrap_or(i32::MAX)
}

/// 2^`exponent` for −1074 ≤ `exponent` ≤ 1023, exact.
fn power_of_two(exponent: i32) -> f64 {
    if exponent < -1022 {
        f64::from_bits(1 << (exponent + 1074).clamp(0, 51))
    } else {
        f64::from_bits(u64::from((exponent + 1023).clamp(1, 2046).unsigned_abs()) << 52)
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    // Oracle: the standard library's float parser, which rounds correctly.
    fn check(digits: &str, exponent: i32) {
        let expected: f64 = format!("{digits}e{exponent}").parse().unwrap();
        assert_eq!(
            Rational::decimal(digits, exponent).to_f64().to_bits(),
            expected.to_bits(),
            "{digits}e{exponent}"
        );
    }

    #[test]
    fn rounds_like_the_standard_library_at_the_edges() {
        check("17976931348623157", 292);
        check("17976931348623159", 292);
        check("22250738585072011", -324);
        check("49406564584124654", -340);
        check("24703282292062327", -340);
        check("24703282292062328", -340);
        check("9007199254740993", 0);
        check("1", -400);
        check("1", 400);
    }

    #[test]
    fn decimal_halves_go_away_from_zero() {
        let digits = |value, figures| Rational::from_f64(value).to_decimal(figures).digits;
        assert_eq!(digits(0.125, 2), "13");
        assert_eq!(digits(0.375, 1), "4");
        assert_eq!(digits(99.5, 2), "10");
    }

    #[test]
    fn pi_agrees_with_the_standard_library() {
        let pi = Rational::decimal("1", 0).times(Factor {
            num: 1,
            den: 1,
            pi: 1,
        });
        assert_eq!(pi.to_f64().to_bits(), std::f64::consts::PI.to_bits());
    }

    proptest! {
        #[test]
        fn rounds_like_the_standard_library(digits in "[1-9][0-9]{0,40}", exponent in -370_i32..320) {
            check(&digits, exponent);
        }

        #[test]
        fn keeps_every_float(bits in any::<u64>()) {
            let value = f64::from_bits(bits);
            prop_assume!(value.is_finite() && value != 0.0);
            prop_assert_eq!(Rational::from_f64(value).to_f64().to_bits(), bits);
            let d = Rational::from_f64(value).to_decimal(17);
            let text = format!("{}{}e{}", if d.negative { "-" } else { "" }, d.digits, d.exponent - 16);
            prop_assert_eq!(text.parse::<f64>().unwrap().to_bits(), bits);
        }
    }
}
