//! Press and drag on the curves: the cursor goes along.

use super::scrub::scrubs;
use crate::dom::by_id;
use crate::error::Result;
use crate::listen::{Mode, listen};
use crate::runtime::Port;
use gearswing_app::msg::{CurvePointer, Msg};
use web_sys::{HtmlCanvasElement, PointerEvent};

/// Registers the handlers of the curves.
pub(super) fn register(port: &Port) -> Result<()> {
    let canvas: HtmlCanvasElement = by_id("curves")?;
    scrubs(port, &canvas, |at| {
        Msg::CurvePointer(CurvePointer::Scrub { at })
    })?;
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
