//! Units at the border. Inside, every number is SI (m, kg, N, Pa, s, rad); this crate alone turns what a
//! person types into SI and SI into what a person reads.
//!
//! ```
//! use gearswing_units::{Quantity, UnitChoice, format, format_exact, parse};
//!
//! let choice = UnitChoice::default(); // inches, pounds, psi, knots
//! let read = parse(Quantity::Length, choice, "3/8")?;
//! assert_eq!(read.si, 0.009525);
//! assert_eq!(read.echo, "3/8 in = 0.375 in = 9.5 mm");
//! assert_eq!(format(Quantity::Length, choice, read.si), "0.38 in");
//! assert_eq!(format_exact(Quantity::Length, choice, read.si), "0.375");
//! # Ok::<(), gearswing_units::ParseError>(())
//! ```
//!
//! # How a number may be written
//!
//! - Decimals `0.375`, `.5`, `1e-3`; fractions `3/8`, `1 3/8`, `1-3/8`, `1⅜`; feet and inches `2' 3 1/4"`;
//!   degrees `12° 30'`. A number without a unit takes the chosen unit.
//! - A decimal comma is understood: `9,5` is 9.5. One comma with exactly three figures after it and one to
//!   three before it, not starting with 0, is refused (`1,200` may be 1200 or 1.2); `0,375`, `1200,500` and `1,2000` can only
//!   be decimals, `1,200,000` and `1,200.5` can only be thousands, and are taken so. A single point is always
//!   the decimal point. No-break and thin spaces may part thousands; a plain space may not.
//! - `3 - 1/8` and `2-3` are refused: this is no calculator, and a range is not a number.
//! - Case counts only where it changes the size: `mPa` is refused, `MPa`, `Mpa`, `KPA`, `PSI` are taken.

/// Inch or metric, and the few choices within.
mod choice;
/// What can be wrong with a typed text.
mod error;
mod exact;
/// Conversion factors with their definitions.
pub mod factors;
/// SI to text.
mod format;
/// Text to SI.
mod parse;
/// The kinds of numbers that fields hold.
mod quantity;
/// Arrow-key steps.
mod step;
/// The units themselves.
mod unit;

pub use choice::{AirspeedUnit, MetricPressure, UnitChoice, UnitSystem, UnknownKey};
pub use error::ParseError;
pub use format::{
    NO_VALUE, format, format_bare, format_exact, format_field, format_figures, format_signed,
    si_range_text,
};
pub use parse::{MAX_TEXT_LENGTH, Parsed, parse};
pub use quantity::Quantity;
pub use step::{Step, StepSize};
pub use unit::Unit;
