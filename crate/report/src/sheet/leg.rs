//! One leg of the report.
use gearswing_gear::model::View;
use gearswing_units::Quantity;

use super::ReportOptions;
use super::lines::Lines;
use super::{beside, cases, fall, numbers};
use crate::name::name_words;
use crate::subject::Subject;
use crate::table::stations_text;
use crate::text::{capital_first, leg_name};
use crate::{FindingText, finding_text, jam_text};

pub(super) fn leg(lines: &mut Lines, subject: &Subject, options: ReportOptions) {
    let result = subject.result;
    lines.heading(&capital_first(&leg_name(&result.name, subject.leg)));
    lines.text(2, &about(subject));
    for finding in &result.findings {
        lines.blank();
        answer(lines, &finding_text(subject, finding));
    }
    stops(lines, subject);
    numbers::clearances(lines, subject);
    beside::beside(lines, subject);
    numbers::force(lines, subject);
    cases::put(lines, subject);
    numbers::lock(lines, subject);
    fall::fall(lines, subject);
    if options.station_rows > 0 {
        numbers::title(lines, "Stations");
        lines.block(&stations_text(subject, options.station_rows));
    }
}

fn about(subject: &Subject) -> String {
    let view = match subject.result.view {
        View::Side => "side view, seen from the left",
        View::Front => "front view, seen from ahead",
    };
    let swing = subject.say(Quantity::Angle, subject.result.swing_up.abs());
    let tire = subject.model().map(|leg| &leg.wheel.tire);
    let tire = tire.map_or_else(String::new, |tire| {
        let size = name_words(&tire.size);
        let size = if size.is_empty() {
            size
        } else {
            format!(" {size}")
        };
        format!(
            ", tire{size} {} by {}",
            subject.length(tire.diameter),
            subject.length(tire.width)
        )
    });
    format!("{}, swings {swing} to up{tire}.", capital_first(view))
}

fn answer(lines: &mut Lines, text: &FindingText) {
    lines.text(2, &format!("{} {}.", text.question, text.verdict));
    lines.text(4, &text.sentence);
    for governing in &text.governs {
        let mark = governing
            .mark
            .map_or_else(String::new, |mark| format!(" [{}]", mark.as_str()));
        lines.item(4, "Rests on: ", &format!("{}{mark}", governing.text));
    }
    for caution in &text.cautions {
        lines.item(4, "Caution: ", caution);
    }
    for step in &text.try_next {
        lines.item(4, "Next: ", step);
    }
}

/// What stops the leg and what its mechanism goes through on the way.
fn stops(lines: &mut Lines, subject: &Subject) {
    use gearswing_solver::result::MechanismEventKind as Kind;
    let result = subject.result;
    if result.jams.is_empty() && result.events.is_empty() {
        return;
    }
    numbers::title(lines, "On the way up");
    for jam in &result.jams {
        let text = format!(
            "Stops {}: {}.",
            subject.at(&jam.place),
            jam_text(subject, jam.cause)
        );
        lines.item(2, "- ", &text);
    }
    for event in &result.events {
        let at_line = event.place.progress <= 0.0 && result.excursion.is_some();
        let what = match event.kind {
            Kind::KneeStraight if at_line => {
                lines.item(2, "- ", "The knee comes back through the straight line.");
                continue;
            }
            Kind::KneeStraight => "The brace stands straight",
            Kind::KneeFolded => "The brace links lie on each other",
            Kind::ActuatorDeadPoint => "The actuator has no arm",
        };
        lines.item(2, "- ", &format!("{what} {}.", subject.at(&event.place)));
    }
}
