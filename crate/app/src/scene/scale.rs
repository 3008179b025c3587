//! Scale bars in the chosen units, and which way is which.
use gearswing_gear::model::{Leg, View};
use gearswing_report::page::drawing as words;
use gearswing_units::{Quantity, UnitChoice};

use super::{Anchor, Pen, Role, ScreenPoint};

/// The least of 1, 2, 5 × 10ⁿ that is not below `least`.
pub(crate) fn round_step(least: f64) -> f64 {
    if !(least.is_finite() && least > 0.0) {
        return 1.0;
    }
    let ten = 10f64.powf(least.log10().floor());
    [1.0, 2.0, 5.0, 10.0]
        .into_iter()
        .map(|f| f * ten)
        .find(|step| *step >= least * (1.0 - 1e-9))
        .unwrap_or(10.0 * ten)
}

/// From the left edge (CSS px).
const EDGE_PX: f64 = 14.0;
/// Height of the scale bar over the lower edge (CSS px).
const BAR_UP_PX: f64 = 16.0;
/// The same of the scale of forces, and its greatest length (CSS px).
const FORCE_BAR_UP_PX: f64 = 82.0;
const FORCE_BAR_PX: f64 = 110.0;

/// A short number for an axis, without more decimals than its step needs.
pub(crate) fn axis_number(value: f64, step: f64) -> String {
    let decimals = (-(step * (1.0 + 1e-9)).log10().floor()).clamp(0.0, 6.0) as usize;
    let text = format!("{value:.decimals$}");
    let zero = text.chars().all(|c| matches!(c, '-' | '0' | '.'));
    if zero {
        "0".to_owned()
    } else {
        text.replace('-', "−")
    }
}

/// Height of the arrow over the lower edge, its length, and where its words stand over it (CSS px).
const WAY_UP_PX: f64 = 46.0;
const WAY_PX: f64 = 44.0;
const WAY_TEXT_PX: f64 = 11.0;

/// An arrow that says which way is outboard, or aft.
pub(crate) fn way(pen: &mut Pen, leg: &Leg) {
    let Some((toward_right, words)) = directions(leg) else {
        return;
    };
    let y_px = pen.view.size_px().1 - WAY_UP_PX;
    let at = |x_px: f64| ScreenPoint { x_px, y_px };
    let ends = (at(EDGE_PX), at(EDGE_PX + WAY_PX));
    let (tail, tip) = if toward_right { ends } else { (ends.1, ends.0) };
    pen.line_px(Role::ScaleBar, tail, tip);
    pen.arrow_px(Role::ScaleBar, tail, tip);
    let text = ScreenPoint {
        x_px: EDGE_PX,
        y_px: y_px - WAY_TEXT_PX,
    };
    pen.text(Role::AxisText, text, words.to_owned(), Anchor::Start);
}

/// Whether the arrow points to the right, and its words; `None` in the middle. Seen from the left right is aft; seen from ahead a leg
/// right of the center line has outboard to the right.
fn directions(leg: &Leg) -> Option<(bool, &'static str)> {
    match leg.view {
        View::Side => Some((true, words::AFT)),
        View::Front if leg.trunnion.x == 0.0 => None,
        View::Front => Some((leg.trunnion.x > 0.0, words::OUTBOARD)),
    }
}

/// Scale bar in the lower left corner.
pub(crate) fn scale_bar(pen: &mut Pen, units: UnitChoice) {
    let width = pen.view.size_px().0;
    let longest_px = (0.2 * width).clamp(40.0, 160.0);
    let per_px = 1.0 / pen.view.scale();
    let bar = bar(pen, Quantity::Length, units, per_px, longest_px, BAR_UP_PX);
    pen.line_px(Role::ScaleBar, bar.left, bar.right);
    for end in [bar.left, bar.right] {
        let tick = |by: f64| ScreenPoint {
            y_px: end.y_px + by,
            ..end
        };
        pen.line_px(Role::ScaleBar, tick(4.0), tick(-4.0));
    }
    pen.text(Role::AxisText, bar.above, bar.text, Anchor::Start);
}

/// Scale of forces over the scale bar, as an arrow with a head of this size; (N/px).
pub(crate) fn force_bar(
    pen: &mut Pen,
    units: UnitChoice,
    per_px: f64,
    head: (f64, f64),
    state: &str,
) {
    let bar = bar(
        pen,
        Quantity::Force,
        units,
        per_px,
        FORCE_BAR_PX,
        FORCE_BAR_UP_PX,
    );
    let neck = ScreenPoint {
        x_px: bar.right.x_px - head.0,
        ..bar.right
    };
    pen.line_px(Role::Load, bar.left, neck);
    pen.head_px(Role::Load, bar.left, bar.right, head);
    let over = ScreenPoint {
        x_px: bar.left.x_px,
        y_px: bar.above.y_px - 14.0,
    };
    pen.text(Role::AxisText, bar.above, bar.text, Anchor::Start);
    pen.text(Role::AxisText, over, state.to_owned(), Anchor::Start);
}

/// What stands in the place of the scale of forces.
pub(crate) fn force_bar_text(pen: &mut Pen, text: &str) {
    let at = ScreenPoint {
        x_px: EDGE_PX,
        y_px: pen.view.size_px().1 - FORCE_BAR_UP_PX,
    };
    pen.text(Role::AxisText, at, text.to_owned(), Anchor::Start);
}

/// A scale bar of a round amount.
struct Bar {
    left: ScreenPoint,
    right: ScreenPoint,
    /// Where its text stands.
    above: ScreenPoint,
    text: String,
}

/// The bar at the right edge, `up` from the lower edge, for `per_px` SI units a pixel.
fn bar(
    pen: &Pen,
    quantity: Quantity,
    units: UnitChoice,
    per_px: f64,
    longest_px: f64,
    up: f64,
) -> Bar {
    let (_, height) = pen.view.size_px();
    let shown = quantity.from_si(units, longest_px * per_px);
    // the greatest round amount that is not longer
    let step = round_step(shown);
    let round = [1.0, 0.5, 0.4, 0.2]
        .into_iter()
        .map(|share| round_step(step * share))
        .find(|step| *step <= shown * (1.0 + 1e-9))
        .unwrap_or(shown);
    let at = |x_px: f64, y_px: f64| ScreenPoint { x_px, y_px };
    let (left, y_px) = (EDGE_PX, height - up);
    let right = left + quantity.to_si(units, round) / per_px;
    let text = format!(
        "{} {}",
        axis_number(round, round),
        quantity.unit_label(units)
    );
    Bar {
        left: at(left, y_px),
        right: at(right, y_px),
        above: at(left, y_px - 12.0),
        text,
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn steps_are_one_two_five() {
        for (least, step) in [
            (0.9, 1.0),
            (1.0, 1.0),
            (1.1, 2.0),
            (2.1, 5.0),
            (5.5, 10.0),
            (0.03, 0.05),
        ] {
            assert!((round_step(least) - step).abs() < 1e-12, "{least}");
        }
        assert_eq!(round_step(0.0), 1.0);
        assert_eq!(axis_number(-0.0, 0.1), "0");
        assert_eq!(axis_number(-2.5, 0.5), "−2.5");
        assert_eq!(axis_number(40.0, 20.0), "40");
    }
}
