//! Head and presses of the page.
use gearswing_units::UnitChoice;

use crate::state::Theme;

/// Top row of controls.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Toolbar {
    /// Something can be undone.
    pub can_undo: bool,
    /// What, in words.
    pub undo_text: String,
    /// Something can be redone.
    pub can_redo: bool,
    /// What, in words.
    pub redo_text: String,
    /// Units.
    pub units: UnitChoice,
    /// Theme.
    pub theme: Theme,
    /// Snapping is on.
    pub snap: bool,
    /// An end of the actuator is selected, which can slide along its arc; whether it does.
    pub slide: Option<bool>,
    /// Hangs a note on the place of travel that is shown.
    pub note_here: String,
    /// Hangs it on what is selected; empty where nothing is.
    pub note_selected: String,
    /// Load arrows are drawn.
    pub loads: bool,
    /// Name of the gear file.
    pub file_name: String,
    /// Nothing of one's own is open: offer to begin.
    pub is_demo: bool,
    /// Where the work stands: stored, not stored and why, shared.
    pub stored_text: String,
    /// About the link: its length, or why there is none.
    pub link_text: String,
    /// The link is too long: offer the file.
    pub link_too_long: bool,
    /// Whom a link does not reach; empty where it reaches everybody.
    pub link_reach: String,
    /// What copies the link, or its code.
    pub copy_text: &'static str,
    /// Where others have the page, or empty.
    pub home: String,
    /// The state with the previous tire, by index.
    pub previous: Option<usize>,
    /// Comparing with the previous tire.
    pub comparing: bool,
    /// Text on that switch.
    pub compare_text: String,
}

/// Presses that move a point by steps.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct StepsText {
    /// The point.
    pub name: String,
    /// The step, on its press.
    pub step_text: String,
    /// It is the fine one.
    pub fine: bool,
}
