//! Places for texts: beside their point, off the lines, off each other, on the canvas.
use super::pen::{TEXT_PX, fitted_text, text_width_px};
use super::viewport::WIDE_PX;
use super::{Anchor, Mark, Pen, Role, ScreenPoint, Shape};

/// Half of a text's height with air around it (CSS px).
const HALF_HEIGHT_PX: f64 = 0.72 * TEXT_PX;
/// Distances tried from point to text (CSS px).
const DISTANCES_PX: [f64; 5] = [12.0, 24.0, 44.0, 74.0, 112.0];
/// Lines farther than this from a point are not looked at (CSS px).
const LOOK_PX: f64 = 220.0;
/// Most width of a text, as a share of the canvas' (ratio).
const LONGEST: f64 = 0.56;
/// More lines under a text than this are as bad.
const MOST_CROSSED: usize = 6;

#[derive(Clone, Copy, Debug)]
struct Box2 {
    left: f64,
    right: f64,
    top: f64,
    bottom: f64,
}

impl Box2 {
    /// Left, top, right, bottom.
    fn of([left, top, right, bottom]: [f64; 4]) -> Self {
        Self {
            left,
            right,
            top,
            bottom,
        }
    }

    fn overlaps(&self, other: &Self) -> bool {
        self.left < other.right
            && other.left < self.right
            && self.top < other.bottom
            && other.top < self.bottom
    }

    /// Whether a line passes through (slab test).
    fn is_crossed(&self, a: ScreenPoint, b: ScreenPoint) -> bool {
        // most lines lie to one side
        if (a.x_px < self.left && b.x_px < self.left)
            || (a.x_px > self.right && b.x_px > self.right)
            || (a.y_px < self.top && b.y_px < self.top)
            || (a.y_px > self.bottom && b.y_px > self.bottom)
        {
            return false;
        }
        let (mut enter, mut leave) = (0.0_f64, 1.0_f64);
        for (from, by, low, high) in [
            (a.x_px, b.x_px - a.x_px, self.left, self.right),
            (a.y_px, b.y_px - a.y_px, self.top, self.bottom),
        ] {
            if by.abs() < 1e-9 {
                if from < low || from > high {
                    return false;
                }
                continue;
            }
            let (one, two) = ((low - from) / by, (high - from) / by);
            enter = enter.max(one.min(two));
            leave = leave.min(one.max(two));
        }
        enter <= leave
    }
}

/// What is taken already.
#[derive(Debug)]
pub(crate) struct Placer {
    boxes: Vec<Box2>,
    lines: Vec<(ScreenPoint, ScreenPoint)>,
    size_px: (f64, f64),
}

/// Width of the presses for the view beside the title, and their size in the lower corner (CSS px).
const PRESSES_PX: f64 = 290.0;
const PRESSES_BELOW_PX: (f64, f64) = (104.0, 136.0);

/// What stands in the corners of the drawing: its title, the presses for the view, scale and direction; left, top,
/// right, bottom (CSS px).
pub(super) fn corners((width, height): (f64, f64)) -> [[f64; 4]; 3] {
    let wide = width >= WIDE_PX;
    let (title, line) = if wide { (400.0, 50.0) } else { (width, 28.0) };
    let presses = if wide {
        [width - PRESSES_PX, 0.0, width, 44.0]
    } else {
        let (wide, high) = PRESSES_BELOW_PX;
        [width - wide, height - high, width, height]
    };
    [
        [0.0, 0.0, title, line],
        presses,
        [0.0, height - 66.0, 140.0, height],
    ]
}

