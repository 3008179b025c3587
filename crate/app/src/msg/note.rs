//! What somebody says about the gear.

/// On what a note is hung.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum HangOn {
    /// The gear.
    Gear,
    /// The place of travel that is shown.
    Here,
    /// The point or number that is selected.
    Selected,
}

/// Something done with a note.
#[derive(Clone, Debug, PartialEq)]
pub enum Note {
    /// Adds one.
    Add {
        /// What is said.
        text: String,
        /// Who says so.
        by: String,
        /// On what it hangs.
        on: HangOn,
    },
    /// Goes to what it hangs on.
    Show {
        /// Of all notes, as index.
        at: usize,
    },
    /// Takes it away.
    Remove {
        /// Of all notes, as index.
        at: usize,
    },
}
