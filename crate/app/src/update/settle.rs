//! Results for the document, and what follows from them.
use gearswing_report::page::sheets::Sheet;
use gearswing_report::page::working::Work;
use gearswing_solver::result::Finding;

use super::times;
use crate::effect::Effect;
use crate::scene;
use crate::state::{Gesture, State};

/// Whether the document has changed since its results were worked out.
#[must_use]
pub fn has_changed(state: &State) -> bool {
    state.derived.revision != state.document.revision()
}

/// Works out all results for the document as it is, where something has changed. Call it after the
/// effects of [`crate::update`] have been done.
pub fn settle(state: &mut State) -> Vec<Effect> {
    let mut effects = Vec::new();
    while settle_part(state, &mut effects) {}
    effects
}

/// Makes everything ready for the form on paper: the results, and the mark by which answers to the paper's link find
/// the gear.
pub fn ready_to_print(state: &mut State) -> Vec<Effect> {
    state.with_id(settle)
}

/// Works out a part of the results: one leg. True = there is more; a caller may do other things between two
/// parts, or [`crate::update`] the state, and what has become idle is then not gone on with.
pub fn settle_part(state: &mut State, effects: &mut Vec<Effect>) -> bool {
    state.working = if state.given_up == Some(state.revision()) {
        None
    } else {
        part(state)
    };
    if state.working.is_none() {
        finish(state, effects);
    }
    fit_once(state);
    state.working.is_some()
}

/// Whether a part of the results is still to be worked out.
#[must_use]
pub fn is_working(state: &State) -> bool {
    state.working.is_some()
}

/// One part, and what it was; `None` = nothing was left.
fn part(state: &mut State) -> Option<Work> {
    let revision = state.document.revision();
    let answers_come = has_changed(state);
    let gear = state.document.gear();
    if state.derived.settle_part(gear, revision) {
        return Some(Work::Legs(state.derived.left(gear)));
    }
    if answers_come {
        answered(state);
        return Some(Work::Next);
    }
    if state.before.settle_part(gear) {
        return Some(Work::Next);
    }
    if state.session.sheet == Sheet::Changes && state.beside.settle_part(gear) {
        return Some(Work::Next);
    }
    None
}

/// What follows from the answers, before the times are there.
fn answered(state: &mut State) {
    if state.session.seek_worst {
        state.session.seek_worst = false;
        seek_worst(state);
    }
    if let Some(good) = state.derived.good(state.session.leg) {
        let (first, last) = good.range();
        state.session.progress = state.session.progress.clamp(first, last);
    }
}

/// What follows from the results.
fn finish(state: &mut State, effects: &mut Vec<Effect>) {
    let revision = state.document.revision();
    answered(state);
    times::follow(state);
    if state.titled_revision != revision {
        state.titled_revision = revision;
        effects.push(state.title());
    }
    // A drag wants its frame; what comes after the answers follows when it is over.
    let dragged = matches!(state.session.gesture, Gesture::Drag { .. });
    if !dragged && state.given_up != Some(revision) {
        state.ask_late(effects);
    }
    let resting = !dragged && state.session.playing.is_none();
    if resting && state.link_revision != revision {
        state.link_revision = revision;
        state.measure_link();
    }
}

impl State {
    /// The legs are being worked out, and the times that are there are of an earlier state.
    pub(crate) fn times_are_coming(&self) -> bool {
        matches!(self.working, Some(Work::Legs(_) | Work::Next))
    }
}

/// The first paper of a leg is fitted, and then stays while the leg changes.
fn fit_once(state: &mut State) {
    let leg = state.session.leg;
    let size = state.session.drawing_size_px;
    let known = state
        .session
        .papers
        .get(&leg)
        .is_some_and(|paper| !paper.fitted || paper.viewport.size_px() == size);
    if !known && state.derived.good(leg).is_some() {
        let paper = scene::fitted(state);
        state.session.papers.insert(leg, paper);
    }
}

/// The leg, and the place, with the worst answer; a leg with a faulty model comes before all.
fn seek_worst(state: &mut State) {
    let faulty = state
        .derived
        .legs
        .iter()
        .position(|leg| !leg.faults.is_empty());
    if let Some(leg) = faulty {
        state.session.leg = leg;
        return;
    }
    let mut worst: Option<(u8, usize, &Finding)> = None;
    for (index, leg) in state.derived.legs.iter().enumerate() {
        for finding in leg.good.iter().flat_map(|good| &good.result.findings) {
            let grave = finding.verdict.gravity();
            let graver = worst.is_none_or(|(most, ..)| grave > most);
            if graver && (grave > 1 || worst.is_none()) {
                worst = Some((grave, index, finding));
            }
        }
    }
    if let Some((grave, leg, finding)) = worst
        && grave > 1
    {
        let place = finding.place;
        state.session.leg = leg;
        if let Some(place) = place {
            state.session.progress = place.progress;
        }
    } else if let Some(good) = state.derived.good(state.session.leg) {
        state.session.progress = good.range().0;
    }
}
