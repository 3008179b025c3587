//! The axis along the path: the swing has the most room, earlier phases a strip before it.
use crate::scene::ScreenPoint;
use crate::state::State;

/// Room of a phase before the swing, as a share of the swing's (ratio).
const EARLY: f64 = 0.08;
/// Room for numbers at the left (CSS px).
const LEFT_PX: f64 = 48.0;

/// An axis that charts stand on.
pub(crate) trait Across {
    /// Left end (CSS px).
    fn left_px(&self) -> f64;
    /// Right end (CSS px).
    fn right_px(&self) -> f64;
    /// Pixel of a place on it.
    fn x_px(&self, at: f64) -> f64;
}

/// Ends of an axis on a canvas of a width, with room for numbers before and names behind it
/// (CSS px).
pub(crate) fn ends_px(width_px: f64) -> (f64, f64) {
    // room for the names at the ends of the lines
    let names = (0.3 * width_px).clamp(96.0, 170.0);
    let left_px = LEFT_PX.min(0.25 * width_px);
    (left_px, (width_px - names).max(left_px + 20.0))
}

/// Axis along the path.
#[derive(Clone, Copy, Debug)]
pub(crate) struct PathAxis {
    /// Progress where the path begins (ratio).
    start: f64,
    left_px: f64,
    right_px: f64,
}

impl PathAxis {
    pub(crate) fn new(start: f64, width_px: f64) -> Self {
        Self::between(start, ends_px(width_px))
    }

    /// From a left to a right end (CSS px).
    pub(crate) fn between(start: f64, (left_px, right_px): (f64, f64)) -> Self {
        Self {
            start,
            left_px,
            right_px,
        }
    }

    fn swing_px(&self) -> f64 {
        (self.right_px - self.left_px) / (1.0 - EARLY * self.start)
    }

    /// Place of the path at a pixel, held to the path.
    pub(crate) fn progress(&self, x_px: f64) -> f64 {
        let from_swing = (x_px - self.left_px) / self.swing_px() + EARLY * self.start;
        let progress = if from_swing < 0.0 {
            from_swing / EARLY
        } else {
            from_swing
        };
        progress.clamp(self.start, 1.0)
    }
}

impl Across for PathAxis {
    fn left_px(&self) -> f64 {
        self.left_px
    }

    fn right_px(&self) -> f64 {
        self.right_px
    }

    fn x_px(&self, progress: f64) -> f64 {
        let from_swing = if progress < 0.0 {
            EARLY * progress
        } else {
            progress
        };
        self.left_px + (from_swing - EARLY * self.start) * self.swing_px()
    }
}

/// The place of the path under a place of the curves' canvas (ratio).
pub(crate) fn progress_at(state: &State, at: ScreenPoint) -> Option<f64> {
    let good = state.derived.good(state.session.leg)?;
    let (first, last) = good.range();
    let axis = PathAxis::new(first, state.session.curves_width_px);
    let progress = axis.progress(at.x_px);
    progress.is_finite().then(|| progress.clamp(first, last))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn there_and_back() {
        for start in [0.0, -1.0, -2.0] {
            let axis = PathAxis::new(start, 700.0);
            assert_eq!(axis.x_px(start), axis.left_px());
            assert!((axis.x_px(1.0) - axis.right_px()).abs() < 1e-9);
            for i in 0..=20 {
                let progress = start + (1.0 - start) * f64::from(i) / 20.0;
                assert!((axis.progress(axis.x_px(progress)) - progress).abs() < 1e-12);
            }
        }
    }
}
