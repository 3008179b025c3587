//! What can go wrong between the page and the browser.

use gearswing_app::words::browser::{missing, no_element};
use std::fmt;
use wasm_bindgen::JsValue;

/// A failure at the browser's edge; it ends in the console, at start also on the page.
#[derive(Debug)]
pub(crate) enum PageError {
    /// `www/index.html` lacks a node, or it is of another kind.
    Node(&'static str),
    /// The browser has no such thing.
    Missing(&'static str),
    /// The browser did not store something, and why.
    Storage(String),
    /// A call into the browser failed.
    Browser(JsValue),
}

/// Result of a call that touches the browser.
pub(crate) type Result<T> = std::result::Result<T, PageError>;

impl fmt::Display for PageError {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::Node(id) => f.write_str(&no_element(id)),
            Self::Missing(what) => f.write_str(&missing(what)),
            Self::Storage(why) => f.write_str(why),
            Self::Browser(value) => match js_text(value) {
                Some(text) => f.write_str(&text),
                None => write!(f, "{value:?}"),
            },
        }
    }
}

impl From<JsValue> for PageError {
    fn from(value: JsValue) -> Self {
        Self::Browser(value)
    }
}

impl From<PageError> for JsValue {
    fn from(error: PageError) -> Self {
        js_sys::Error::new(&error.to_string()).into()
    }
}

/// Message of a thrown value.
fn js_text(value: &JsValue) -> Option<String> {
    value.as_string().or_else(|| {
        use wasm_bindgen::JsCast;
        value
            .dyn_ref::<js_sys::Error>()
            .map(|error| String::from(error.message()))
    })
}

/// Writes a failure to the console: the one place where errors of handlers end.
pub(crate) fn report(result: Result<()>) {
    if let Err(error) = result {
        web_sys::console::error_1(&JsValue::from_str(&error.to_string()));
    }
}
