//! Text to the clipboard.

use crate::dom::{document, element_of, window};
use crate::error::{PageError, Result};
use crate::runtime::Port;
use gearswing_app::Msg;
use gearswing_app::msg::Share;
use gearswing_app::words::browser::lacks;
use js_sys::{Function, Reflect};
use wasm_bindgen::closure::Closure;
use wasm_bindgen::{JsCast, JsValue};
use web_sys::HtmlTextAreaElement;

/// Puts a text on the clipboard and sends what became of it. Without the clipboard interface (a
/// page not served over https or from this machine) the browser's older copy command is tried.
pub(crate) fn copy(port: &Port, text: &str) -> Result<()> {
    let navigator = window()?.navigator();
    let clipboard = Reflect::get(navigator.as_ref(), &JsValue::from_str("clipboard"))?;
    if clipboard.is_undefined() {
        send(port, copy_by_command(text));
        return Ok(());
    }
    let promise = navigator.clipboard().write_text(text);
    let done = port.clone();
    let on_done = Closure::once_into_js(move |_: JsValue| send(&done, Ok(())));
    let (failed, text) = (port.clone(), text.to_owned());
    let on_failed = Closure::once_into_js(move |reason: JsValue| {
        // The command may work where the interface is refused.
        let result = copy_by_command(&text).map_err(|_| PageError::Browser(reason));
        send(&failed, result);
    });
    call_then(&promise, &on_done, &on_failed)
}

fn send(port: &Port, result: Result<()>) {
    port.send(Msg::Share(match result {
        Ok(()) => Share::Copied,
        Err(error) => Share::CopyFailed {
            reason: error.to_string(),
        },
    }));
}

/// `promise.then(done, failed)`.
pub(super) fn call_then(promise: &JsValue, done: &JsValue, failed: &JsValue) -> Result<()> {
    let then: Function = Reflect::get(promise, &JsValue::from_str("then"))?
        .dyn_into()
        .map_err(|_| PageError::Missing(lacks::PROMISE))?;
    then.call2(promise, done, failed)?;
    Ok(())
}

/// The copy command on a text area out of sight.
fn copy_by_command(text: &str) -> Result<()> {
    let document = document()?;
    let body = document
        .body()
        .ok_or(PageError::Missing(lacks::PAGE_BODY))?;
    let area: HtmlTextAreaElement = element_of("textarea", "unseen")?;
    area.set_value(text);
    let before = document.active_element();
    body.append_child(&area)?;
    area.select();
    let command: Function = Reflect::get(document.as_ref(), &JsValue::from_str("execCommand"))?
        .dyn_into()
        .map_err(|_| PageError::Missing(lacks::COPY_COMMAND))?;
    let copied = command.call1(document.as_ref(), &JsValue::from_str("copy"));
    area.remove();
    if let Some(element) = before
        && let Ok(element) = element.dyn_into::<web_sys::HtmlElement>()
    {
        element.focus()?;
    }
    match copied?.as_bool() {
        Some(true) => Ok(()),
        _ => Err(PageError::Missing(lacks::COPY_LEAVE)),
    }
}
