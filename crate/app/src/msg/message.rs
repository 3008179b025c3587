//! Everything that can happen, one closed list in families.
use super::{
    Compare, CurvePointer, Field, File, History, Key, Late, Note, Play, Pointer, Share,
    StripPointer, Times, View,
};
/// One thing that happened.
#[derive(Clone, Debug, PartialEq)]
pub enum Msg {
    /// Mouse, pen or touch on the drawing.
    Pointer(Pointer),
    /// Mouse, pen or touch on the curves.
    CurvePointer(CurvePointer),
    /// Mouse, pen or touch on the strip.
    StripPointer(StripPointer),
    /// A key on the drawing or one of its handles.
    Key(Key),
    /// A field or the list it stands in.
    Field(Field),
    /// What is looked at and how.
    View(View),
    /// The played swing and the scrub.
    Play(Play),
    /// The gear against time.
    Times(Times),
    /// States kept to compare with.
    Compare(Compare),
    /// What somebody says about the gear.
    Note(Note),
    /// Gear files.
    File(File),
    /// The link.
    Share(Share),
    /// What comes after the answers.
    Late(Late),
    /// Undo and redo.
    History(History),
    /// An animation frame; only its differences count.
    Frame {
        /// Time of the frame (s).
        time_s: f64,
    },
}
