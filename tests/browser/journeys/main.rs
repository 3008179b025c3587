//! Journeys through the page, each with a fresh profile.

#![allow(missing_docs, reason = "test binary")]

/// The content policy, and the journeys' own eyes.
mod policy;
/// The page starts, on a desk and on a phone.
mod start;
