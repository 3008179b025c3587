//! Flow through an orifice by pressure, and pressure by flow: one law, turned round in closed form.
//!
//! The turbulent orifice, Q = Cd·A·√(2Δp/ρ) (any hydraulics text), joined smoothly to a straight line through
//! rest: with q = Q/c and c = Cd·A·√(2/ρ), Δp⁴ = q⁴·(q⁴ + δ²). So q⁴ = (√(δ⁴ + 4Δp⁴) − δ²)/2.
use std::f64::consts::{FRAC_PI_4, SQRT_2};

use crate::model::LineOrifice;

/// Pressure difference δ below which the flow goes over from √Δp to a straight line (Pa): the root has an
/// infinite slope at no flow, which a real orifice has not, for the flow turns laminar. A numerical figure of
/// our own: at ten times as much the flow is 0.13 % low, at 1 MPa by a part in 10⁹.
pub const LAMINAR_BELOW: f64 = 100.0;

/// δ² (Pa2).
const SQUARE: f64 = LAMINAR_BELOW * LAMINAR_BELOW;

/// What an open line lets through, as an orifice: some meters of quarter-inch tube with fittings
/// lose about as much at the flows of a light power pack (own estimate, common practice).
pub const OPEN_LINE: LineOrifice = LineOrifice {
    hole: 2.0e-3,
    discharge: 0.62,
};

/// Gauge pressure of nothing at all (Pa), at the standard atmosphere (ISO 2533, 101,325 Pa): behind an
/// orifice a load can draw fluid no harder, for below its vapor pressure, some pascals, it boils
/// (textbook; hydraulic fluid without the air that comes out of it earlier).
pub const NO_PRESSURE: f64 = -101_325.0;

/// Cd·A·√(2/ρ) (m3/s/√Pa).
#[must_use]
pub fn conductance(orifice: &LineOrifice, density: f64) -> f64 {
    orifice.discharge * FRAC_PI_4 * orifice.hole * orifice.hole * SQRT_2 / density.sqrt()
}

/// Flow of a conductance under a pressure difference (m3/s); none against the pressure (non-return).
#[must_use]
pub fn flow(conductance: f64, difference: f64) -> f64 {
    if difference <= 0.0 {
        return 0.0;
    }
    conductance * root(difference)
}

/// Pressure difference that a flow (m3/s) takes through a conductance, with the flow's sign (Pa).
#[must_use]
pub fn pressure(conductance: f64, flow: f64) -> f64 {
    let root = flow / conductance;
    root * (root.powi(4) + SQUARE).sqrt().sqrt()
}

/// Flow over conductance q under a pressure difference (√Pa); written so that nothing cancels near rest.
fn root(difference: f64) -> f64 {
    let both = SQUARE + (SQUARE * SQUARE + 4.0 * difference.powi(4)).sqrt();
    difference * (2.0 / both).sqrt().sqrt()
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
    pub(crate) fn slope(&self, spare: f64) -> f64 {
        let spare = if self.both_ways { spare.abs() } else { spare };
        self.ratio * self.ratio * slope(self.conductance, self.ratio * spare)
    }
}

/// Slope of [`flow`] (m3/s/Pa): of Δp = q·(q⁴ + δ²)^¼, turned round.
fn slope(conductance: f64, difference: f64) -> f64 {
    if difference <= 0.0 {
        return 0.0;
    }
    let power = root(difference).powi(4);
    conductance * (power + SQUARE).sqrt().sqrt().powi(3) / (2.0 * power + SQUARE)
}

#[cfg(test)]
mod tests {
    use super::*;

    fn small() -> f64 {
        let hole = LineOrifice {
            hole: 1e-3,
            discharge: 0.61,
        };
        conductance(&hole, 860.0)
    }

    /// Q = Cd·A·√(2Δp/ρ): Cd 0.61, 1.0 mm, 7 MPa, 860 kg/m3 give 3.668 L/min (the textbook formula worked by
    /// hand), and the other way round; a straight line through rest.
    #[test]
    fn orifice_follows_the_handbook_both_ways_and_is_smooth_at_rest() {
        let by_hand = 3.668e-3 / 60.0;
        assert!((flow(small(), 7e6) / by_hand - 1.0).abs() < 2e-4);
        assert!((pressure(small(), by_hand) / 7e6 - 1.0).abs() < 5e-4);
        assert_eq!(pressure(small(), -by_hand), -pressure(small(), by_hand));
        let slow = pressure(small(), 1e-12) / 1e-12;
        assert!((pressure(small(), 2e-12) / 2e-12 - slow).abs() < 1e-6 * slow);
    }

    /// One law both ways, from next to nothing up, and its slope against a central difference.
    #[test]
    fn flow_and_pressure_turn_each_other_round() {
        for difference in [1e-6, 0.1, 1.0, 50.0, 100.0, 1e3, 1e4, 1e6, 2e7] {
            let through = flow(small(), difference);
            let back = pressure(small(), through);
            assert!(
                (back / difference - 1.0).abs() < 1e-14,
                "{difference} {back}"
            );
            let step = 1e-4 * difference;
            let (above, below) = (difference + step, difference - step);
            let rise = (flow(small(), above) - flow(small(), below)) / (2.0 * step);
            assert!((slope(small(), difference) / rise - 1.0).abs() < 1e-7);
        }
    }

    /// As far below the textbook's root as [`LAMINAR_BELOW`] says.
    #[test]
    fn the_straight_part_ends_far_below_what_legs_work_with() {
        for (difference, low) in [(1e3_f64, 1.25e-3), (1e4, 1.25e-5), (1e5, 1.25e-7)] {
            let found = 1.0 - flow(1.0, difference) / difference.sqrt();
            assert!((found / low - 1.0).abs() < 0.03, "{difference} {found}");
        }
    }
}
