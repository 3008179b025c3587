//! Light or dark: `data-theme` on the root says which, `colors.css` does the rest.

use crate::dom::{document, set_attribute, window};
use crate::error::{PageError, Result};
use gearswing_app::state::Theme;
use gearswing_app::words::browser::lacks;
use std::cell::Cell;

thread_local! {
    static CHOSEN: Cell<Theme> = const { Cell::new(Theme::System) };
}

/// The system's wish for dark.
pub(crate) const DARK_QUERY: &str = "(prefers-color-scheme: dark)";

/// Shows the page in a theme.
pub(crate) fn set(theme: Theme) -> Result<()> {
    CHOSEN.set(theme);
    refresh()
}

/// Follows the system where the person has not chosen.
pub(crate) fn refresh() -> Result<()> {
    let dark = match CHOSEN.get() {
        Theme::Light => false,
        Theme::Dark => true,
        Theme::System => window()?
            .match_media(DARK_QUERY)?
            .is_some_and(|query| query.matches()),
    };
    put(if dark { "dark" } else { "light" })
}

fn put(theme: &str) -> Result<()> {
    let root = document()?
        .document_element()
        .ok_or(PageError::Missing(lacks::ROOT))?;
    set_attribute(&root, "data-theme", theme)
}
