//! The grip of the sheet where it lies under the drawing: pulled up or down, the sheet takes the next height that way.
//! A press on it is a button's.

use crate::dom::by_id;
use crate::error::Result;
use crate::listen::{Mode, listen};
use crate::runtime::Port;
use gearswing_app::Msg;
use gearswing_app::msg::View;
use std::cell::Cell;
use std::rc::Rc;
use web_sys::{Event, HtmlElement, PointerEvent};

/// A pull shorter than this is a press (CSS px).
const PULL_PX: i32 = 20;

/// Before the button's own.
const FIRST: Mode = Mode {
    capture: true,
    active: false,
};

/// Registers the handlers of the grip.
pub(super) fn register(port: &Port) -> Result<()> {
    let grip: HtmlElement = by_id("sheet-grip")?;
    let from: Rc<Cell<Option<i32>>> = Rc::default();
    let pulled: Rc<Cell<bool>> = Rc::default();
    let (begins, fresh) = (Rc::clone(&from), Rc::clone(&pulled));
    port.keep(listen(
        &grip,
        "pointerdown",
        Mode::default(),
        move |event: PointerEvent| {
            begins.set(Some(event.client_y()));
            fresh.set(false);
        },
    )?);
    let (to, done) = (port.clone(), Rc::clone(&pulled));
    port.keep(listen(
        &grip,
        "pointerup",
        Mode::default(),
        move |event: PointerEvent| {
            let by = from.take().map_or(0, |from| event.client_y() - from);
            if by.abs() >= PULL_PX {
                done.set(true);
                to.send(Msg::View(View::SheetPull { up: by < 0 }));
            }
        },
    )?);
    // the click that follows a pull is none
    port.keep(listen(&grip, "click", FIRST, move |event: Event| {
        if pulled.take() {
            event.stop_propagation();
        }
    })?);
    Ok(())
}
