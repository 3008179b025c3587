//! The part of a canvas that marks take up.
use super::pen::text_width_px;
use super::{Anchor, Mark, ScreenPoint, Shape};

/// Room around a mark for half its line and the halo of its text (CSS px).
const AROUND_PX: f64 = 4.0;
/// A wide face takes so much more room than is reckoned with where texts are placed (ratio).
const WIDE: f64 = 1.5;

/// A box on a canvas (CSS px).
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Extent {
    /// Left edge (CSS px).
    pub left_px: f64,
    /// Upper edge (CSS px).
    pub top_px: f64,
    /// Right edge (CSS px).
    pub right_px: f64,
    /// Lower edge (CSS px).
    pub bottom_px: f64,
}

impl Extent {
    /// A box that holds all of the marks on a canvas of this size (CSS px); none where nothing of
    /// them lies on it.
    #[must_use]
    pub fn of(marks: &[Mark], (width_px, height_px): (f64, f64)) -> Option<Self> {
        let mut all = Self::nothing();
        for mark in marks {
            all.take(&mark.shape);
        }
        let on_canvas = Self {
            left_px: all.left_px.max(0.0),
            top_px: all.top_px.max(0.0),
            right_px: all.right_px.min(width_px),
            bottom_px: all.bottom_px.min(height_px),
        };
        (on_canvas.left_px < on_canvas.right_px && on_canvas.top_px < on_canvas.bottom_px)
            .then_some(on_canvas)
    }

    fn nothing() -> Self {
        Self {
            left_px: f64::INFINITY,
            top_px: f64::INFINITY,
            right_px: f64::NEG_INFINITY,
            bottom_px: f64::NEG_INFINITY,
        }
    }

    fn take(&mut self, shape: &Shape) {
        match shape {
            Shape::Path { points, .. } => {
                for point in points {
                    self.take_around(*point, (0.0, 0.0), 0.0);
                }
            }
            Shape::Circle {
                centre, radius_px, ..
            } => self.take_around(*centre, (*radius_px, *radius_px), *radius_px),
            Shape::Text {
                at,
                text,
                anchor,
                size_px,
            } => {
                let width_px = WIDE * text_width_px(text, *size_px);
                let beside_px = match anchor {
                    Anchor::Start => (0.0, width_px),
                    Anchor::Middle => (0.5 * width_px, 0.5 * width_px),
                    Anchor::End => (width_px, 0.0),
                };
                self.take_around(*at, beside_px, *size_px);
            }
        }
    }

    /// Takes in a point with so much on its left and right, and above and below it.
    fn take_around(&mut self, at: ScreenPoint, (left_px, right_px): (f64, f64), beside_px: f64) {
        self.left_px = self.left_px.min(at.x_px - left_px - AROUND_PX);
        self.right_px = self.right_px.max(at.x_px + right_px + AROUND_PX);
        self.top_px = self.top_px.min(at.y_px - beside_px - AROUND_PX);
        self.bottom_px = self.bottom_px.max(at.y_px + beside_px + AROUND_PX);
    }
}
