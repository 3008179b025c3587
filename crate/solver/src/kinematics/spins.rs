//! What turns and slides at a pose, and how that changes along the path.
use super::linkage::{BraceLinkage, Linkage};
use super::pose::{Pose, Rates};

/// Rates of what turns and slides, or how fast these rates change, by the common parameter of
/// [`Rates`].
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub(crate) struct Spins {
    /// Leg about the trunnion (rad).
    pub(crate) swing: f64,
    /// Upper link (rad).
    pub(crate) upper: f64,
    /// Lower link (rad).
    pub(crate) lower: f64,
    /// Shortening of the strut (m).
    pub(crate) slide: f64,
}

impl From<&Rates> for Spins {
    fn from(rates: &Rates) -> Self {
        Self {
            swing: rates.swing,
            upper: rates.upper,
            lower: rates.lower,
            slide: rates.slide,
        }
    }
}

impl Linkage {
    /// How the rates of a pose change along the path: their derivatives by the common parameter.
    ///
    /// The rates of a folding brace are products of two of its vectors; with u turning at ω and v at
    /// ω', (u × v)' = (ω' − ω)·(u · v). Shortening with travel goes in straight lines, whose corners
    /// are left out.
    pub(crate) fn bends(&self, pose: &Pose) -> Spins {
        let rates = &pose.rates;
        let (BraceLinkage::Folding(brace), Some(knee), Some(attach)) =
            (&self.brace, pose.knee, pose.brace_attach)
        else {
            // the parameter is the swing itself
            return Spins::default();
        };
        let (upper, lower) = (knee - brace.pivot, attach - knee);
        let arm = attach - self.trunnion;
        let sign = brace.sense;
        let swing = sign * (rates.lower - rates.upper) * upper.dot(&lower);
        Spins {
            swing,
            upper: -sign * (rates.swing - rates.lower) * lower.dot(&arm),
            lower: sign * (rates.swing - rates.upper) * upper.dot(&arm),
            slide: self.sliding(pose.place.phase, pose.place.travel, swing),
        }
    }
}
