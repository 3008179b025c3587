//! Outlines: enough points, none repeated, area, no crossing of themselves.
use super::FaultKind;
use super::visit::{MOST_ITEMS, Visit};
use crate::field::Path;
use crate::model::Point;

/// Neighboring points nearer than this coincide (m).
const LEAST_EDGE: f64 = 1e-6;
/// A closed outline with less area than this has none (m2).
const LEAST_AREA: f64 = 1e-9;

/// Checks a closed outline that may be left out.
pub(super) fn optional(visit: &mut Visit<'_>, path: Path) {
    if path
        .outline(visit.gear)
        .is_some_and(|points| !points.is_empty())
    {
        closed(visit, path);
    }
}

/// Checks a closed outline.
pub(super) fn closed(visit: &mut Visit<'_>, path: Path) {
    let Some(points) = common(visit, path, 3, true) else {
        return;
    };
    let doubled_area: f64 = edges(points, true)
        .map(|(a, b)| a.coords.perp(&b.coords))
        .sum();
    if doubled_area.abs() < 2.0 * LEAST_AREA {
        visit.fault(path, FaultKind::NoArea);
    }
}

/// Checks an open outline.
pub(super) fn open(visit: &mut Visit<'_>, path: Path) {
    common(visit, path, 2, false);
}

fn edges(points: &[Point], closed: bool) -> impl Iterator<Item = (Point, Point)> + Clone + '_ {
    let count = if closed {
        points.len()
    } else {
        points.len().saturating_sub(1)
    };
    points
        .iter()
        .copied()
        .zip(points.iter().copied().cycle().skip(1))
        .take(count)
}

/// The points of an outline that has no fault.
fn common<'g>(
    visit: &mut Visit<'g>,
    path: Path,
    needed: usize,
    closed: bool,
) -> Option<&'g [Point]> {
    let points = path.outline(visit.gear)?;
    let count = points.len();
    if count < needed {
        visit.fault(path, FaultKind::TooFewPoints { count, needed });
        return None;
    }
    if count > MOST_ITEMS {
        let allowed = MOST_ITEMS;
        visit.fault(path, FaultKind::TooMany { count, allowed });
        return None;
    }
    if !(0..count).all(|item| visit.sound(path.item(item))) {
        return None;
    }
    for (index, (a, b)) in edges(points, closed).enumerate() {
        if (b - a).norm() < LEAST_EDGE {
            let point = index + 1;
            visit.fault(path, FaultKind::RepeatedPoint { point });
            return None;
        }
    }
    for (i, (a, b)) in edges(points, closed).enumerate() {
        for (j, (c, d)) in edges(points, closed).enumerate().skip(i + 1) {
            let neighbours = j == i + 1 || (closed && i == 0 && j + 1 == count);
            let meet = if neighbours {
                // neighbors share a point: they cross only by folding back on each other
                let (u, v) = if j == i + 1 {
                    (a - b, d - c)
                } else {
                    (b - a, c - d)
                };
                u.perp(&v).abs() <= 1e-12 * u.norm() * v.norm() && u.dot(&v) > 0.0
            } else {
                cross(a, b, c, d)
            };
            if meet {
                visit.fault(
                    path,
                    FaultKind::SelfCrossing {
                        edge: i + 1,
                        other_edge: j + 1,
                    },
                );
                return None;
            }
        }
    }
    Some(points)
}

/// Whether segments ab and cd meet.
fn cross(a: Point, b: Point, c: Point, d: Point) -> bool {
    let side = |p: Point, q: Point, r: Point| (q - p).perp(&(r - p));
    let (s1, s2) = (side(a, b, c), side(a, b, d));
    let (s3, s4) = (side(c, d, a), side(c, d, b));
    let overlap = |p: f64, q: f64, r: f64, s: f64| p.max(q) >= r.min(s) && r.max(s) >= p.min(q);
    s1 * s2 <= 0.0 && s3 * s4 <= 0.0 && overlap(a.x, b.x, c.x, d.x) && overlap(a.y, b.y, c.y, d.y)
}
