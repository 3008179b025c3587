//! Grid and scale bar in the chosen units.
use gearswing_units::{Quantity, UnitChoice};

use super::pen::{SMALL_TEXT_PX, text_width_px};
use super::{Anchor, Pen, Role, ScreenPoint};

/// Least distance of grid lines (CSS px).
const LEAST_GAP_PX: f64 = 16.0;
/// Every how many grid lines one is major.
const MAJOR: i64 = 5;
/// Most grid lines in one direction.
const MOST_LINES: i64 = 2_000;

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

/// Height of the scale bar over the lower edge (CSS px).
const BAR_UP_PX: f64 = 30.0;
/// The same of the scale of forces, and its greatest length (CSS px).
const FORCE_BAR_UP_PX: f64 = 66.0;
const FORCE_BAR_PX: f64 = 110.0;

/// A length (m) of a number of units.
fn metres(units: UnitChoice, shown: f64) -> f64 {
    Quantity::Length.to_si(units, shown)
}

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

/// Grid lines, with numbers at the left and lower edge.
pub(crate) fn grid(pen: &mut Pen, units: UnitChoice) {
    let view = pen.view;
    let (width, height) = view.size_px();
    let shown_per_px = Quantity::Length.from_si(units, 1.0 / view.scale());
    let step = round_step(LEAST_GAP_PX * shown_per_px);
    let origin = view.to_screen(gearswing_gear::model::Point::new(0.0, 0.0));
    let gap_px = metres(units, step) * view.scale();
    if !(gap_px.is_finite() && gap_px > 1.0) {
        return;
    }
    let lines = |from: f64, to: f64| {
        let first = (from / gap_px).ceil() as i64;
        let last = (to / gap_px).floor() as i64;
        first..=last.min(first.saturating_add(MOST_LINES))
    };
    let mut texts = Vec::new();
    for i in lines(-origin.x_px, width - origin.x_px) {
        let x_px = origin.x_px + i as f64 * gap_px;
        let (top, bottom) = (
            ScreenPoint { x_px, y_px: 0.0 },
            ScreenPoint { x_px, y_px: height },
        );
        pen.line_px(role(i), top, bottom);
        if i % MAJOR == 0 && x_px > 34.0 && x_px < width - 14.0 {
            let at = ScreenPoint {
                x_px,
                y_px: height - 9.0,
            };
            texts.push((at, i, Anchor::Middle));
        }
    }
    for i in lines(origin.y_px - height, origin.y_px) {
        let y_px = origin.y_px - i as f64 * gap_px;
        let (left, right) = (
            ScreenPoint { x_px: 0.0, y_px },
            ScreenPoint { x_px: width, y_px },
        );
        pen.line_px(role(i), left, right);
        if i % MAJOR == 0 && y_px > 12.0 && y_px < height - 26.0 {
            texts.push((ScreenPoint { x_px: 4.0, y_px }, i, Anchor::Start));
        }
    }
    for (at, i, anchor) in texts {
        pen.text(
            Role::AxisText,
            at,
            axis_number(i as f64 * step, step),
            anchor,
        );
    }
}

fn role(i: i64) -> Role {
    if i % MAJOR == 0 {
        Role::GridMajor
    } else {
        Role::Grid
    }
}

/// Scale bar in the lower right corner.
pub(crate) fn scale_bar(pen: &mut Pen, units: UnitChoice) {
    let width = pen.view.size_px().0;
    let longest_px = (0.3 * width).clamp(40.0, 160.0);
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
    pen.text(Role::AxisText, bar.above, bar.text, Anchor::Middle);
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
        x_px: bar.right.x_px,
        y_px: bar.above.y_px - 14.0,
    };
    pen.text(Role::AxisText, bar.above, bar.text, Anchor::Middle);
    pen.text(Role::AxisText, over, state.to_owned(), Anchor::End);
}

/// What stands in the place of the scale of forces.
pub(crate) fn force_bar_text(pen: &mut Pen, text: &str) {
    let (width, height) = pen.view.size_px();
    let at = ScreenPoint {
        x_px: width - 14.0,
        y_px: height - FORCE_BAR_UP_PX,
    };
    pen.text(Role::AxisText, at, text.to_owned(), Anchor::End);
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
    let (width, height) = pen.view.size_px();
    let shown = quantity.from_si(units, longest_px * per_px);
    // the greatest round amount that is not longer
    let step = round_step(shown);
    let round = [1.0, 0.5, 0.4, 0.2]
        .into_iter()
        .map(|share| round_step(step * share))
        .find(|step| *step <= shown * (1.0 + 1e-9))
        .unwrap_or(shown);
    let at = |x_px: f64, y_px: f64| ScreenPoint { x_px, y_px };
    let (right, y_px) = (width - 14.0, height - up);
    let left = right - quantity.to_si(units, round) / per_px;
    let text = format!(
        "{} {}",
        axis_number(round, round),
        quantity.unit_label(units)
    );
    let half = text_width_px(&text, SMALL_TEXT_PX) / 2.0;
    let middle = f64::midpoint(left, right).min(width - 6.0 - half);
    Bar {
        left: at(left, y_px),
        right: at(right, y_px),
        above: at(middle, y_px - 12.0),
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
