//! The document: finding nodes, making them, and writing only what differs.

mod build;
mod find;
mod rows;
mod write;

pub(crate) use build::{element, element_of};
pub(crate) use find::{all_of, by_id, closest, data, document, takes_room, window};
pub(crate) use rows::{Row, Rows};
pub(crate) use write::{set_attribute, set_class, set_flag, set_hidden, set_text};
