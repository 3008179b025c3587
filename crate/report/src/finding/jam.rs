//! The leg stops before up: why, where, and by how much it misses.
use gearswing_solver::result::{Finding, JamCause, Question};

use super::answer::AnswerText;
use super::clears;
use crate::subject::Subject;

pub(super) fn said(subject: &Subject, finding: &Finding, cause: JamCause) -> AnswerText {
    let stops = match &finding.place {
        Some(place) => format!("{} stops {}", subject.the_leg(), subject.at(place)),
        None => format!("{} can't come up", subject.the_leg()),
    };
    let why = jam_text(subject, cause);
    let sentence = match finding.question {
        Question::Clears => format!(
            "{stops}, so its way beyond is not checked: {why}.{}",
            clears::before_stop(subject)
        ),
        Question::Driven => format!("{stops}: {why}."),
        Question::Locks => format!("{stops}, so it does not go through the whole swing: {why}."),
    };
    let [first, second] = what_to_try(cause);
    AnswerText::new(sentence, [first, second])
}

/// Why a leg stops, as a clause: "the brace is too short by 8.3 mm …".
#[must_use]
pub fn jam_text(subject: &Subject, cause: JamCause) -> String {
    let miss = subject.size(cause.miss());
    let length = |si| subject.length(si);
    match cause {
        JamCause::BraceTooShort { reach, span } => format!(
            "the brace is too short by {miss} (both links stretched out reach {}, the swing needs {})",
            length(reach),
            length(span)
        ),
        JamCause::BraceTooLong { least, span } => format!(
            "the folded brace is too long by {miss} (its ends come no nearer than {}, the swing needs {})",
            length(least),
            length(span)
        ),
        JamCause::SlidingBraceEndsLong { longest, asked } => format!(
            "the telescoping brace is too short by {miss} (extended {}, the swing needs {})",
            length(longest),
            length(asked)
        ),
        JamCause::SlidingBraceEndsShort { shortest, asked } => format!(
            "the telescoping brace is too long by {miss} (retracted {}, the swing needs {})",
            length(shortest),
            length(asked)
        ),
        JamCause::ActuatorEndsLong { longest, asked } => format!(
            "the actuator runs out of stroke, {miss} too short (extended {}, the swing needs {})",
            length(longest),
            length(asked)
        ),
        JamCause::ActuatorEndsShort { shortest, asked } => format!(
            "the actuator runs out of stroke, {miss} too long (retracted {}, the swing needs {})",
            length(shortest),
            length(asked)
        ),
    }
}

fn what_to_try(cause: JamCause) -> [&'static str; 2] {
    match cause {
        JamCause::BraceTooShort { .. } | JamCause::BraceTooLong { .. } => [
            "Measure brace pivot, knee and brace attach again: the links' lengths follow from them.",
            "Check which way the knee folds, and the swing to up.",
        ],
        JamCause::SlidingBraceEndsLong { .. } | JamCause::SlidingBraceEndsShort { .. } => [
            "Measure the brace's retracted and extended lengths and its two pins again.",
            "Check the swing to up, or move a brace pivot.",
        ],
        JamCause::ActuatorEndsLong { .. } | JamCause::ActuatorEndsShort { .. } => [
            "Measure the actuator's retracted and extended lengths and its two pins again; check how far its rod end is screwed in.",
            "Try another place for its mount or attach point, or another stroke.",
        ],
    }
}
