//! The gear against time: scrubbing it, letting it run, and the drawing that follows.
use crate::effect::Effect;
use crate::msg::Times;
use crate::scene;
use crate::state::{State, progress_at_time};

/// A frame later than this is taken as one of this length (s).
const LONGEST_FRAME_S: f64 = 0.1;
/// Step when less motion is asked for (s).
const STEP_S: f64 = 1.0;

pub(super) fn times(state: &mut State, msg: Times) -> Vec<Effect> {
    match msg {
        Times::Scrub { at } => {
            if let Some(time_s) = scene::time_at(state, at) {
                seek(state, time_s);
            }
        }
        Times::Seek { time_s } => seek(state, time_s),
        Times::Select { down } => {
            state.session.clock.down = down;
            seek(state, 0.0);
        }
        Times::OnJacks { on } => {
            state.session.clock.on_jacks = on;
            state.session.clock.running = false;
        }
        Times::Toggle => return toggle(state),
    }
    Vec::new()
}

/// Goes to a time, held to the run.
fn seek(state: &mut State, time_s: f64) {
    let clock = &mut state.session.clock;
    clock.running = false;
    if let Some(run) = state.later.run(clock.on_jacks, clock.down)
        && time_s.is_finite()
    {
        clock.at_s = Some(time_s.clamp(0.0, run.time));
        clock.put = None;
        state.session.playing = None;
    }
}

fn toggle(state: &mut State) -> Vec<Effect> {
    let clock = &mut state.session.clock;
    if std::mem::take(&mut clock.running) {
        return Vec::new();
    }
    let Some(run) = state.later.run(clock.on_jacks, clock.down) else {
        return Vec::new();
    };
    // From its end it begins again.
    let at_s = clock.at_s.filter(|at| *at < run.time).unwrap_or(0.0);
    clock.at_s = Some(at_s);
    clock.put = None;
    clock.running = true;
    clock.last_s = None;
    state.session.playing = None;
    state.end_gesture();
    vec![Effect::AskFrame]
}

pub(super) fn frame(state: &mut State, time_s: f64) -> Vec<Effect> {
    let clock = &mut state.session.clock;
    let (Some(at_s), Some(run)) = (clock.at_s, state.later.run(clock.on_jacks, clock.down)) else {
        clock.running = false;
        return Vec::new();
    };
    // The swing over travel was started meanwhile.
    clock.running &= state.session.playing.is_none();
    if !clock.running {
        return Vec::new();
    }
    if !time_s.is_finite() {
        return vec![Effect::AskFrame];
    }
    let passed = clock.last_s.map_or(0.0, |before| time_s - before).max(0.0);
    let (wait, by) = if state.session.reduced_motion {
        (STEP_S, STEP_S)
    } else {
        (0.0, passed.min(LONGEST_FRAME_S))
    };
    if clock.last_s.is_none() || passed >= wait {
        let begun = clock.last_s.is_some();
        clock.last_s = Some(time_s);
        let next = if begun { at_s + by } else { at_s };
        clock.at_s = Some(next.min(run.time));
        clock.running = next < run.time;
        clock.put = None;
    }
    vec![Effect::AskFrame]
}

/// Puts the drawing to where its leg is at the time looked at, unless the person has moved it on.
pub(super) fn follow(state: &mut State) {
    let leg = state.session.leg;
    let clock = &mut state.session.clock;
    let Some(at_s) = clock.at_s else { return };
    if clock
        .put
        .is_some_and(|(of, progress)| of == leg && progress != state.session.progress)
        || state.session.playing.is_some()
    {
        clock.at_s = None;
        clock.running = false;
        return;
    }
    let Some(run) = state.later.run(clock.on_jacks, clock.down) else {
        clock.at_s = None;
        clock.running = false;
        return;
    };
    let at_s = at_s.min(run.time);
    clock.at_s = Some(at_s);
    if let Some(progress) = progress_at_time(run, leg, at_s) {
        let held = match state.derived.good(leg) {
            Some(good) => progress.clamp(good.range().0, good.range().1),
            None => progress,
        };
        state.session.progress = held;
        clock.put = Some((leg, held));
    }
}
