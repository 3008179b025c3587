//! What the page does outside of itself when the state asks for it.

mod announce;
mod chance;
mod clipboard;
mod download;
mod import;
/// What comes after the answers.
mod late;
mod one_file;
/// Performs an effect.
mod perform;
mod stay;
mod storage;
mod theme;

pub(crate) use chance::chance;
pub(crate) use import::read_file;
pub(crate) use perform::sheet_of;
pub(crate) use storage::{Found, Store, open as open_storage};
pub(crate) use theme::{DARK_QUERY, refresh as refresh_theme};

pub(crate) use perform::Effects;
