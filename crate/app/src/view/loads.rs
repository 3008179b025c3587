//! Load cases side by side, the largest load of each joint, and the facts of lock and fall.
use gearswing_report::TitledTable;
use gearswing_solver::TireChoice;
use gearswing_units::{Quantity, UnitChoice, format};

use super::answers::subject;
use crate::scene::{self, Now};
use crate::state::{Good, State};

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

/// The load arrows in words.
pub(super) fn loads_text(good: &Good, now: &Now, units: UnitChoice) -> String {
    let Some(force) = &now.loads else {
        return "No forces are worked out here.".to_owned();
    };
    let said: Vec<String> = scene::loads(good, &now.pose, force)
        .iter()
        .map(|load| {
            let angle = load.force.y.atan2(load.force.x);
            let direction = format(Quantity::Angle, units, angle);
            format!("{} at {direction}", scene::load_text(load, units))
        })
        .collect();
    format!(
        "Force on the moving part at each pin while the leg is held still here, without friction; angles counter-clockwise from the right: {}. At P, B0 and A0 the airframe makes it, at B1 the brace, at A1 the actuator, which {}.",
        said.join(", "),
        if force.holding < 0.0 {
            "pulls"
        } else {
            "pushes"
        }
    )
}
