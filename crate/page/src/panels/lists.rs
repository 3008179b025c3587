//! Plain lists of sentences.

use crate::dom::{element, set_hidden};
use crate::error::Result;
use web_sys::Element;

/// Shows sentences as the children of a node, which is hidden when there are none.
pub(super) fn sentences<T: AsRef<str>>(
    parent: &Element,
    tag: &'static str,
    texts: &[T],
) -> Result<()> {
    set_hidden(parent, texts.is_empty())?;
    parent.set_text_content(None);
    for text in texts {
        let child = element(tag, "")?;
        child.set_text_content(Some(text.as_ref()));
        parent.append_child(&child)?;
    }
    Ok(())
}
