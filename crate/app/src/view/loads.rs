//! Load cases side by side, and the largest load of each joint.
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
        gearswing_report::load_tables(&about).into()
    })
}
