//! What differs from the state that is compared with, and the kept states.

use super::action::ActionButton;
use super::files::ListEntry;
use crate::dom::{Rows, by_id, set_hidden, set_text};
use crate::error::Result;
use gearswing_app::Page;
use gearswing_app::view::ChangesText;
use web_sys::{HtmlElement, HtmlInputElement};

/// The sheet of changes.
pub(super) struct Changes {
    line: HtmlElement,
    rows: Rows<ListEntry>,
    actions: Rows<ActionButton>,
    naming: HtmlElement,
    name: HtmlInputElement,
    kept_part: HtmlElement,
    kept: Rows<ListEntry>,
    notes_part: HtmlElement,
    notes: Rows<ListEntry>,
    shown: ChangesText,
}

impl Changes {
    /// Looks up the nodes.
    pub(super) fn mount() -> Result<Self> {
        Ok(Self {
            line: by_id("changes-line")?,
            rows: Rows::new(by_id("changes-list")?),
            actions: Rows::new(by_id("changes-actions")?),
            naming: by_id("kept-naming")?,
            name: by_id("kept-name")?,
            kept_part: by_id("kept-part")?,
            kept: Rows::new(by_id("kept-list")?),
            notes_part: by_id("notes-part")?,
            notes: Rows::new(by_id("notes-list")?),
            shown: ChangesText::default(),
        })
    }

    /// Shows the changes of a page.
    pub(super) fn patch(&mut self, page: &Page) -> Result<()> {
        let new = &page.changes;
        if self.shown == *new {
            return Ok(());
        }
        set_text(&self.line, &new.line);
        self.rows.patch(&new.rows)?;
        self.actions.patch(&new.actions)?;
        set_hidden(&self.naming, new.name.is_none())?;
        // what is being typed stays
        if self.shown.name != new.name {
            self.name.set_value(new.name.as_deref().unwrap_or_default());
        }
        set_hidden(&self.kept_part, new.kept.is_empty())?;
        self.kept.patch(&new.kept)?;
        set_hidden(&self.notes_part, new.notes.is_empty())?;
        self.notes.patch(&new.notes)?;
        self.shown = new.clone();
        Ok(())
    }
}

/// Who works by keys stands on the first line after an entry has gone.
pub(crate) fn after_change() -> Result<()> {
    let line: HtmlElement = by_id("changes-line")?;
    let place = if line.offset_parent().is_some() {
        line
    } else {
        by_id("sheet")?
    };
    place.focus()?;
    Ok(())
}
