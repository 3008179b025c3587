//! The cursor on the strip: where a pointer presses or drags it, there the leg goes.
use crate::effect::Effect;
use crate::msg::{PointerKind, StripPointer};
use crate::scene::{self, ScreenPoint};
use crate::state::{State, StripHeld};

/// From this far above or below the strip the cursor goes slower (CSS px).
const AWAY_PX: f64 = 36.0;
/// So much slower (ratio).
const SLOWER: f64 = 0.2;

pub(super) fn strip(state: &mut State, msg: StripPointer) -> Vec<Effect> {
    match msg {
        StripPointer::Down { kind, at } => {
            state.session.strip_held = Some(StripHeld {
                x_px: at.x_px,
                counts_as_px: at.x_px,
            });
            go(state, Some(kind), at.x_px);
        }
        StripPointer::Drag { kind, at } => {
            if let Some(held) = state.session.strip_held {
                let away = is_away(state, at);
                let counts_as_px = if away {
                    held.counts_as_px + SLOWER * (at.x_px - held.x_px)
                } else {
                    at.x_px
                };
                state.session.strip_held = Some(StripHeld {
                    x_px: at.x_px,
                    counts_as_px,
                });
                // away from the strip every place can be set
                go(state, (!away).then_some(kind), counts_as_px);
            }
        }
        StripPointer::End => state.session.strip_held = None,
    }
    Vec::new()
}

/// Whether a pointer is so far above or below the strip that the cursor goes slower.
fn is_away(state: &State, at: ScreenPoint) -> bool {
    let (_, height_px) = state.session.strip_size_px;
    at.y_px < -AWAY_PX || at.y_px > height_px + AWAY_PX
}

fn go(state: &mut State, holds: Option<PointerKind>, x_px: f64) {
    if let Some(progress) = scene::strip_progress(state, holds, x_px) {
        state.session.playing = None;
        state.session.progress = progress;
    }
}
