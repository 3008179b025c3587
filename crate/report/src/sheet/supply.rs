//! The gear against time.
use gearswing_solver::result::{Direction, Run};

use super::lines::Lines;
use super::numbers;
use crate::answered::Answered;
use crate::timed::{
    Timed, case_sentence, down_title, events_text, run_missing, run_sentences, supply_cautions,
    supply_error_text, supply_simplified,
};

pub(super) fn supply(lines: &mut Lines, answered: &Answered) {
    let Some(cycle) = answered.cycle else {
        return;
    };
    let timed = Timed {
        gear: answered.gear,
        units: answered.units,
    };
    lines.heading("Against time");
    let cycle = match cycle {
        Ok(cycle) => cycle,
        Err(error) => {
            lines.text(2, &supply_error_text(&timed, error));
            return;
        }
    };
    lines.text(2, &case_sentence(&timed, cycle));
    for (direction, title) in [(Direction::Up, "Up"), (Direction::Down, down_title(cycle))] {
        match cycle.run(direction) {
            Some(found) => run(lines, &timed, found, title),
            None => lines.text(2, &run_missing(&timed, cycle, direction)),
        }
    }
    lines.blank();
    for caution in supply_cautions(&answered.gear.supply.source) {
        lines.item(2, "Caution: ", caution);
    }
    for simple in supply_simplified(&answered.gear.supply.source) {
        lines.item(2, "Simplified: ", simple);
    }
}

fn run(lines: &mut Lines, timed: &Timed, run: &Run, title: &str) {
    numbers::title(lines, title);
    for sentence in run_sentences(timed, run) {
        lines.item(2, "- ", &sentence);
    }
    lines.block(&events_text(timed, run));
}
