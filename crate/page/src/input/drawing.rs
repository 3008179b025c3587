//! Mouse, pen, fingers and wheel on the drawing.

use super::scrub::takes;
use crate::dom::by_id;
use crate::error::Result;
use crate::listen::{Mode, listen};
use crate::runtime::Port;
use gearswing_app::Msg;
use gearswing_app::msg::{Modifiers, Pointer, PointerKind};
use gearswing_app::scene::ScreenPoint;
use web_sys::{Element, HtmlCanvasElement, MouseEvent, PointerEvent, WheelEvent};

/// Registers the handlers of the drawing.
pub(super) fn register(port: &Port) -> Result<()> {
    let canvas: HtmlCanvasElement = by_id("drawing")?;
    presses(port, &canvas)?;
    moves(port, &canvas)?;
    wheel(port, &canvas)
}

fn presses(port: &Port, canvas: &HtmlCanvasElement) -> Result<()> {
    let (to, on) = (port.clone(), canvas.clone());
    port.keep(listen(
        canvas,
        "pointerdown",
        Mode::default(),
        move |event: PointerEvent| {
            if !takes(&on, &event) {
                return;
            }
            to.send(Msg::Pointer(Pointer::Down {
                id: event.pointer_id(),
                kind: kind(&event),
                at: place(&on, &event),
                modifiers: modifiers(&event),
            }));
        },
    )?);
    let (to, on) = (port.clone(), canvas.clone());
    port.keep(listen(
        canvas,
        "pointerup",
        Mode::default(),
        move |event: PointerEvent| {
            to.send(Msg::Pointer(Pointer::Up {
                id: event.pointer_id(),
                at: place(&on, &event),
            }));
        },
    )?);
    for name in ["pointercancel", "lostpointercapture"] {
        let to = port.clone();
        port.keep(listen(
            canvas,
            name,
            Mode::default(),
            move |event: PointerEvent| {
                to.send(Msg::Pointer(Pointer::Cancel {
                    id: event.pointer_id(),
                }));
            },
        )?);
    }
    Ok(())
}

fn moves(port: &Port, canvas: &HtmlCanvasElement) -> Result<()> {
    let (to, on) = (port.clone(), canvas.clone());
    port.keep(listen(
        canvas,
        "pointermove",
        Mode::default(),
        move |event: PointerEvent| {
            to.send(Msg::Pointer(Pointer::Move {
                id: event.pointer_id(),
                kind: kind(&event),
                at: place(&on, &event),
                modifiers: modifiers(&event),
            }));
        },
    )?);
    let to = port.clone();
    port.keep(listen(
        canvas,
        "pointerleave",
        Mode::default(),
        move |_: PointerEvent| to.send(Msg::Pointer(Pointer::Leave)),
    )?);
    Ok(())
}

/// The wheel zooms, and so does a trackpad's pinch, which comes in its guise.
fn wheel(port: &Port, canvas: &HtmlCanvasElement) -> Result<()> {
    let (to, on) = (port.clone(), canvas.clone());
    port.keep(listen(
        canvas,
        "wheel",
        Mode::ACTIVE,
        move |event: WheelEvent| {
            event.prevent_default();
            let unit_px = match event.delta_mode() {
                WheelEvent::DOM_DELTA_LINE => 16.0,
                WheelEvent::DOM_DELTA_PAGE => 400.0,
                _ => 1.0,
            };
            to.send(Msg::Pointer(Pointer::Wheel {
                at: place(&on, &event),
                delta_px: event.delta_y() * unit_px,
            }));
        },
    )?);
    Ok(())
}

/// Place of an event from the upper left corner of an element.
pub(super) fn place(on: &Element, event: &MouseEvent) -> ScreenPoint {
    let corner = on.get_bounding_client_rect();
    ScreenPoint {
        x_px: f64::from(event.client_x()) - corner.left(),
        y_px: f64::from(event.client_y()) - corner.top(),
    }
}

/// What points.
pub(super) fn kind(event: &PointerEvent) -> PointerKind {
    match event.pointer_type().as_str() {
        "touch" => PointerKind::Touch,
        "pen" => PointerKind::Pen,
        _ => PointerKind::Mouse,
    }
}

fn modifiers(event: &PointerEvent) -> Modifiers {
    Modifiers {
        ctrl: event.ctrl_key() || event.meta_key(),
        shift: event.shift_key(),
        alt: event.alt_key(),
    }
}
