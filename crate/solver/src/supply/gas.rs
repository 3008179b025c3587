//! Accumulator: pressure by the fluid that it holds.
use crate::model::Accumulator;

/// Standard atmosphere [Pa]: gauge to absolute.
const ATMOSPHERE: f64 = 101_325.0;

/// An accumulator under way.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) struct Gas {
    of: Accumulator,
    /// Fluid in it when the gear is selected [m3].
    pub first: f64,
}

impl Gas {
    pub(super) fn new(of: &Accumulator) -> Self {
        // p·V^n constant: V = V0·(p0/p)^(1/n).
        let ratio = (of.precharge + ATMOSPHERE) / (of.charged + ATMOSPHERE);
        Self {
            of: *of,
            first: of.gas_volume * (1.0 - ratio.powf(1.0 / of.exponent)).max(0.0),
        }
    }

    /// Whether so much fluid in it is none, but for the width to which events are found.
    pub(super) fn is_empty(&self, fluid: f64) -> bool {
        fluid <= 1e-7 * self.of.gas_volume
    }

    /// Gauge pressure with so much fluid in it [Pa]; without any that of the precharge.
    pub(super) fn pressure(&self, fluid: f64) -> f64 {
        // Never all of the gas: the relief valve or the pump's own limit comes long before.
        let left = (1.0 - fluid.max(0.0) / self.of.gas_volume).max(1e-6);
        (self.of.precharge + ATMOSPHERE) * left.powf(-self.of.exponent) - ATMOSPHERE
    }
}
