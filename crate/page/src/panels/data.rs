//! The data: groups of fields, of which the chosen ones stand open.

use super::action::ActionButton;
use super::field::{FieldNode, node_id};
use super::head::pressed;
use crate::dom::{
    Row, Rows, by_id, document, element, set_attribute, set_flag, set_hidden, set_text,
};
use crate::error::Result;
use gearswing_app::Page;
use gearswing_app::view::FieldGroup;
use web_sys::{Element, HtmlElement};

/// All groups.
pub(super) struct Data {
    groups: Rows<Group>,
    typing: Option<String>,
    /// The field whose help stands open: the one that had the focus last.
    helped: Option<String>,
    wants_help: Option<String>,
}

impl Data {
    /// Looks up the nodes.
    pub(super) fn mount() -> Result<Self> {
        Ok(Self {
            groups: Rows::new(by_id("groups")?),
            typing: None,
            helped: None,
            wants_help: None,
        })
    }

    /// Shows the groups of a page.
    pub(super) fn patch(&mut self, page: &Page) -> Result<()> {
        self.groups.patch(&page.groups)?;
        if self.wants_help != self.helped {
            open_help(self.helped.as_ref(), false)?;
            open_help(self.wants_help.as_ref(), true)?;
            self.helped.clone_from(&self.wants_help);
        }
        Ok(())
    }

    /// Opens the help of this field with the next patch, and folds that of the former one.
    pub(super) fn help(&mut self, path: &str) {
        self.wants_help = Some(path.to_owned());
    }

    /// A text is being typed in this field, or in none. The mark on the node keeps the field's
    /// value from being written over, and the undo key with the browser.
    pub(super) fn typing(&mut self, path: Option<&String>) -> Result<()> {
        if self.typing.as_ref() == path {
            return Ok(());
        }
        mark_typing(self.typing.as_ref(), false)?;
        mark_typing(path, true)?;
        self.typing = path.cloned();
        Ok(())
    }
}

/// The control of a field, if it is on the page.
fn control(path: Option<&String>) -> Result<Option<Element>> {
    Ok(match path {
        Some(path) => document()?.get_element_by_id(&node_id(path)),
        None => None,
    })
}

/// Marks the control of a field whose text is being typed, or no longer.
fn mark_typing(path: Option<&String>, on: bool) -> Result<()> {
    match control(path)? {
        Some(node) => set_flag(&node, "data-typing", on),
        None => Ok(()),
    }
}

/// Opens or folds the help of a field.
fn open_help(path: Option<&String>, on: bool) -> Result<()> {
    let field = match control(path)? {
        Some(node) => node.closest(".field")?,
        None => None,
    };
    match field {
        Some(field) => set_flag(&field, "data-helped", on),
        None => Ok(()),
    }
}

/// One group.
pub(super) struct Group {
    node: HtmlElement,
    button: HtmlElement,
    title: HtmlElement,
    alert: HtmlElement,
    summary: HtmlElement,
    body: HtmlElement,
    help: HtmlElement,
    rows: Rows<FieldNode>,
    actions: Rows<ActionButton>,
}

impl Row for Group {
    type Item = FieldGroup;

    fn key(item: &FieldGroup) -> String {
        item.id.clone()
    }

    fn make(item: &FieldGroup) -> Result<Self> {
        let node = element("section", "fields")?;
        let heading = element("h3", "")?;
        let button = element("button", "group-head")?;
        button.set_attribute("type", "button")?;
        button.set_attribute("data-group", &item.id)?;
        let body_id = format!("group-{}", item.id);
        button.set_attribute("aria-controls", &body_id)?;
        let title = element("span", "group-title")?;
        let alert = element("span", "group-alert")?;
        let summary = element("span", "quiet group-summary")?;
        button.append_child(&title)?;
        button.append_with_str_1(" ")?;
        button.append_child(&alert)?;
        button.append_with_str_1(" ")?;
        button.append_child(&summary)?;
        heading.append_child(&button)?;
        let body = element("div", "group-body")?;
        body.set_id(&body_id);
        let help = element("p", "quiet small")?;
        let rows = element("div", "rows")?;
        let actions = element("p", "acts")?;
        for part in [&help, &rows, &actions] {
            body.append_child(part)?;
        }
        node.append_child(&heading)?;
        node.append_child(&body)?;
        Ok(Self {
            node,
            button,
            title,
            alert,
            summary,
            body,
            help,
            rows: Rows::new(rows.into()),
            actions: Rows::new(actions.into()),
        })
    }

    fn root(&self) -> &Element {
        &self.node
    }

    fn patch(&mut self, _: Option<&FieldGroup>, new: &FieldGroup) -> Result<()> {
        set_text(&self.title, &new.title);
        set_text(&self.summary, &new.summary);
        set_attribute(&self.button, "aria-expanded", pressed(new.open))?;
        set_hidden(&self.body, !new.open)?;
        set_text(&self.alert, &new.alert);
        set_flag(&self.node, "data-marked", new.marked)?;
        set_text(&self.help, &new.help);
        set_hidden(&self.help, new.help.is_empty())?;
        self.rows.patch(&new.rows)?;
        self.actions.patch(&new.actions)
    }
}
