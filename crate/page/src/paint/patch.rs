//! A canvas over another one, only as large as what it shows: clearing and laying over what is
//! transparent would cost a phone with its dense pixels more than the drawing.

use super::{Painter, Surface};
use crate::dom::element_of;
use crate::error::Result;
use gearswing_app::scene::{Extent, Mark};
use web_sys::{Element, HtmlCanvasElement};

/// Steps in which a patch is placed and grows (CSS px): at the usual ratios whole pixels of the
/// screen, so that what stands still does not blur.
const STEP_PX: f64 = 16.0;

/// A canvas that lies where its marks are.
pub(super) struct Patch {
    canvas: HtmlCanvasElement,
    surface: Surface,
    /// Size of the scene, and the place and size on it (CSS px).
    lies: Option<((f64, f64), Place)>,
    hidden: bool,
}

impl Patch {
    /// A patch on top of a canvas and of those that are on it already.
    pub(super) fn over(below: &Element) -> Result<Self> {
        let canvas: HtmlCanvasElement = element_of("canvas", "over")?;
        canvas.set_attribute("aria-hidden", "true")?;
        below.after_with_node_1(&canvas)?;
        Ok(Self {
            surface: Surface::of(canvas.clone())?,
            canvas,
            lies: None,
            hidden: false,
        })
    }

    /// The canvas.
    pub(super) fn canvas(&self) -> &HtmlCanvasElement {
        &self.canvas
    }

    /// Paints marks of a scene of this size (CSS px).
    pub(super) fn paint(
        &mut self,
        painter: &mut Painter,
        scene_px: (f64, f64),
        marks: &[Mark],
    ) -> Result<()> {
        let extent = Extent::of(marks, scene_px);
        if self.hidden != extent.is_none() {
            self.hidden = extent.is_none();
            self.canvas.set_hidden(self.hidden);
        }
        let Some(extent) = extent else { return Ok(()) };
        let before = self.lies.filter(|(of, _)| *of == scene_px);
        let place = Place::around(extent, before.map(|(_, place)| place), scene_px);
        if self.lies != Some((scene_px, place)) {
            place.put(&self.canvas, scene_px)?;
            self.lies = Some((scene_px, place));
        }
        painter.paint(&mut self.surface, place, marks)
    }
}

/// A part of a scene (CSS px).
#[derive(Clone, Copy, Debug, PartialEq)]
pub(crate) struct Place {
    /// Its left and upper edge.
    pub(crate) at_px: (f64, f64),
    /// Its width and height.
    pub(crate) size_px: (f64, f64),
}

impl Place {
    /// All of a scene of this size.
    pub(crate) fn whole(size_px: (f64, f64)) -> Self {
        Self {
            at_px: (0.0, 0.0),
            size_px,
        }
    }

    /// A place for an extent, at least as large as the one before: a canvas that is given another
    /// size is made anew.
    fn around(extent: Extent, before: Option<Self>, scene_px: (f64, f64)) -> Self {
        let before = before.map_or((0.0, 0.0), |place| place.size_px);
        let (left, width) = span((extent.left_px, extent.right_px), before.0, scene_px.0);
        let (top, height) = span((extent.top_px, extent.bottom_px), before.1, scene_px.1);
        Self {
            at_px: (left, top),
            size_px: (width, height),
        }
    }

    /// Puts a canvas there, as shares of what it lies in: paper is wider than the screen.
    fn put(self, canvas: &HtmlCanvasElement, scene_px: (f64, f64)) -> Result<()> {
        let style = canvas.style();
        for (property, length_px, of_px) in [
            ("left", self.at_px.0, scene_px.0),
            ("top", self.at_px.1, scene_px.1),
            ("width", self.size_px.0, scene_px.0),
            ("height", self.size_px.1, scene_px.1),
        ] {
            style.set_property(property, &format!("{}%", 100.0 * length_px / of_px))?;
        }
        Ok(())
    }
}

/// Start and length of steps around a span, at least `least` long, within `all` (CSS px).
fn span((from, to): (f64, f64), least: f64, all: f64) -> (f64, f64) {
    let start = (from / STEP_PX).floor() * STEP_PX;
    let end = (to / STEP_PX).ceil() * STEP_PX;
    let length = (end - start).max(least).min(all);
    (start.min((all - length).floor()).max(0.0), length)
}

#[cfg(test)]
mod tests {
    use super::{Place, span};
    use gearswing_app::scene::Extent;

    #[test]
    fn spans_hold_what_they_are_around_and_stay_inside() {
        assert_eq!(span((17.0, 31.0), 0.0, 390.0), (16.0, 16.0));
        assert_eq!(span((30.0, 33.0), 0.0, 390.0), (16.0, 32.0));
        assert_eq!(span((17.0, 31.0), 32.0, 390.0), (16.0, 32.0));
        assert_eq!(span((380.0, 390.0), 32.0, 390.0), (358.0, 32.0));
        assert_eq!(span((380.0, 390.5), 32.0, 390.5), (358.0, 32.0));
        assert_eq!(span((0.0, 390.0), 32.0, 390.0), (0.0, 390.0));
    }

    #[test]
    fn a_place_moves_without_growing() {
        let extent = |left_px: f64| Extent {
            left_px,
            top_px: 100.0,
            right_px: left_px + 11.0,
            bottom_px: 900.0,
        };
        let all = (390.0, 1000.0);
        let mut place = Place::around(extent(14.0), None, all);
        let size = place.size_px;
        assert_eq!(size, (32.0, 816.0));
        for step in 0..379 {
            let extent = extent(f64::from(step));
            place = Place::around(extent, Some(place), all);
            assert_eq!(place.size_px, size);
            assert!(place.at_px.0 <= extent.left_px);
            assert!(place.at_px.0 + size.0 >= extent.right_px);
        }
    }
}
