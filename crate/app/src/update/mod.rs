//! The only writers of the state: [`update`] for what happened, [`settle`] for the results.

/// All files out into one.
mod archive;
/// States kept to compare with.
mod compare;
/// Which message goes where, and what every message ends with.
mod dispatch;
/// Fields and lists.
mod field;
/// Gear files.
mod file;
/// Undo and redo.
mod history;
/// What the browser tells of its storage.
mod kept;
/// Keys on the drawing.
mod key;
/// What comes after the answers: asking for it, and taking it in.
mod late;
/// Opening, storing, setting aside.
mod library;
/// What somebody says about the gear.
mod note;
/// The page given out as one file, and where its links lead.
mod one_file;
/// Two legs that are each other's image in a mirror.
mod pairs;
/// Points typed or pasted in one.
mod pasted;
/// The played swing and the scrub.
mod play;
/// Mouse, pen and touch.
mod pointer;
/// Which own file is of the same gear as what was sent.
mod same;
/// Results, and what follows from them.
mod settle;
/// The link.
mod share;
/// Snapping of a dragged point.
mod snap;
/// The cursor on the strip.
mod strip;
/// The gear against time.
mod times;
/// The tire of a leg.
mod tire;
/// What is looked at.
mod view;

pub use dispatch::update;
pub(crate) use play::SCRUB_STEP;
pub use settle::{has_changed, is_working, ready_to_print, settle, settle_part};
