//! Presses that move a point by steps, in the place of strip and bar.

use super::head::pressed;
use crate::dom::{by_id, set_attribute, set_hidden, set_text};
use crate::error::Result;
use gearswing_app::Page;
use gearswing_app::view::StepsText;
use web_sys::HtmlElement;

/// The presses.
pub(super) struct Steps {
    part: HtmlElement,
    box_of: HtmlElement,
    name: HtmlElement,
    step: HtmlElement,
    shown: Option<StepsText>,
}

impl Steps {
    /// Looks up the nodes.
    pub(super) fn mount() -> Result<Self> {
        Ok(Self {
            part: by_id("travel-part")?,
            box_of: by_id("steps")?,
            name: by_id("steps-name")?,
            step: by_id("steps-size")?,
            shown: None,
        })
    }

    /// Shows them for the point of a page that is moved by steps.
    pub(super) fn patch(&mut self, page: &Page) -> Result<()> {
        if self.shown == page.steps {
            return Ok(());
        }
        set_hidden(&self.box_of, page.steps.is_none())?;
        set_attribute(&self.part, "data-steps", pressed(page.steps.is_some()))?;
        if let Some(steps) = &page.steps {
            set_text(&self.name, &steps.name);
            set_text(&self.step, &steps.step_text);
        }
        self.shown.clone_from(&page.steps);
        Ok(())
    }
}
