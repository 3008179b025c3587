//! Keys on the drawing and its points, and the shortcuts of the whole page.

use super::click::close_drops;
use super::fields::step_size;
use crate::dom::{by_id, closest, data, document, set_attribute};
use crate::error::{Result, report};
use crate::listen::{Mode, listen};
use crate::runtime::Port;
use gearswing_app::Msg;
use gearswing_app::msg::{Direction, History, Key, Play, View};
use wasm_bindgen::JsCast;
use web_sys::{
    Element, Event, FocusEvent, HtmlElement, HtmlInputElement, HtmlTextAreaElement, KeyboardEvent,
};

/// Zoom of one key press (ratio).
const ZOOM: f64 = 1.25;

const ACTIVE: Mode = Mode {
    capture: false,
    active: true,
};

/// Registers the handlers.
pub(super) fn register(port: &Port) -> Result<()> {
    on_drawing(port)?;
    focus_of_points(port)?;
    on_page(port)
}

/// Keys while the drawing or one of its points has the focus.
fn on_drawing(port: &Port) -> Result<()> {
    let container: HtmlElement = by_id("drawing-box")?;
    let to = port.clone();
    port.keep(listen(
        &container,
        "keydown",
        ACTIVE,
        move |event: KeyboardEvent| {
            if event.ctrl_key() || event.meta_key() {
                return;
            }
            let handle = data(&event, "data-handle");
            if handle.is_some() && event.key() == " " {
                // presses the point, as a click does
                event.stop_propagation();
                return;
            }
            if handle.is_some() && hold(&event).unwrap_or(false) {
                event.prevent_default();
                return;
            }
            let Some(msg) = drawing_key(&event, handle) else {
                return;
            };
            event.prevent_default();
            to.send(msg);
        },
    )?);
    Ok(())
}

/// Whether a point is held, so that the arrow keys move it.
const HELD: &str = "aria-pressed";

/// Enter takes hold of a point and leaves it, Escape leaves it; whether the key was for that.
fn hold(event: &KeyboardEvent) -> Result<bool> {
    let Some(point) = closest(event, "data-handle") else {
        return Ok(false);
    };
    let held = is_held(&point);
    let now = match event.key().as_str() {
        "Enter" => held == event.repeat(),
        "Escape" if held => false,
        _ => return Ok(false),
    };
    set_attribute(&point, HELD, if now { "true" } else { "false" })?;
    Ok(true)
}

fn is_held(point: &Element) -> bool {
    point.get_attribute(HELD).as_deref() == Some("true")
}

fn drawing_key(event: &KeyboardEvent, handle: Option<String>) -> Option<Msg> {
    let key = event.key();
    let direction = match key.as_str() {
        "ArrowLeft" => Some(Direction::Left),
        "ArrowRight" => Some(Direction::Right),
        "ArrowUp" => Some(Direction::Up),
        "ArrowDown" => Some(Direction::Down),
        _ => None,
    };
    if let Some(direction) = direction {
        // within a group they go from control to control
        let held = match closest(event, "data-handle") {
            Some(point) => is_held(&point),
            None => closest(event, "data-stop").is_none(),
        };
        return held.then_some(Msg::Key(match handle {
            Some(handle) => Key::Nudge {
                handle,
                direction,
                size: step_size(event),
            },
            None => Key::Pan { direction },
        }));
    }
    match (key.as_str(), handle) {
        ("Delete" | "Backspace", Some(handle)) => Some(Msg::Key(Key::Remove { handle })),
        ("Insert", Some(handle)) => Some(Msg::Key(Key::Insert { handle })),
        ("+" | "=", _) => Some(Msg::View(View::Zoom { factor: ZOOM })),
        ("-", _) => Some(Msg::View(View::Zoom { factor: 1.0 / ZOOM })),
        ("0" | "Home", _) => Some(Msg::View(View::Fit)),
        _ => None,
    }
}

