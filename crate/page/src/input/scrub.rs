//! Press and drag on a canvas: what is under the pointer goes along.

use super::drawing::place;
use crate::error::Result;
use crate::listen::{Mode, listen};
use crate::runtime::Port;
use gearswing_app::Msg;
use gearswing_app::scene::ScreenPoint;
use web_sys::{HtmlCanvasElement, PointerEvent};

/// Whether a press counts: of a mouse only its first button. The canvas then keeps the pointer until
/// it is let go; without capture (the pointer is gone already) a drag ends at the canvas' edge.
pub(super) fn takes(canvas: &HtmlCanvasElement, event: &PointerEvent) -> bool {
    if event.pointer_type() == "mouse" && event.button() != 0 {
        return false;
    }
    if canvas.set_pointer_capture(event.pointer_id()).is_err() {
        web_sys::console::warn_1(&"pointer not captured".into());
    }
    true
}

/// Sends where a pointer is pressed or dragged on a canvas.
pub(super) fn scrubs(
    port: &Port,
    canvas: &HtmlCanvasElement,
    msg: fn(ScreenPoint) -> Msg,
) -> Result<()> {
    let (to, on) = (port.clone(), canvas.clone());
    port.keep(listen(
        canvas,
        "pointerdown",
        Mode::default(),
        move |event: PointerEvent| {
            if takes(&on, &event) {
                to.send(msg(place(&on, &event)));
            }
        },
    )?);
    let (to, on) = (port.clone(), canvas.clone());
    port.keep(listen(
        canvas,
        "pointermove",
        Mode::default(),
        move |event: PointerEvent| {
            if event.buttons() != 0 {
                to.send(msg(place(&on, &event)));
            }
        },
    )?);
    Ok(())
}
