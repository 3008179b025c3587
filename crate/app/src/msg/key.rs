//! Keys on the drawing or on one of its handles.
use gearswing_units::StepSize;

/// Arrow direction.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Direction {
    /// Left arrow, −x.
    Left,
    /// Right arrow, +x.
    Right,
    /// Up arrow, +y.
    Up,
    /// Down arrow, −y.
    Down,
}

/// A key.
#[derive(Clone, Debug, PartialEq)]
pub enum Key {
    /// An arrow on a focused handle: plain = the unit's step, shift = coarse, alt = fine.
    Nudge {
        /// Handle.
        handle: String,
        /// Arrow.
        direction: Direction,
        /// Size of the step.
        size: StepSize,
    },
    /// An arrow on the drawing itself.
    Pan {
        /// Arrow.
        direction: Direction,
    },
    /// Delete on a handle: takes the point out of its outline.
    Remove {
        /// Handle.
        handle: String,
    },
    /// Insert or Enter on a handle of an outline: adds a point behind it.
    Insert {
        /// Handle.
        handle: String,
    },
    /// Gives up the drag, stops playing, or clears the selection, whichever comes first.
    Escape,
}
