//! What explains a stop of the selected leg.

use super::action::ActionButton;
use super::data::Group;
use super::lists::sentences;
use crate::dom::{Rows, by_id, element, set_attribute, set_hidden};
use crate::error::Result;
use gearswing_app::Page;
use gearswing_app::view::{StopRow, StopText};
use web_sys::HtmlElement;

/// Explanations in their order.
pub(super) struct Stopped {
    shown: Option<StopText>,
    group: Rows<Group>,
    actions: Rows<ActionButton>,
    said: HtmlElement,
    list: HtmlElement,
    out_part: HtmlElement,
    out: HtmlElement,
    notes: HtmlElement,
}

impl Stopped {
    /// Looks up the nodes.
    pub(super) fn mount() -> Result<Self> {
        Ok(Self {
            shown: None,
            group: Rows::new(by_id("stop-group")?),
            actions: Rows::new(by_id("stop-actions")?),
            said: by_id("stop-said")?,
            list: by_id("stop-list")?,
            out_part: by_id("stop-out-part")?,
            out: by_id("stop-out")?,
            notes: by_id("stop-notes")?,
        })
    }

    /// Shows the text of a page.
    pub(super) fn patch(&mut self, page: &Page) -> Result<()> {
        let new = &page.stopped;
        if self.shown.as_ref() == Some(new) {
            return Ok(());
        }
        self.group.patch(new.group.as_slice())?;
        self.actions.patch(&new.actions)?;
        sentences(&self.said, "p", &new.sentences)?;
        // Where nothing is left, all stand open.
        let left = match new.rows.iter().filter(|row| !row.ruled_out).count() {
            0 => new.rows.len(),
            left => left,
        };
        set_hidden(&self.list, left == 0)?;
        set_hidden(&self.out_part, left == new.rows.len())?;
        self.list.set_text_content(None);
        self.out.set_text_content(None);
        set_attribute(&self.out, "start", &(left + 1).to_string())?;
        for (at, row) in new.rows.iter().enumerate() {
            let item = explanation(row)?;
            let list = if at < left { &self.list } else { &self.out };
            list.append_child(&item)?;
        }
        sentences(&self.notes, "li", &new.notes)?;
        self.shown = Some(new.clone());
        Ok(())
    }
}

/// One explanation: how well it fits, the sentence, the numbers.
fn explanation(row: &StopRow) -> Result<HtmlElement> {
    let item = element("li", "")?;
    let fit = element("strong", "")?;
    fit.set_text_content(Some(&format!("{}: ", row.fit_text)));
    item.append_child(&fit)?;
    let sentence = element("span", "")?;
    sentence.set_text_content(Some(&row.sentence));
    item.append_child(&sentence)?;
    let numbers = element("ul", "quiet small")?;
    sentences(&numbers, "li", &row.readings)?;
    item.append_child(&numbers)?;
    Ok(item)
}
