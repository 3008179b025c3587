//! More points where a load bends between two of them.
use super::super::leg_stages::Point;
use super::super::refine::refined;

/// Share of what the source makes by which the load may be off a straight line half-way between two points,
/// as the refining states it.
const STRAIGHT: f64 = 2e-3;

/// Progress and load of 21 even points and those put between them; the source makes 1 N.
fn found(load: impl Fn(f64) -> f64) -> Vec<(f64, f64)> {
    let point = |progress: f64| Point::driven(progress, 0.3 + progress, load(progress));
    let even = (0..=20).map(|at| point(f64::from(at) / 20.0)).collect();
    let all = refined(even, 1.0, |progress| Some(point(progress)));
    let of = |point: &Point| Some((point.place.progress, point.effort?));
    all.iter().filter_map(of).collect()
}

/// A load that goes through a narrow peak at one of the points.
fn peak(progress: f64) -> f64 {
    0.2 + 0.5 / (1.0 + ((progress - 0.5) / 0.01).powi(2))
}

#[test]
fn a_peak_has_points_until_it_is_straight_between_them() {
    let points = found(peak);
    assert!(points.len() > 21 && points.len() < 200, "{}", points.len());
    for pair in points.windows(2) {
        let ((a, from), (b, to)) = (pair[0], pair[1]);
        assert!(a < b, "{a} {b}");
        let off = peak(0.5 * (a + b)) - 0.5 * (from + to);
        assert!(off.abs() <= STRAIGHT, "{a} {b} {off}");
    }
}

/// A straight load needs no more points, nor does one that the source can not move by far.
#[test]
fn what_is_straight_or_out_of_reach_has_no_more_points() {
    assert_eq!(found(|progress| 0.3 + 0.4 * progress).len(), 21);
    assert_eq!(found(|progress| 3.0 + peak(progress)).len(), 21);
}
