//! Text around the drawing and the curves, and the choice of the leg.

use super::head::pressed;
use super::lists::sentences;
use crate::dom::{Row, Rows, by_id, element, set_attribute, set_hidden, set_text};
use crate::error::Result;
use gearswing_app::Page;
use gearswing_app::view::{CurvesText, DrawingText, LegAnswers, PointerStyle};
use gearswing_app::words::drawing as words;
use web_sys::{Element, HtmlElement};

/// Text around the canvases.
pub(super) struct Drawing {
    legs: Rows<LegButton>,
    canvas: HtmlElement,
    description: HtmlElement,
    drag: HtmlElement,
    faded: HtmlElement,
    shown: Option<DrawingText>,
    curves_box: HtmlElement,
    curves: HtmlElement,
    curves_description: HtmlElement,
    curves_shown: Option<CurvesText>,
    height_px: f64,
}

impl Drawing {
    /// Looks up the nodes.
    pub(super) fn mount() -> Result<Self> {
        Ok(Self {
            legs: Rows::new(by_id("leg-choice")?),
            canvas: by_id("drawing")?,
            description: by_id("description")?,
            drag: by_id("drag")?,
            faded: by_id("faded")?,
            shown: None,
            curves_box: by_id("curves-box")?,
            curves: by_id("curves")?,
            curves_description: by_id("curves-description")?,
            curves_shown: None,
            height_px: 0.0,
        })
    }

    /// Shows the text on the canvases of a page.
    pub(super) fn patch(&mut self, page: &Page) -> Result<()> {
        self.legs.patch(&page.answers)?;
        let drawing = &page.drawing;
        set_text(&self.drag, &drawing.drag_text);
        set_hidden(&self.drag, drawing.drag_text.is_empty())?;
        let pointer = match drawing.pointer {
            PointerStyle::Open => "open",
            PointerStyle::OverHandle => "over",
            PointerStyle::Moving => "moving",
        };
        set_attribute(&self.canvas, "data-pointer", pointer)?;
        self.patch_faded(page)
    }

    /// Puts what the canvases of a page show into words.
    pub(super) fn describe(&mut self, page: &Page) -> Result<()> {
        self.describe_drawing(&page.drawing)?;
        self.describe_curves(&page.curves)
    }

    fn describe_drawing(&mut self, new: &DrawingText) -> Result<()> {
        let old = self.shown.as_ref();
        if old == Some(new) {
            return Ok(());
        }
        set_attribute(&self.canvas, "aria-label", &new.label)?;
        if old.is_none_or(|old| old.description != new.description) {
            sentences(&self.description, "p", &new.description)?;
        }
        self.shown = Some(new.clone());
        Ok(())
    }

    /// Over a faded drawing stands why.
    fn patch_faded(&self, page: &Page) -> Result<()> {
        set_hidden(&self.faded, !page.drawing.faded)?;
        if page.drawing.faded {
            let fault = page
                .answers
                .iter()
                .find(|leg| leg.selected)
                .and_then(|leg| leg.faults.first())
                .map_or("", |fault| fault.text.as_str());
            set_text(&self.faded, &words::faded_line(fault));
        }
        Ok(())
    }

    fn describe_curves(&mut self, new: &CurvesText) -> Result<()> {
        if self.curves_shown.as_ref() == Some(new) {
            return Ok(());
        }
        set_attribute(&self.curves, "aria-label", &new.label)?;
        sentences(&self.curves_description, "p", &new.description)?;
        self.curves_shown = Some(new.clone());
        Ok(())
    }

    /// Gives the curves' canvas its height.
    pub(super) fn curves_height(&mut self, height_px: f64) -> Result<()> {
        if height_px != self.height_px {
            self.curves_box
                .style()
                .set_property("height", &format!("{height_px}px"))?;
            self.height_px = height_px;
        }
        Ok(())
    }
}

/// A button that chooses the leg to be drawn.
struct LegButton {
    node: HtmlElement,
}

impl Row for LegButton {
    type Item = LegAnswers;

    fn key(item: &LegAnswers) -> String {
        item.leg.to_string()
    }

    fn make(item: &LegAnswers) -> Result<Self> {
        let node = element("button", "")?;
        node.set_attribute("type", "button")?;
        node.set_attribute("data-action", &item.select.id)?;
        Ok(Self { node })
    }

    fn root(&self) -> &Element {
        &self.node
    }

    fn patch(&mut self, _: Option<&LegAnswers>, new: &LegAnswers) -> Result<()> {
        set_text(&self.node, &new.name);
        set_attribute(&self.node, "data-action", &new.select.id)?;
        set_attribute(&self.node, "aria-pressed", pressed(new.selected))
    }
}
