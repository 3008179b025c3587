//! What takes longer than an edit may, and what no verdict waits for: the gear against time, and what explains the
//! stops that were seen on the jacks.
//!
//! It is worked out in parts ([`Working`]), so that whoever does it can do other things between two of them, and
//! what is found ([`Found`]) travels as bytes from where it is worked out to where it is shown.

/// Results as bytes.
mod bytes;
/// What is found.
mod found;
/// The parts, one after the other.
mod working;

pub use bytes::{Unreadable, from_bytes, to_bytes};
pub use found::Found;
pub use working::{Part, Working, cases, is_wanted};
