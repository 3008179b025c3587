//! Two canvases, one over the other: what stays lies on the lower one, which is painted anew only
//! when it differs from what it shows.

use super::{Painter, Surface};
use crate::dom::{by_id, element_of};
use crate::error::Result;
use gearswing_app::Scene;
use gearswing_app::scene::Mark;
use web_sys::HtmlCanvasElement;

/// A scene's two canvases.
pub(crate) struct Layers {
    still: Surface,
    moving: Surface,
    /// Size and marks of the lower canvas as painted.
    shown: Option<(f64, f64, Vec<Mark>)>,
    /// Some of it is in the window, or nearly.
    seen: bool,
    /// It shows an earlier state.
    outdated: bool,
}

impl Layers {
    /// The canvas with this id, and a new one under it.
    pub(crate) fn new(id: &'static str) -> Result<Self> {
        let canvas: HtmlCanvasElement = by_id(id)?;
        let under: HtmlCanvasElement = element_of("canvas", "under")?;
        under.set_attribute("aria-hidden", "true")?;
        canvas.before_with_node_1(&under)?;
        Ok(Self {
            still: Surface::of(under)?,
            moving: Surface::of(canvas)?,
            shown: None,
            seen: true,
            outdated: true,
        })
    }

    /// Notes whether any of it is in the window.
    pub(crate) fn see(&mut self, seen: bool) {
        self.seen = seen;
    }

    /// Notes that it shows an earlier state; `wholly`: its lower canvas too, whatever it shows.
    pub(crate) fn outdate(&mut self, wholly: bool) {
        self.outdated = true;
        if wholly {
            self.shown = None;
        }
    }

    /// It is to be painted now: it is outdated, and seen or wanted unseen.
    pub(crate) fn is_due(&self, unseen: bool) -> bool {
        self.outdated && (self.seen || unseen)
    }

    /// Paints a scene.
    pub(crate) fn paint(&mut self, painter: &mut Painter, mut scene: Scene) -> Result<()> {
        let (width_px, height_px) = (scene.width_px, scene.height_px);
        let moving = scene.marks.split_off(scene.still.min(scene.marks.len()));
        let still = (width_px, height_px, scene.marks);
        if self.shown.as_ref() != Some(&still) {
            painter.paint(&mut self.still, (width_px, height_px), &still.2)?;
            self.shown = Some(still);
        }
        painter.paint(&mut self.moving, (width_px, height_px), &moving)?;
        self.outdated = false;
        Ok(())
    }
}
