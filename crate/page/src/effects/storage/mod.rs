//! Gear files in the browser's storage. Nothing that another window wrote is overwritten, and nothing
//! is said to be kept before it is on the disk.
//!
//! A save reads what is stored and writes in one transaction: all of it or nothing. While one is
//! under way, what comes waits for the next.

/// What waits to be written.
mod batch;
/// What is to be written.
mod change;
/// The database.
mod database;
/// What a page that ends leaves of a file.
mod left;
/// What earlier versions and last moments left in the simple storage.
mod old;
/// What the page finds at its start.
mod start;
/// Reading and writing.
mod store;

pub(super) use change::Change;
pub(crate) use start::{Found, open};
pub(crate) use store::Store;
