//! Names of the sheets, and which of them is in hand.

use super::action::show;
use super::head::pressed;
use crate::dom::{
    Row, Rows, all_of, by_id, document, element, set_attribute, set_hidden, set_text,
};
use crate::error::Result;
use gearswing_app::Page;
use gearswing_app::view::SheetTab;
use gearswing_app::words::sheets::{Sheet, height_words};
use web_sys::{Element, HtmlElement};

/// Names of the sheets.
pub(super) struct Sheets {
    names: Rows<Name>,
    list: Rows<Name>,
    now: HtmlElement,
    room: HtmlElement,
    main: HtmlElement,
    grip: HtmlElement,
    shown: Option<Sheet>,
}

impl Sheets {
    /// Looks up the nodes.
    pub(super) fn mount() -> Result<Self> {
        Ok(Self {
            names: Rows::new(by_id("sheet-names")?),
            list: Rows::new(by_id("sheet-list")?),
            now: by_id("sheet-now")?,
            room: by_id("sheet")?,
            main: by_id("room")?,
            grip: by_id("sheet-grip")?,
            shown: None,
        })
    }

    /// Shows the sheet in hand.
    pub(super) fn patch(&mut self, page: &Page) -> Result<()> {
        self.names.patch(&page.sheets)?;
        self.list.patch(&page.sheets)?;
        set_attribute(&self.main, "data-height", page.sheet_height.key())?;
        set_attribute(&self.grip, "aria-label", height_words(page.sheet_height))?;
        if self.shown == Some(page.sheet) {
            return Ok(());
        }
        let in_hand = page.sheets.iter().find(|tab| tab.in_hand);
        set_text(&self.now, in_hand.map_or("", |tab| tab.take.label.as_str()));
        let all = document()?.query_selector_all(".sheet")?;
        for node in all_of::<Element>(&all) {
            let is_it = node.get_attribute("data-sheet").as_deref() == Some(page.sheet.key());
            set_hidden(&node, !is_it)?;
        }
        self.room.set_scroll_top(0);
        self.shown = Some(page.sheet);
        Ok(())
    }
}

/// The name of one sheet.
struct Name {
    node: HtmlElement,
}

impl Row for Name {
    type Item = SheetTab;

    fn key(item: &SheetTab) -> String {
        item.take.id.clone()
    }

    fn make(_: &SheetTab) -> Result<Self> {
        let node = element("button", "sheet-name")?;
        node.set_attribute("type", "button")?;
        node.set_attribute("tabindex", "-1")?;
        Ok(Self { node })
    }

    fn root(&self) -> &Element {
        &self.node
    }

    fn patch(&mut self, _: Option<&SheetTab>, new: &SheetTab) -> Result<()> {
        show(&self.node, &new.take)?;
        set_attribute(&self.node, "data-put-in", pressed(new.sheet.is_put_in()))?;
        set_attribute(&self.node, "aria-pressed", pressed(new.in_hand))
    }
}
