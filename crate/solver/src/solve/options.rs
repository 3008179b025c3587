//! How to solve.
use crate::prepared::STATIONS;

/// How finely to solve.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Options {
    /// Stations of the swing phase in the table, at least 2; the answers rest on no fewer than 721.
    /// Each row of a table of shortening adds one on each of its sides, and one more stands where a
    /// device that unlocks the knee leaves the leg to the actuator.
    pub stations: usize,
    /// Every how many stations a clearance curve has a point, at least 1.
    pub curve_stride: usize,
    /// Accuracy of certified clearances (m).
    pub accuracy: f64,
}

impl Default for Options {
    fn default() -> Self {
        Self {
            stations: STATIONS,
            curve_stride: 6,
            accuracy: 1e-5,
        }
    }
}
