//! Focusable stand-ins for the points of the drawing: the keyboard's way to them. The pointer goes
//! through to the canvas.

use crate::dom::{Row, Rows, by_id, document, element, set_attribute};
use crate::error::Result;
use gearswing_app::scene::Handle;
use gearswing_app::words::drawing::POINT_ROLE;
use web_sys::{Element, HtmlElement};

/// The points of the drawing.
pub(super) struct Handles {
    list: HtmlElement,
    rows: Rows<HandleRow>,
}

impl Handles {
    /// Looks up the nodes.
    pub(super) fn mount() -> Result<Self> {
        Ok(Self {
            list: by_id("handles")?,
            rows: Rows::new(by_id("handles")?),
        })
    }

    /// Notes that the points are on their way, or stand.
    pub(super) fn busy(&self, busy: bool) -> Result<()> {
        set_attribute(&self.list, "aria-busy", if busy { "true" } else { "false" })
    }

    /// Shows the points.
    pub(super) fn patch(&mut self, points: &[Handle]) -> Result<()> {
        self.rows.patch(points)
    }

    /// Shows the point that has the focus, if one has.
    pub(super) fn patch_focused(&mut self, points: &[Handle]) -> Result<()> {
        let focused = document()?
            .active_element()
            .and_then(|node| node.get_attribute("data-handle"));
        let Some(id) = focused else { return Ok(()) };
        match points.iter().find(|point| point.id == id) {
            Some(point) => self.rows.patch_one(point),
            None => Ok(()),
        }
    }
}

struct HandleRow {
    node: HtmlElement,
}

impl Row for HandleRow {
    type Item = Handle;

    fn key(item: &Handle) -> String {
        item.id.clone()
    }

    fn make(item: &Handle) -> Result<Self> {
        let node = element("button", "handle")?;
        node.set_attribute("type", "button")?;
        node.set_attribute("tabindex", "-1")?;
        node.set_attribute("data-handle", &item.id)?;
        node.set_attribute("aria-roledescription", POINT_ROLE)?;
        Ok(Self { node })
    }

    fn root(&self) -> &Element {
        &self.node
    }

    fn patch(&mut self, old: Option<&Handle>, new: &Handle) -> Result<()> {
        if old.is_none_or(|old| old.at != new.at) {
            let style = self.node.style();
            style.set_property("left", &format!("{:.1}px", new.at.x_px))?;
            style.set_property("top", &format!("{:.1}px", new.at.y_px))?;
        }
        set_attribute(&self.node, "aria-label", &new.label)?;
        let movable = if new.movable { "false" } else { "true" };
        set_attribute(&self.node, "aria-disabled", movable)
    }
}
