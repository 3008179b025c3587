//! The answers of a leg, as the page shows them.
use gearswing_solver::result::{Question, Verdict};

use super::page::Action;

/// The three answers of a leg.
#[derive(Clone, Debug, PartialEq)]
pub struct LegAnswers {
    /// Leg.
    pub leg: usize,
    /// Its name.
    pub name: String,
    /// Shown in the drawing: its answers stand open, with full sentences.
    pub selected: bool,
    /// What selects it.
    pub select: Action,
    /// The answers; empty when the model is faulty and no good result is left.
    pub answers: Vec<AnswerRow>,
    /// What is wrong with the model; answers are then those of the last good state.
    pub faults: Vec<FaultRow>,
    /// What is said over the answers; empty where there is nothing to say.
    pub over: String,
    /// The answers belong to an earlier state.
    pub faded: bool,
}

/// One answer.
#[derive(Clone, Debug, PartialEq)]
pub struct AnswerRow {
    /// Which question.
    pub question: Question,
    /// The question in words.
    pub question_text: String,
    /// How it stands.
    pub verdict: Verdict,
    /// The verdict in a word or two.
    pub verdict_text: String,
    /// All of it in a line.
    pub line: String,
    /// Head of the question's column.
    pub head: String,
    /// The number as a table shows it.
    pub figure: String,
    /// A few words for the short form, with the number.
    pub short: String,
    /// The sentence with number, margin and place.
    pub sentence: String,
    /// What it rests on, the governing one first.
    pub rests_on: Vec<RestsOn>,
    /// Cautions that belong to it.
    pub cautions: Vec<String>,
    /// What to try.
    pub try_next: Vec<String>,
    /// Its number in the state compared with, where that or the verdict was another.
    pub was: Option<String>,
    /// What opens its sentence, and goes to its place if it has one.
    pub open: Action,
    /// What goes to its place.
    pub go_to: Option<Action>,
}

impl AnswerRow {
    /// A text about it, with what its number was behind it after a mark.
    #[must_use]
    pub fn with_was(&self, text: &str, mark: &str) -> String {
        match &self.was {
            Some(was) => [text, was].join(mark),
            None => text.to_owned(),
        }
    }
}

/// An assumption of an answer.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct RestsOn {
    /// The reason in a sentence.
    pub text: String,
    /// Memory, common practice or no stated origin: to be marked.
    pub weak: bool,
    /// The mark in a word or two, or empty.
    pub mark: String,
}

/// A fault of the model.
#[derive(Clone, Debug, PartialEq)]
pub struct FaultRow {
    /// The sentence.
    pub text: String,
    /// What brings the field into view.
    pub show: Option<Action>,
}
