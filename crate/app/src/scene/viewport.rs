//! From meters to pixels and back.
use gearswing_gear::model::{Point, Vector};

use super::ScreenPoint;

/// Least and largest scale (px/m): a hangar on a phone, a tenth of a millimeter in two pixels.
const SCALES: (f64, f64) = (20.0, 20_000.0);

/// Farthest that the middle goes from the datum (m).
const FARTHEST: f64 = 100.0;

/// From this width on the title of the drawing has two lines, and the presses for the view stand beside it; else
/// they stand in the lower right corner (CSS px).
pub(super) const WIDE_PX: f64 = 560.0;

/// Room for the title above a fitted drawing, and for the scale bar below it (CSS px).
const KEPT_PX: (f64, f64) = (44.0, 24.0);
/// The same where the drawing is narrow: it stands between what is in the lower corners.
const KEPT_NARROW_PX: (f64, f64) = (26.0, 0.0);

/// Part of the plane that a canvas shows.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Viewport {
    /// What is in the middle of the canvas (m).
    centre: Point,
    /// Scale (px/m).
    scale: f64,
    /// Size of the canvas (CSS px).
    size_px: (f64, f64),
}

impl Viewport {
    /// A viewport; everything is brought within its bounds.
    #[must_use]
    pub fn new(centre: Point, scale: f64, size_px: (f64, f64)) -> Self {
        let held = |v: f64| {
            if v.is_finite() {
                v.clamp(-FARTHEST, FARTHEST)
            } else {
                0.0
            }
        };
        let side = |v: f64| {
            if v.is_finite() {
                v.clamp(1.0, 16_384.0)
            } else {
                1.0
            }
        };
        Self {
            centre: Point::new(held(centre.x), held(centre.y)),
            scale: if scale.is_finite() {
                scale.clamp(SCALES.0, SCALES.1)
            } else {
                SCALES.0
            },
            size_px: (side(size_px.0), side(size_px.1)),
        }
    }

    /// Shows all of a box with a margin around it.
    #[must_use]
    pub fn fit(low: Point, high: Point, size_px: (f64, f64)) -> Self {
        let (least, (title, foot)) = match size_px.0 < WIDE_PX {
            true => (2.0, KEPT_NARROW_PX),
            false => (10.0, KEPT_PX),
        };
        let margin = 0.04 * size_px.0.min(size_px.1) + least;
        let room = |size: f64, kept: f64| (size - 2.0 * margin - kept).max(0.4 * size).max(1.0);
        let (width, height) = (high.x - low.x, high.y - low.y);
        let across = room(size_px.0, 0.0) / width.max(1e-3);
        let scale = across.min(room(size_px.1, title + foot) / height.max(1e-3));
        let fitted = Self::new(low + (high - low) * 0.5, scale, size_px);
        // between what stands at the upper edge and what stands at the lower one
        let down = 0.5 * (title - foot) / fitted.scale;
        Self::new(fitted.centre + Vector::new(0.0, down), scale, size_px)
    }

    /// Shows a width about a middle.
    #[must_use]
    pub fn of_width(centre: Point, width: f64, size_px: (f64, f64)) -> Self {
        Self::new(centre, size_px.0 / width.max(1e-6), size_px)
    }

    /// The same scale, or a larger one at which a width is so long, about a middle; never so large
    /// that less than `least` is seen (m).
    #[must_use]
    pub fn closer(&self, middle: Point, width: f64, long_px: f64, least: f64) -> Self {
        let side = self.size_px.0.min(self.size_px.1);
        let wanted = if width > 0.0 {
            long_px / width
        } else {
            SCALES.1
        };
        let scale = wanted.min(side / least).max(self.scale);
        Self::new(middle, scale, self.size_px)
    }

    /// Whether a place lies on the canvas.
    #[must_use]
    pub fn shows(&self, at: ScreenPoint) -> bool {
        (0.0..=self.size_px.0).contains(&at.x_px) && (0.0..=self.size_px.1).contains(&at.y_px)
    }

    /// The same middle on a canvas of another size.
    #[must_use]
    pub fn resized(self, size_px: (f64, f64)) -> Self {
        Self::new(self.centre, self.scale, size_px)
    }

    /// Middle (m).
    #[must_use]
    pub fn centre(&self) -> Point {
        self.centre
    }

    /// Scale (px/m).
    #[must_use]
    pub fn scale(&self) -> f64 {
        self.scale
    }

    /// Size of the canvas (CSS px).
    #[must_use]
    pub fn size_px(&self) -> (f64, f64) {
        self.size_px
    }

    /// Width that is seen (m).
    #[must_use]
    pub fn width(&self) -> f64 {
        self.size_px.0 / self.scale
    }

    /// Height that is seen (m).
    #[must_use]
    pub fn height(&self) -> f64 {
        self.size_px.1 / self.scale
    }

    /// Place of a point on the canvas.
    #[must_use]
    pub fn to_screen(&self, p: Point) -> ScreenPoint {
        ScreenPoint {
            x_px: self.size_px.0 / 2.0 + (p.x - self.centre.x) * self.scale,
            y_px: self.size_px.1 / 2.0 - (p.y - self.centre.y) * self.scale,
        }
    }

    /// Point of a place on the canvas.
    #[must_use]
    pub fn to_model(&self, at: ScreenPoint) -> Point {
        Point::new(
            self.centre.x + (at.x_px - self.size_px.0 / 2.0) / self.scale,
            self.centre.y - (at.y_px - self.size_px.1 / 2.0) / self.scale,
        )
    }

    /// Moved so that what was under `from` is under `to`.
    #[must_use]
    pub fn panned(&self, from: ScreenPoint, to: ScreenPoint) -> Self {
        let by = Vector::new(to.x_px - from.x_px, from.y_px - to.y_px) / self.scale;
        Self::new(self.centre - by, self.scale, self.size_px)
    }

    /// Zoomed so that what is under `at` stays there.
    #[must_use]
    pub fn zoomed(&self, at: ScreenPoint, factor: f64) -> Self {
        let under = self.to_model(at);
        let zoomed = Self::new(self.centre, self.scale * factor, self.size_px);
        let kept = zoomed.to_screen(under);
        zoomed.panned(kept, at)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn zoom_keeps_the_point_under_the_pointer() {
        let view = Viewport::fit(Point::new(-1.0, -2.0), Point::new(1.0, 0.5), (400.0, 300.0));
        let at = ScreenPoint {
            x_px: 37.0,
            y_px: 211.0,
        };
        let zoomed = view.zoomed(at, 2.5);
        assert!((zoomed.scale() / view.scale() - 2.5).abs() < 1e-12);
        assert!((zoomed.to_model(at) - view.to_model(at)).norm() < 1e-12);
        let back = view.to_screen(view.to_model(at));
        assert!((back.x_px - at.x_px).abs() < 1e-9 && (back.y_px - at.y_px).abs() < 1e-9);
    }

    #[test]
    fn bounds_hold() {
        let size = (400.0, 300.0);
        let wild = Viewport::new(Point::new(f64::NAN, 1e300), f64::INFINITY, size);
        assert!(wild.centre().x.is_finite() && wild.scale().is_finite());
        let mut view = Viewport::new(Point::new(0.0, 0.0), 500.0, size);
        for _ in 0..100 {
            view = view.zoomed(ScreenPoint::default(), 3.0);
        }
        assert_eq!(view.scale(), SCALES.1);
    }
}
