//! The browser is asked not to clear what it keeps.

use super::clipboard::call_then;
use crate::dom::window;
use crate::error::Result;
use crate::runtime::Port;
use gearswing_app::{Msg, msg};
use js_sys::{Function, Promise, Reflect};
use wasm_bindgen::closure::Closure;
use wasm_bindgen::{JsCast, JsValue};

/// Asks; a refusal is sent. Where the browser has nothing to ask, nothing is promised either; for a page from a disk it
/// would ask the person about a place without a name.
pub(crate) fn ask(port: &Port) -> Result<()> {
    let from_disk = window()?.location().protocol()? == "file:";
    let asked = if from_disk { None } else { promise()? };
    let Some(asked) = asked else {
        port.send(Msg::File(msg::File::MayBeCleared));
        return Ok(());
    };
    let to = port.clone();
    let on_done = Closure::once_into_js(move |stays: JsValue| {
        if stays.as_bool() != Some(true) {
            to.send(Msg::File(msg::File::MayBeCleared));
        }
    });
    let to = port.clone();
    let on_failed = Closure::once_into_js(move |_: JsValue| {
        to.send(Msg::File(msg::File::MayBeCleared));
    });
    call_then(&asked, &on_done, &on_failed)
}

/// What the browser promises; a page that did not come by a safe way has nobody to ask.
fn promise() -> Result<Option<Promise>> {
    let storage = Reflect::get(&window()?.navigator(), &"storage".into())?;
    if storage.is_undefined() {
        return Ok(None);
    }
    let persist = Reflect::get(&storage, &"persist".into())?;
    let Some(persist) = persist.dyn_ref::<Function>() else {
        return Ok(None);
    };
    Ok(Some(persist.call0(&storage)?.dyn_into()?))
}
