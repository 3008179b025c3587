//! Accumulator: pressure by the fluid that it holds.
use super::NO_PRESSURE;
use crate::model::Accumulator;

/// Standard atmosphere (Pa): gauge to absolute.
const ATMOSPHERE: f64 = -NO_PRESSURE;

/// How an accumulator stands; it changes at events only, so that no rate jumps within a time step.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) enum Stands {
    /// It holds the pressure and takes or gives what is over or missing.
    Holds,
    /// The pump fills it no further, and gives what is taken.
    Full,
    /// It was charged above what stops the pump, which gives nothing until the gas is down to that.
    Above,
    /// It has no fluid left.
    Empty,
}

/// An accumulator under way.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(crate) struct Gas {
    of: Accumulator,
    /// How it stands.
    pub stands: Stands,
    /// Fluid in it when the gear is selected (m3).
    pub first: f64,
}

impl Gas {
    pub(crate) fn new(of: &Accumulator) -> Self {
        let mut gas = Self {
            of: *of,
            stands: Stands::Holds,
            first: 0.0,
        };
        gas.first = gas.held(of.charged);
        if gas.first <= 0.0 {
            gas.stands = Stands::Empty;
        }
        gas
    }

    /// Fluid in it at a gauge pressure (m3).
    pub(crate) fn held(&self, pressure: f64) -> f64 {
        // p·V^n constant: V = V0·(p0/p)^(1/n).
        let ratio = (self.of.precharge + ATMOSPHERE) / (pressure + ATMOSPHERE);
        self.of.gas_volume * (1.0 - ratio.powf(1.0 / self.of.exponent)).max(0.0)
    }

    /// Volume of the gas without fluid (m3).
    pub(crate) fn volume(&self) -> f64 {
        self.of.gas_volume
    }

    /// Whether so much fluid in it is none, but for the width to which events are found.
    pub(crate) fn is_empty(&self, fluid: f64) -> bool {
        fluid <= 1e-7 * self.of.gas_volume
    }

    /// Gauge pressure with so much fluid in it (Pa); without any that of the precharge, and below it
    /// where a time step looks beyond that.
    pub(crate) fn pressure(&self, fluid: f64) -> f64 {
        // Never all of the gas: the relief valve or the pump's own limit comes long before.
        let left = (1.0 - fluid / self.of.gas_volume).max(1e-6);
        (self.of.precharge + ATMOSPHERE) * left.powf(-self.of.exponent) - ATMOSPHERE
    }
}
