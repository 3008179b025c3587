//! Press and drag on the strip: the cursor goes along, finer away from it.

use super::drawing::{kind, place};
use super::scrub::takes;
use crate::dom::by_id;
use crate::error::{Result, report};
use crate::listen::{Mode, listen};
use crate::runtime::Port;
use gearswing_app::Msg;
use gearswing_app::msg::StripPointer;
use web_sys::{HtmlCanvasElement, HtmlElement, MouseEvent, PointerEvent};

/// Registers the handlers of the strip.
pub(super) fn register(port: &Port) -> Result<()> {
    let canvas: HtmlCanvasElement = by_id("strip")?;
    let scrub: HtmlElement = by_id("scrub")?;
    let (to, on) = (port.clone(), canvas.clone());
    port.keep(listen(
        &canvas,
        "pointerdown",
        Mode::default(),
        move |event: PointerEvent| {
            if event.is_primary() && takes(&on, &event) {
                // the arrow keys go on from there
                report(scrub.focus().map_err(Into::into));
                to.send(Msg::StripPointer(StripPointer::Down {
                    kind: kind(&event),
                    at: place(&on, &event),
                }));
            }
        },
    )?);
    // the press that follows would take the focus away again
    port.keep(listen(
        &canvas,
        "mousedown",
        Mode::ACTIVE,
        |event: MouseEvent| event.prevent_default(),
    )?);
    let (to, on) = (port.clone(), canvas.clone());
    port.keep(listen(
        &canvas,
        "pointermove",
        Mode::default(),
        move |event: PointerEvent| {
            if event.is_primary() && event.buttons() != 0 {
                to.send(Msg::StripPointer(StripPointer::Drag {
                    kind: kind(&event),
                    at: place(&on, &event),
                }));
            }
        },
    )?);
    for name in ["pointerup", "pointercancel", "lostpointercapture"] {
        let to = port.clone();
        port.keep(listen(
            &canvas,
            name,
            Mode::default(),
            move |_: PointerEvent| to.send(Msg::StripPointer(StripPointer::End)),
        )?);
    }
    Ok(())
}
