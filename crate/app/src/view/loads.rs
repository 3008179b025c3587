//! Load cases side by side, the largest load of each joint, and the facts of lock and fall.
use gearswing_report::TitledTable;
use gearswing_report::page::loads as words;
use gearswing_units::UnitChoice;

use super::answers::subject;
use crate::scene::{self, Now};
use crate::state::{Good, State};

/// The tables of the selected leg; none without a result.
#[must_use]
pub fn load_tables(state: &State) -> Vec<TitledTable> {
    let (leg, units) = (state.session.leg, state.session.units);
    let good = state.derived.good(leg);
    good.map_or_else(Vec::new, |good| {
        let about = subject(state.gear(), leg, good, units);
        let mut tables: Vec<TitledTable> = gearswing_report::load_tables(&about).into();
        tables.insert(0, gearswing_report::lock_facts(&about));
        tables.retain(|table| !(table.columns.is_empty() && table.notes.is_empty()));
        tables
    })
}

/// The load arrows in words.
pub(super) fn loads_text(good: &Good, now: &Now, units: UnitChoice) -> String {
    let Some(force) = &now.loads else {
        return words::NONE_SENTENCE.to_owned();
    };
    let said: Vec<_> = scene::loads(good, &now.pose, force)
        .iter()
        .map(|load| (load.name, load.force))
        .collect();
    words::loads_sentence(&said, force.holding, units)
}
