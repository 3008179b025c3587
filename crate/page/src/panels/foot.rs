//! Cautions, what the model leaves out, the keys, and the version.

use super::lists::sentences;
use crate::dom::{by_id, element, set_text};
use crate::error::Result;
use gearswing_app::Page;
use gearswing_app::view::KeyHelp;
use web_sys::HtmlElement;

/// The foot of the page.
pub(super) struct Foot {
    cautions: HtmlElement,
    left_out: HtmlElement,
    keys: HtmlElement,
    program: HtmlElement,
    shown: (Vec<String>, Vec<String>, Vec<KeyHelp>),
}

impl Foot {
    /// Looks up the nodes.
    pub(super) fn mount() -> Result<Self> {
        Ok(Self {
            cautions: by_id("cautions")?,
            left_out: by_id("left-out")?,
            keys: by_id("keys")?,
            program: by_id("program")?,
            shown: Default::default(),
        })
    }

    /// Shows the foot of a page.
    pub(super) fn patch(&mut self, page: &Page) -> Result<()> {
        if self.shown.0 != page.cautions {
            sentences(&self.cautions, "li", &page.cautions)?;
            self.shown.0.clone_from(&page.cautions);
        }
        if self.shown.1 != page.not_modelled {
            sentences(&self.left_out, "li", &page.not_modelled)?;
            self.shown.1.clone_from(&page.not_modelled);
        }
        set_text(&self.program, &page.program);
        if self.shown.2 != page.keys {
            self.keys.set_text_content(None);
            for help in &page.keys {
                let term = element("dt", "")?;
                term.set_text_content(Some(&help.keys));
                let text = element("dd", "")?;
                text.set_text_content(Some(&help.text));
                self.keys.append_child(&term)?;
                self.keys.append_child(&text)?;
            }
            self.shown.2.clone_from(&page.keys);
        }
        Ok(())
    }
}
