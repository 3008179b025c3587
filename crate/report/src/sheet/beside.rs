//! The tire against its own leg and along its trunnion, as tables.
use gearswing_solver::result::{RequirementBasis, TireState};
use gearswing_units::{Quantity, format_bare};

use super::lines::Lines;
use super::numbers::title;
use crate::finding::side_words;
use crate::subject::{Subject, part_name};
use crate::table::{Align, Column, aligned};

/// One row of either table.
struct Row {
    to: String,
    tire: TireState,
    clearance: f64,
    required: f64,
    basis: RequirementBasis,
    travel: Option<f64>,
}

/// The tire and its own leg, and its room along the trunnion.
pub(super) fn beside(lines: &mut Lines, subject: &Subject) {
    let clearance = &subject.result.clearance;
    let own: Vec<Row> = clearance
        .own
        .iter()
        .map(|own| Row {
            to: part_name(own.part).to_owned(),
            tire: own.tire,
            clearance: own.tightest.clearance,
            required: own.requirement.clearance,
            basis: own.requirement.basis,
            travel: Some(own.tightest.place.travel),
        })
        .collect();
    table(lines, subject, "The tire and its own leg", &own);
    let room: Vec<Row> = clearance
        .room
        .rows
        .iter()
        .map(|room| Row {
            to: side_words(subject, room.side).to_owned(),
            tire: room.tire,
            clearance: room.clearance,
            required: room.requirement.clearance,
            basis: room.requirement.basis,
            travel: None,
        })
        .collect();
    table(lines, subject, "Room along the trunnion", &room);
}

fn table(lines: &mut Lines, subject: &Subject, name: &str, rows: &[Row]) {
    if rows.is_empty() {
        return;
    }
    title(lines, name);
    let texts = |text: &dyn Fn(&Row) -> String| -> Vec<String> { rows.iter().map(text).collect() };
    let unit = Quantity::Length.unit_label(subject.units);
    let length = |si: f64| format_bare(Quantity::Length, subject.units, si).replace('-', "−");
    let mut columns = vec![
        Column::new("to", Align::Left, texts(&|row| row.to.clone())),
        Column::new(
            "tire",
            Align::Left,
            texts(&|row| match row.tire {
                TireState::New => "new".to_owned(),
                TireState::Grown => "grown".to_owned(),
            }),
        ),
        Column::new(
            format!("clearance {unit}"),
            Align::Right,
            texts(&|row| length(row.clearance)),
        ),
        Column::new(
            format!("required {unit}"),
            Align::Right,
            texts(&|row| length(row.required)),
        ),
        Column::new(
            "whose figure",
            Align::Left,
            texts(&|row| match row.basis {
                RequirementBasis::CommonPractice => "default".to_owned(),
                RequirementBasis::Gear | RequirementBasis::Obstacle => {
                    "yours, whole gear".to_owned()
                }
            }),
        ),
    ];
    if rows.iter().any(|row| row.travel.is_some()) {
        columns.push(Column::new(
            "travel",
            Align::Right,
            texts(&|row| {
                row.travel
                    .map_or_else(String::new, |at| subject.say(Quantity::Travel, at))
            }),
        ));
    }
    lines.block(&aligned("  ", &columns));
}
