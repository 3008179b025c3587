//! States kept to compare with, and taking back what has changed since.
use gearswing_gear::field::{Place, take_back};
use gearswing_gear::model::{Gear, Kept};
use gearswing_report::change_text;
use gearswing_report::page::changes as words;
use gearswing_report::page::history::{Step, step_words};
use gearswing_report::page::sheets::Sheet;

use crate::effect::Effect;
use crate::msg::Compare;
use crate::state::{Act, State};

pub(super) fn compare(state: &mut State, msg: Compare) -> Vec<Effect> {
    state.end_gesture();
    let act = |step: Step| Act::single(step_words(step));
    match msg {
        Compare::Keep => return keep(state),
        Compare::With { state: which } => {
            state.edit(act(Step::Compare), |gear| {
                gear.before = which.filter(|at| *at < gear.kept.len());
                Some(())
            });
        }
        Compare::Rename { name } => {
            state.edit(act(Step::Compare), |gear| {
                let at = gear.before?;
                gear.kept.get_mut(at)?.name = name;
                Some(())
            });
        }
        Compare::Remove { state: at } => {
            state.edit(act(Step::Compare), |gear| remove(gear, at));
        }
        Compare::TakeBack { place } => take(state, place),
        Compare::TakeAllBack => {
            state.edit(act(Step::TakeAllBack), |gear| {
                let before = gear.state_before()?;
                *gear = Gear {
                    name: gear.name.clone(),
                    note: gear.note.clone(),
                    kept: gear.kept.clone(),
                    before: gear.before,
                    ..(*before.gear).clone()
                };
                Some(())
            });
        }
    }
    Vec::new()
}

fn keep(state: &mut State) -> Vec<Effect> {
    let taken = |name: &str| state.gear().kept.iter().any(|kept| kept.name == name);
    let mut names = (1..).map(words::state_name);
    let Some(name) = names.find(|name| !taken(name)) else {
        return Vec::new();
    };
    state.edit(Act::single(step_words(Step::Keep)), |gear| {
        let kept = Kept::of(gear, name.clone());
        gear.kept.push(kept);
        gear.before = Some(gear.kept.len() - 1);
        Some(())
    });
    let text = words::kept(&name);
    state.session.notices.info(text.clone());
    vec![Effect::Announce { text }]
}

fn remove(gear: &mut Gear, at: usize) -> Option<()> {
    if at >= gear.kept.len() {
        return None;
    }
    gear.kept.remove(at);
    gear.before = match gear.before {
        Some(before) if before == at => None,
        Some(before) if before > at => Some(before - 1),
        before => before,
    };
    Some(())
}

fn take(state: &mut State, place: Place) {
    let Some(before) = state.gear().state_before().map(|kept| kept.gear.clone()) else {
        return;
    };
    let units = state.session.units;
    let found = state.changes().into_iter();
    let of = found
        .filter(|change| change.place == place)
        .map(|change| change_text(&change, state.gear(), units).place)
        .next()
        .unwrap_or_default();
    state.edit(Act::single(step_words(Step::Change { of: &of })), |gear| {
        take_back(place, gear, &before)
    });
}

impl State {
    /// What differs from the state compared with.
    pub(crate) fn changes(&self) -> Vec<gearswing_gear::field::Change> {
        let gear = self.gear();
        gear.state_before().map_or_else(Vec::new, |before| {
            gearswing_gear::field::changes(gear, &before.gear)
        })
    }

    /// The sheet of what has changed goes with the last kept state.
    pub(crate) fn leave_changes(&mut self) {
        if self.session.sheet == Sheet::Changes && self.gear().kept.is_empty() {
            self.session.sheet = Sheet::default();
        }
    }
}
