//! The whole report of a gear file as readable text.

use gearswing_solver::faults::Fault;
use gearswing_solver::result::Verdict;

use super::leg;
use super::lines::Lines;
use super::stopped::stopped;
use super::supply::supply;
use crate::answered::{Answered, LegAnswer};
use crate::cautions::{general_cautions, not_modelled};
use crate::fault_text;
use crate::name::{clean, file_words, name_words};
use crate::page::notes;
use crate::program::program_words;
use crate::text::{capital_first, leg_name};

/// What a report contains besides the answers.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct ReportOptions {
    /// Rows of the stations table, 0 = no table.
    pub station_rows: usize,
}

/// Over the answers for the state that is kept with the previous tire.
pub const WITH_PREVIOUS_TIRE: &str = "Answers for the gear as it was kept with the previous tire.";

/// The whole report: cautions first, then for each leg the three answers with what they rest on,
/// the tightest places, force, lock and some stations, and at the end what is not modeled.
#[must_use]
pub fn report_text(answered: &Answered, options: ReportOptions) -> String {
    let mut lines = Lines::new();
    head(&mut lines, answered);
    lines.heading("Cautions");
    for caution in general_cautions() {
        lines.item(2, "- ", caution);
    }
    gear_faults(&mut lines, answered);
    summary(&mut lines, answered);
    for (index, answer) in answered.legs {
        match answer {
            Ok(result) => leg::leg(&mut lines, &answered.subject(*index, result), options),
            Err(faults) => faulty_leg(&mut lines, answered, *index, &faults.0),
        }
    }
    supply(&mut lines, answered);
    stopped(&mut lines, answered);
    lines.heading("Not modeled");
    for missing in not_modelled() {
        lines.item(2, "- ", missing);
    }
    lines.into_text()
}

fn head(lines: &mut Lines, answered: &Answered) {
    let gear = answered.gear;
    let name = name_words(&gear.name);
    lines.text(
        0,
        if name.is_empty() {
            "Gear without a name"
        } else {
            &name
        },
    );
    lines.text(0, &format!("File: {}", file_words(answered.file)));
    let program = program_words(&answered.program);
    lines.text(0, &format!("Worked out by {program}"));
    if answered.previous {
        lines.text(0, WITH_PREVIOUS_TIRE);
    }
    // A note keeps its own lines.
    for line in gear
        .note
        .lines()
        .map(str::trim)
        .filter(|line| !line.is_empty())
    {
        lines.text(0, &clean(line));
    }
    for (at, note) in gear.notes.iter().enumerate() {
        let head = notes::head(at + 1, &notes::hangs_on(note, gear, None, answered.units));
        lines.text(0, &format!("{head}: {}", notes::note_words(note)));
    }
}

/// Faults of the gear as a whole, once; every leg carries them.
fn gear_faults(lines: &mut Lines, answered: &Answered) {
    let mut said: Vec<String> = Vec::new();
    for (_, answer) in answered.legs {
        if let Err(faults) = answer {
            for fault in faults.0.iter().filter(|fault| fault.leg.is_none()) {
                let text = fault_text(fault, answered.gear, answered.units);
                if !said.contains(&text) {
                    said.push(text);
                }
            }
        }
    }
    if !said.is_empty() {
        lines.heading("To be put right first");
        for text in &said {
            lines.item(2, "- ", text);
        }
    }
}

fn summary(lines: &mut Lines, answered: &Answered) {
    lines.heading("Answers");
    if answered.legs.is_empty() {
        lines.text(2, "There is no leg to answer for.");
    }
    for leg in answered.legs {
        lines.item(2, "", &summary_line(answered, leg));
    }
}

fn summary_line(answered: &Answered, (index, answer): &LegAnswer) -> String {
    let name = capital_first(&leg_title(answered, *index));
    match answer {
        Err(_) => format!("{name}: not worked out, its data have faults."),
        Ok(result) => {
            let answers: Vec<String> = result
                .findings
                .iter()
                .map(|finding| {
                    let look = match finding.verdict {
                        Verdict::NotShown => {
                            let subject = answered.subject(*index, result);
                            format!(": {}", crate::finding_short(&subject, finding))
                        }
                        _ => String::new(),
                    };
                    format!(
                        "{} {}{look}.",
                        crate::question_text(finding.question),
                        crate::verdict_text(finding.question, finding.verdict)
                    )
                })
                .collect();
            format!("{name}: {}", answers.join(" "))
        }
    }
}

fn leg_title(answered: &Answered, index: usize) -> String {
    let name = answered.gear.legs.get(index).map_or("", |leg| &leg.name);
    leg_name(name, index)
}

fn faulty_leg(lines: &mut Lines, answered: &Answered, index: usize, faults: &[Fault]) {
    lines.heading(&capital_first(&leg_title(answered, index)));
    lines.text(2, "Not worked out. To be put right:");
    for fault in faults.iter().filter(|fault| fault.leg.is_some()) {
        lines.item(2, "- ", &fault_text(fault, answered.gear, answered.units));
    }
    if faults.iter().all(|fault| fault.leg.is_none()) {
        lines.item(2, "- ", "What is said above of the gear as a whole.");
    }
}