/// The focus comes to a point of the drawing, or leaves it.
fn focus_of_points(port: &Port) -> Result<()> {
    let container: HtmlElement = by_id("handles")?;
    let to = port.clone();
    port.keep(listen(
        &container,
        "focusin",
        Mode::default(),
        move |event: FocusEvent| {
            if let Some(id) = data(&event, "data-handle") {
                to.send(Msg::View(View::FocusHandle { id: Some(id) }));
            }
        },
    )?);
    // a screen reader presses it by a click
    port.keep(listen(
        &container,
        "click",
        Mode::default(),
        |event: Event| {
            if let Some(point) = closest(&event, "data-handle") {
                let now = if is_held(&point) { "false" } else { "true" };
                report(set_attribute(&point, HELD, now));
            }
        },
    )?);
    let to = port.clone();
    port.keep(listen(
        &container,
        "focusout",
        Mode::default(),
        move |event: FocusEvent| {
            if let Some(point) = closest(&event, "data-handle") {
                report(set_attribute(&point, HELD, "false"));
            }
            to.send(Msg::View(View::FocusHandle { id: None }));
        },
    )?);
    Ok(())
}

/// Shortcuts of the whole page.
fn on_page(port: &Port) -> Result<()> {
    let (to, page) = (port.clone(), document()?);
    port.keep(listen(
        &page,
        "keydown",
        ACTIVE,
        move |event: KeyboardEvent| {
            if event.default_prevented() {
                return;
            }
            if event.key() == "Escape" {
                report(close_drops(None));
            }
            if event.key() == "Enter" && has_id(&event, "open-link") {
                report(press("[data-act=open-link]"));
            }
            let Some(msg) = page_key(&event) else { return };
            event.prevent_default();
            to.send(msg);
        },
    )?);
    Ok(())
}

/// Whether an event comes from the element with this id.
fn has_id(event: &Event, id: &str) -> bool {
    let target = event.target();
    let target = target.and_then(|target| target.dyn_into::<Element>().ok());
    target.is_some_and(|target| target.id() == id)
}

/// Presses what a selector finds.
fn press(css: &str) -> Result<()> {
    let found = document()?.query_selector(css)?;
    if let Some(button) = found.and_then(|found| found.dyn_into::<HtmlElement>().ok()) {
        button.click();
    }
    Ok(())
}

fn page_key(event: &KeyboardEvent) -> Option<Msg> {
    let key = event.key().to_ascii_lowercase();
    if event.ctrl_key() || event.meta_key() {
        // A text that is being typed has the browser's own undo.
        if event.alt_key() || is_being_typed(event) {
            return None;
        }
        return match (key.as_str(), event.shift_key()) {
            ("z", false) => Some(Msg::History(History::Undo)),
            ("z", true) | ("y", _) => Some(Msg::History(History::Redo)),
            _ => None,
        };
    }
    match key.as_str() {
        "escape" => Some(Msg::Key(Key::Escape)),
        " " if !is_control(event) => Some(Msg::Play(Play::Toggle)),
        _ => None,
    }
}

/// The event comes from a text field whose text is not taken over yet.
fn is_being_typed(event: &Event) -> bool {
    let Some(target) = event.target() else {
        return false;
    };
    if let Some(element) = target.dyn_ref::<Element>()
        && element.has_attribute("data-path")
    {
        return element.has_attribute("data-typing");
    }
    target.has_type::<HtmlTextAreaElement>()
        || target
            .dyn_ref::<HtmlInputElement>()
            .is_some_and(|input| input.type_() == "text")
}

/// The event comes from something that takes the space key itself.
fn is_control(event: &Event) -> bool {
    event
        .target()
        .and_then(|target| target.dyn_into::<Element>().ok())
        .is_some_and(|element| {
            matches!(
                element.tag_name().as_str(),
                "BUTTON" | "INPUT" | "SELECT" | "TEXTAREA" | "SUMMARY" | "A"
            ) && !element.has_attribute("data-handle")
                && element.id() != "scrub"
        })
}
