//! What is looked at and how.
use super::Direction;
use gearswing_report::page::sheets::Sheet;
use gearswing_solver::result::Question;
use gearswing_units::UnitChoice;

use crate::state::Theme;

/// A change of view.
#[derive(Clone, Debug, PartialEq)]
pub enum View {
    /// Shows this leg.
    SelectLeg {
        /// Leg.
        leg: usize,
    },
    /// Takes a sheet in hand.
    Sheet(Sheet),
    /// Makes the sheet in hand higher, and then low again.
    SheetHeight,
    /// Makes it higher by one, or lower; at the end it stays.
    SheetPull {
        /// Higher.
        up: bool,
    },
    /// Goes to the place of an answer, close enough to see the gap that it speaks of.
    GoTo {
        /// Leg.
        leg: usize,
        /// The answer.
        question: Question,
    },
    /// Goes to where a leg was seen to stop.
    GoToStop {
        /// Leg.
        leg: usize,
    },
    /// Fits the drawing into its room.
    Fit,
    /// Zooms about the selected point, or about the middle.
    Zoom {
        /// Factor, above 1 = larger (ratio).
        factor: f64,
    },
    /// Chooses units.
    Units(UnitChoice),
    /// Chooses the theme.
    Theme(Theme),
    /// Opens or closes a group of fields.
    ToggleGroup {
        /// Group.
        id: String,
    },
    /// The drawing's canvas has this size (CSS px).
    DrawingSize {
        /// Width.
        width_px: f64,
        /// Height.
        height_px: f64,
    },
    /// The curves' canvas has this width (CSS px); `Scene::height_px` says how high it should be.
    CurvesSize {
        /// Width.
        width_px: f64,
    },
    /// The strip's canvas has this size (CSS px).
    StripSize {
        /// Width.
        width_px: f64,
        /// Height.
        height_px: f64,
    },
    /// The detail's canvas is so wide and high (CSS px).
    DetailSize {
        /// Side.
        side_px: f64,
    },
    /// The keyboard focus came to a handle of the drawing, or left it.
    FocusHandle {
        /// Handle.
        id: Option<String>,
    },
    /// Snapping on or off until further notice.
    Snap {
        /// On or off.
        on: bool,
    },
    /// Moves the point that a finger has let go by a step.
    Step {
        /// Toward.
        direction: Direction,
    },
    /// Takes the fine step for it, or the usual one.
    FineSteps {
        /// The fine one.
        on: bool,
    },
    /// Leaves it.
    StepsDone,
    /// An end of the actuator that is moved keeps the actuator as long as it is with the leg down, or not.
    Slide {
        /// It does.
        on: bool,
    },
    /// Draws load arrows, or no longer.
    Loads {
        /// On or off.
        on: bool,
    },
    /// Closes a notice.
    Dismiss {
        /// Notice.
        id: u64,
    },
    /// Leaves what is not worked out yet.
    GiveUp,
    /// Works out what was given up.
    WorkOut,
}
