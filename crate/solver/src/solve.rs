//! One call for a whole leg: check, swing, clear, push, lock, answer.
use crate::faults::Faults;
use crate::model::Gear;
use crate::result::LegResult;

/// How finely to solve.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Options {
    /// Stations of the swing phase, at least 2.
    pub stations: usize,
    /// Every how many stations a clearance curve has a point, at least 1.
    pub curve_stride: usize,
    /// Accuracy of certified clearances [m].
    pub accuracy: f64,
    /// Which tire is on the wheel.
    pub tire: TireChoice,
}

impl Default for Options {
    fn default() -> Self {
        Self {
            stations: 721,
            curve_stride: 6,
            accuracy: 1e-5,
            tire: TireChoice::Fitted,
        }
    }
}

/// The tire to solve with.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum TireChoice {
    /// The one now fitted.
    Fitted,
    /// The former one; a leg without a former tire is solved with the fitted one.
    Former,
}

/// Solves one leg.
///
/// # Errors
/// All faults of the leg and of the gear's own fields, when there are any. A leg that is sound at
/// gear down but cannot come up is not an error: its result says where and why it stops.
pub fn solve_leg(gear: &Gear, leg: usize, options: &Options) -> Result<LegResult, Faults> {
    let _ = (gear, leg, options);
    Err(Faults(Vec::new()))
}

/// Solves every leg, each on its own: a faulty one does not hide the others.
#[must_use]
pub fn solve_gear(gear: &Gear, options: &Options) -> Vec<Result<LegResult, Faults>> {
    (0..gear.legs.len())
        .map(|leg| solve_leg(gear, leg, options))
        .collect()
}
