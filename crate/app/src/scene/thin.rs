//! Fewer points for the same line: a canvas pays for each.
use super::ScreenPoint;

/// What a point may lie off the line that is drawn without it (CSS px): not to be seen.
const OFF_PX: f64 = 0.1;

/// Shorter lines are left as they are.
const FEW: usize = 8;

/// Most points that one straight piece stands for.
const MOST_SPANNED: usize = 16;

/// Leaves out points that lie on the line between those that stay; the ends stay.
pub(crate) fn thinned(points: Vec<ScreenPoint>) -> Vec<ScreenPoint> {
    if points.len() <= FEW {
        return points;
    }
    let mut kept = Vec::with_capacity(points.len() / 2);
    let mut rest = points.as_slice();
    while let [first, after @ ..] = rest {
        kept.push(*first);
        // how many of the points after it the next piece runs to
        let reach = (2..=after.len().min(MOST_SPANNED))
            .take_while(|reach| spans(*first, &after[..*reach]))
            .last()
            .unwrap_or(1);
        rest = after.get(reach - 1..).unwrap_or_default();
    }
    kept
}

/// Whether the piece from `from` to the last of `to` passes near all the others.
fn spans(from: ScreenPoint, to: &[ScreenPoint]) -> bool {
    let Some((end, between)) = to.split_last() else {
        return true;
    };
    let (dx, dy) = (end.x_px - from.x_px, end.y_px - from.y_px);
    let length = dx.hypot(dy);
    between.iter().all(|p| {
        let (px, py) = (p.x_px - from.x_px, p.y_px - from.y_px);
        let along = px * dx + py * dy;
        // not finite, or behind an end: it stays
        (px * dy - py * dx).abs() <= OFF_PX * length && along >= 0.0 && along <= length * length
    })
}

#[cfg(test)]
mod tests {
    use super::*;

    fn arc(points: u32) -> Vec<ScreenPoint> {
        (0..points)
            .map(|at| {
                let angle = 2.0 * f64::from(at) / f64::from(points);
                ScreenPoint {
                    x_px: 300.0 * angle.cos(),
                    y_px: 300.0 * angle.sin(),
                }
            })
            .collect()
    }

    #[test]
    fn an_arc_keeps_its_shape_with_fewer_points() {
        let all = arc(720);
        let thin = thinned(all.clone());
        assert!(thin.len() < 100, "{} points", thin.len());
        assert_eq!((thin.first(), thin.last()), (all.first(), all.last()));
        for pair in thin.windows(2) {
            let x_px = f64::midpoint(pair[0].x_px, pair[1].x_px);
            let y_px = f64::midpoint(pair[0].y_px, pair[1].y_px);
            assert!((x_px.hypot(y_px) - 300.0).abs() <= 2.0 * OFF_PX);
        }
    }

    #[test]
    fn corners_and_returns_stay() {
        let p = |x_px: f64, y_px: f64| ScreenPoint { x_px, y_px };
        let mut zigzag: Vec<ScreenPoint> = (0..10)
            .map(|at| p(f64::from(at), f64::from(at % 2)))
            .collect();
        assert_eq!(thinned(zigzag.clone()), zigzag);
        // out and back along one line
        zigzag = (0..10).map(|at| p(f64::from(at), 0.0)).collect();
        zigzag.push(p(2.0, 0.0));
        assert_eq!(thinned(zigzag), [p(0.0, 0.0), p(9.0, 0.0), p(2.0, 0.0)]);
    }
}
