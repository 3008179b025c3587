//! Mouse, pen and touch, in CSS pixels from the canvas's upper left corner.
use crate::scene::ScreenPoint;

/// What points.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum PointerKind {
    /// Mouse or trackpad.
    Mouse,
    /// Finger: wider hit radius.
    Touch,
    /// Pen.
    Pen,
}

/// Keys held meanwhile.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub struct Modifiers {
    /// Control or command: no snapping.
    pub ctrl: bool,
    /// Shift.
    pub shift: bool,
    /// Alt.
    pub alt: bool,
}

/// A pointer on the drawing.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Pointer {
    /// Pressed. Two fingers down at once zoom and pan.
    Down {
        /// Pointer id of the browser.
        id: i32,
        /// What points.
        kind: PointerKind,
        /// Where.
        at: ScreenPoint,
        /// Keys held.
        modifiers: Modifiers,
    },
    /// Moved, pressed or not.
    Move {
        /// Pointer id of the browser.
        id: i32,
        /// What points.
        kind: PointerKind,
        /// Where.
        at: ScreenPoint,
        /// Keys held.
        modifiers: Modifiers,
    },
    /// Released.
    Up {
        /// Pointer id of the browser.
        id: i32,
        /// Where.
        at: ScreenPoint,
    },
    /// Taken away by the browser: a drag ends as if released.
    Cancel {
        /// Pointer id of the browser.
        id: i32,
    },
    /// No longer over the drawing.
    Leave,
    /// Wheel or trackpad.
    Wheel {
        /// Where.
        at: ScreenPoint,
        /// Turned by this much (CSS px), downwards positive.
        delta_px: f64,
    },
    /// A pinch that the browser has put together itself.
    Pinch {
        /// Middle of the fingers.
        at: ScreenPoint,
        /// Zoom factor since the last such message (ratio).
        factor: f64,
    },
}

/// A pointer on the strip: it moves the cursor.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum StripPointer {
    /// Pressed.
    Down {
        /// What points.
        kind: PointerKind,
        /// Where.
        at: ScreenPoint,
    },
    /// Dragged.
    Drag {
        /// What points.
        kind: PointerKind,
        /// Where.
        at: ScreenPoint,
    },
    /// Released or taken away.
    End,
}

/// A pointer on the curves: it moves the cursor.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum CurvePointer {
    /// Pressed or dragged.
    Scrub {
        /// Where.
        at: ScreenPoint,
    },
    /// Released or taken away.
    End,
}
