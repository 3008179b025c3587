//! A leg stopped on the jacks: what explains it.
//!
//! Every explanation is a way in which the leg of the file, level on jacks, comes to stand. It asks
//! for a place and for readings; each is held against what was seen, in standard uncertainties. The
//! sum of the squares and two for each number that was chosen to fit (H. Akaike, IEEE Trans. Autom.
//! Control 19 (1974) 716–723, for known normal errors; from memory) puts them in order.
//!
//! **Where a leg stops.** A quantity that must stay positive (clearance, pressure to spare, stroke
//! left) is known to within a constant error. The leg stops where it first comes to nothing, so only
//! at a place where the quantity is lower than at every place before: a record. For a place on the
//! way, the error that stops the leg there is the quantity itself, and the fit is
//! ((s − s_seen)/u_s)² + (h(s)/u_h)², least over the records. What a leg must have passed to come so
//! far (contact, too great a load) counts the same way.
//!
//! Explanations that are not listed here are not weighed: the words say so.

/// The next check.
mod check;
/// Contact.
mod contacts;
/// Ends of actuator and linkage, pins that bind, switches.
mod ends;
/// Why a stop cannot be explained.
mod error;
/// All explanations.
mod explain;
/// Place and readings against what was seen.
mod fit;
/// From a measured distance to travel.
mod place;
/// What the source does against a stopped leg.
mod source;
/// A strut that is too long.
mod strut;
/// The way of the leg: loads, clearances, lengths.
mod way;

#[cfg(test)]
mod tests;

pub use error::StopError;
pub use explain::{StopAnswer, explain_prepared, explain_stop};
