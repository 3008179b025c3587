//! A gear file with the results of its legs, as it goes to text, JSON or CSV.
use gearswing_solver::TireChoice;
use gearswing_solver::faults::Faults;
use gearswing_solver::model::Gear;
use gearswing_solver::result::{LegResult, Verdict};
use gearswing_units::UnitChoice;

use crate::Subject;

/// One leg: its index and its result or its faults.
pub type LegAnswer = (usize, Result<LegResult, Faults>);

/// A gear file with the results of its legs.
#[derive(Clone, Copy, Debug)]
pub struct Answered<'a> {
    /// Name of the file, or what else to call it.
    pub file: &'a str,
    /// The gear.
    pub gear: &'a Gear,
    /// The legs that were asked for.
    pub legs: &'a [LegAnswer],
    /// The tire they were solved with.
    pub tire: TireChoice,
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
    /// Some leg has faults, or there is none: it could not be solved.
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
            tire: self.tire,
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
            .unwrap_or(Outcome::Unusable)
    }
}

fn is_bad(result: &LegResult) -> bool {
    !result.jams.is_empty()
        || result
            .findings
            .iter()
            .any(|finding| finding.verdict == Verdict::Bad)
}
