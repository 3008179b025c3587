//! Flow through an orifice by pressure, and pressure by flow.
//!
//! Both are the law of the turbulent orifice, Q = Cd·A·√(2Δp/ρ) (any hydraulics text), and each goes over to a
//! straight line through rest in its own way: a run asks for the flow and wants it close to the root at a few
//! kilopascal, a fall asks for the pressure and creeps at far less. Above 10 kPa they are within 0.2 % of each
//! other, above 1 MPa within 0.006 %. Turned round, the law of the runs would make a fall that creeps through
//! some hundred pascal another one (by 1 % of its time).
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

/// Below this pressure drop a fall goes over to laminar (Pa): a numerical figure of our own that keeps the slope
/// at rest finite.
pub const LAMINAR_IN_A_FALL: f64 = 100.0;

/// Pressure difference that a flow (m3/s) takes through a conductance, with the flow's sign (Pa): q² with q =
/// Q/c, joined smoothly to a straight line through rest, q·√(q² + [`LAMINAR_IN_A_FALL`]).
#[must_use]
pub fn pressure(conductance: f64, flow: f64) -> f64 {
    let root = flow / conductance;
    root * (root * root + LAMINAR_IN_A_FALL).sqrt()
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

    /// How far the two ways are from each other, as the head of the file says.
    #[test]
    fn flow_and_pressure_turn_each_other_round() {
        for (difference, within) in [
            (1e4, 2e-3),
            (2e4, 2e-3),
            (1e5, 6e-4),
            (1e6, 6e-5),
            (2e7, 3e-6),
        ] {
            let back = pressure(small(), flow(small(), difference));
            assert!(
                (back / difference - 1.0).abs() < within,
                "{difference} {back}"
            );
        }
    }
}
