//! One answer in words: question, verdict, sentence, what it rests on, what to try.

use gearswing_gear::model::MovingPart;
use gearswing_solver::result::{Assumption, Finding, FindingDetail, Question, Verdict};
use serde::Serialize;

use super::assumption::{Governing, governing};
use super::{beside, clears, driven, fall, jam, locks, not_driven, skew};
use crate::cautions::{TIRE_CLEARANCE_RULE, caution_text};
use crate::subject::Subject;
use crate::text::capital_first;

/// One answer in words.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[cfg_attr(test, derive(schemars::JsonSchema))]
pub struct FindingText {
    /// The question.
    pub question: &'static str,
    /// How it stands, one or two words.
    pub verdict: &'static str,
    /// Number, margin and place, in short sentences.
    pub sentence: String,
    /// What the answer rests on, the governing one first.
    pub governs: Vec<Governing>,
    /// Cautions that belong to it.
    pub cautions: Vec<&'static str>,
    /// What to try or check next, the first thing first.
    pub try_next: Vec<String>,
}

/// Sentence of an answer and what to try next.
pub(super) struct AnswerText {
    pub(super) sentence: String,
    pub(super) try_next: Vec<String>,
}

impl AnswerText {
    pub(super) fn new<const N: usize>(sentence: String, try_next: [&str; N]) -> Self {
        Self {
            sentence,
            try_next: try_next.into_iter().map(str::to_owned).collect(),
        }
    }
}

/// The question in words.
#[must_use]
pub fn question_text(question: Question) -> &'static str {
    match question {
        Question::Clears => "Does it clear?",
        Question::Driven => "Can it be driven?",
        Question::Locks => "Will it lock?",
    }
}

/// The verdict on a question in words.
#[must_use]
pub fn verdict_text(question: Question, verdict: Verdict) -> &'static str {
    match (question, verdict) {
        (_, Verdict::Good) => "Yes",
        (Question::Clears, Verdict::Marginal) => "Marginal",
        (Question::Driven, Verdict::Marginal) => "Marginal",
        (Question::Locks, Verdict::Marginal) => "Marginal",
        (_, Verdict::Bad) => "No",
        (_, Verdict::NotShown) => "Not shown",
    }
}

/// What an offset is worth that follows from the places of three pins: by geometry the knee's error across the
/// brace is the offset's.
const BY_TAPE: &str = "The offset follows from where the pins are put in: the knee pin wrong by 1/16 in (1.6 mm) across the brace is an offset wrong by as much, and may be the whole of it. Measure the offset itself, with a straightedge from pin to pin, and put the knee where that says.";

/// One answer in words.
#[must_use]
pub fn finding_text(subject: &Subject, finding: &Finding) -> FindingText {
    let mut said = said(subject, finding);
    let stopped = matches!(finding.detail, FindingDetail::ExcursionStopped { .. });
    if finding.question == Question::Clears && finding.verdict == Verdict::Good {
        said.sentence.push_str(&skew::at_stake(subject));
    }
    if finding.question == Question::Locks && !stopped {
        locks::append_switch(subject, &mut said);
        fall::append(subject, &mut said);
    }
    if finding.assumptions.contains(&Assumption::ContactCleared) {
        said.sentence
            .push_str(" This counts as if what touches on the way were cleared.");
    }
    let mut governs: Vec<Governing> = finding
        .assumptions
        .iter()
        .map(|&assumption| governing(subject, finding, assumption))
        .collect();
    if finding.question == Question::Clears {
        governs.extend(beside::lines(subject));
    } else {
        governs.extend(weightless(subject));
    }
    if matches!(finding.detail, FindingDetail::OverCentre { .. }) {
        governs.push(Governing::plain(BY_TAPE.to_owned()));
    }
    if is_about_tire(subject, finding) {
        governs.push(Governing::plain(TIRE_CLEARANCE_RULE.to_owned()));
    }
    FindingText {
        question: question_text(finding.question),
        verdict: verdict_text(finding.question, finding.verdict),
        sentence: capital_first(&said.sentence),
        governs,
        cautions: finding.cautions.iter().map(|&c| caution_text(c)).collect(),
        try_next: said.try_next,
    }
}

