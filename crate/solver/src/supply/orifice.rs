//! Flow through an orifice.
use std::f64::consts::{FRAC_PI_4, SQRT_2};

use crate::model::LineOrifice;

/// Pressure difference below which the flow goes over from √Δp to a straight line (Pa): the root
/// has an infinite slope at no flow, which a real orifice has not, for the flow turns laminar.
/// Common practice of simulation; from memory. At ten times as much the flow is 0.3 % low.
pub const LAMINAR_BELOW: f64 = 1e3;

/// What an open line lets through, as an orifice: some metres of quarter-inch tube with fittings
/// lose about as much at the flows of a light power pack (own estimate, common practice).
pub const OPEN_LINE: LineOrifice = LineOrifice {
    hole: 2.0e-3,
    discharge: 0.62,
};

/// Gauge pressure of nothing at all (Pa), at the standard atmosphere (ISO 2533, 101,325 Pa): behind an
/// orifice a load can draw fluid no harder, for below its vapour pressure, some pascals, it boils
/// (textbook; hydraulic fluid without the air that comes out of it earlier).
pub const NO_PRESSURE: f64 = -101_325.0;

/// Cd·A·√(2/ρ) (m3/s/√Pa).
#[must_use]
pub fn conductance(orifice: &LineOrifice, density: f64) -> f64 {
    orifice.discharge * FRAC_PI_4 * orifice.hole * orifice.hole * SQRT_2 / density.sqrt()
}

/// Flow of a conductance under a pressure difference (m3/s): c·√Δp, straight near zero; none
/// against the pressure (non-return).
#[must_use]
pub fn flow(conductance: f64, difference: f64) -> f64 {
    if difference <= 0.0 {
        return 0.0;
    }
    conductance * difference / blend(difference).sqrt()
}

/// The line of a cylinder with its orifice.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(crate) struct Line {
    /// Of the orifice (m3/s/√Pa).
    pub conductance: f64,
    /// Filled over emptied area where the orifice meters what leaves, 1 where it meters what enters
    /// (ratio): so much more than the manifold has to spare stands across it, and so much more enters
    /// than goes through it.
    pub ratio: f64,
    /// Whether it lets through both ways: so an implicit step finds where the flow ends, which one with
    /// a corner at no flow does not; such a step is taken only where nothing runs back.
    pub both_ways: bool,
}

impl Line {
    /// Nothing comes through.
    pub(crate) const SHUT: Self = Self {
        conductance: 0.0,
        ratio: 1.0,
        both_ways: false,
    };

    /// Flow into the cylinder with so much pressure to spare at the manifold (m3/s).
    pub(crate) fn flow(&self, spare: f64) -> f64 {
        let through = self.ratio * flow(self.conductance, self.ratio * spare.abs());
        match spare < 0.0 {
            false => through,
            true if self.both_ways => -through,
            true => 0.0,
        }
    }

    /// Slope of it (m3/s/Pa).
    pub(super) fn slope(&self, spare: f64) -> f64 {
        let spare = if self.both_ways { spare.abs() } else { spare };
        self.ratio * self.ratio * slope(self.conductance, self.ratio * spare)
    }
}

/// Slope of [`flow`] (m3/s/Pa).
fn slope(conductance: f64, difference: f64) -> f64 {
    if difference <= 0.0 {
        return 0.0;
    }
    let b = blend(difference);
    conductance / b.sqrt() * (1.0 - 0.5 * difference * difference / (b * b))
}

/// √(Δp² + δ²).
fn blend(difference: f64) -> f64 {
    (difference * difference + LAMINAR_BELOW * LAMINAR_BELOW).sqrt()
}
