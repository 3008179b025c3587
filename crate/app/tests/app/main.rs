//! The page as plain data: messages in, state, page, drawing and effects out.
#![allow(clippy::unwrap_used, reason = "a test stops at what it did not expect")]

mod charts;
mod compare;
mod detail;
mod drag;
mod entries;
mod fields;
mod files;
mod history;
mod kept;
mod knee;
mod loads;
mod looking;
mod marks;
mod monkey;
mod names;
mod notes;
mod pairs;
mod paper;
mod play;
mod scenes;
mod shared;
mod slices;
mod snapshot;
mod springs;
mod start;
mod stopped;
mod strip;
mod stroke;
mod support;
mod table;
mod times;
mod tire_sizes;
mod told;
mod values;
mod whole_leg;