impl Placer {
    /// Keeps off the outlines among `marks`.
    pub(crate) fn new(marks: &[Mark], size_px: (f64, f64)) -> Self {
        let mut lines = Vec::new();
        for mark in marks {
            let counts = matches!(
                mark.role,
                Role::Structure
                    | Role::Moving
                    | Role::Grown
                    | Role::Contact
                    | Role::Dimension
                    | Role::CentreLine
                    | Role::Faded
                    | Role::Load
            );
            if let (true, Shape::Path { points, closed, .. }) = (counts, &mark.shape) {
                lines.extend(points.windows(2).filter_map(|pair| match pair {
                    [a, b] => Some((*a, *b)),
                    _ => None,
                }));
                if let (true, Some(first), Some(last)) = (*closed, points.first(), points.last()) {
                    lines.push((*last, *first));
                }
            }
        }
        Self {
            boxes: corners(size_px).map(Box2::of).to_vec(),
            lines,
            size_px,
        }
    }

    /// Puts a text beside `point`; one that had to go far gets a leader.
    pub(crate) fn label(&mut self, pen: &mut Pen, role: Role, point: ScreenPoint, text: &str) {
        let (width, height) = self.size_px;
        let text = &fitted_text(text, TEXT_PX, LONGEST * width);
        let seen =
            point.x_px >= 0.0 && point.y_px >= 0.0 && point.x_px <= width && point.y_px <= height;
        if !seen || text.is_empty() {
            return;
        }
        let wide = text_width_px(text, TEXT_PX);
        let near: Vec<(ScreenPoint, ScreenPoint)> = self
            .lines
            .iter()
            .filter(|(a, b)| {
                let reach = LOOK_PX.max(wide + 130.0);
                a.x_px.min(b.x_px) < point.x_px + reach
                    && a.x_px.max(b.x_px) > point.x_px - reach
                    && a.y_px.min(b.y_px) < point.y_px + 150.0
                    && a.y_px.max(b.y_px) > point.y_px - 150.0
            })
            .copied()
            .collect();
        let mut best: Option<(f64, ScreenPoint, Anchor, Box2, f64)> = None;
        for distance in DISTANCES_PX {
            // a place without fault this near is not beaten from farther off
            if best
                .as_ref()
                .is_some_and(|(least, ..)| *least <= 0.25 * distance)
            {
                break;
            }
            for (dx, dy) in [
                (1.0, -0.7),
                (1.0, 0.7),
                (-1.0, -0.7),
                (-1.0, 0.7),
                (0.0, -1.2),
                (0.0, 1.2),
                (1.0, 0.0),
                (-1.0, 0.0),
            ] {
                let at = ScreenPoint {
                    x_px: point.x_px + dx * distance,
                    y_px: point.y_px + dy * distance,
                };
                let (anchor, left) = if dx > 0.0 {
                    (Anchor::Start, at.x_px)
                } else if dx < 0.0 {
                    (Anchor::End, at.x_px - wide)
                } else {
                    (Anchor::Middle, at.x_px - wide / 2.0)
                };
                let room = Box2 {
                    left: left - 2.0,
                    right: left + wide + 2.0,
                    top: at.y_px - HALF_HEIGHT_PX,
                    bottom: at.y_px + HALF_HEIGHT_PX,
                };
                let outside = room.left < 2.0
                    || room.right > width - 2.0
                    || room.top < 2.0
                    || room.bottom > height - 2.0;
                let over = self
                    .boxes
                    .iter()
                    .filter(|taken| taken.overlaps(&room))
                    .count();
                let free =
                    if outside { 400.0 } else { 0.0 } + 120.0 * over as f64 + 0.25 * distance;
                let is_better = |cost: f64| best.as_ref().is_none_or(|(least, ..)| cost < *least);
                if !is_better(free) {
                    continue;
                }
                let crossed = near
                    .iter()
                    .filter(|(a, b)| room.is_crossed(*a, *b))
                    .take(MOST_CROSSED)
                    .count();
                let cost = free + 12.0 * crossed as f64;
                if is_better(cost) {
                    best = Some((cost, at, anchor, room, distance));
                }
            }
        }
        if let Some((_, at, anchor, room, distance)) = best {
            if distance > 20.0 {
                let edge = ScreenPoint {
                    x_px: at.x_px,
                    y_px: at.y_px,
                };
                pen.line_px(Role::Leader, point, edge);
            }
            self.boxes.push(room);
            pen.text(role, at, text.to_owned(), anchor);
        }
    }
}
