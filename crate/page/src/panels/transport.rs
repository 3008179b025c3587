//! Play, scrub, and the numbers at this travel.

use super::head::fill;
use super::keys::SPEEDS;
use crate::dom::{Row, Rows, by_id, element, set_attribute, set_class, set_hidden, set_text};
use crate::error::Result;
use gearswing_app::Page;
use gearswing_app::view::{ReadoutRow, Transport, TransportMark};
use gearswing_app::words::transport::{PLAY, STOP};
use web_sys::{Element, HtmlElement, HtmlInputElement, HtmlSelectElement};

/// Play, scrub and readout.
pub(super) struct TransportPanel {
    shown: Option<Transport>,
    play: HtmlElement,
    scrub: HtmlInputElement,
    travel: HtmlElement,
    speed: HtmlSelectElement,
    motion: HtmlElement,
    marks: HtmlElement,
    readout: Rows<Number>,
}

impl TransportPanel {
    /// Looks up the nodes.
    pub(super) fn mount() -> Result<Self> {
        let speed: HtmlSelectElement = by_id("speed")?;
        fill(&speed, SPEEDS.iter().map(|option| (option.0, option.1)))?;
        Ok(Self {
            shown: None,
            play: by_id("play")?,
            scrub: by_id("scrub")?,
            travel: by_id("travel")?,
            speed,
            motion: by_id("motion")?,
            marks: by_id("scrub-marks")?,
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
        set_text(&self.travel, &new.text);
        set_text(&self.play, if new.playing { STOP } else { PLAY });
        for (key, _, speed) in SPEEDS {
            if speed == new.speed {
                self.speed.set_value(key);
            }
        }
        set_text(&self.motion, &new.motion_text);
        set_hidden(&self.motion, new.motion_text.is_empty())?;
        if old.is_none_or(|old| old.marks != new.marks) {
            self.marks(new)?;
        }
        self.shown = Some(new.clone());
        Ok(())
    }

    /// Ticks under the scrub.
    fn marks(&self, transport: &Transport) -> Result<()> {
        self.marks.set_text_content(None);
        let span = transport.max - transport.min;
        for mark in &transport.marks {
            let share = if span > 0.0 {
                ((mark.progress - transport.min) / span).clamp(0.0, 1.0)
            } else {
                0.0
            };
            self.marks.append_child(&*tick(mark, share)?)?;
        }
        Ok(())
    }
}

/// One tick.
fn tick(mark: &TransportMark, share: f64) -> Result<HtmlElement> {
    let node = element("span", if mark.bad { "tick bad" } else { "tick" })?;
    node.set_attribute("title", &mark.text)?;
    node.style()
        .set_property("left", &format!("{:.3}%", share * 100.0))?;
    Ok(node)
}

/// One number of the readout.
struct Number {
    node: HtmlElement,
    label: HtmlElement,
    value: HtmlElement,
    former: HtmlElement,
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
        let former = element("dd", "former")?;
        for part in [&label, &value, &former] {
            node.append_child(part)?;
        }
        Ok(Self {
            node,
            label,
            value,
            former,
        })
    }

    fn root(&self) -> &Element {
        &self.node
    }

    fn patch(&mut self, _: Option<&ReadoutRow>, new: &ReadoutRow) -> Result<()> {
        set_class(&self.node, if new.bad { "number bad" } else { "number" });
        set_text(&self.label, &new.label);
        set_text(&self.value, &new.value);
        set_text(&self.former, new.former.as_deref().unwrap_or_default());
        set_hidden(&self.former, new.former.is_none())
    }
}
