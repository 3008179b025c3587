//! Angles.
use std::f64::consts::{PI, TAU};

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

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn wraps_into_half_open_turn() {
        assert!((wrap(3.0 * PI) - PI).abs() < 1e-12);
        assert!((wrap(-0.1) + 0.1).abs() < 1e-15);
        assert!((wrap(TAU + 0.2) - 0.2).abs() < 1e-12);
    }
}
