//! Typing in the fields of the data: one set of handlers on their container.

use crate::dom::{by_id, closest};
use crate::error::Result;
use crate::listen::{Listener, Mode, listen};
use crate::runtime::Port;
use gearswing_app::msg::Field;
use gearswing_app::{Msg, StepSize};
use wasm_bindgen::JsCast;
use web_sys::{
    ClipboardEvent, Event, FocusEvent, HtmlElement, HtmlInputElement, HtmlSelectElement,
    HtmlTextAreaElement, InputEvent, KeyboardEvent,
};

/// Containers whose fields these handlers serve: elements with `data-path` inside of them.
const CONTAINERS: [&str; 3] = ["groups", "stop-group", "files-body"];

/// Registers the handlers of the fields.
pub(super) fn register(port: &Port) -> Result<()> {
    for id in CONTAINERS {
        let container: HtmlElement = by_id(id)?;
        for listener in [
            typed(port, &container)?,
            changed(port, &container)?,
            focused(port, &container)?,
            left(port, &container)?,
            key(port, &container)?,
            pasted(port, &container)?,
        ] {
            port.keep(listener);
        }
    }
    Ok(())
}

fn typed(port: &Port, container: &HtmlElement) -> Result<Listener> {
    let to = port.clone();
    listen(
        container,
        "input",
        Mode::default(),
        move |event: InputEvent| {
            if let (Some(path), Some(text)) = (path(&event), text_of(&event)) {
                to.send(Msg::Field(Field::Draft { path, text }));
            }
        },
    )
}

/// A list of points that is pasted into the field of a coordinate; the browser would make one line of it.
fn pasted(port: &Port, container: &HtmlElement) -> Result<Listener> {
    let to = port.clone();
    listen(
        container,
        "paste",
        Mode::ACTIVE,
        move |event: ClipboardEvent| {
            let data = event.clipboard_data();
            let text = data.and_then(|data| data.get_data("text").ok());
            if let (Some(path), Some(text), Some(_)) =
                (path(&event), text, closest(&event, "data-number"))
                && text.trim().contains(['\n', '\t'])
            {
                event.prevent_default();
                to.send(Msg::Field(Field::Paste { path, text }));
            }
        },
    )
}

fn changed(port: &Port, container: &HtmlElement) -> Result<Listener> {
    let to = port.clone();
    listen(container, "change", Mode::default(), move |event: Event| {
        let Some(path) = path(&event) else { return };
        let Some(target) = event.target() else { return };
        if let Some(select) = target.dyn_ref::<HtmlSelectElement>() {
            to.send(Msg::Field(Field::Choose {
                path,
                option: select.value(),
            }));
        } else if let Some(input) = target.dyn_ref::<HtmlInputElement>()
            && input.type_() == "checkbox"
        {
            to.send(Msg::Field(Field::Switch {
                path,
                option: input.value(),
                on: input.checked(),
            }));
        }
    })
}

fn focused(port: &Port, container: &HtmlElement) -> Result<Listener> {
    let to = port.clone();
    listen(
        container,
        "focusin",
        Mode::default(),
        move |event: FocusEvent| {
            if let Some(path) = path(&event) {
                to.send(Msg::Field(Field::Focus { path }));
            }
        },
    )
}

fn left(port: &Port, container: &HtmlElement) -> Result<Listener> {
    let to = port.clone();
    listen(
        container,
        "focusout",
        Mode::default(),
        move |event: FocusEvent| {
            if let (Some(path), Some(_)) = (path(&event), text_of(&event)) {
                to.send(Msg::Field(Field::Commit { path }));
            }
        },
    )
}

fn key(port: &Port, container: &HtmlElement) -> Result<Listener> {
    let to = port.clone();
    listen(
        container,
        "keydown",
        Mode::ACTIVE,
        move |event: KeyboardEvent| {
            let (Some(path), Some(_)) = (path(&event), text_of(&event)) else {
                return;
            };
            let long = is_long(&event);
            let number = closest(&event, "data-number").is_some();
            let msg = match event.key().as_str() {
                "Enter" if !long => Field::Commit { path },
                "Escape" => Field::Revert { path },
                "ArrowUp" | "ArrowDown" if number => Field::Step {
                    path,
                    up: event.key() == "ArrowUp",
                    size: step_size(&event),
                },
                _ => return,
            };
            event.prevent_default();
            to.send(Msg::Field(msg));
        },
    )
}

/// Step by the keys held: shift coarser, alt finer.
pub(super) fn step_size(event: &KeyboardEvent) -> StepSize {
    if event.shift_key() {
        StepSize::Coarse
    } else if event.alt_key() {
        StepSize::Fine
    } else {
        StepSize::Normal
    }
}

/// Path of the field an event comes from.
fn path(event: &Event) -> Option<String> {
    event
        .target()?
        .dyn_into::<HtmlElement>()
        .ok()?
        .get_attribute("data-path")
}

/// Text of the text field an event comes from.
fn text_of(event: &Event) -> Option<String> {
    let target = event.target()?;
    if let Some(input) = target.dyn_ref::<HtmlInputElement>() {
        return (input.type_() == "text").then(|| input.value());
    }
    target
        .dyn_ref::<HtmlTextAreaElement>()
        .map(HtmlTextAreaElement::value)
}

fn is_long(event: &Event) -> bool {
    event
        .target()
        .is_some_and(|target| target.has_type::<HtmlTextAreaElement>())
}
