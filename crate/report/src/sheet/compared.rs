//! What differs between two gear files, and the answers of both.
use gearswing_gear::field::{changes, leg_before};
use gearswing_gear::model::Gear;
use gearswing_solver::result::LegResult;

use super::lines::Lines;
use crate::answered::{Answered, LegAnswer};
use crate::cautions::general_cautions;
use crate::compared::change_text;
use crate::finding::{finding_line, question_text};
use crate::name::{file_words, name_words};
use crate::page::changes::from_to;
use crate::program::program_words;
use crate::text::{capital_first, leg_name};

/// What differs in a gear from a state before, and every answer of both.
#[must_use]
pub fn comparison_text(now: &Answered, before: &Answered) -> String {
    let mut lines = Lines::new();
    for (what, answered) in [("Now", now), ("Before", before)] {
        let name = name_words(&answered.gear.name);
        let file = file_words(answered.file);
        lines.text(0, &format!("{what}: {name} ({file})"));
    }
    lines.text(0, &format!("Worked out by {}", program_words(&now.program)));
    lines.heading("Changes");
    let found = changes(now.gear, before.gear);
    for change in &found {
        let text = change_text(change, now.gear, now.units);
        let words = from_to(&text.before, &text.now);
        lines.item(2, "- ", &format!("{}: {words}", text.place));
    }
    if found.is_empty() {
        lines.text(2, "None.");
    }
    lines.heading("Answers");
    lines.text(0, "The gear against time is not compared.");
    for (leg, answer) in now.legs {
        lines.text(0, &capital_first(&named(now.gear, *leg)));
        let at = leg_before(now.gear, before.gear, *leg);
        let was = at.and_then(|at| before.legs.iter().find(|(index, _)| *index == at));
        answers(&mut lines, now, (*leg, answer.as_ref().ok()), before, was);
    }
    lines.heading("Cautions");
    for caution in general_cautions() {
        lines.item(2, "- ", caution);
    }
    lines.into_text()
}

fn named(gear: &Gear, leg: usize) -> String {
    leg_name(gear.legs.get(leg).map_or("", |leg| &leg.name), leg)
}

/// What one leg answered then and answers now.
fn answers(
    lines: &mut Lines,
    now: &Answered,
    (leg, result): (usize, Option<&LegResult>),
    before: &Answered,
    was: Option<&LegAnswer>,
) {
    let Some(result) = result else {
        lines.text(2, "Cannot be worked out.");
        return;
    };
    let was = was.map(|(at, answer)| (*at, answer.as_ref().ok()));
    for finding in &result.findings {
        let line = finding_line(&now.subject(leg, result), finding);
        let before = match was {
            None => "no such leg".to_owned(),
            Some((_, None)) => "could not be worked out".to_owned(),
            Some((at, Some(old))) => {
                let same =
                    |other: &&gearswing_solver::result::Finding| other.question == finding.question;
                let other = old.findings.iter().find(same);
                other.map_or_else(String::new, |other| {
                    finding_line(&before.subject(at, old), other)
                })
            }
        };
        if before == line {
            lines.item(2, "", &format!("{line} (as before)"));
        } else {
            lines.item(2, "", &line);
            let question = question_text(finding.question);
            let before = before.strip_prefix(question).unwrap_or(&before).trim();
            lines.item(4, "before: ", before);
        }
    }
}
