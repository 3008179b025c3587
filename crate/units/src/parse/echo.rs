//! What was understood, as text.

use super::quantity::Part;
use crate::choice::UnitChoice;
use crate::format::{MINUS, format, format_bare, rounded_figures};
use crate::quantity::Quantity;

/// Figures of the value in the shown unit; enough to recognize what was typed.
const ECHO_FIGURES: i32 = 5;
/// Figures of a value too small for its quantity's precision.
const SMALL_FIGURES: i32 = 3;
const NOT_ZERO: [char; 9] = ['1', '2', '3', '4', '5', '6', '7', '8', '9'];

/// The typed text with its unit, then the same in the shown unit and in the other system's, where they
/// differ: `3/8 in = 0.375 in = 9.5 mm`.
pub(super) fn echo(
    quantity: Quantity,
    choice: UnitChoice,
    negative: bool,
    parts: &[Part],
    si: f64,
) -> String {
    let typed: Vec<_> = parts
        .iter()
        .map(|part| part.unit.with_number(&part.number.text))
        .collect();
    let sign = if negative && si != 0.0 { MINUS } else { "" };
    let mut said = vec![format!("{sign}{}", typed.join(" "))];
    let typed_in = |symbol| matches!(parts, [only] if only.unit.symbol() == symbol);
    let plain = parts.iter().all(|part| part.number.plain);
    let shown = quantity.unit(choice);
    if !(plain && typed_in(shown.symbol())) {
        said.push(shown.with_number(&rounded_figures(shown, si, ECHO_FIGURES)));
    }
    let other = quantity.unit(choice.other_system());
    if other != shown && !typed_in(other.symbol()) {
        // A small value keeps a few figures instead of reading 0.0.
        let vanishes =
            si != 0.0 && !format_bare(quantity, choice.other_system(), si).contains(NOT_ZERO);
        said.push(match vanishes {
            true => other.with_number(&rounded_figures(other, si, SMALL_FIGURES)),
            false => format(quantity, choice.other_system(), si),
        });
    }
    said.join(" = ")
}
