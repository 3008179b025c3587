//! Everything that can happen, one closed list in families.

mod compare;
mod field;
mod file;
mod history;
mod key;
mod late;
/// The list itself.
mod message;
mod note;
mod play;
mod pointer;
mod share;
mod times;
mod view;

pub use compare::Compare;
pub use field::Field;
pub use file::File;
pub use history::History;
pub use key::{Direction, Key};
pub use late::Late;
pub use note::{HangOn, Note};
pub use play::Play;
pub use pointer::{CurvePointer, Modifiers, Pointer, PointerKind, StripPointer};
pub use share::Share;
pub use times::Times;
pub use view::View;

pub use message::Msg;
