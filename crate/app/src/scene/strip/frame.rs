//! Where things are on the strip, and the marks that stand above it.
use gearswing_report::page::transport::mark_short;
use gearswing_solver::numeric::sort_by;
use gearswing_units::UnitChoice;

use super::marks::StripMark;
use crate::scene::curves::{Across, PathAxis};
use crate::scene::pen::{SMALL_TEXT_PX, text_width_px};
use crate::scene::{Anchor, Pen, Role, ScreenPoint, Shape};
use crate::state::Good;

/// From this width on the name of the curve stands left of it, else over it (CSS px).
const WIDE_PX: f64 = 560.0;
/// Room for the name (CSS px).
pub(super) const NAME_PX: f64 = 112.0;
/// Ends of the strip are this far inside: phones swipe back from their edges (CSS px).
pub(super) const INSIDE_PX: f64 = 24.0;
/// Room for the marks above, and for the numbers of travel below (CSS px).
const MARKS_PX: f64 = 28.0;
pub(super) const TRAVEL_PX: f64 = 20.0;
/// Room between two texts of marks (CSS px).
const BETWEEN_PX: f64 = 10.0;

/// Where things are on the strip (CSS px).
pub(super) struct Frame {
    pub(super) axis: PathAxis,
    pub(super) top: f64,
    pub(super) bottom: f64,
    pub(super) size: (f64, f64),
}

impl Frame {
    pub(super) fn of(good: &Good, size: (f64, f64)) -> Self {
        let left = if size.0 >= WIDE_PX {
            NAME_PX
        } else {
            INSIDE_PX
        };
        let right = (size.0 - INSIDE_PX).max(left + 20.0);
        Self {
            axis: PathAxis::between(good.range().0.min(0.0), (left, right)),
            top: MARKS_PX,
            bottom: (size.1 - TRAVEL_PX).max(MARKS_PX + 10.0),
            size,
        }
    }

    pub(super) fn is_wide(&self) -> bool {
        self.size.0 >= WIDE_PX
    }
}

/// A place on the strip.
pub(super) fn at(x_px: f64, y_px: f64) -> ScreenPoint {
    ScreenPoint { x_px, y_px }
}

/// The marks above the strip: a triangle each, and its words where there is room; what is wrong first.
pub(super) fn draw_marks(pen: &mut Pen, marks: &[StripMark], frame: &Frame, units: UnitChoice) {
    let mut order: Vec<&StripMark> = marks.iter().collect();
    sort_by(&mut order, |a, b| b.is_bad().cmp(&a.is_bad()));
    let mut taken: Vec<(f64, f64)> = Vec::new();
    for mark in order {
        let x_px = frame.axis.x_px(mark.progress);
        let tip = frame.top - 2.0;
        let role = if mark.is_bad() {
            Role::CurveEnd
        } else {
            Role::Label
        };
        pen.put(
            role,
            Shape::Path {
                points: vec![
                    at(x_px - 4.5, tip - 8.0),
                    at(x_px + 4.5, tip - 8.0),
                    at(x_px, tip),
                ],
                closed: true,
                filled: true,
            },
        );
        let text = mark_short(mark.what, units);
        let half = 0.5 * text_width_px(&text, SMALL_TEXT_PX);
        let middle = x_px.clamp(half + 4.0, (frame.size.0 - half - 4.0).max(half + 4.0));
        let span = (middle - half, middle + half);
        let is_free = taken
            .iter()
            .all(|other| span.1 + BETWEEN_PX < other.0 || other.1 + BETWEEN_PX < span.0);
        if is_free {
            pen.put(
                role,
                Shape::Text {
                    at: at(middle, 9.0),
                    text,
                    anchor: Anchor::Middle,
                    size_px: SMALL_TEXT_PX,
                },
            );
            taken.push(span);
        }
    }
}
