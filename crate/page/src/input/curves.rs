//! Press and drag on the curves: the cursor goes along.

use super::drawing::place;
use crate::dom::by_id;
use crate::error::Result;
use crate::listen::{Mode, listen};
use crate::runtime::Port;
use gearswing_app::msg::{CurvePointer, Msg};
use web_sys::{HtmlCanvasElement, PointerEvent};

/// Registers the handlers of the curves.
pub(super) fn register(port: &Port) -> Result<()> {
    let canvas: HtmlCanvasElement = by_id("curves")?;
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
    for name in ["pointerup", "pointercancel"] {
        let to = port.clone();
        port.keep(listen(
            &canvas,
            name,
            Mode::default(),
            move |_: PointerEvent| to.send(Msg::CurvePointer(CurvePointer::End)),
        )?);
    }
    Ok(())
}

fn scrub(on: &HtmlCanvasElement, event: &PointerEvent) -> Msg {
    Msg::CurvePointer(CurvePointer::Scrub {
        at: place(on, event),
    })
}
