//! The line that says what is being worked out, with a press to give it up.

use crate::dom::{by_id, set_hidden, set_text};
use crate::error::Result;
use gearswing_app::Page;
use web_sys::HtmlElement;

/// The line.
pub(super) struct Working {
    line: HtmlElement,
    text: HtmlElement,
}

impl Working {
    /// Looks up the nodes.
    pub(super) fn mount() -> Result<Self> {
        Ok(Self {
            line: by_id("working")?,
            text: by_id("working-text")?,
        })
    }

    /// Shows what a page says.
    pub(super) fn patch(&mut self, page: &Page) -> Result<()> {
        set_text(&self.text, &page.working);
        set_hidden(&self.line, page.working.is_empty())
    }
}
