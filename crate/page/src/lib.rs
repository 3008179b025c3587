//! The browser page. The only crate that knows the browser; everything it shows comes from the others.

use wasm_bindgen::prelude::*;

/// Entry point: runs once when the module has been loaded.
#[wasm_bindgen(start)]
pub fn start() -> Result<(), JsValue> {
    console_error_panic_hook::set_once();
    let document = web_sys::window()
        .and_then(|window| window.document())
        .ok_or_else(|| JsValue::from_str("this page needs a browser window"))?;
    document.set_title("Gearswing");
    Ok(())
}
