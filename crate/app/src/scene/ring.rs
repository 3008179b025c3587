//! Outlines of moving parts as polygons to draw.
use gearswing_gear::model::{Point, Vector};
use gearswing_solver::clearance::PlacedOutline;

/// Chords of a full turn.
const CHORDS: f64 = 72.0;

/// The outline as a polygon: a core grown all around by a radius. A core of one point is a disc.
pub(crate) fn ring(outline: &PlacedOutline) -> Vec<Point> {
    let core = &outline.core;
    if outline.radius <= 0.0 {
        return core.clone();
    }
    match core.as_slice() {
        [] => Vec::new(),
        [centre] => arc(*centre, outline.radius, 0.0, std::f64::consts::TAU),
        _ => grown(core, outline.radius),
    }
}

fn arc(centre: Point, radius: f64, from: f64, turn: f64) -> Vec<Point> {
    let chords = (turn.abs() / std::f64::consts::TAU * CHORDS)
        .ceil()
        .clamp(1.0, CHORDS);
    (0..=chords as u32)
        .map(|i| {
            let (sin, cos) = (from + turn * f64::from(i) / chords).sin_cos();
            centre + Vector::new(cos, sin) * radius
        })
        .collect()
}

/// A convex core, or a bar, grown by a radius.
fn grown(core: &[Point], radius: f64) -> Vec<Point> {
    let count = core.len();
    let area: f64 = core
        .iter()
        .zip(core.iter().cycle().skip(1))
        .map(|(a, b)| a.coords.perp(&b.coords))
        .sum();
    let mut corners: Vec<Point> = core.to_vec();
    if area < 0.0 {
        corners.reverse();
    }
    let mut out = Vec::with_capacity(count * 8);
    let at = |i: usize| corners.get(i % count).copied().unwrap_or_default();
    for i in 0..count {
        let (before, here, after) = (at(i + count - 1), at(i), at(i + 1));
        let (d_in, d_out) = (here - before, after - here);
        // outward normal of a counter-clockwise outline lies to the right
        let from = (-d_in.x).atan2(d_in.y);
        let to = (-d_out.x).atan2(d_out.y);
        let turn = (to - from).rem_euclid(std::f64::consts::TAU);
        out.extend(arc(here, radius, from, turn));
    }
    out
}

#[cfg(test)]
mod tests {
    use super::*;
    use gearswing_gear::model::MovingPart;

    fn outline(core: Vec<Point>, radius: f64) -> PlacedOutline {
        PlacedOutline {
            part: MovingPart::Wheel,
            tire: None,
            core,
            radius,
        }
    }

    fn area(points: &[Point]) -> f64 {
        points
            .iter()
            .zip(points.iter().cycle().skip(1))
            .map(|(a, b)| 0.5 * a.coords.perp(&b.coords))
            .sum()
    }

    #[test]
    fn areas_of_grown_outlines() {
        // Steiner's formula: area + perimeter × r + π r²
        let pi = std::f64::consts::PI;
        let p = Point::new;
        let bar = ring(&outline(vec![p(0.0, 0.0), p(2.0, 1.0)], 0.3));
        let exact = 2.0 * 5.0_f64.sqrt() * 0.3 + pi * 0.09;
        assert!((area(&bar).abs() / exact - 1.0).abs() < 3e-3);
        let square = vec![p(0.0, 0.0), p(0.0, 1.0), p(2.0, 1.0), p(2.0, 0.0)];
        let grown = ring(&outline(square, 0.1));
        let exact = 2.0 + 6.0 * 0.1 + pi * 0.01;
        assert!((area(&grown).abs() / exact - 1.0).abs() < 1e-3);
        assert_eq!(ring(&outline(vec![p(0.0, 0.0); 3], 0.0)).len(), 3);
        assert!(ring(&outline(Vec::new(), 1.0)).is_empty());
    }
}
