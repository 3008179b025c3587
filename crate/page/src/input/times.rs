//! Press and drag on the charts against time, and their slider.

use super::drawing::place;
use crate::dom::by_id;
use crate::error::Result;
use crate::listen::{Mode, listen};
use crate::runtime::Port;
use gearswing_app::msg::{Msg, Times};
use web_sys::{Event, HtmlCanvasElement, HtmlInputElement, PointerEvent};

/// Registers the handlers.
pub(super) fn register(port: &Port) -> Result<()> {
    let canvas: HtmlCanvasElement = by_id("times")?;
    let (to, on) = (port.clone(), canvas.clone());
    port.keep(listen(
        &canvas,
        "pointerdown",
        Mode::default(),
        move |event: PointerEvent| {
            if event.pointer_type() == "mouse" && event.button() != 0 {
                return;
            }
            if on.set_pointer_capture(event.pointer_id()).is_err() {
                web_sys::console::warn_1(&"pointer not captured".into());
            }
            to.send(scrub(&on, &event));
        },
    )?);
    let (to, on) = (port.clone(), canvas.clone());
    port.keep(listen(
        &canvas,
        "pointermove",
        Mode::default(),
        move |event: PointerEvent| {
            if event.buttons() != 0 {
                to.send(scrub(&on, &event));
            }
        },
    )?);
    let slider: HtmlInputElement = by_id("times-slider")?;
    let (to, from) = (port.clone(), slider.clone());
    port.keep(listen(
        &slider,
        "input",
        Mode::default(),
        move |_: Event| {
            to.send(Msg::Times(Times::Seek {
                time_s: from.value_as_number(),
            }));
        },
    )?);
    Ok(())
}

fn scrub(on: &HtmlCanvasElement, event: &PointerEvent) -> Msg {
    Msg::Times(Times::Scrub {
        at: place(on, event),
    })
}
