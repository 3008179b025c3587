//! Text around the drawing and the curves.

use super::answers::sign_of;
use super::lists::sentences;
use crate::dom::{by_id, set_attribute, set_class, set_hidden, set_text};
use crate::error::{PageError, Result};
use gearswing_app::Page;
use gearswing_app::view::{CurvesText, DrawingText, PointerStyle};
use gearswing_app::words::browser::lacks;
use gearswing_app::words::drawing as words;
use web_sys::{Element, HtmlElement};

/// Text around the canvases.
pub(super) struct Drawing {
    leg: HtmlElement,
    place: HtmlElement,
    detail_part: HtmlElement,
    detail_caption: HtmlElement,
    detail_value: HtmlElement,
    worst: HtmlElement,
    worst_mark: Element,
    worst_text: HtmlElement,
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
        let worst: HtmlElement = by_id("drawing-worst")?;
        Ok(Self {
            detail_part: by_id("detail-part")?,
            detail_caption: by_id("detail-caption")?,
            detail_value: by_id("detail-value")?,
            leg: by_id("drawing-leg")?,
            place: by_id("drawing-place")?,
            worst_mark: worst
                .query_selector(".mark")?
                .ok_or(PageError::Missing(lacks::ROOT))?,
            worst,
            worst_text: by_id("drawing-worst-text")?,
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
        let drawing = &page.drawing;
        let in_hand = page.answers.iter().find(|leg| leg.selected);
        set_text(&self.leg, in_hand.map_or("", |leg| leg.name.as_str()));
        set_text(
            &self.place,
            &words::title_rest(&drawing.seen, &page.transport.travel),
        );
        set_hidden(&self.detail_part, drawing.detail.is_none())?;
        if let Some(detail) = &drawing.detail {
            set_text(&self.detail_caption, &detail.caption);
            set_text(&self.detail_value, &detail.value);
            set_class(&self.detail_value, if detail.bad { "error" } else { "" });
        }
        let sound = in_hand.is_some_and(|leg| leg.faults.is_empty());
        set_hidden(&self.worst, drawing.worst.is_none() || !sound)?;
        if let Some((verdict, text)) = &drawing.worst {
            let (name, sign) = sign_of(*verdict);
            set_attribute(&self.worst, "data-verdict", name)?;
            set_text(&self.worst_mark, sign);
            set_text(&self.worst_text, text);
        }
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
        // a point that is moved is to be seen; the fault stands over it once it is let go
        let moves = page.drawing.pointer == PointerStyle::Moving;
        set_hidden(&self.faded, !page.drawing.faded || moves)?;
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
