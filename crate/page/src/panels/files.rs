//! Files in this browser, and what a new one can start from.

use super::action::ActionButton;
use crate::dom::{Row, Rows, by_id, element, set_attribute, set_text};
use crate::error::Result;
use gearswing_app::Page;
use gearswing_app::view::ListRow;
use wasm_bindgen::JsCast;
use web_sys::{Element, HtmlElement};

/// The list of files.
pub(super) struct Files {
    files: Rows<ListEntry>,
    starters: Rows<ActionButton>,
}

impl Files {
    /// Looks up the nodes.
    pub(super) fn mount() -> Result<Self> {
        Ok(Self {
            files: Rows::new(by_id("file-list")?),
            starters: Rows::new(by_id("starters")?),
        })
    }

    /// Shows the files of a page.
    pub(super) fn patch(&mut self, page: &Page) -> Result<()> {
        self.files.patch(&page.files)?;
        self.starters.patch(&page.starters)
    }
}

/// One entry of a list.
pub(super) struct ListEntry {
    node: HtmlElement,
    name: HtmlElement,
    text: HtmlElement,
    actions: Rows<ActionButton>,
}

impl Row for ListEntry {
    type Item = ListRow;

    fn key(item: &ListRow) -> String {
        item.id.clone()
    }

    fn make(_: &ListRow) -> Result<Self> {
        let node = element("li", "file")?;
        let name = element("span", "file-title")?;
        let text = element("span", "")?;
        let actions = element("span", "acts")?;
        for part in [&name, &text, &actions] {
            node.append_child(part)?;
        }
        Ok(Self {
            node,
            name,
            text,
            actions: Rows::new(actions.into()),
        })
    }

    fn root(&self) -> &Element {
        &self.node
    }

    fn patch(&mut self, _: Option<&ListRow>, new: &ListRow) -> Result<()> {
        set_text(&self.name, &new.name);
        set_text(&self.text, &new.text);
        set_attribute(&self.text, "class", if new.problem { "error" } else { "" })?;
        if new.current {
            set_attribute(&self.node, "aria-current", "true")?;
        } else {
            self.node.remove_attribute("aria-current")?;
        }
        self.actions.patch(&new.actions)
    }
}

/// Closes the box of files when another gear has come up; who works by keys stands on its head then.
pub(crate) fn leave_files() -> Result<()> {
    let files: Element = by_id("files")?;
    files.remove_attribute("open")?;
    let head = files.query_selector("summary")?;
    if let Some(head) = head.and_then(|head| head.dyn_into::<HtmlElement>().ok()) {
        head.focus()?;
    }
    Ok(())
}

/// Opens the box of files at what a new one can start from.
pub(crate) fn open_files() -> Result<()> {
    let files: Element = by_id("files")?;
    files.set_attribute("open", "")?;
    let starters: Element = by_id("starters")?;
    let first = starters.query_selector("button:nth-of-type(2)")?;
    if let Some(first) = first.and_then(|first| first.dyn_into::<HtmlElement>().ok()) {
        first.focus()?;
    }
    Ok(())
}
