//! The results as JSON, straight from the result types, sentences beside the data.
use gearswing_solver::faults::Fault;
use gearswing_solver::result::{Cycle, Direction, LegResult, StopExplained};
use gearswing_solver::stop::{StopAnswer, StopError};
use gearswing_solver::supply::SupplyError;
use serde::Serialize;

use crate::answered::Answered;
use crate::cautions::{general_cautions, not_modelled};
use crate::stopped::{Stopped, cause_sentence, check_sentence, stop_error_text, stop_lead};
use crate::timed::{Timed, run_missing, run_sentences, supply_error_text, supply_simplified};
use crate::{FindingText, Program, fault_text, finding_text};

/// Value of "format" in a result.
pub const RESULT_FORMAT: &str = "gearswing-result";
/// Version of the result's layout.
pub const RESULT_VERSION: u32 = 2;

/// What is printed for one gear file.
#[derive(Serialize)]
#[cfg_attr(test, derive(schemars::JsonSchema))]
pub(crate) struct Envelope<'a> {
    /// Says that this is a result.
    format: &'static str,
    /// Version of the layout.
    version: u32,
    /// The build of the program that answers.
    program: Program<'a>,
    /// The gear file, as it was named.
    file: &'a str,
    /// Name of the gear.
    gear: &'a str,
    /// Tire solved with: "fitted", or "former" for the previous one.
    tire: &'static str,
    /// Cautions that always hold.
    cautions: &'static [&'static str],
    /// What the model leaves out.
    not_modelled: &'static [&'static str],
    /// The legs that were requested.
    legs: Vec<Leg<'a>>,
    /// The whole gear against time, where the file names a pump or electric actuators and every leg
    /// was requested.
    #[serde(skip_serializing_if = "Option::is_none")]
    against_time: Option<AgainstTime<'a>>,
    /// Legs that were seen to stop, and what may explain it.
    #[serde(skip_serializing_if = "Vec::is_empty")]
    stops: Vec<Stop<'a>>,
}

/// What may explain the stop of one leg, or why nothing does.
#[derive(Serialize)]
#[cfg_attr(test, derive(schemars::JsonSchema))]
#[serde(untagged)]
enum Stop<'a> {
    /// It was weighed.
    Weighed {
        /// The leg, as index into the gear file's legs.
        index: usize,
        /// Where it stood and how far the numbers carry; for people, may be reworded.
        lead: String,
        /// The explanations in the order of `explained.explanations`; for people, may be reworded.
        words: Vec<String>,
        /// The next check; for people, may be reworded.
        #[serde(skip_serializing_if = "Option::is_none")]
        next: Option<String>,
        /// The data.
        explained: &'a StopExplained,
    },
    /// It was not.
    Failed {
        /// The leg, as index into the gear file's legs.
        index: usize,
        /// Why; for people, may be reworded.
        sentence: String,
        /// Why, as data.
        error: &'a StopError,
    },
}

/// The gear against time, or why there is no such result.
#[derive(Serialize)]
#[cfg_attr(test, derive(schemars::JsonSchema))]
#[serde(untagged)]
enum AgainstTime<'a> {
    /// It was worked out.
    Worked {
        /// What is said of the way up; for people, may be reworded.
        up_words: Vec<String>,
        /// What is said of the way down; for people, may be reworded.
        down_words: Vec<String>,
        /// What is made simple.
        simplified: &'static [&'static str],
        /// The data.
        cycle: &'a Cycle,
    },
    /// It was not.
    Failed {
        /// Why; for people, may be reworded.
        sentence: String,
        /// Why, as data.
        error: &'a SupplyError,
    },
}

/// One leg: its result, or the faults of its model.
#[derive(Serialize)]
#[cfg_attr(test, derive(schemars::JsonSchema))]
#[serde(untagged)]
enum Leg<'a> {
    /// It was solved.
    Solved {
        /// Name of the leg.
        leg: &'a str,
        /// The leg, as index into the gear file's legs.
        index: usize,
        /// The answers in words, in the order of `result.findings`; for people, may be reworded.
        words: Vec<FindingText>,
        /// The data.
        result: &'a LegResult,
    },
    /// Its model has faults.
    Faulty {
        /// Name of the leg.
        leg: &'a str,
        /// The leg, as index into the gear file's legs.
        index: usize,
        /// All of them.
        faults: Vec<FaultEntry<'a>>,
    },
}

