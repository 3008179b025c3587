//! Sentences for screen readers.

use crate::dom::by_id;
use crate::error::Result;
use web_sys::HtmlElement;

/// The live region.
pub(crate) struct Announcer {
    node: HtmlElement,
    odd: bool,
}

impl Announcer {
    /// Looks up the node.
    pub(crate) fn mount() -> Result<Self> {
        Ok(Self {
            node: by_id("announcer")?,
            odd: false,
        })
    }

    /// Has a sentence spoken, also when it is the same as the last one: a trailing no-break space
    /// makes the text another one.
    pub(crate) fn say(&mut self, text: &str) {
        self.odd = !self.odd;
        let tail = if self.odd { "\u{a0}" } else { "" };
        self.node.set_text_content(Some(&format!("{text}{tail}")));
    }
}
