//! Series of units that may stand together in one number: feet and inches, degrees and minutes.

use super::Unit;
use crate::quantity::Quantity;

/// Symbols of units that follow each other, largest first.
fn series_of(quantity: Quantity) -> &'static [&'static [&'static str]] {
    match quantity {
        Quantity::Length | Quantity::Hole | Quantity::Pitch => &[&["ft", "in"], &["m", "cm", "mm"]],
        Quantity::Angle => &[&["°", "′", "″"]],
        Quantity::Mass | Quantity::Force => &[&["lb", "oz"]],
        Quantity::Time => &[&["h", "min", "s"]],
        _ => &[],
    }
}

/// Whether the quantity may be typed in several units at once.
pub(crate) fn has_series(quantity: Quantity) -> bool {
    !series_of(quantity).is_empty()
}

/// Whether `next` may follow `previous` in one number.
pub(crate) fn comes_after(quantity: Quantity, previous: &Unit, next: &Unit) -> bool {
    series_of(quantity).iter().any(|series| {
        let place = |unit: &Unit| series.iter().position(|symbol| *symbol == unit.symbol());
        matches!((place(previous), place(next)), (Some(a), Some(b)) if a < b)
    })
}
