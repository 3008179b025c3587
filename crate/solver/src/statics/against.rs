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

#[cfg(test)]
mod tests {
    use super::*;

    /// Moment of a pin that rubs: a share of its load by its radius, and its couple; both by the factor, and the
    /// way it turns is that of the whole.
    #[test]
    fn a_factor_is_on_radius_and_couple() {
        let pins = Against {
            radii: [0.01, -0.01, 0.0, 0.0, 0.002, -0.002],
            couples: [0.5, -0.5, 0.25, -0.25, 0.0, 0.0],
        };
        assert_eq!(pins.turns(), [1.0, -1.0, 1.0, -1.0, 1.0, -1.0]);
        let more = pins.times(1.5);
        assert_eq!(more.turns(), pins.turns());
        for pin in 0..6 {
            let (once, load) = (pins.moment(pin, 200.0), 200.0);
            assert!((once - (pins.radii[pin] * load + pins.couples[pin])).abs() < 1e-12);
            assert!((more.moment(pin, load) - 1.5 * once).abs() < 1e-12, "{pin}");
        }
    }
}
