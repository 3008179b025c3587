//! Results for the document, and what follows from them.
use gearswing_solver::result::{Finding, Verdict};

use super::times;
use crate::effect::Effect;
use crate::scene;
use crate::state::{Gesture, State};

/// Whether the document has changed since its results were worked out.
#[must_use]
pub fn has_changed(state: &State) -> bool {
    state.derived.revision != state.document.revision()
}

/// Works out the results for the document as it is, leg by leg where something has changed. Call
/// it after the effects of [`crate::update`] have been done.
pub fn settle(state: &mut State) -> Vec<Effect> {
    let mut effects = Vec::new();
    let gear_revision = state.document.revision();
    let comparing = state.session.comparing;
    let changed = has_changed(state);
    let (document, derived) = (&state.document, &mut state.derived);
    derived.settle(document.gear(), gear_revision, comparing);
    if state.session.seek_worst {
        state.session.seek_worst = false;
        seek_worst(state);
    }
    if let Some(good) = state.derived.good(state.session.leg) {
        let (first, last) = good.range();
        state.session.progress = state.session.progress.clamp(first, last);
    }
    // A drag wants its frame; the times follow when it is over.
    if !matches!(state.session.gesture, Gesture::Drag { .. }) {
        let on_jacks = state.session.clock.on_jacks;
        let of = (gear_revision, on_jacks);
        state.timed.settle(state.document.gear(), of);
        state.stops.settle(state.document.gear(), gear_revision);
    }
    times::follow(state);
    fit_once(state);
    if changed {
        effects.push(state.title());
    }
    let resting =
        !matches!(state.session.gesture, Gesture::Drag { .. }) && state.session.playing.is_none();
    if resting && state.link_revision != gear_revision {
        state.link_revision = gear_revision;
        state.measure_link();
    }
    effects
}

/// The first sheet of a leg is fitted, and then stays while the leg changes.
fn fit_once(state: &mut State) {
    let leg = state.session.leg;
    let size = state.session.drawing_size_px;
    let known = state
        .session
        .sheets
        .get(&leg)
        .is_some_and(|sheet| !sheet.fitted || sheet.viewport.size_px() == size);
    if !known && state.derived.good(leg).is_some() {
        let sheet = scene::fitted(state);
        state.session.sheets.insert(leg, sheet);
    }
}

/// How much an answer asks to be looked at first.
fn gravity(verdict: Verdict) -> u8 {
    match verdict {
        Verdict::Bad => 3,
        Verdict::Marginal => 2,
        Verdict::NotShown => 1,
        Verdict::Good => 0,
    }
}

/// The leg, and the place, with the worst answer; a leg with a faulty model comes before all.
fn seek_worst(state: &mut State) {
    let faulty = state.derived.legs.iter().position(|leg| leg.faded());
    if let Some(leg) = faulty {
        state.session.leg = leg;
        return;
    }
    let mut worst: Option<(u8, usize, &Finding)> = None;
    for (index, leg) in state.derived.legs.iter().enumerate() {
        for finding in leg.good.iter().flat_map(|good| &good.result.findings) {
            let grave = gravity(finding.verdict);
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
