//! Small pictures of the legs that a new gear can start from.
use gearswing_gearfile::STARTERS;

use super::{Pen, Scene, Viewport, bounds, leg, well};
use crate::state::Derived;

/// Kept free around what is drawn (CSS px).
const EDGE_PX: f64 = 4.0;

/// A picture of each, by its key: the leg down, and up, in its well. None where it does not open or cannot be worked
/// out.
#[must_use]
pub fn starter_pictures(size_px: (f64, f64)) -> Vec<(&'static str, Scene)> {
    let pictures = STARTERS.iter().filter_map(|example| {
        let gear = example.gear().ok()?;
        let mut derived = Derived::default();
        while derived.settle_part(&gear, 1) {}
        let good = derived.good(0)?;
        let bounds = bounds(&good.leg, Some(good));
        let size = bounds.high - bounds.low;
        let room = (size_px.0 - 2.0 * EDGE_PX, size_px.1 - 2.0 * EDGE_PX);
        let scale = (room.0 / size.x).min(room.1 / size.y);
        let middle = bounds.low + size * 0.5;
        let mut pen = Pen::new(Viewport::new(middle, scale, size_px));
        well::well(&mut pen, &good.leg);
        leg::ghosts(&mut pen, good);
        let down = good.pose(good.range().0)?;
        leg::standing(&mut pen, &leg::outlines(&good.leg, &down));
        let scene = Scene {
            width_px: size_px.0,
            height_px: size_px.1,
            marks: pen.marks,
            ..Scene::default()
        };
        Some((example.key, scene))
    });
    pictures.collect()
}
