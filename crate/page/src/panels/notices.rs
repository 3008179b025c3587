//! Lines of text about what happened, and the banner of a link that was opened.

use super::action::ActionButton;
use crate::dom::{Row, Rows, by_id, element, set_attribute, set_hidden, set_text};
use crate::error::Result;
use gearswing_app::Page;
use gearswing_app::view::{Notice, NoticeKind, SharedBanner};
use gearswing_app::words::header as words;
use web_sys::{Element, HtmlElement};

/// Notices and banner.
pub(super) struct Notices {
    list: HtmlElement,
    rows: Rows<NoticeRow>,
    banner: HtmlElement,
    banner_text: HtmlElement,
    banner_actions: Rows<ActionButton>,
    shown: Option<SharedBanner>,
}

impl Notices {
    /// Looks up the nodes.
    pub(super) fn mount() -> Result<Self> {
        let list: HtmlElement = by_id("notices")?;
        Ok(Self {
            rows: Rows::new(list.clone().into()),
            list,
            banner: by_id("shared")?,
            banner_text: by_id("shared-text")?,
            banner_actions: Rows::new(by_id("shared-actions")?),
            shown: None,
        })
    }

    /// Shows the notices of a page.
    pub(super) fn patch(&mut self, page: &Page) -> Result<()> {
        set_hidden(&self.list, page.notices.is_empty())?;
        self.rows.patch(&page.notices)?;
        if self.shown != page.shared {
            set_hidden(&self.banner, page.shared.is_none())?;
            if let Some(banner) = &page.shared {
                set_text(&self.banner_text, &banner.text);
                self.banner_actions.patch(&banner.actions)?;
            }
            self.shown.clone_from(&page.shared);
        }
        Ok(())
    }
}

/// One notice.
struct NoticeRow {
    node: HtmlElement,
    text: HtmlElement,
    actions: Rows<ActionButton>,
}

impl Row for NoticeRow {
    type Item = Notice;

    fn key(item: &Notice) -> String {
        item.id.to_string()
    }

    fn make(item: &Notice) -> Result<Self> {
        let node = element("li", "notice")?;
        let text = element("p", "")?;
        let actions = element("p", "acts")?;
        let dismiss = element("button", "dismiss")?;
        dismiss.set_attribute("type", "button")?;
        dismiss.set_attribute("data-dismiss", &item.id.to_string())?;
        dismiss.set_text_content(Some(words::CLOSE));
        dismiss.set_attribute("aria-label", words::CLOSE_NOTICE)?;
        for part in [&text, &actions, &dismiss] {
            node.append_child(part)?;
        }
        Ok(Self {
            node,
            text,
            actions: Rows::new(actions.into()),
        })
    }

    fn root(&self) -> &Element {
        &self.node
    }

    fn patch(&mut self, _: Option<&Notice>, new: &Notice) -> Result<()> {
        let kind = match new.kind {
            NoticeKind::Info => "info",
            NoticeKind::Problem => "problem",
        };
        set_attribute(&self.node, "data-kind", kind)?;
        set_text(&self.text, &new.text);
        self.actions.patch(&new.actions)
    }
}
