//! What happens when the program breaks off: the notice in `www/index.html` takes over.

use crate::dom::window;
use crate::error::Result;
use gearswing_app::{Program, program_words};
use js_sys::Reflect;
use std::cell::Cell;
use wasm_bindgen::JsValue;

thread_local! {
    static HAPPENED: Cell<bool> = const { Cell::new(false) };
}

/// Whether the program has panicked; after that nothing of it may run.
pub(crate) fn happened() -> bool {
    HAPPENED.get()
}

/// Sends panics to the console and leaves their text, with the build that broke off, for the notice. The trap that follows
/// reaches `start.js` as an error of the window, which shows the notice.
pub(crate) fn install(program: Program<'static>) {
    std::panic::set_hook(Box::new(move |info| {
        HAPPENED.set(true);
        console_error_panic_hook::hook(info);
        // Nothing is left that could report a failure here.
        let _ = leave("panic", &format!("{}: {info}", program_words(&program)));
    }));
}

/// Leaves the gear file's text where the notice finds it. The text is kept outside of this module,
/// so that it outlives it.
pub(crate) fn keep_recovery(text: &str) -> Result<()> {
    leave("recovery", text)
}

/// Sets a property of the object that `start.js` has made.
fn leave(name: &str, text: &str) -> Result<()> {
    let shared = Reflect::get(window()?.as_ref(), &JsValue::from_str("gearswing"))?;
    Reflect::set(&shared, &JsValue::from_str(name), &JsValue::from_str(text))?;
    Ok(())
}
