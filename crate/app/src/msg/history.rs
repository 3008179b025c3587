//! Undo and redo.

/// A step in the history.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum History {
    /// Takes back the last act.
    Undo,
    /// Does it again.
    Redo,
}
