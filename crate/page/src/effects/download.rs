//! Files to the person's disk.

use crate::dom::{element_of, window};
use crate::error::Result;
use js_sys::Array;
use wasm_bindgen::closure::Closure;
use wasm_bindgen::{JsCast, JsValue};
use web_sys::{Blob, BlobPropertyBag, HtmlAnchorElement, Url};

/// How long the browser may take to fetch the file from memory (ms).
const KEEP_MS: i32 = 60_000;

/// Offers a text as a file.
pub(crate) fn offer(name: &str, mime: &str, text: &str) -> Result<()> {
    let options = BlobPropertyBag::new();
    options.set_type(mime);
    let parts = Array::of1(&JsValue::from_str(text));
    let blob = Blob::new_with_str_sequence_and_options(&parts, &options)?;
    let address = Url::create_object_url_with_blob(&blob)?;
    let anchor: HtmlAnchorElement = element_of("a", "")?;
    anchor.set_href(&address);
    anchor.set_download(name);
    anchor.click();
    let forget = Closure::once_into_js(move || {
        // The address is gone with the page at the latest.
        let _ = Url::revoke_object_url(&address);
    });
    window()?
        .set_timeout_with_callback_and_timeout_and_arguments_0(forget.unchecked_ref(), KEEP_MS)?;
    Ok(())
}
