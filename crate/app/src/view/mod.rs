//! What is shown, as plain structs.

/// The structs.
mod page;

pub use page::*;

use crate::state::State;

/// The page for a state.
#[must_use]
pub fn view(state: &State) -> Page {
    Page {
        toolbar: Toolbar {
            units: state.session.units,
            theme: state.session.theme,
            ..Toolbar::default()
        },
        ..Page::default()
    }
}
