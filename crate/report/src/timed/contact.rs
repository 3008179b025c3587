//! Legs that touch, whatever the times say.
use gearswing_solver::result::LegResult;
use gearswing_units::Quantity;

use super::Timed;
use crate::subject::{obstacle_words, part_name};
use crate::text::capital_first;

/// For each leg that touches by the drawing, that its times take no notice of it; empty where none
/// does.
#[must_use]
pub fn contact_sentences(timed: &Timed, results: &[(usize, &LegResult)]) -> Vec<String> {
    let touches = results.iter().filter_map(|(leg, result)| {
        let pairs = result.clearance.pairs.iter();
        let (first, pair) = pairs
            .filter_map(|pair| Some((pair.first_contact.as_ref()?.place, pair)))
            .min_by(|a, b| a.0.progress.total_cmp(&b.0.progress))?;
        Some(capital_first(&format!(
            "{} touches by the drawing: {} at {}, from {} of travel. The times take no notice of that.",
            timed.the_leg(*leg),
            part_name(pair.part),
            obstacle_words(&pair.obstacle_name, pair.obstacle),
            timed.say(Quantity::Travel, first.travel)
        )))
    });
    touches.collect()
}
