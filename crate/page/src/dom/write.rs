//! Writing to nodes, only where the value differs.

use crate::error::Result;
use web_sys::Element;

/// Sets the text.
pub(crate) fn set_text(node: &Element, text: &str) {
    if node.text_content().as_deref() != Some(text) {
        node.set_text_content(Some(text));
    }
}

/// Sets an attribute.
pub(crate) fn set_attribute(node: &Element, name: &str, value: &str) -> Result<()> {
    if node.get_attribute(name).as_deref() != Some(value) {
        node.set_attribute(name, value)?;
    }
    Ok(())
}

/// Sets or removes an attribute that has no value of its own (`disabled`, `hidden`).
pub(crate) fn set_flag(node: &Element, name: &str, on: bool) -> Result<()> {
    if on != node.has_attribute(name) {
        if on {
            node.set_attribute(name, "")?;
        } else {
            node.remove_attribute(name)?;
        }
    }
    Ok(())
}

/// Hides or shows.
pub(crate) fn set_hidden(node: &Element, hidden: bool) -> Result<()> {
    set_flag(node, "hidden", hidden)
}

/// Sets the class.
pub(crate) fn set_class(node: &Element, class: &str) {
    if node.class_name() != class {
        node.set_class_name(class);
    }
}
