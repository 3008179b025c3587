//! Putting marks on a canvas.
use gearswing_gear::model::Point;

use super::thin::thinned;
use super::{Anchor, Mark, Role, ScreenPoint, Shape, Viewport};

/// Text size of labels (CSS px).
pub(crate) const TEXT_PX: f64 = 13.0;
/// Text size of axis numbers (CSS px).
pub(crate) const SMALL_TEXT_PX: f64 = 12.0;
/// Width of a letter as a share of the text size (ratio), on the safe side for a sans-serif face.
const LETTER: f64 = 0.57;
/// Farthest that a mark may lie outside of the canvas (CSS px).
const FARTHEST_PX: f64 = 1e5;

/// Width of a text (CSS px), estimated.
pub(crate) fn text_width_px(text: &str, size_px: f64) -> f64 {
    text.chars().count() as f64 * LETTER * size_px
}

/// `text` cut to a width, with an ellipsis.
pub(crate) fn fitted_text(text: &str, size_px: f64, width_px: f64) -> String {
    let most = (width_px / (LETTER * size_px)).floor().max(2.0) as usize;
    if text.chars().count() <= most {
        return text.to_owned();
    }
    let mut cut: String = text.chars().take(most - 1).collect();
    cut.push('…');
    cut
}

/// Marks on a paper that is seen through a viewport.
#[derive(Debug)]
pub(crate) struct Pen {
    pub(crate) view: Viewport,
    pub(crate) marks: Vec<Mark>,
    /// Everything drawn is of an earlier state.
    pub(crate) faded: bool,
}

impl Pen {
    pub(crate) fn new(view: Viewport) -> Self {
        Self {
            view,
            marks: Vec::with_capacity(512),
            faded: false,
        }
    }

    fn role(&self, role: Role) -> Role {
        match (self.faded, role) {
            (false, role) => role,
            (true, Role::DimensionText | Role::Label | Role::AxisText) => Role::FadedText,
            (true, _) => Role::Faded,
        }
    }

    /// Puts a mark that is already in pixels.
    pub(crate) fn put(&mut self, role: Role, shape: Shape) {
        let role = self.role(role);
        if !is_sound(&shape) {
            return;
        }
        let shape = match shape {
            Shape::Path {
                points,
                closed,
                filled,
            } => Shape::Path {
                points: thinned(points),
                closed,
                filled,
            },
            other => other,
        };
        self.marks.push(Mark { role, shape });
    }

    /// A polyline or polygon in meters.
    pub(crate) fn path(&mut self, role: Role, points: &[Point], closed: bool) {
        self.any_path(role, points, closed, false);
    }

    /// A filled polygon in meters.
    pub(crate) fn fill(&mut self, role: Role, points: &[Point]) {
        // a fill that is faded would hide what lies under it
        if !self.faded {
            self.any_path(role, points, true, true);
        }
    }

    fn any_path(&mut self, role: Role, points: &[Point], closed: bool, filled: bool) {
        if points.len() < 2 {
            return;
        }
        let points: Vec<ScreenPoint> = points.iter().map(|p| self.view.to_screen(*p)).collect();
        if self.is_seen(&points) {
            self.put(
                role,
                Shape::Path {
                    points,
                    closed,
                    filled,
                },
            );
        }
    }

    /// A straight line in meters.
    pub(crate) fn line(&mut self, role: Role, a: Point, b: Point) {
        self.path(role, &[a, b], false);
    }

    /// A straight line in pixels.
    pub(crate) fn line_px(&mut self, role: Role, a: ScreenPoint, b: ScreenPoint) {
        self.put(
            role,
            Shape::Path {
                points: vec![a, b],
                closed: false,
                filled: false,
            },
        );
    }

    /// A circle in pixels.
    pub(crate) fn circle_px(
        &mut self,
        role: Role,
        centre: ScreenPoint,
        radius_px: f64,
        filled: bool,
    ) {
        if filled && self.faded {
            return;
        }
        self.put(
            role,
            Shape::Circle {
                centre,
                radius_px,
                filled,
            },
        );
    }

    /// A text.
    pub(crate) fn text(&mut self, role: Role, at: ScreenPoint, text: String, anchor: Anchor) {
        let size_px = match role {
            Role::AxisText => SMALL_TEXT_PX,
            _ => TEXT_PX,
        };
        self.put(
            role,
            Shape::Text {
                at,
                text,
                anchor,
                size_px,
            },
        );
    }

    /// A dimension's filled arrow head with its tip at `tip`, pointing from `from`.
    pub(crate) fn arrow_px(&mut self, role: Role, from: ScreenPoint, tip: ScreenPoint) {
        // ISO 129-1: a slim filled head
        self.head_px(role, from, tip, (9.0, 2.6));
    }

    /// A filled arrow head of this length and half width with its tip at `tip`.
    pub(crate) fn head_px(
        &mut self,
        role: Role,
        from: ScreenPoint,
        tip: ScreenPoint,
        (long, half): (f64, f64),
    ) {
        let (dx, dy) = (tip.x_px - from.x_px, tip.y_px - from.y_px);
        let length = dx.hypot(dy);
        if length < 1e-9 {
            return;
        }
        let (ux, uy) = (dx / length, dy / length);
        let back = (tip.x_px - ux * long, tip.y_px - uy * long);
        let corner = |side: f64| ScreenPoint {
            x_px: back.0 - uy * half * side,
            y_px: back.1 + ux * half * side,
        };
        self.put(
            role,
            Shape::Path {
                points: vec![tip, corner(1.0), corner(-1.0)],
                closed: true,
                filled: true,
            },
        );
    }

    /// Some of the points' box lies on the canvas.
    fn is_seen(&self, points: &[ScreenPoint]) -> bool {
        let (width, height) = self.view.size_px();
        let span = |get: &dyn Fn(&ScreenPoint) -> f64| {
            points
                .iter()
                .map(get)
                .fold((f64::INFINITY, f64::NEG_INFINITY), |(low, high), v| {
                    (low.min(v), high.max(v))
                })
        };
        let (left, right) = span(&|p| p.x_px);
        let (top, bottom) = span(&|p| p.y_px);
        right >= -20.0 && left <= width + 20.0 && bottom >= -20.0 && top <= height + 20.0
    }
}

fn is_sound(shape: &Shape) -> bool {
    let sound = |p: &ScreenPoint| {
        p.x_px.is_finite()
            && p.y_px.is_finite()
            && p.x_px.abs() < FARTHEST_PX
            && p.y_px.abs() < FARTHEST_PX
    };
    match shape {
        // a corner far outside is still part of a shape that is seen: it is only kept finite
        Shape::Path { points, .. } => points
            .iter()
            .all(|p| p.x_px.is_finite() && p.y_px.is_finite()),
        Shape::Circle {
            centre, radius_px, ..
        } => {
            centre.x_px.is_finite()
                && centre.y_px.is_finite()
                && *radius_px > 0.0
                && radius_px.is_finite()
        }
        Shape::Text { at, text, .. } => sound(at) && !text.is_empty(),
    }
}
