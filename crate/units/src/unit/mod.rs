//! The units: symbols, spellings, factors; which one is shown; which one a typed text names.

/// Series of units that may stand together, such as feet and inches.
mod series;
/// The unit shown for each quantity.
mod shown;
/// One unit, and the matching of a typed spelling.
mod spelling;
/// All units by quantity.
mod table;

pub(crate) use series::{comes_after, has_series};
pub(crate) use shown::shown_unit;
pub use spelling::Unit;
pub(crate) use spelling::{Match, canonical, find};
pub(crate) use table::units_of;
