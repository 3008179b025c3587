//! Exact arithmetic, so that a typed number is rounded once, at the very end.

/// Decimal figures.
mod decimal;
/// Whole numbers of any size.
mod natural;
/// Signed fractions; rounding to f64 and to decimal digits.
mod rational;

pub(crate) use decimal::Decimal;
pub(crate) use natural::Natural;
pub(crate) use rational::Rational;
