//! Holds what stands above the drawing while a pointer is down on it: an answer that grows by a
//! line would move the drawing away under the finger.

use crate::dom::{by_id, window};
use crate::error::Result;
use gearswing_app::Msg;
use gearswing_app::msg::Pointer;
use web_sys::HtmlElement;

/// The parts above the drawing.
pub(super) struct Steady {
    above: [HtmlElement; 2],
    drawing: HtmlElement,
    /// Pointers that are down on the drawing.
    down: Vec<i32>,
    held: bool,
}

impl Steady {
    /// Looks up the nodes.
    pub(super) fn mount() -> Result<Self> {
        Ok(Self {
            above: [by_id("notice-part")?, by_id("answers")?],
            drawing: by_id("drawing-box")?,
            down: Vec::new(),
            held: false,
        })
    }

    /// Holds when a pointer goes down, before anything is written for it.
    pub(super) fn before(&mut self, msg: &Msg) -> Result<()> {
        match msg {
            Msg::Pointer(Pointer::Down { id, .. }) => {
                self.down.retain(|down| down != id);
                self.down.push(*id);
                self.hold()
            }
            Msg::Pointer(Pointer::Up { id, .. } | Pointer::Cancel { id }) => {
                self.down.retain(|down| down != id);
                Ok(())
            }
            _ => Ok(()),
        }
    }

    /// Pointers that are down on the drawing.
    pub(super) fn down(&self) -> Vec<i32> {
        self.down.clone()
    }

    fn hold(&mut self) -> Result<()> {
        if !self.held {
            for part in &self.above {
                let height = part.get_bounding_client_rect().height();
                let style = part.style();
                style.set_property("height", &format!("{height}px"))?;
                style.set_property("overflow", "hidden")?;
            }
            self.held = true;
        }
        Ok(())
    }

    /// Lets go once no pointer is down and everything is written, and scrolls so that the drawing
    /// stays where it is.
    pub(super) fn after(&mut self) -> Result<()> {
        if !self.held || !self.down.is_empty() {
            return Ok(());
        }
        let before = self.drawing.get_bounding_client_rect().top();
        for part in &self.above {
            part.style().remove_property("height")?;
            part.style().remove_property("overflow")?;
        }
        self.held = false;
        let moved = self.drawing.get_bounding_client_rect().top() - before;
        window()?.scroll_by_with_x_and_y(0.0, moved);
        Ok(())
    }
}
