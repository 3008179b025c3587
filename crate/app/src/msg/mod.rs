//! Everything that can happen, one closed list in families.

mod field;
mod file;
mod history;
mod key;
mod play;
mod pointer;
mod share;
mod view;

pub use field::Field;
pub use file::File;
pub use history::History;
pub use key::{Direction, Key};
pub use play::Play;
pub use pointer::{CurvePointer, Modifiers, Pointer, PointerKind};
pub use share::Share;
pub use view::View;

/// One thing that happened.
#[derive(Clone, Debug, PartialEq)]
pub enum Msg {
    /// Mouse, pen or touch on the drawing.
    Pointer(Pointer),
    /// Mouse, pen or touch on the curves.
    CurvePointer(CurvePointer),
    /// A key on the drawing or one of its handles.
    Key(Key),
    /// A field or the list it stands in.
    Field(Field),
    /// What is looked at and how.
    View(View),
    /// The played swing and the scrub.
    Play(Play),
    /// Gear files.
    File(File),
    /// The link.
    Share(Share),
    /// Undo and redo.
    History(History),
    /// An animation frame; only its differences count.
    Frame {
        /// Time of the frame [s].
        time_s: f64,
    },
}
