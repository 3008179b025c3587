//! Colors of the theme in force, read from `colors.css` once and kept as values for the canvas.

use crate::dom::{document, window};
use crate::error::{PageError, Result};
use gearswing_app::words::browser::lacks;
use litemap::LiteMap;
use wasm_bindgen::JsValue;
use web_sys::CssStyleDeclaration;

/// Colors by the name of their custom property.
#[derive(Default)]
pub(crate) struct Theme {
    colours: LiteMap<&'static str, JsValue>,
    /// Family of the page's text.
    family: String,
}

impl Theme {
    /// Forgets the colors, so that they are read again.
    pub(crate) fn reload(&mut self) -> Result<()> {
        self.colours.clear();
        self.family = read()?.get_property_value("font-family")?;
        Ok(())
    }

    /// A color as the canvas takes it.
    pub(crate) fn colour(&mut self, name: &'static str) -> Result<JsValue> {
        if let Some(colour) = self.colours.get(name) {
            return Ok(colour.clone());
        }
        let text = read()?.get_property_value(name)?;
        let text = text.trim();
        if text.is_empty() {
            return Err(PageError::Missing(name));
        }
        let colour = JsValue::from_str(text);
        self.colours.insert(name, colour.clone());
        Ok(colour)
    }

    /// The `font` of a canvas.
    pub(crate) fn font(&self, size_px: f64, bold: bool) -> String {
        let weight = if bold { "600 " } else { "" };
        format!("{weight}{size_px}px {}", self.family)
    }
}

/// Computed style of the whole page.
fn read() -> Result<CssStyleDeclaration> {
    let root = document()?
        .body()
        .ok_or(PageError::Missing(lacks::PAGE_BODY))?;
    window()?
        .get_computed_style(&root)?
        .ok_or(PageError::Missing(lacks::COMPUTED_STYLE))
}
