//! The second module: on a thread of its own beside the page, fetched when there is first something for it to do.
//!
//! `www/worker.js` hands on what the page asks, calls [`part`] until nothing is left, and looks between two parts
//! whether something newer was asked. A breakdown here ends this thread; the page goes on.

use gearswing_work::{Part, Working, to_bytes};
use js_sys::Uint8Array;
use std::cell::RefCell;
use wasm_bindgen::JsValue;
use wasm_bindgen::prelude::wasm_bindgen;

thread_local! {
    static WORKING: RefCell<Option<Working>> = const { RefCell::new(None) };
}

/// The build of this module: bytes from another build are not read.
#[wasm_bindgen]
#[must_use]
pub fn build() -> String {
    gearswing_version::build()
}

/// Begins with a gear, given as the text of its file, and leaves what was under way.
///
/// # Errors
/// The text is no gear file.
#[wasm_bindgen]
pub fn ask(text: &str) -> Result<(), JsValue> {
    WORKING.with_borrow_mut(|working| {
        let next = Working::of_text(text, working.as_ref());
        *working = Some(next.map_err(|_| JsValue::from_str("the text is no gear file"))?);
        Ok(())
    })
}

/// Works out one part: a result as bytes, `undefined` where it goes on, `null` where nothing is left.
///
/// # Errors
/// The result cannot be written as bytes.
#[wasm_bindgen]
pub fn part() -> Result<JsValue, JsValue> {
    WORKING.with_borrow_mut(
        |working| match working.as_mut().map_or(Part::Over, Working::part) {
            Part::GoesOn => Ok(JsValue::UNDEFINED),
            Part::Over => Ok(JsValue::NULL),
            Part::Found(found) => match to_bytes(&found) {
                Ok(bytes) => Ok(Uint8Array::from(bytes.as_slice()).into()),
                Err(_) => Err(JsValue::from_str("the result has no bytes")),
            },
        },
    )
}
