//! A canvas whose backing store follows its size on the page and the screen's pixel ratio.

use super::Place;
use crate::dom::window;
use crate::error::{PageError, Result};
use gearswing_app::words::browser::lacks;
use wasm_bindgen::JsCast;
use web_sys::{CanvasRenderingContext2d, HtmlCanvasElement};

/// Largest side of a backing store (px); browsers give up a little above.
const LARGEST_PX: f64 = 8192.0;

/// A canvas with its context.
pub(crate) struct Surface {
    canvas: HtmlCanvasElement,
    context: CanvasRenderingContext2d,
}

impl Surface {
    /// A surface of this canvas.
    pub(crate) fn of(canvas: HtmlCanvasElement) -> Result<Self> {
        let context = canvas
            .get_context("2d")?
            .and_then(|context| context.dyn_into().ok())
            .ok_or(PageError::Missing(lacks::CANVAS))?;
        Ok(Self { canvas, context })
    }

    /// Clears the canvas for a part of a scene and hands out the context: one unit is one CSS
    /// pixel, counted from the upper left corner of the scene.
    pub(crate) fn begin(&mut self, place: Place) -> Result<&CanvasRenderingContext2d> {
        let ratio = window()?.device_pixel_ratio().max(0.5);
        let (left, top) = (place.at_px.0 * ratio, place.at_px.1 * ratio);
        let (width_px, height_px) = place.size_px;
        let (width, height) = (store_size(width_px, ratio), store_size(height_px, ratio));
        if self.canvas.width() != width || self.canvas.height() != height {
            self.canvas.set_width(width);
            self.canvas.set_height(height);
        }
        self.context.set_transform(1.0, 0.0, 0.0, 1.0, 0.0, 0.0)?;
        self.context
            .clear_rect(0.0, 0.0, f64::from(width), f64::from(height));
        self.context
            .set_transform(ratio, 0.0, 0.0, ratio, -left, -top)?;
        Ok(&self.context)
    }
}

/// Pixels of the backing store for a length on the page.
fn store_size(length_px: f64, ratio: f64) -> u32 {
    let pixels = (length_px * ratio).round().clamp(1.0, LARGEST_PX);
    #[allow(
        clippy::cast_possible_truncation,
        clippy::cast_sign_loss,
        reason = "rounded and clamped just above; NaN becomes 0"
    )]
    let pixels = pixels as u32;
    pixels.max(1)
}

#[cfg(test)]
mod tests {
    use super::store_size;

    #[test]
    fn store_follows_ratio_and_stays_in_bounds() {
        assert_eq!(store_size(300.0, 1.5), 450);
        assert_eq!(store_size(0.0, 2.0), 1);
        assert_eq!(store_size(1e9, 2.0), 8192);
        assert_eq!(store_size(f64::NAN, 2.0), 1);
    }
}
