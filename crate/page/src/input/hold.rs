//! Nothing changes its place while a pointer is down: between press and release of a button or a
//! field nothing is written at all, so that the release falls on what was pressed; while a slider or
//! a picture is dragged, what stands above it keeps its height.

use crate::dom::{document, window};
use crate::error::{Result, report};
use crate::listen::{Mode, listen};
use crate::runtime::Port;
use wasm_bindgen::JsCast;
use wasm_bindgen::closure::Closure;
use web_sys::{Element, Event, PointerEvent};

/// What is dragged and answers at once.
const LIVE: &str = "canvas, input[type=range]";

/// Its list opens over the page and takes the release.
const OWN_WINDOW: &str = "select";

/// Longest wait for the click that follows a release (ms).
const CLICK_WITHIN_MS: i32 = 80;

const FIRST: Mode = Mode {
    capture: true,
    active: false,
};

/// Registers the handlers, which see every event before those of its target.
pub(super) fn register(port: &Port) -> Result<()> {
    let (to, page) = (port.clone(), document()?);
    port.keep(listen(
        &page,
        "pointerdown",
        FIRST,
        move |event: PointerEvent| {
            if event.button() == 0 {
                let pressed = event.target().and_then(|node| node.dyn_into().ok());
                report(press(&to, event.pointer_id(), pressed));
            }
        },
    )?);
    for name in ["pointerup", "pointercancel"] {
        let (to, page) = (port.clone(), document()?);
        port.keep(listen(&page, name, FIRST, move |event: PointerEvent| {
            to.lifted(event.pointer_id());
            report(after_click(&to));
        })?);
    }
    // A release that was not heard: over a scroll bar, a list of the browser's own.
    let (to, page) = (port.clone(), document()?);
    port.keep(listen(
        &page,
        "pointermove",
        FIRST,
        move |event: PointerEvent| {
            if event.buttons() == 0 && to.lifted(event.pointer_id()) {
                to.let_go();
            }
        },
    )?);
    // What is typed or clicked meanwhile is meant for the page as it stands.
    for name in ["click", "keydown"] {
        let (to, page) = (port.clone(), document()?);
        port.keep(listen(&page, name, FIRST, move |_: Event| to.let_go())?);
    }
    Ok(())
}

fn press(port: &Port, id: i32, pressed: Option<Element>) -> Result<()> {
    let Some(pressed) = pressed else {
        return Ok(());
    };
    if pressed.closest(OWN_WINDOW)?.is_none() {
        let live = pressed.closest(LIVE)?.is_some();
        port.pressed(id, pressed, live);
    }
    Ok(())
}

/// Lets go once the click has had its turn, or when none comes.
fn after_click(port: &Port) -> Result<()> {
    let to = port.clone();
    let then = Closure::once_into_js(move || {
        if !to.any_down() {
            to.let_go();
        }
    });
    window()?.set_timeout_with_callback_and_timeout_and_arguments_0(
        then.unchecked_ref(),
        CLICK_WITHIN_MS,
    )?;
    Ok(())
}
