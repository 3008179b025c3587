//! The results as JSON, straight from the result types, sentences beside the data.
use gearswing_solver::TireChoice;
use gearswing_solver::faults::Fault;
use gearswing_solver::result::LegResult;
use serde::Serialize;

use crate::answered::Answered;
use crate::cautions::{general_cautions, not_modelled};
use crate::{FindingText, fault_text, finding_text};

/// Value of "format" in a result.
pub const RESULT_FORMAT: &str = "gearswing-result";
/// Version of the result's layout.
pub const RESULT_VERSION: u32 = 1;

#[derive(Serialize)]
struct Envelope<'a> {
    format: &'static str,
    version: u32,
    file: &'a str,
    gear: &'a str,
    tire: &'static str,
    cautions: &'static [&'static str],
    not_modelled: &'static [&'static str],
    legs: Vec<Leg<'a>>,
}

#[derive(Serialize)]
#[serde(untagged)]
enum Leg<'a> {
    Solved {
        leg: &'a str,
        index: usize,
        words: Vec<FindingText>,
        result: &'a LegResult,
    },
    Faulty {
        leg: &'a str,
        index: usize,
        faults: Vec<FaultEntry<'a>>,
    },
}

#[derive(Serialize)]
struct FaultEntry<'a> {
    #[serde(flatten)]
    fault: &'a Fault,
    sentence: String,
}

/// The results of one file as JSON text, without a line end behind it.
///
/// Numbers are SI and each key carries its unit; a number that is not finite is `null`. Sentences
/// ("words", "sentence") are in the units chosen and may change from one release to the next; the
/// data are what a program should read.
///
/// # Errors
/// When serialising fails; the result types give no reason to.
pub fn result_json(answered: &Answered) -> Result<String, serde_json::Error> {
    let legs = answered
        .legs
        .iter()
        .map(|(index, answer)| leg(answered, *index, answer.as_ref().map_err(|f| &f.0[..])))
        .collect();
    let envelope = Envelope {
        format: RESULT_FORMAT,
        version: RESULT_VERSION,
        file: answered.file,
        gear: &answered.gear.name,
        tire: match answered.tire {
            TireChoice::Fitted => "fitted",
            TireChoice::Former => "former",
        },
        cautions: general_cautions(),
        not_modelled: not_modelled(),
        legs,
    };
    serde_json::to_string_pretty(&envelope)
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