fn said(subject: &Subject, finding: &Finding) -> AnswerText {
    match &finding.detail {
        FindingDetail::Jammed { cause } => jam::said(subject, finding, *cause),
        FindingDetail::Tightest {
            pair,
            clearance,
            spare,
        } => clears::tightest(subject, finding, *pair, *clearance, *spare),
        FindingDetail::OwnTightest {
            row,
            clearance,
            spare,
        } => with_well(subject, beside::own_leg(subject, *row, *clearance, *spare)),
        FindingDetail::RoomTightest {
            row,
            clearance,
            spare,
        } => with_well(subject, beside::room(subject, *row, *clearance, *spare)),
        FindingDetail::NothingInWell => clears::nothing_in_well(subject),
        FindingDetail::Pressure {
            case,
            motion,
            needed,
            available,
            margin,
            required,
            mount_load,
        } => {
            let pressure = driven::Pressure {
                case: *case,
                motion: *motion,
                needed: *needed,
                available: *available,
                margin: *margin,
                required: *required,
                mount_load: *mount_load,
            };
            driven::pressure(subject, finding, &pressure)
        }
        FindingDetail::Binds {
            joint,
            motion,
            case,
        } => not_driven::binds(subject, finding, *joint, (*motion, *case)),
        FindingDetail::PartnerStands { leg } => not_driven::partner_stands(subject, finding, *leg),
        FindingDetail::DeadPoint => not_driven::dead_point(subject, finding),
        FindingDetail::CannotUnlock => not_driven::cannot_unlock(subject),
        FindingDetail::StrutJack { needed, available } => {
            not_driven::strut_jack(subject, *needed, *available)
        }
        FindingDetail::StageValve { opens, available } => {
            not_driven::stage_valve(subject, *opens, *available)
        }
        FindingDetail::OverCentre {
            offset,
            ground_into_lock,
            knee_push,
        } => locks::over_centre(subject, *offset, *ground_into_lock, *knee_push),
        FindingDetail::NotOverCentre { offset } => locks::not_over_centre(subject, *offset),
        FindingDetail::ExcursionStopped { at_axle, allowed } => {
            locks::excursion_stopped(subject, *at_axle, *allowed)
        }
        FindingDetail::SlidingBrace { end_gap } => locks::sliding_brace(subject, *end_gap),
        FindingDetail::NoBrace => locks::no_brace(subject),
    }
}

/// An answer that the tire's own leg or its room governs, and what the well has to say beside it.
fn with_well(subject: &Subject, mut said: AnswerText) -> AnswerText {
    said.sentence
        .push_str(&match subject.result.clearance.pairs.is_empty() {
            true => " No structure is drawn around the leg.".to_owned(),
            false => beside::tire_itself(subject) + &clears::others(subject, None),
        });
    said.sentence.push_str(&clears::only_to_jam(subject));
    said
}

/// Parts without a mass, on which forces and fall rest.
fn weightless(subject: &Subject) -> Option<Governing> {
    let leg = subject.model()?;
    // a negative one is a fault, and what is said then is of the state before it
    let parts = [(leg.wheel.mass, "wheel"), (leg.body.mass, "leg")];
    let none: Vec<&str> = parts
        .iter()
        .filter(|(mass, _)| *mass == 0.0)
        .map(|(_, part)| *part)
        .collect();
    (!none.is_empty()).then(|| Governing::plain(format!(
        "The mass of the {} is put in as nothing, and forces and fall are without that weight: weigh what moves.",
        none.join(" and of the ")
    )))
}

fn is_about_tire(subject: &Subject, finding: &Finding) -> bool {
    match finding.detail {
        FindingDetail::Tightest { pair, .. } => subject
            .result
            .clearance
            .pairs
            .get(pair)
            .is_some_and(|pair| pair.part == MovingPart::Wheel),
        FindingDetail::OwnTightest { .. } | FindingDetail::RoomTightest { .. } => true,
        _ => false,
    }
}

#[cfg(test)]
mod tests {
    use gearswing_units::UnitChoice;

    use super::weightless;
    use crate::sample::{full_gear, result, subject};

    #[test]
    fn a_part_without_a_mass_is_told() {
        let (mut gear, result) = (full_gear(), result());
        let mut said = |wheel, body| {
            (gear.legs[0].wheel.mass, gear.legs[0].body.mass) = (wheel, body);
            let found = weightless(&subject(&gear, &result, UnitChoice::METRIC));
            found.map_or_else(String::new, |line| line.text)
        };
        assert_eq!(said(5.0, 6.0), "");
        assert!(said(0.0, 6.0).starts_with("The mass of the wheel is put in as nothing"));
        assert!(said(0.0, 0.0).starts_with("The mass of the wheel and of the leg is"));
    }
}
