//! Pictures on the presses of what a new gear can start from; painted when they come into sight.

use super::{Painter, Place, Surface};
use crate::dom::{document, element_of};
use crate::error::Result;
use gearswing_app::scene::starter_pictures;
use web_sys::HtmlCanvasElement;

/// Size of a picture (CSS px).
const SIZE_PX: (f64, f64) = (132.0, 100.0);

/// Puts a picture on each press that has none, and paints all of them in the theme in force.
pub(crate) fn paint_starters(painter: &mut Painter) -> Result<()> {
    let page = document()?;
    for (key, scene) in starter_pictures(SIZE_PX) {
        let Some(press) = page.query_selector(&format!("[data-action=\"new.{key}\"]"))? else {
            continue;
        };
        if let Some(old) = press.query_selector("canvas")? {
            old.remove();
        }
        let canvas: HtmlCanvasElement = element_of("canvas", "starter")?;
        canvas.set_attribute("aria-hidden", "true")?;
        press.insert_before(&canvas, press.first_child().as_ref())?;
        painter.paint(
            &mut Surface::of(canvas)?,
            Place::whole(SIZE_PX),
            &scene.marks,
        )?;
    }
    Ok(())
}
