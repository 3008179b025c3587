//! Hatching: parallel lines at 45° inside of polygons, and ticks behind surfaces.
use gearswing_gear::model::{Point, Vector};
use gearswing_solver::numeric::sort_by;

use super::{Pen, Role};

/// Distance of hatching lines (CSS px).
const STRUCTURE_GAP_PX: f64 = 7.0;
/// The same in a contact, closer (CSS px).
const CONTACT_GAP_PX: f64 = 4.0;
/// Most lines of one hatching.
const MOST_LINES: usize = 600;

/// Axes along and across the lines.
struct Axes {
    along: Vector,
    across: Vector,
}

impl Axes {
    fn new(falling: bool) -> Self {
        let s = std::f64::consts::FRAC_1_SQRT_2;
        let y = if falling { -s } else { s };
        Self {
            along: Vector::new(s, y),
            across: Vector::new(-y, s),
        }
    }
}

/// Stretches of the line at `level` that lie inside of a polygon, as pairs along it (m).
fn stretches(polygon: &[Point], axes: &Axes, level: f64) -> Vec<(f64, f64)> {
    let mut cuts: Vec<f64> = Vec::new();
    for (a, b) in polygon.iter().zip(polygon.iter().cycle().skip(1)) {
        let (ya, yb) = (a.coords.dot(&axes.across), b.coords.dot(&axes.across));
        if (ya > level) != (yb > level) {
            let (xa, xb) = (a.coords.dot(&axes.along), b.coords.dot(&axes.along));
            cuts.push(xa + (xb - xa) * (level - ya) / (yb - ya));
        }
    }
    sort_by(&mut cuts, f64::total_cmp);
    cuts.chunks_exact(2)
        .filter_map(|pair| match pair {
            [a, b] => Some((*a, *b)),
            _ => None,
        })
        .collect()
}

/// Levels of the lines that a polygon needs, held to what is seen.
fn levels(
    pen: &Pen,
    polygon: &[Point],
    axes: &Axes,
    gap: f64,
) -> impl Iterator<Item = f64> + use<> {
    let view = pen.view;
    let centre = view.centre().coords.dot(&axes.across);
    let reach = 0.5 * view.width().hypot(view.height());
    let (mut low, mut high) = (f64::INFINITY, f64::NEG_INFINITY);
    for p in polygon {
        let level = p.coords.dot(&axes.across);
        low = low.min(level);
        high = high.max(level);
    }
    let first = (low.max(centre - reach) / gap).ceil();
    let count = ((high.min(centre + reach) / gap).floor() - first + 1.0).max(0.0);
    // lines stay on a lattice of their own: hatching does not swim when a corner moves
    (0..(count as usize).min(MOST_LINES)).map(move |i| (first + i as f64) * gap)
}

/// Hatches the inside of a polygon.
pub(crate) fn hatch(pen: &mut Pen, role: Role, polygon: &[Point]) {
    let axes = Axes::new(false);
    let gap = STRUCTURE_GAP_PX / pen.view.scale();
    for level in levels(pen, polygon, &axes, gap) {
        for (from, to) in stretches(polygon, &axes, level) {
            line(pen, role, &axes, level, from, to);
        }
    }
}

/// Hatches what two polygons share, crossing the hatching of structure.
pub(crate) fn hatch_common(pen: &mut Pen, role: Role, a: &[Point], b: &[Point]) {
    let axes = Axes::new(true);
    let gap = CONTACT_GAP_PX / pen.view.scale();
    for level in levels(pen, a, &axes, gap) {
        let others = stretches(b, &axes, level);
        for (from, to) in stretches(a, &axes, level) {
            for (other_from, other_to) in &others {
                let (from, to) = (from.max(*other_from), to.min(*other_to));
                if from < to {
                    line(pen, role, &axes, level, from, to);
                }
            }
        }
    }
}

fn line(pen: &mut Pen, role: Role, axes: &Axes, level: f64, from: f64, to: f64) {
    let at = |along: f64| Point::from(axes.along * along + axes.across * level);
    pen.line(role, at(from), at(to));
}

/// Ticks on the side of a polyline that is not free: to the right of its direction.
pub(crate) fn ticks(pen: &mut Pen, role: Role, points: &[Point]) {
    let gap = STRUCTURE_GAP_PX / pen.view.scale();
    for pair in points.windows(2) {
        let [a, b] = pair else { continue };
        let length = (b - a).norm();
        if length <= 0.0 {
            continue;
        }
        let along = (b - a) / length;
        let back = Vector::new(along.y, -along.x);
        let count = ((length / gap).floor() as usize).clamp(1, MOST_LINES);
        for i in 0..count {
            let from = a + along * ((i as f64 + 0.5) * length / count as f64);
            pen.line(role, from, from + (back - along) * gap);
        }
    }
}

/// The ground that lies behind each edge of a surface, as deep as `depth` (m).
pub(crate) fn behind(points: &[Point], depth: f64) -> Vec<[Point; 4]> {
    points
        .windows(2)
        .filter_map(|pair| {
            let [a, b] = pair else { return None };
            let length = (b - a).norm();
            if length <= 0.0 {
                return None;
            }
            let along = (b - a) / length;
            let back = Vector::new(along.y, -along.x) * depth;
            Some([*a, *b, b + back, a + back])
        })
        .collect()
}
