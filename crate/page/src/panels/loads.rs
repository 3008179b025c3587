//! Tables of load cases and of the loads of the joints.

use super::lists::sentences;
use crate::dom::{by_id, element, set_attribute};
use crate::error::Result;
use gearswing_app::{Align, Column, TitledTable};
use web_sys::HtmlElement;

/// The tables.
pub(super) struct Loads {
    shown: Vec<TitledTable>,
    part: HtmlElement,
}

impl Loads {
    /// Looks up the nodes.
    pub(super) fn mount() -> Result<Self> {
        Ok(Self {
            shown: Vec::new(),
            part: by_id("load-tables")?,
        })
    }

    /// Shows tables.
    pub(super) fn patch(&mut self, new: Vec<TitledTable>) -> Result<()> {
        if self.shown == new {
            return Ok(());
        }
        self.part.set_text_content(None);
        for table in &new {
            let title = element("h3", "")?;
            title.set_text_content(Some(table.title));
            self.part.append_child(&title)?;
            if !table.columns.is_empty() {
                // a wide one moves sideways in its own frame, by keys too
                let frame = element("div", "wide")?;
                frame.set_tab_index(0);
                frame.set_attribute("role", "group")?;
                frame.set_attribute("aria-label", table.title)?;
                let grid = grid(&table.columns)?;
                frame.append_child(&grid)?;
                self.part.append_child(&frame)?;
            }
            let class = if table.columns.is_empty() {
                "small"
            } else {
                "quiet small"
            };
            let notes = element("div", class)?;
            sentences(&notes, "p", &table.notes)?;
            self.part.append_child(&notes)?;
        }
        self.shown = new;
        Ok(())
    }
}

/// A table of columns.
fn grid(columns: &[Column]) -> Result<HtmlElement> {
    let table = element("table", "")?;
    let row = |is_head: bool, of: &dyn Fn(&Column) -> String| -> Result<()> {
        let row = element("tr", "")?;
        for (at, column) in columns.iter().enumerate() {
            let class = if column.align == Align::Right {
                "figure"
            } else {
                ""
            };
            let names = is_head || at == 0;
            let cell = element(if names { "th" } else { "td" }, class)?;
            if names {
                set_attribute(&cell, "scope", if is_head { "col" } else { "row" })?;
            }
            cell.set_text_content(Some(&of(column)));
            row.append_child(&cell)?;
        }
        table.append_child(&row)?;
        Ok(())
    };
    row(true, &|column| column.head.clone())?;
    let count = columns.iter().map(|column| column.cells.len()).max();
    for at in 0..count.unwrap_or(0) {
        row(false, &|column| {
            column.cells.get(at).cloned().unwrap_or_default()
        })?;
    }
    Ok(table)
}
