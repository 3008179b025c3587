//! Curves over travel, stacked, with one cursor.
use super::Scene;
use crate::state::State;

/// The curves of the selected leg.
#[must_use]
pub fn curves(state: &State) -> Scene {
    Scene {
        width_px: state.session.curves_width_px,
        ..Scene::default()
    }
}
