//! What the start script does: the page as one file, and its newer version.

use super::clipboard::call_then;
use super::download;
use crate::dom::window;
use crate::error::{PageError, Result, report};
use crate::runtime::Port;
use gearswing_app::Msg;
use gearswing_app::msg::Share;
use gearswing_app::words::browser::lacks;
use js_sys::{Function, Reflect};
use wasm_bindgen::closure::Closure;
use wasm_bindgen::{JsCast, JsValue};

/// Offers the page with the code of a gear in it as a file.
pub(super) fn save(port: &Port, name: String, code: &str) -> Result<()> {
    let made = call("file", &JsValue::from_str(code))?;
    let failed = port.clone();
    let on_done = Closure::once_into_js(move |text: JsValue| {
        let text = text.as_string().unwrap_or_default();
        report(download::offer(&name, "text/html", &text));
    });
    let on_failed = Closure::once_into_js(move |reason: JsValue| {
        let reason = PageError::Browser(reason).to_string();
        failed.send(Msg::Share(Share::OneFileFailed { reason }));
    });
    call_then(&made, &on_done, &on_failed)
}

/// Calls what the start script holds under this name; where it holds none, as in the form of one file, nothing is to
/// be done.
pub(super) fn start_script(name: &str) -> Result<()> {
    call(name, &JsValue::UNDEFINED)?;
    Ok(())
}

fn call(name: &str, value: &JsValue) -> Result<JsValue> {
    let held = Reflect::get(&*window()?, &JsValue::from_str("gearswing"))?;
    let held = Reflect::get(&held, &JsValue::from_str(name))?;
    if held.is_undefined() {
        return Ok(held);
    }
    let held: Function = held
        .dyn_into()
        .map_err(|_| PageError::Missing(lacks::PROMISE))?;
    Ok(held.call1(&JsValue::UNDEFINED, value)?)
}
