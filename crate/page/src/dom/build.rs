//! Making elements. Text goes in as text, never as markup.

use super::find::document;
use crate::error::{PageError, Result};
use wasm_bindgen::JsCast;
use web_sys::{Element, HtmlElement};

/// A new element of a class.
pub(crate) fn element(tag: &'static str, class: &str) -> Result<HtmlElement> {
    element_of(tag, class)
}

/// A new element of a class, as its own type.
pub(crate) fn element_of<T: JsCast>(tag: &'static str, class: &str) -> Result<T> {
    let made: Element = document()?.create_element(tag)?;
    if !class.is_empty() {
        made.set_class_name(class);
    }
    made.dyn_into().map_err(|_| PageError::Node(tag))
}
