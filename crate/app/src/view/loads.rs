//! Load cases side by side, the largest load of each joint, and the facts of lock and fall.
use gearswing_report::TitledTable;
use gearswing_solver::TireChoice;

use super::answers::subject;
use crate::state::State;

/// The tables of the selected leg; none without a result.
#[must_use]
pub fn load_tables(state: &State) -> Vec<TitledTable> {
    let (leg, units) = (state.session.leg, state.session.units);
    let good = state.derived.good(leg);
    good.map_or_else(Vec::new, |good| {
        let about = subject(state.gear(), leg, good, TireChoice::Fitted, units);
        let mut tables: Vec<TitledTable> = gearswing_report::load_tables(&about).into();
        tables.insert(0, gearswing_report::lock_facts(&about));
        tables.retain(|table| !(table.columns.is_empty() && table.notes.is_empty()));
        tables
    })
}
