//! The whole page as plain data: what is known, what can happen, what is shown and drawn.
//!
//! ```text
//! DOM event → Msg → update → its effects → settle → its effects → view, drawing, curves → DOM, canvas
//! ```
//! [`update`] changes the document and is quick; [`settle`] works out the results. The effects of
//! [`update`] are to be done *before* [`settle`], so that the document's text
//! ([`Effect::RecoveryText`]) is safe should the solver break down.
//!
//! No browser type, no clock, no chance: time and storage come in as message data, everything that
//! has to be done outside goes out as an [`Effect`]. Every number inside is SI; screen places are
//! [`scene::ScreenPoint`] in CSS pixels.

/// What the page has to do outside of itself.
mod effect;
/// Numbers, texts and choices of the gear as fields addressed by their path in the gear file.
pub mod fields;
/// Everything that can happen.
pub mod msg;
/// What stands on paper.
pub mod paper;
/// Drawing and curves as lists of marks.
pub mod scene;
/// What is known: document, session, results.
pub mod state;
/// The only writer of the state.
mod update;
/// What is shown, as plain structs.
pub mod view;

pub use effect::Effect;
pub use msg::Msg;
pub use scene::{Scene, curves, detail, drawing, strip, times};
pub use state::{Start, State, StoredFile, StoredStep};
pub use update::{has_changed, is_working, ready_to_print, settle, settle_part, update};
pub use view::{Page, load_tables, view};

// Types of the crates below that appear in messages and in the page.
pub use gearswing_gear::field::Axis;
/// The words of the page.
pub use gearswing_report::page as words;
pub use gearswing_report::{Align, Column, Program, TitledTable, program_words};
pub use gearswing_solver::result::{Question, Verdict};
pub use gearswing_units::{AirspeedUnit, MetricPressure, StepSize, UnitChoice, UnitSystem};
