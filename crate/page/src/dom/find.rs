//! Finding what `www/index.html` holds.

use crate::error::{PageError, Result};
use gearswing_app::words::browser::lacks;
use wasm_bindgen::JsCast;
use web_sys::{Document, Element, Event, NodeList, Window};

/// The window.
pub(crate) fn window() -> Result<Window> {
    web_sys::window().ok_or(PageError::Missing(lacks::WINDOW))
}

/// The document.
pub(crate) fn document() -> Result<Document> {
    window()?
        .document()
        .ok_or(PageError::Missing(lacks::DOCUMENT))
}

/// The element with this id, of the wanted type.
pub(crate) fn by_id<T: JsCast>(id: &'static str) -> Result<T> {
    document()?
        .get_element_by_id(id)
        .and_then(|element| element.dyn_into().ok())
        .ok_or(PageError::Node(id))
}

/// The nearest element at or above an event's target that has the attribute.
pub(crate) fn closest(event: &Event, attribute: &str) -> Option<Element> {
    let target = event.target()?.dyn_into::<Element>().ok()?;
    target.closest(&format!("[{attribute}]")).ok().flatten()
}

/// Value of an attribute at or above an event's target.
pub(crate) fn data(event: &Event, attribute: &str) -> Option<String> {
    closest(event, attribute)?.get_attribute(attribute)
}

/// All of a list that are of the wanted type.
pub(crate) fn all_of<T: JsCast>(list: &NodeList) -> Vec<T> {
    let nodes = (0..list.length()).filter_map(|at| list.item(at)?.dyn_into().ok());
    nodes.collect()
}

/// Whether an element takes room: one that is hidden, or within what is, takes none.
pub(crate) fn takes_room(node: &Element) -> bool {
    node.get_client_rects().length() > 0
}
