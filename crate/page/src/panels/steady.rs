//! Keeps what is pressed where it is: while a picture or a slider is dragged, what stands above it
//! keeps its height (an answer that grows by a line would move it away under the finger), and what
//! has moved by a release is scrolled back to its place.

use crate::dom::{by_id, document, set_flag, takes_room};
use crate::error::{PageError, Result};
use gearswing_app::words::browser::lacks;
use wasm_bindgen::JsCast;
use web_sys::{Element, HtmlElement};

/// Parts whose height follows from the gear or the place shown, from top to bottom.
const PARTS: [&str; 6] = [
    "head",
    "shared-part",
    "notice-part",
    "verdict-part",
    "readout",
    "times-said",
];

/// Parts that may scroll by themselves.
const SCROLLERS: &str = "#sheet, .drop-body";

/// Marks the page while heights are held: the browser's own scroll anchoring would follow a held part.
const MARK: &str = "data-held";

/// The parts, the pointers that are down, and what they press.
pub(crate) struct Steady {
    parts: Vec<HtmlElement>,
    held: Vec<HtmlElement>,
    down: Vec<i32>,
    pressed: Option<Element>,
    live: bool,
}

/// Where what is pressed stands in the window, and what it scrolls in (CSS px).
pub(crate) struct Stand {
    top: f64,
    scroller: Option<(HtmlElement, f64)>,
}

impl Steady {
    /// Looks up the nodes.
    pub(super) fn mount() -> Result<Self> {
        Ok(Self {
            parts: PARTS.into_iter().map(by_id).collect::<Result<_>>()?,
            held: Vec::new(),
            down: Vec::new(),
            pressed: None,
            live: false,
        })
    }

    /// Pointers that are down.
    pub(crate) fn down(&self) -> &[i32] {
        &self.down
    }

    /// A pointer goes down; `live`: on what answers while it is dragged.
    pub(crate) fn press(&mut self, id: i32, pressed: Element, live: bool) -> Result<()> {
        if self.down.is_empty() {
            self.let_go()?;
            self.live = live;
            if live {
                self.hold(&pressed)?;
            }
            self.pressed = Some(pressed);
        }
        self.down.retain(|down| *down != id);
        self.down.push(id);
        Ok(())
    }

    /// A pointer is up; whether it was down.
    pub(crate) fn lifted(&mut self, id: i32) -> Result<bool> {
        let before = self.down.len();
        self.down.retain(|down| *down != id);
        if self.down.is_empty() {
            self.let_go()?;
        }
        Ok(self.down.len() < before)
    }

    /// Where what is pressed stands. Not told while it is dragged: asking costs a layout.
    pub(super) fn stand(&self) -> Result<Option<Stand>> {
        if self.live && !self.down.is_empty() {
            return Ok(None);
        }
        let Some(pressed) = &self.pressed else {
            return Ok(None);
        };
        if !takes_room(pressed) {
            return Ok(None);
        }
        Ok(Some(Stand {
            top: pressed.get_bounding_client_rect().top(),
            scroller: scroller(pressed)?,
        }))
    }

    /// Scrolls what is pressed back to where it stood.
    pub(super) fn keep(&self, stood: Option<Stand>) -> Result<()> {
        let (Some(stood), Some(stands)) = (stood, self.stand()?) else {
            return Ok(());
        };
        let moved = stands.top - stood.top;
        if let (Some((node, now)), Some((_, before))) = (&stands.scroller, &stood.scroller) {
            let inside = moved - (now - before);
            if inside != 0.0 {
                let top = f64::from(node.scroll_top());
                node.scroll_to_with_x_and_y(0.0, top + inside);
            }
        }
        Ok(())
    }

    /// The press is over and shown.
    pub(crate) fn forget(&mut self) {
        if self.down.is_empty() {
            self.pressed = None;
        }
    }

    fn hold(&mut self, pressed: &Element) -> Result<()> {
        let place = pressed.get_bounding_client_rect();
        for part in &self.parts {
            let stands = part.get_bounding_client_rect();
            let above = stands.bottom() <= place.top() + 1.0
                && stands.left() < place.right()
                && stands.right() > place.left();
            if above && !part.contains(Some(pressed)) {
                let style = part.style();
                style.set_property("height", &format!("{}px", stands.height()))?;
                style.set_property("overflow", "clip")?;
                self.held.push(part.clone());
            }
        }
        set_flag(&root()?, MARK, true)
    }

    fn let_go(&mut self) -> Result<()> {
        if self.held.is_empty() {
            return Ok(());
        }
        let stood = self.stand()?;
        for part in self.held.drain(..) {
            part.style().remove_property("height")?;
            part.style().remove_property("overflow")?;
        }
        set_flag(&root()?, MARK, false)?;
        self.keep(stood)
    }
}

fn root() -> Result<Element> {
    document()?
        .document_element()
        .ok_or(PageError::Missing(lacks::ROOT))
}

/// The part in which a node scrolls, if not the page, and where it stands.
fn scroller(node: &Element) -> Result<Option<(HtmlElement, f64)>> {
    let found = node.closest(SCROLLERS)?;
    let Some(found) = found.and_then(|found| found.dyn_into::<HtmlElement>().ok()) else {
        return Ok(None);
    };
    if found.scroll_height() <= found.client_height() {
        return Ok(None);
    }
    let top = found.get_bounding_client_rect().top();
    Ok(Some((found, top)))
}
