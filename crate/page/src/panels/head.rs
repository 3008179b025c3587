//! The top row: file, link, history, units, theme.

use super::keys::{AIRSPEEDS, THEMES, UNITS, units_key};
use crate::dom::{by_id, element_of, set_attribute, set_flag, set_hidden, set_text};
use crate::error::Result;
use gearswing_app::Page;
use gearswing_app::view::Toolbar;
use gearswing_app::words::header::units_words;
use web_sys::{HtmlElement, HtmlInputElement, HtmlOptionElement, HtmlSelectElement};

/// The top row.
pub(super) struct TopRow {
    shown: Option<Toolbar>,
    file_name: HtmlElement,
    own_gear: HtmlElement,
    file_state: HtmlElement,
    undo: HtmlElement,
    redo: HtmlElement,
    units: [HtmlSelectElement; 2],
    airspeed: HtmlSelectElement,
    theme: HtmlSelectElement,
    link_length: HtmlElement,
    link_reach: HtmlElement,
    copy_link: HtmlElement,
    home: HtmlInputElement,
    reach_parts: HtmlElement,
    compare: HtmlElement,
    snap: HtmlElement,
    slide: HtmlElement,
    note_here: HtmlElement,
    note_selected: HtmlElement,
    loads: HtmlElement,
}

impl TopRow {
    /// Looks up the nodes and fills the selects.
    pub(super) fn mount() -> Result<Self> {
        // where there is little room the second one is shown
        let units: [HtmlSelectElement; 2] = [by_id("units")?, by_id("units-more")?];
        let theme: HtmlSelectElement = by_id("theme")?;
        let units_option =
            |&(key, system, pressure): &(_, _, _)| (key, units_words(system, pressure));
        for select in &units {
            fill(select, UNITS.iter().map(units_option))?;
        }
        let airspeed: HtmlSelectElement = by_id("airspeed")?;
        fill(
            &airspeed,
            AIRSPEEDS.iter().map(|option| (option.0, option.1)),
        )?;
        fill(&theme, THEMES.iter().map(|option| (option.0, option.1)))?;
        Ok(Self {
            shown: None,
            file_name: by_id("file-name")?,
            own_gear: by_id("own-gear")?,
            file_state: by_id("file-state")?,
            undo: by_id("undo")?,
            redo: by_id("redo")?,
            units,
            airspeed,
            theme,
            link_length: by_id("link-length")?,
            link_reach: by_id("link-reach")?,
            copy_link: by_id("copy-link")?,
            home: by_id("home")?,
            reach_parts: by_id("link-for")?,
            compare: by_id("compare")?,
            snap: by_id("snap")?,
            slide: by_id("slide")?,
            note_here: by_id("note-here")?,
            note_selected: by_id("note-selected")?,
            loads: by_id("loads")?,
        })
    }

    /// Shows the top row of a page.
    pub(super) fn patch(&mut self, page: &Page) -> Result<()> {
        let new = &page.toolbar;
        if self.shown.as_ref() == Some(new) {
            return Ok(());
        }
        set_text(&self.file_name, &new.file_name);
        set_text(&self.file_state, &new.stored_text);
        set_hidden(&self.own_gear, !new.is_demo)?;
        set_flag(&self.undo, "disabled", !new.can_undo)?;
        set_flag(&self.redo, "disabled", !new.can_redo)?;
        set_attribute(&self.undo, "title", &new.undo_text)?;
        set_attribute(&self.redo, "title", &new.redo_text)?;
        for select in &self.units {
            select.set_value(units_key(new.units));
        }
        for (key, _, unit) in AIRSPEEDS {
            if unit == new.units.airspeed {
                self.airspeed.set_value(key);
            }
        }
        for (key, _, theme) in THEMES {
            if theme == new.theme {
                self.theme.set_value(key);
            }
        }
        set_text(&self.link_length, &new.link_text);
        set_attribute(
            &self.link_length,
            "class",
            if new.link_too_long { "error" } else { "quiet" },
        )?;
        set_text(&self.link_reach, &new.link_reach);
        set_hidden(
            &self.reach_parts,
            new.link_reach.is_empty() && new.home.is_empty(),
        )?;
        set_text(&self.copy_link, new.copy_text);
        self.home.set_value(&new.home);
        set_hidden(&self.compare, new.previous.is_none())?;
        set_text(&self.compare, &new.compare_text);
        set_attribute(&self.compare, "aria-pressed", pressed(new.comparing))?;
        set_attribute(&self.snap, "aria-pressed", pressed(new.snap))?;
        set_text(&self.note_here, &new.note_here);
        if !new.note_selected.is_empty() {
            set_text(&self.note_selected, &new.note_selected);
        }
        set_hidden(&self.note_selected, new.note_selected.is_empty())?;
        set_hidden(&self.slide, new.slide.is_none())?;
        let slides = new.slide.unwrap_or(false);
        set_attribute(&self.slide, "aria-pressed", pressed(slides))?;
        set_attribute(&self.loads, "aria-pressed", pressed(new.loads))?;
        self.shown = Some(new.clone());
        Ok(())
    }
}

/// Value of `aria-pressed` and its like.
pub(super) fn pressed(on: bool) -> &'static str {
    if on { "true" } else { "false" }
}

/// Fills a select with options.
pub(super) fn fill<'a>(
    select: &HtmlSelectElement,
    options: impl Iterator<Item = (&'a str, &'a str)>,
) -> Result<()> {
    select.set_text_content(None);
    for (key, text) in options {
        let option: HtmlOptionElement = element_of("option", "")?;
        option.set_value(key);
        option.set_text(text);
        select.append_child(&option)?;
    }
    Ok(())
}