/// One fault and the sentence for it.
#[derive(Serialize)]
#[cfg_attr(test, derive(schemars::JsonSchema))]
struct FaultEntry<'a> {
    #[serde(flatten)]
    fault: &'a Fault,
    /// What is wrong and what would be valid; for people, may be reworded.
    sentence: String,
}

/// The results of one file as JSON text, without a line end behind it.
///
/// Numbers are SI and each key carries its unit; a number that is not finite is `null`. Sentences
/// ("words", "sentence") are in the units chosen and may change from one release to the next; the
/// data are what a program should read.
///
/// # Errors
/// When serializing fails; the result types give no reason to.
pub fn result_json(answered: &Answered) -> Result<String, serde_json::Error> {
    let legs = answered
        .legs
        .iter()
        .map(|(index, answer)| leg(answered, *index, answer.as_ref().map_err(|f| &f.0[..])))
        .collect();
    let envelope = Envelope {
        format: RESULT_FORMAT,
        version: RESULT_VERSION,
        program: answered.program,
        file: answered.file,
        gear: &answered.gear.name,
        tire: if answered.previous {
            "former"
        } else {
            "fitted"
        },
        cautions: general_cautions(),
        not_modelled: not_modelled(),
        legs,
        against_time: answered.cycle.map(|cycle| against_time(answered, cycle)),
        stops: answered.stops.iter().map(|s| stop(answered, s)).collect(),
    };
    serde_json::to_string_pretty(&envelope)
}

fn against_time<'a>(
    answered: &Answered<'a>,
    cycle: &'a Result<Cycle, SupplyError>,
) -> AgainstTime<'a> {
    let timed = Timed {
        gear: answered.gear,
        units: answered.units,
    };
    match cycle {
        Ok(cycle) => AgainstTime::Worked {
            up_words: run_words(&timed, cycle, Direction::Up),
            down_words: run_words(&timed, cycle, Direction::Down),
            simplified: supply_simplified(&answered.gear.supply.source),
            cycle,
        },
        Err(error) => AgainstTime::Failed {
            sentence: supply_error_text(&timed, error),
            error,
        },
    }
}

fn run_words(timed: &Timed, cycle: &Cycle, direction: Direction) -> Vec<String> {
    match cycle.run(direction) {
        Some(run) => run_sentences(timed, run),
        None => vec![run_missing(timed, cycle, direction)],
    }
}

fn stop<'a>(answered: &Answered<'a>, (index, found): &'a StopAnswer) -> Stop<'a> {
    let (stopped, index) = (
        Stopped {
            gear: answered.gear,
            leg: *index,
            units: answered.units,
        },
        *index,
    );
    match found {
        Ok(explained) => Stop::Weighed {
            index,
            lead: stop_lead(&stopped, explained),
            words: explained
                .explanations
                .iter()
                .map(|one| cause_sentence(&stopped, &one.cause))
                .collect(),
            next: explained
                .next_check
                .as_ref()
                .map(|next| check_sentence(&stopped, next)),
            explained,
        },
        Err(error) => Stop::Failed {
            index,
            sentence: stop_error_text(&stopped, error),
            error,
        },
    }
}

#[derive(Serialize)]
struct Unusable<'a> {
    format: &'static str,
    version: u32,
    program: Program<'a>,
    file: &'a str,
    error: &'a str,
}

/// In place of the results of a file that cannot be used: "error" instead of "legs".
///
/// # Errors
/// When serializing fails; there is no reason to.
pub fn unusable_json(
    program: Program,
    file: &str,
    error: &str,
) -> Result<String, serde_json::Error> {
    serde_json::to_string_pretty(&Unusable {
        format: RESULT_FORMAT,
        version: RESULT_VERSION,
        program,
        file,
        error,
    })
}

fn leg<'a>(
    answered: &Answered<'a>,
    index: usize,
    answer: Result<&'a LegResult, &'a [Fault]>,
) -> Leg<'a> {
    let leg = answered.gear.legs.get(index).map_or("", |leg| &leg.name);
    match answer {
        Ok(result) => {
            let subject = answered.subject(index, result);
            Leg::Solved {
                leg,
                index,
                words: result
                    .findings
                    .iter()
                    .map(|finding| finding_text(&subject, finding))
                    .collect(),
                result,
            }
        }
        Err(faults) => Leg::Faulty {
            leg,
            index,
            faults: faults
                .iter()
                .map(|fault| FaultEntry {
                    fault,
                    sentence: fault_text(fault, answered.gear, answered.units),
                })
                .collect(),
        },
    }
}
