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
        Mode::ACTIVE,
        move |event: KeyboardEvent| {
            if event.ctrl_key() || event.meta_key() {
                return;
            }
            let point = closest(&event, "data-handle");
            if let Some(point) = &point {
                if event.key() == " " {
                    // presses the point, as a click does
                    event.stop_propagation();
                    return;
                }
                if let Some(held) = hold(&event, is_held(point)) {
                    event.prevent_default();
                    report(set_held(point, held));
                    return;
                }
            }
            let Some(msg) = drawing_key(&event, point) else {
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

/// Whether a point that is held or not is so after a key: Enter takes hold of it and leaves it, Escape leaves it;
/// `None` = the key is for something else.
fn hold(event: &KeyboardEvent, held: bool) -> Option<bool> {
    match event.key().as_str() {
        "Enter" => Some(held == event.repeat()),
        "Escape" if held => Some(false),
        _ => None,
    }
}

fn set_held(point: &Element, held: bool) -> Result<()> {
    set_attribute(point, HELD, if held { "true" } else { "false" })
}

fn is_held(point: &Element) -> bool {
    point.get_attribute(HELD).as_deref() == Some("true")
}

fn drawing_key(event: &KeyboardEvent, point: Option<Element>) -> Option<Msg> {
    let key = event.key();
    let handle = point
        .as_ref()
        .and_then(|point| point.get_attribute("data-handle"));
    let direction = match key.as_str() {
        "ArrowLeft" => Some(Direction::Left),
        "ArrowRight" => Some(Direction::Right),
        "ArrowUp" => Some(Direction::Up),
        "ArrowDown" => Some(Direction::Down),
        _ => None,
    };
    if let Some(direction) = direction {
        // within a group they go from control to control
        let held = match &point {
            Some(point) => is_held(point),
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
                report(set_held(&point, !is_held(&point)));
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
                report(set_held(&point, false));
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
        Mode::ACTIVE,
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
