//! The gear against time: what is said of the run, its buttons and its slider.

use super::action::ActionButton;
use super::lists::sentences;
use crate::dom::{Rows, by_id, set_attribute, set_hidden, set_text};
use crate::error::Result;
use gearswing_app::Page;
use gearswing_app::view::TimesText;
use web_sys::{HtmlElement, HtmlInputElement};

/// Text and controls around the charts against time.
pub(super) struct Times {
    shown: Option<TimesText>,
    actions: Rows<ActionButton>,
    scrub: HtmlElement,
    slider: HtmlInputElement,
    clock: HtmlElement,
    said: HtmlElement,
    cautions: HtmlElement,
    canvas: HtmlElement,
    canvas_box: HtmlElement,
    description: HtmlElement,
    height_px: f64,
}

impl Times {
    /// Looks up the nodes.
    pub(super) fn mount() -> Result<Self> {
        Ok(Self {
            shown: None,
            actions: Rows::new(by_id("times-actions")?),
            scrub: by_id("times-scrub")?,
            slider: by_id("times-slider")?,
            clock: by_id("times-clock")?,
            said: by_id("times-said")?,
            cautions: by_id("times-cautions")?,
            canvas: by_id("times")?,
            canvas_box: by_id("times-box")?,
            description: by_id("times-description")?,
            height_px: 0.0,
        })
    }

    /// Shows the text of a page.
    pub(super) fn patch(&mut self, page: &Page) -> Result<()> {
        let new = &page.times;
        let old = self.shown.as_ref();
        if old == Some(new) {
            return Ok(());
        }
        for run_only in [&self.scrub, &self.canvas_box] {
            set_hidden(run_only, new.end_s == 0.0)?;
        }
        self.actions.patch(&new.actions)?;
        let differs =
            |get: fn(&TimesText) -> &Vec<String>| old.is_none_or(|old| get(old) != get(new));
        if differs(|text| &text.sentences) {
            sentences(&self.said, "p", &new.sentences)?;
        }
        if differs(|text| &text.cautions) {
            sentences(&self.cautions, "li", &new.cautions)?;
        }
        if differs(|text| &text.description) {
            sentences(&self.description, "p", &new.description)?;
        }
        set_attribute(&self.canvas, "aria-label", &new.label)?;
        if old.is_none_or(|old| old.end_s != new.end_s) {
            self.slider.set_max(&new.end_s.to_string());
            // so many steps to the end exactly, and an arrow key is one of them in every browser
            self.slider.set_step(&(new.end_s / 256.0).to_string());
        }
        if self.slider.value_as_number() != new.value_s {
            self.slider.set_value_as_number(new.value_s);
        }
        set_attribute(&self.slider, "aria-valuetext", &new.text)?;
        set_text(&self.clock, &new.text);
        self.shown = Some(new.clone());
        Ok(())
    }

    /// Gives the canvas its height.
    pub(super) fn height(&mut self, height_px: f64) -> Result<()> {
        if height_px != self.height_px {
            self.canvas_box
                .style()
                .set_property("height", &format!("{height_px}px"))?;
            self.height_px = height_px;
        }
        Ok(())
    }
}
