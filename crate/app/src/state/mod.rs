//! What is known: the document with its history, what is looked at and typed, the results, the
//! files.

/// Results of the kept state that is compared with.
mod before;
/// Results for the document.
mod derived;
/// The gear with its history.
mod document;
/// Gear files.
mod files;
/// What comes after the answers.
mod later;
/// What is looked at, over a reload.
mod looking;
/// Lines of text about what happened.
mod notice;
/// A gear of the history.
mod past;
/// Whom an address reaches.
mod reach;
/// What is looked at, typed and selected.
mod session;
/// What the page finds at its start.
mod start;
/// The history as the browser stores it.
mod steps;
/// Texts that the browser stores.
mod storage;
/// A run against time.
mod timed;
/// Everything together.
mod whole;

pub(crate) use derived::{Derived, Good, LegDerived};
pub(crate) use document::{Act, Document};
pub(crate) use files::{Entry, LinkState, Origin, OwnFile, Parked};
pub(crate) use later::{Later, Stand};
pub(crate) use reach::reach;
pub(crate) use session::{
    Circles, Draft, Gesture, Hover, Paper, Playing, Pressed, Snapped, StripHeld,
};
pub use session::{Session, Speed, Theme};
pub use start::{Start, StoredFile, StoredStep};
pub(crate) use steps::read_step;
pub(crate) use storage::{Stored, index_text, read_file};
pub(crate) use timed::{leg_at, progress_at as progress_at_time, selected, value_at};
pub use whole::State;
pub(crate) use whole::demo;
