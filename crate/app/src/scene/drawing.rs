//! The drawing of the selected leg at its place on the path.
use super::Scene;
use crate::state::State;

/// The drawing.
#[must_use]
pub fn drawing(state: &State) -> Scene {
    Scene {
        width_px: state.session.drawing_size_px.0,
        height_px: state.session.drawing_size_px.1,
        ..Scene::default()
    }
}
