//! Play, scrub, and the numbers at this travel.

use super::head::fill;
use super::keys::{SPEEDS, WAYS};
use super::lists::sentences;
use crate::dom::{
    Row, Rows, by_id, element, set_attribute, set_class, set_flag, set_hidden, set_text,
};
use crate::error::Result;
use gearswing_app::Page;
use gearswing_app::view::{ReadoutRow, Transport};
use gearswing_app::words::transport::{PLAY, STOP};
use web_sys::{Element, HtmlElement, HtmlInputElement, HtmlSelectElement};

/// Play, scrub and readout.
pub(super) struct TransportPanel {
    shown: Option<Transport>,
    play: HtmlElement,
    scrub: HtmlInputElement,
    place: HtmlElement,
    travel: HtmlElement,
    speed: [HtmlSelectElement; 2],
    way: HtmlElement,
    way_more: HtmlSelectElement,
    motion: HtmlElement,
    marks: HtmlElement,
    mark_before: HtmlElement,
    mark_after: HtmlElement,
    readout: Rows<Number>,
}

impl TransportPanel {
    /// Looks up the nodes.
    pub(super) fn mount() -> Result<Self> {
        // where there is little room the second one is shown
        let speed: [HtmlSelectElement; 2] = [by_id("speed")?, by_id("speed-more")?];
        for select in &speed {
            fill(select, SPEEDS.iter().map(|option| (option.0, option.1)))?;
        }
        let way_more: HtmlSelectElement = by_id("way-more")?;
        fill(&way_more, WAYS.iter().map(|option| (option.0, option.1)))?;
        Ok(Self {
            shown: None,
            play: by_id("play")?,
            scrub: by_id("scrub")?,
            place: by_id("travel-place")?,
            travel: by_id("travel-short")?,
            speed,
            way: by_id("way")?,
            way_more,
            motion: by_id("motion")?,
            marks: by_id("scrub-marks")?,
            mark_before: by_id("mark-before")?,
            mark_after: by_id("mark-after")?,
            readout: Rows::new(by_id("readout")?),
        })
    }

    /// Shows play and scrub of a page.
    pub(super) fn patch(&mut self, page: &Page) -> Result<()> {
        self.readout.patch(&page.readout)?;
        let new = &page.transport;
        let old = self.shown.as_ref();
        if old == Some(new) {
            return Ok(());
        }
        if old.is_none_or(|old| (old.min, old.max, old.step) != (new.min, new.max, new.step)) {
            self.scrub.set_min(&new.min.to_string());
            self.scrub.set_max(&new.max.to_string());
            self.scrub.set_step(&new.step.to_string());
        }
        if self.scrub.value_as_number() != new.value {
            self.scrub.set_value_as_number(new.value);
        }
        set_attribute(&self.scrub, "aria-valuetext", &new.text)?;
        set_text(&self.place, &new.place);
        set_text(&self.travel, &new.travel_short);
        set_text(&self.play, if new.playing { STOP } else { PLAY });
        for (key, _, speed) in SPEEDS {
            if speed == new.speed {
                for select in &self.speed {
                    select.set_value(key);
                }
            }
        }
        for (key, label, down) in WAYS {
            if down == new.way_down {
                set_text(&self.way, label);
                self.way_more.set_value(key);
            }
        }
        set_text(&self.motion, &new.motion_text);
        set_hidden(&self.motion, new.motion_text.is_empty())?;
        if old.is_none_or(|old| old.marks != new.marks) {
            let texts: Vec<&str> = new.marks.iter().map(|mark| mark.text.as_str()).collect();
            sentences(&self.marks, "li", &texts)?;
        }
        set_flag(&self.mark_before, "disabled", !new.mark_before)?;
        set_flag(&self.mark_after, "disabled", !new.mark_after)?;
        self.shown = Some(new.clone());
        Ok(())
    }
}

/// One number of the readout.
struct Number {
    node: HtmlElement,
    label: HtmlElement,
    value: HtmlElement,
    before: HtmlElement,
}

impl Row for Number {
    type Item = ReadoutRow;

    fn key(item: &ReadoutRow) -> String {
        item.label.clone()
    }

    fn make(_: &ReadoutRow) -> Result<Self> {
        let node = element("div", "number")?;
        let label = element("dt", "")?;
        let value = element("dd", "")?;
        let before = element("dd", "was")?;
        for part in [&label, &value, &before] {
            node.append_child(part)?;
        }
        Ok(Self {
            node,
            label,
            value,
            before,
        })
    }

    fn root(&self) -> &Element {
        &self.node
    }

    fn patch(&mut self, _: Option<&ReadoutRow>, new: &ReadoutRow) -> Result<()> {
        set_class(&self.node, if new.bad { "number bad" } else { "number" });
        set_text(&self.label, &new.label);
        set_text(&self.value, &new.value);
        set_text(&self.before, new.before.as_deref().unwrap_or_default());
        set_hidden(&self.before, new.before.is_none())
    }
}
