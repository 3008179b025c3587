//! Bounds of a time step, and what counts as a stall.

/// Longest time step (s).
pub const LARGEST_STEP: f64 = 0.05;

/// Legs up to which that holds; with more it is longer in proportion (ratio).
pub(super) const USUAL_LEGS: f64 = 3.0;

/// Longest way of a leg in one time step, as a share of its stage (ratio): with four looks in a step
/// there is one for each station.
pub const LARGEST_SHARE: f64 = 1.0 / 90.0;

/// What moves at less than this share of its free flow or speed has stalled (ratio): it would need
/// minutes for what takes seconds.
pub const SLOWEST_PACE: f64 = 1e-3;
