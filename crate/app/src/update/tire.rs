//! The tire of a leg: taken from the table, kept as the previous one.
use gearswing_gear::field::leg_before;
use gearswing_gear::model::{Gear, Kept, MOST_KEPT, PREVIOUS_TIRE};
use gearswing_report::page::changes;
use gearswing_report::page::history::{Step, step_words};
use gearswing_solver::tires::sizes;

use crate::effect::Effect;
use crate::fields;
use crate::state::{Act, State};
use crate::view::NoticeKind;

/// Keeps a leg's tire in the state with the previous tires, of which the other legs keep theirs, and compares with it.
pub(super) fn keep_tire(state: &mut State, leg: usize) -> Vec<Effect> {
    let is_first = state.gear().previous().is_none();
    if is_first && state.gear().kept.len() >= MOST_KEPT {
        state.session.notices.problem(changes::too_many(MOST_KEPT));
        return Vec::new();
    }
    let mut effects = state.give_id();
    let text = changes::tire_kept(&state.leg_title(leg));
    state
        .session
        .notices
        .add_of_now(NoticeKind::Info, text.clone(), Vec::new());
    effects.push(Effect::Announce { text });
    state.edit(Act::single(step_words(Step::KeepTire)), |gear| {
        let at = gear.previous().unwrap_or(gear.kept.len());
        let before = match gear.kept.get(at) {
            Some(known) => {
                let mut before = Gear::clone(&known.gear);
                let tire = gear.legs.get(leg)?.wheel.tire.clone();
                let same = leg_before(gear, &before, leg)?;
                before.legs.get_mut(same)?.wheel.tire = tire;
                before
            }
            None => gear.clone(),
        };
        let kept = Kept::of(&before, PREVIOUS_TIRE.to_owned());
        match gear.kept.get_mut(at) {
            Some(known) => *known = kept,
            None => gear.kept.push(kept),
        }
        gear.before = Some(at);
        Some(())
    });
    effects
}

pub(super) fn take_tire(state: &mut State, path: &str, row: &str) {
    let Some(row) = row.parse::<usize>().ok().and_then(|row| sizes().get(row)) else {
        return;
    };
    let act = Act::single(step_words(Step::TakeTire { size: row.size }));
    state.edit(act, |gear| {
        gear.legs.get_mut(fields::leg_of(path)?)?.wheel.tire = row.to_tire();
        Some(())
    });
}
