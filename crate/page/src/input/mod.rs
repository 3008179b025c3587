//! Browser events to messages; nothing is decided here.

mod click;
mod curves;
mod drawing;
mod fields;
/// The grip of the sheet.
mod grip;
mod hold;
mod keys;
mod pick;
/// Registers all handlers.
mod register;
/// Press and drag along a canvas.
mod scrub;
/// Groups that are one stop of the Tab key.
mod stops;
mod strip;
mod times;
mod window;

pub(crate) use window::{MOTION_QUERY, media};

pub(crate) use register::register;
