//! The page without a browser: a gear with all that is worked out of it, for a program that prints it.
use gearswing_gear::model::Gear;
use gearswing_report::Program;
use gearswing_units::UnitChoice;
use gearswing_work::{Part, Working};

use crate::effect::Effect;
use crate::msg::{Late, Msg};
use crate::state::{Document, Origin, Start, State};
use crate::update::{settle, update};

/// A gear as the page has it once everything is worked out, at the worst place of its worst leg.
#[must_use]
pub fn worked_out(gear: Gear, program: Program<'static>, units: UnitChoice) -> State {
    let (mut state, _) = State::new(Start {
        program,
        ..Start::default()
    });
    state.session.units = units;
    state.show(Document::new(gear, 0), Origin::Link);
    state.session.seek_worst = true;
    loop {
        let effects = settle(&mut state);
        if effects.is_empty() {
            return state;
        }
        for effect in effects {
            if let Effect::WorkOut { of, .. } = effect {
                work_out(&mut state, of);
            }
        }
    }
}

/// Answers a question of the page.
fn work_out(state: &mut State, of: u64) {
    let mut working = Working::new(state.gear().clone().into());
    loop {
        match working.part() {
            Part::GoesOn => {}
            Part::Found(found) => {
                update(state, Msg::Late(Late::Found { of, found }));
            }
            Part::Over => {
                update(state, Msg::Late(Late::Over { of }));
                return;
            }
        }
    }
}
