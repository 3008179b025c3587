//! Friction of the pins of a pose in one motion.
use super::friction::Six;

/// Friction of each pin in one motion, signed so that its moment is minus these times its load and one.
#[derive(Clone, Copy, Debug)]
pub(super) struct Against {
    /// Friction radii (m).
    pub(super) radii: Six,
    /// Couples (N·m).
    pub(super) couples: Six,
}

impl Against {
    pub(super) fn times(&self, factor: f64) -> Self {
        Self {
            radii: self.radii.map(|radius| radius * factor),
            couples: self.couples.map(|couple| couple * factor),
        }
    }

    /// Moment of a pin under a load of this size.
    pub(super) fn moment(&self, pin: usize, size: f64) -> f64 {
        self.radii[pin] * size + self.couples[pin]
    }

    /// Which way each pin turns.
    pub(super) fn turns(&self) -> Six {
        std::array::from_fn(|i| self.moment(i, 1.0).signum())
    }
}
