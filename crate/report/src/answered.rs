//! A gear file with the results of its legs, as it goes to text, JSON or CSV.
use gearswing_gear::model::Gear;
use gearswing_solver::faults::Faults;
use gearswing_solver::result::{Cycle, Direction, LegResult, Run, RunEnd, Verdict};
use gearswing_solver::stop::{StopAnswer, StopError};
use gearswing_solver::supply::SupplyError;
use gearswing_units::UnitChoice;

use crate::{Program, Subject};

/// One leg: its index and its result or its faults.
pub type LegAnswer = (usize, Result<LegResult, Faults>);

/// A gear file with the results of its legs.
#[derive(Clone, Copy, Debug)]
pub struct Answered<'a> {
    /// The build that answers.
    pub program: Program<'a>,
    /// Name of the file, or what else to call it.
    pub file: &'a str,
    /// The gear.
    pub gear: &'a Gear,
    /// The legs that were requested.
    pub legs: &'a [LegAnswer],
    /// The gear is the state kept with the previous tire.
    pub previous: bool,
    /// The whole gear against time, where that was worked out.
    pub cycle: Option<&'a Result<Cycle, SupplyError>>,
    /// Legs that were seen to stop, among those asked for.
    pub stops: &'a [StopAnswer],
    /// Units of the texts.
    pub units: UnitChoice,
}

/// How a whole file came out, the worst of its legs.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Outcome {
    /// No answer is bad.
    Good,
    /// Some answer is bad: something touches, stalls, stops or does not lock.
    Bad,
    /// Some leg or stop has faults, or there is no leg: it could not be solved.
    Unusable,
}

impl<'a> Answered<'a> {
    /// One leg's result as a subject of sentences.
    #[must_use]
    pub fn subject(&self, leg: usize, result: &'a LegResult) -> Subject<'a> {
        Subject {
            gear: self.gear,
            leg,
            result,
            units: self.units,
        }
    }

    /// The worst of the legs. An answer that is marginal or not shown is not bad: many sound legs
    /// have a lock that the model cannot show.
    #[must_use]
    pub fn outcome(&self) -> Outcome {
        self.legs
            .iter()
            .map(|(_, answer)| match answer {
                Err(_) => Outcome::Unusable,
                Ok(result) if is_bad(result) => Outcome::Bad,
                Ok(_) => Outcome::Good,
            })
            .max()
            .map_or(Outcome::Unusable, |worst| {
                worst
                    .max(self.outcome_of_times())
                    .max(self.outcome_of_stops())
            })
    }

    /// What explains a stop is no verdict; readings with faults can't be used.
    fn outcome_of_stops(&self) -> Outcome {
        let has_faults = |(_, stop): &StopAnswer| matches!(stop, Err(StopError::Faults(_)));
        if self.stops.iter().any(has_faults) {
            Outcome::Unusable
        } else {
            Outcome::Good
        }
    }

    /// A leg that stalls against time is bad, and so is a way on which nothing moves; faults already count with the
    /// legs, and what was not worked out is no verdict.
    fn outcome_of_times(&self) -> Outcome {
        let stops = |run: &Run| matches!(run.end, RunEnd::Stalled | RunEnd::PressureSwitch);
        match self.cycle {
            None | Some(Err(SupplyError::Faults(_))) => Outcome::Good,
            Some(Err(error)) if !moves_nothing(error) => Outcome::Good,
            Some(Err(_)) => Outcome::Bad,
            Some(Ok(cycle)) => {
                let bad = [Direction::Up, Direction::Down]
                    .into_iter()
                    .any(|direction| {
                        cycle.error(direction).is_some_and(moves_nothing)
                            || cycle.run(direction).is_some_and(stops)
                    });
                if bad { Outcome::Bad } else { Outcome::Good }
            }
        }
    }
}

/// Whether the source moves nothing; other errors say only that the times were not worked out.
fn moves_nothing(error: &SupplyError) -> bool {
    match error {
        SupplyError::NoFlow { .. } | SupplyError::NothingMoves { .. } => true,
        SupplyError::Faults(_)
        | SupplyError::SharedDrive { .. }
        | SupplyError::NoStroke
        | SupplyError::Unbalanced { .. }
        | SupplyError::TooManySteps { .. } => false,
    }
}

fn is_bad(result: &LegResult) -> bool {
    !result.jams.is_empty()
        || result
            .findings
            .iter()
            .any(|finding| finding.verdict == Verdict::Bad)
}
