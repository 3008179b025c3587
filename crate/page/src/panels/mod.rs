//! The parts of the page beside the canvases: each looks its nodes up once and then writes only
//! what differs.

mod action;
mod answers;
mod changes;
mod data;
mod drawing;
mod field;
mod files;
mod foot;
mod handles;
mod head;
mod keys;
mod lists;
mod loads;
mod notices;
/// All panels together.
mod panel_set;
/// The form on paper.
pub(crate) mod paper;
mod sheets;
/// Keeps what is pressed in its place.
mod steady;
mod steps;
mod stopped;
mod times;
mod transport;
mod verdicts;
mod working;

pub(crate) use action::find_action;
pub(crate) use answers::show_answer;
pub(crate) use changes::after_change;
pub(crate) use files::{leave_files, open_files};
pub(crate) use keys::{airspeed_of, speed_of, theme_of, units_of, way_of};

pub(crate) use panel_set::Panels;
pub(crate) use steady::Steady;
