//! Buttons made from actions of the page's data.

use crate::dom::{Row, element, set_attribute, set_flag, set_text};
use crate::error::Result;
use gearswing_app::view::Action;
use gearswing_app::{Msg, Page};
use web_sys::{Element, HtmlElement};

/// One button.
pub(crate) struct ActionButton {
    node: HtmlElement,
}

impl Row for ActionButton {
    type Item = Action;

    fn key(item: &Action) -> String {
        item.id.clone()
    }

    fn make(item: &Action) -> Result<Self> {
        let node = element("button", "")?;
        node.set_attribute("type", "button")?;
        node.set_attribute("data-action", &item.id)?;
        Ok(Self { node })
    }

    fn root(&self) -> &Element {
        &self.node
    }

    fn patch(&mut self, _: Option<&Action>, new: &Action) -> Result<()> {
        show(&self.node, new)
    }
}

/// Writes an action on a button.
pub(super) fn show(node: &Element, action: &Action) -> Result<()> {
    set_text(node, &action.label);
    set_attribute(node, "data-action", &action.id)?;
    set_flag(node, "disabled", !action.enabled)?;
    if action.hint.is_empty() {
        node.remove_attribute("aria-label")?;
        node.remove_attribute("title")?;
    } else {
        // The spoken name begins with the visible one, so that it can be called by it.
        let name = if action.hint.starts_with(&action.label) {
            action.hint.clone()
        } else {
            format!("{}: {}", action.label, action.hint)
        };
        set_attribute(node, "aria-label", &name)?;
        set_attribute(node, "title", &action.hint)?;
    }
    Ok(())
}

/// What the action with this id sends, if it can be pressed.
pub(crate) fn find_action(page: &Page, id: &str) -> Option<Msg> {
    all(page)
        .find(|action| action.id == id && action.enabled)
        .map(|action| action.msg.clone())
}

/// Every action on the page.
fn all(page: &Page) -> impl Iterator<Item = &Action> {
    let notices = page.notices.iter().flat_map(|notice| &notice.actions);
    let shared = page.shared.iter().flat_map(|banner| &banner.actions);
    let answers = page.answers.iter().flat_map(|leg| {
        let places = leg.answers.iter().filter_map(|row| row.go_to.as_ref());
        let faults = leg.faults.iter().filter_map(|row| row.show.as_ref());
        let open = leg.answers.iter().map(|row| &row.open);
        let rows = std::iter::once(&leg.select).chain(open);
        rows.chain(places).chain(faults)
    });
    let groups = page.groups.iter().chain(&page.stopped.group);
    let data = groups.flat_map(|group| {
        let rows = group.rows.iter().flat_map(|row| &row.actions);
        rows.chain(&group.actions)
    });
    let changes = &page.changes;
    let lists = page
        .files
        .iter()
        .chain(&changes.rows)
        .chain(&changes.kept)
        .chain(&changes.notes);
    let lists = lists.flat_map(|row| &row.actions);
    notices
        .chain(shared)
        .chain(answers)
        .chain(data)
        .chain(lists)
        .chain(&changes.actions)
        .chain(&page.starters)
        .chain(&page.stopped.actions)
        .chain(&page.times.actions)
        .chain(page.sheets.iter().map(|tab| &tab.take))
}
