//! What explains a leg that stopped on the jacks.
use super::lines::Lines;
use super::numbers;
use crate::answered::Answered;
use crate::stopped::{
    Stopped, cause_sentence, check_sentence, fit_words, readings_words, stop_cautions,
    stop_error_text, stop_lead, stop_notes,
};
use crate::text::capital_first;

pub(super) fn stopped(lines: &mut Lines, answered: &Answered) {
    if answered.stops.is_empty() {
        return;
    }
    lines.heading("Stopped short, and what may explain it");
    for (leg, found) in answered.stops {
        let stopped = Stopped {
            gear: answered.gear,
            leg: *leg,
            units: answered.units,
        };
        let name = answered.gear.legs.get(*leg).map_or("", |leg| &leg.name);
        numbers::title(lines, &capital_first(&crate::text::leg_name(name, *leg)));
        let found = match found {
            Ok(found) => found,
            Err(error) => {
                lines.text(2, &capital_first(&stop_error_text(&stopped, error)));
                continue;
            }
        };
        lines.text(2, &stop_lead(&stopped, found));
        for (at, one) in found.explanations.iter().enumerate() {
            let readings = readings_words(&stopped, found, one);
            let fit = capital_first(fit_words(one.fit));
            let lead = format!("{}. {fit}: ", at.saturating_add(1));
            lines.item(
                2,
                &lead,
                &format!(
                    "{} [{}]",
                    cause_sentence(&stopped, &one.cause),
                    readings.join("; ")
                ),
            );
        }
        if let Some(next) = &found.next_check {
            lines.text(2, &check_sentence(&stopped, next));
        }
    }
    lines.blank();
    for caution in stop_cautions() {
        lines.item(2, "Caution: ", caution);
    }
    for note in stop_notes() {
        lines.item(2, "Note: ", note);
    }
}
