//! The played swing and the scrub.
use crate::effect::Effect;
use crate::msg::Play;
use crate::scene;
use crate::state::{Playing, Speed, State};

/// Pause at either end (s).
const END_WAIT_S: f64 = 0.6;
/// Pause at each step when less motion is asked for (s).
const STEP_WAIT_S: f64 = 1.0;
/// Steps of the swing when less motion is asked for.
const STEPS: f64 = 8.0;
/// A phase before the swing is played in this share of the swing's time (ratio).
const EARLY_SHARE: f64 = 0.3;
/// A frame later than this is taken as one of this length (s).
const LONGEST_FRAME_S: f64 = 0.1;
/// Step of [`Play::Step`] and of the scrub (ratio).
pub(crate) const SCRUB_STEP: f64 = 0.005;

pub(super) fn play(state: &mut State, msg: Play) -> Vec<Effect> {
    match msg {
        Play::Toggle => return toggle(state),
        Play::Way { down } => {
            state.session.way_down = down;
            if let Some(playing) = &mut state.session.playing {
                playing.up = !down;
            }
        }
        Play::Speed(speed) => state.session.speed = speed,
        Play::Scrub { progress } => {
            state.session.playing = None;
            if progress.is_finite() {
                state.session.progress = held(state, progress);
            }
        }
        Play::Step { up } => {
            state.session.playing = None;
            let by = if up { SCRUB_STEP } else { -SCRUB_STEP };
            state.session.progress = held(state, state.session.progress + by);
        }
        Play::Mark { up } => {
            state.session.playing = None;
            if let Some((progress, text)) = scene::next_mark(state, up) {
                state.session.progress = held(state, progress);
                return vec![Effect::Announce { text }];
            }
        }
        Play::ReducedMotion { on } => state.session.reduced_motion = on,
    }
    Vec::new()
}

/// A place within where the selected leg can go.
fn held(state: &State, progress: f64) -> f64 {
    match state.derived.good(state.session.leg) {
        Some(good) => {
            let (first, last) = good.range();
            progress.clamp(first, last)
        }
        None => progress.clamp(-2.0, 1.0),
    }
}

fn toggle(state: &mut State) -> Vec<Effect> {
    if state.session.playing.take().is_some() || state.derived.good(state.session.leg).is_none() {
        return Vec::new();
    }
    state.end_gesture();
    if let Some(good) = state.derived.good(state.session.leg) {
        // from where a way ends it goes on with the other
        let (first, last) = good.range();
        let (here, down) = (state.session.progress, state.session.way_down);
        let ends = if down {
            here <= first + 1e-9
        } else {
            here >= last - 1e-9
        };
        state.session.way_down = down != ends;
    }
    let up = !state.session.way_down;
    state.session.playing = Some(Playing {
        up,
        last_s: None,
        wait_s: 0.0,
    });
    vec![Effect::AskFrame]
}

pub(super) fn frame(state: &mut State, time_s: f64) -> Vec<Effect> {
    let Some(mut playing) = state.session.playing else {
        return Vec::new();
    };
    let Some((first, last)) = state
        .derived
        .good(state.session.leg)
        .map(|good| good.range())
    else {
        state.session.playing = None;
        return Vec::new();
    };
    if !time_s.is_finite() {
        return vec![Effect::AskFrame];
    }
    let passed = playing
        .last_s
        .map_or(0.0, |before| (time_s - before).clamp(0.0, LONGEST_FRAME_S));
    playing.last_s = Some(time_s);
    if playing.wait_s > passed {
        playing.wait_s -= passed;
    } else if passed > 0.0 {
        playing.wait_s = 0.0;
        let mut progress = state.session.progress;
        let by = if state.session.reduced_motion {
            playing.wait_s = STEP_WAIT_S;
            1.0 / STEPS
        } else {
            passed / time_per_unit_s(state.session.speed, progress)
        };
        progress += if playing.up { by } else { -by };
        if progress >= last || progress <= first {
            playing.up = progress <= first;
            state.session.way_down = !playing.up;
            playing.wait_s = playing.wait_s.max(END_WAIT_S);
        }
        state.session.progress = progress.clamp(first, last);
    }
    state.session.playing = Some(playing);
    vec![Effect::AskFrame]
}

/// Time for one unit of progress where the leg is now (s).
fn time_per_unit_s(speed: Speed, progress: f64) -> f64 {
    let swing = speed.swing_time_s();
    if progress < 0.0 {
        swing * EARLY_SHARE
    } else {
        swing
    }
}
