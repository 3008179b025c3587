//! Press and drag on the charts against time, and their slider.

use super::scrub::scrubs;
use crate::dom::by_id;
use crate::error::Result;
use crate::listen::{Mode, listen};
use crate::runtime::Port;
use gearswing_app::msg::{Msg, Times};
use web_sys::{Event, HtmlCanvasElement, HtmlInputElement};

/// Registers the handlers.
pub(super) fn register(port: &Port) -> Result<()> {
    let canvas: HtmlCanvasElement = by_id("times")?;
    scrubs(port, &canvas, |at| Msg::Times(Times::Scrub { at }))?;
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
