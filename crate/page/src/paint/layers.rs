//! Canvases over each other: what stays lies on the lowest one, which is painted anew only when it
//! differs from what it shows; what moves lies on patches over it.

use super::patch::{Patch, Place};
use super::{Painter, Surface};
use crate::dom::by_id;
use crate::error::Result;
use gearswing_app::Scene;
use gearswing_app::scene::Mark;
use web_sys::HtmlCanvasElement;

/// A scene's canvases.
pub(crate) struct Layers {
    canvas: HtmlCanvasElement,
    still: Surface,
    /// From back to front.
    moving: Vec<Patch>,
    /// Size and marks of the lowest canvas as painted.
    shown: Option<((f64, f64), Vec<Mark>)>,
    /// Some of it is in the window, or nearly.
    seen: bool,
    /// It shows an earlier state.
    outdated: bool,
}

impl Layers {
    /// The canvas with this id; what moves gets others over it.
    pub(crate) fn new(id: &'static str) -> Result<Self> {
        let canvas: HtmlCanvasElement = by_id(id)?;
        Ok(Self {
            still: Surface::of(canvas.clone())?,
            canvas,
            moving: Vec::new(),
            shown: None,
            seen: true,
            outdated: true,
        })
    }

    /// Notes whether any of it is in the window.
    pub(crate) fn see(&mut self, seen: bool) {
        self.seen = seen;
    }

    /// Notes that it shows an earlier state; `wholly`: its lowest canvas too, whatever it shows.
    pub(crate) fn outdate(&mut self, wholly: bool) {
        self.outdated = true;
        if wholly {
            self.shown = None;
        }
    }

    /// It is to be painted now: it is outdated, and seen.
    pub(crate) fn is_due(&self) -> bool {
        self.outdated && self.seen
    }

    /// Paints a scene.
    pub(crate) fn paint(&mut self, painter: &mut Painter, scene: &Scene) -> Result<()> {
        let size_px = (scene.width_px, scene.height_px);
        let mut layers = scene.layers();
        let still = layers.next().unwrap_or_default();
        let is_shown = |(of, marks): &(_, Vec<_>)| *of == size_px && marks == still;
        if !self.shown.as_ref().is_some_and(is_shown) {
            painter.paint(&mut self.still, Place::whole(size_px), still)?;
            self.shown = Some((size_px, still.to_vec()));
        }
        let mut count = 0;
        for marks in layers {
            if self.moving.len() == count {
                let top = self.moving.last().map_or(&self.canvas, Patch::canvas);
                self.moving.push(Patch::over(top)?);
            }
            if let Some(patch) = self.moving.get_mut(count) {
                patch.paint(painter, size_px, marks)?;
            }
            count += 1;
        }
        for patch in self.moving.iter_mut().skip(count) {
            patch.paint(painter, size_px, &[])?;
        }
        self.outdated = false;
        Ok(())
    }
}
